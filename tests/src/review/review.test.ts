/**
 * What the review makes of records written by hand. Figures: counted by hand, intervals by jstat's beta quantiles, chances by plain
 * products. Leaves out: the statistics themselves (tests/sim/evidence).
 */
import { signal } from '@preact/signals';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { BENCHMARKS, feetToMetres, type PracticeSet, playerShares } from '../../../sim/index.ts';
import { EVERYTHING } from '../../../src/screens/review/filter.ts';
import { createReview } from '../../../src/screens/review/review.ts';
import type { AllRecords } from '../../../src/store/records.ts';
import type { Units } from '../../../src/text/format.ts';
import { NONE_OF_SIX, NOTHING_DROPPED, type RoundByHand, roundInFeet } from '../../support/roundsByHand.ts';

const [TOUR] = BENCHMARKS;
const NINE = roundInFeet(NOTHING_DROPPED, {
  id: 'round-nine',
  day: '2026-05-02',
  course: 'Middle Fen',
  miss: { side: 'low', reach: 'short' },
  fields: { climb: 'up', breaks: 'leftToRight' },
});
const SIX = roundInFeet(NONE_OF_SIX, {
  id: 'round-six',
  day: '2026-06-07',
  miss: { side: 'low', reach: 'past' },
  fields: { climb: 'down', breaks: 'rightToLeft' },
});
const set = (fields: Partial<PracticeSet> = {}): PracticeSet => ({
  id: 'set-0001',
  day: '2026-06-10',
  recordedAt: 1,
  distance: feetToMetres(4),
  attempts: 20,
  holed: 15,
  ground: 'grass',
  ...fields,
});
const records = (rounds: readonly RoundByHand[], more: Partial<AllRecords> = {}): AllRecords => ({
  rounds: rounds.map(({ round }) => round),
  putts: rounds.flatMap(({ putts }) => putts),
  practice: [],
  measured: [],
  unreadable: 0,
  ...more,
});
const reviewOf = (all: AllRecords) => {
  const units = signal<Units>('imperial');
  const review = createReview({
    records: signal<AllRecords | undefined>(all),
    units,
    benchmarkId: signal(TOUR.id),
    today: () => '2026-06-20',
  });
  return { review, units };
};

/** Putts of the eighteen holes, and those of them that missed. */
const PUTTS_OF_SIX = NONE_OF_SIX.flat().length;
const MISSES_OF_SIX = PUTTS_OF_SIX - 18;

describe('the record', () => {
  it('is put in order of days, keeps carpet out and counts what cannot be placed', () => {
    const orphan = { ...NINE.putts[0], id: 'putt-orphan', roundId: 'round-gone' };
    const { review } = reviewOf(
      records([SIX, NINE], {
        putts: [...SIX.putts, ...NINE.putts, orphan],
        practice: [set(), set({ id: 'set-0002', ground: 'carpet', attempts: 7, holed: 7 })],
        unreadable: 2,
      }),
    );
    const { rounds, puttCount, carpetPutts, unreadable } = review.record.value;
    expect(rounds.map(({ id }) => id)).toEqual(['round-nine', 'round-six']);
    expect(puttCount).toBe(18 + PUTTS_OF_SIX + 20);
    expect(carpetPutts).toBe(7);
    expect(unreadable).toBe(3);
  });
});

describe('filters', () => {
  it('leave the putts that pass, and say how many of how many', () => {
    const { review } = reviewOf(records([NINE, SIX], { practice: [set()] }));
    const left = (change: Partial<typeof EVERYTHING>): number => {
      review.filter.value = { ...EVERYTHING, ...change };
      return review.count.value;
    };
    expect(left({})).toBe(18 + PUTTS_OF_SIX);
    expect(left({ kind: 'both' })).toBe(18 + PUTTS_OF_SIX + 20);
    expect(left({ kind: 'practice' })).toBe(20);
    expect(left({ climb: 'up' })).toBe(18);
    expect(left({ breaks: 'rightToLeft' })).toBe(PUTTS_OF_SIX);
    expect(left({ paceMeant: 'die' })).toBe(0);
    expect(left({ dates: 'own', from: '2026-05-03', to: '' })).toBe(PUTTS_OF_SIX);
    expect(left({ dates: 'own', from: '2026-05-02', to: '2026-05-02' })).toBe(18);
    expect(left({ dates: 'months' })).toBe(18 + PUTTS_OF_SIX);
  });

  it('show practice at once to who has only practised', () => {
    const { review } = reviewOf(records([], { practice: [set()] }));
    expect(review.kind.value).toBe('practice');
    expect(review.count.value).toBe(20);
    expect(review.round.value).toBeUndefined();
    expect(review.trend.value).toBeUndefined();
  });

  it('make anew only what rests on them', () => {
    const { review, units } = reviewOf(records([NINE, SIX]));
    const [round, holed, record] = [review.round.value, review.holed.value, review.record.value];
    review.filter.value = { ...EVERYTHING, climb: 'up' };
    expect(review.holed.value).not.toBe(holed);
    expect(review.round.value).toBe(round);
    expect(review.record.value).toBe(record);
    const filtered = review.holed.value;
    review.roundId.value = 'round-nine';
    expect(review.round.value).not.toBe(round);
    expect(review.holed.value).toBe(filtered);
    units.value = 'metric';
    expect(review.holed.value.rows[1].band).toEqual({ from: 1, to: 2 });
  });
});

describe('holed by distance', () => {
  it('counts each band, with the interval of jstat and what the benchmark holes from the same places', () => {
    const { review } = reviewOf(records([NINE, SIX], { practice: [set()] }));
    review.filter.value = { ...EVERYTHING, kind: 'both' };
    const [tapIns, near, , middle] = review.holed.value.rows;
    // Under 3 ft: the nine's nine seconds; of the eighteen ten seconds and a third of 1 and 2 ft, and a first putt of 2 ft.
    expect(tapIns.holed).toMatchObject({ hits: 21, tries: 21 });
    // 3 to 6 ft: first putts of 5, 3 and 4 ft and a second of 4 ft dropped, a second of 3 ft did not; 15 of 20 in practice.
    expect(near.holed).toMatchObject({ hits: 19, tries: 25 });
    expect(near.inPractice).toEqual({ hits: 15, tries: 20 });
    // jstat's quantile is good to 6e-8.
    expect(near.holed.low).toBeCloseTo(jStat.beta.inv(0.025, 19.5, 6.5), 6);
    expect(near.holed.high).toBeCloseTo(jStat.beta.inv(0.975, 19.5, 6.5), 6);
    const feet = [5, 3, 4, 3, ...Array.from({ length: 21 }, () => 4)];
    const expected = feet.reduce((sum, one) => sum + TOUR.holedAt(feetToMetres(one)), 0) / 25;
    expect(near.expectedShare).toBeCloseTo(expected, 12);
    // 10 to 15 ft: 14, 12 and 13 ft, none holed: 0 to 1 - 0.025^(1/3) (Brown, Cai & DasGupta 2001).
    expect(middle.holed).toMatchObject({ hits: 0, tries: 3, low: 0 });
    expect(middle.holed.high).toBeCloseTo(1 - 0.025 ** (1 / 3), 10);
    expect(middle.verdict).toBe('tooFew');
    expect(middle.middle).toBeCloseTo(feetToMetres(13), 10);
  });
});

describe('three-putts and misses', () => {
  it('are counted by the first putt, beside the benchmark from the same places', () => {
    const { review } = reviewOf(records([NINE, SIX]));
    const { all, rows, expectedAll } = review.threePutts.value;
    expect(all).toMatchObject({ hits: 1, tries: 27 });
    // From 20 to 30 ft: 27 (in three), 24 and 29 ft.
    expect(rows[5].threePutts).toMatchObject({ hits: 1, tries: 3 });
    const firsts = [...NOTHING_DROPPED, ...NONE_OF_SIX].map(([first]) =>
      TOUR.threePuttAt(feetToMetres(first)),
    );
    expect(expectedAll).toBeCloseTo(firsts.reduce((sum, share) => sum + share, 0) / 27, 12);
  });

  it('have their leaves, and lean as they were written down', () => {
    const { review } = reviewOf(records([NINE, SIX]));
    const { all, leans } = review.misses.value;
    const misses = 9 + MISSES_OF_SIX;
    expect(all.misses).toBe(misses);
    // More than half of all leaves are 2 ft; those shorter and longer are fewer than half each.
    expect(all.leave?.median).toBeCloseTo(feetToMetres(2), 10);
    expect(leans.highLow).toMatchObject({ verdict: 'leans', way: 'second' });
    expect(leans.highLow.share).toMatchObject({ hits: 0, tries: misses });
    // The nine's misses were short, the eighteen's past. Both tails, counted out.
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k);
    const few = Array.from({ length: 10 }, (_, k) => choose(misses, k)).reduce((sum, ways) => sum + ways, 0);
    expect(leans.shortPast.chance).toBeCloseTo((2 * few) / 2 ** misses, 10);
    expect(leans.shortPast.verdict).toBe('even');
    expect(leans.leftRight.verdict).toBe('tooFew');
  });
});

describe('strokes gained', () => {
  it('are expected putts less those taken, round by round, newest first', () => {
    const { review } = reviewOf(records([NINE, SIX]));
    const { rows, running, gained } = review.gained.value;
    expect(rows.map(({ round }) => round.id)).toEqual(['round-six', 'round-nine']);
    const expected = NOTHING_DROPPED.reduce(
      (sum, [first]) => sum + TOUR.expectedPuttsAt(feetToMetres(first)) - 2,
      0,
    );
    expect(rows[1].gained).toBeCloseTo(expected, 10);
    // Two putts gain from 33 ft on (Broadie 2014, read): every hole of this nine did.
    expect(rows[1].gained).toBeGreaterThan(0);
    expect(rows[1].per18).toBeCloseTo(2 * expected, 10);
    expect(running.map(({ number }) => number)).toEqual([1, 2]);
    expect(running[1].mean.value).toBeCloseTo(gained.per18?.value ?? Number.NaN, 12);
  });
});

describe('the round check', () => {
  it('takes the newest round unless asked for another, and a curve without it', () => {
    const { review } = reviewOf(records([SIX, NINE]));
    expect(review.round.value?.round.id).toBe('round-six');
    expect(review.round.value?.curve.effective.putts).toBe(18);
    review.roundId.value = 'round-nine';
    expect(review.round.value?.curve.effective.putts).toBe(PUTTS_OF_SIX);
    review.roundId.value = 'round-gone';
    expect(review.round.value?.round.id).toBe('round-six');
  });

  it('has the chances of none of six that plain products give, and refuses to conclude', () => {
    const { review } = reviewOf(records([NINE, SIX]));
    const view = review.round.value;
    if (view === undefined) throw new Error('no round');
    const six = view.check.bands.find(({ band }) => Math.abs(band.from - feetToMetres(12)) < 1e-9);
    expect(six).toMatchObject({ tries: 6, holed: 0, verdict: 'nothingToConclude' });
    const metres = [14, 17, 12, 19, 15, 13].map(feetToMetres);
    const noneOf = (shares: readonly number[]): number =>
      shares.reduce((product, share) => product * (1 - share), 1);
    expect(six?.byBenchmark.none).toBeCloseTo(noneOf(metres.map(TOUR.holedAt)), 12);
    const players = playerShares(view.curve, metres);
    const none = players.shares.reduce((sum, list, i) => sum + players.weights[i] * noneOf(list), 0);
    expect(six?.byPlayer.none).toBeCloseTo(none, 10);
    // Six putts holed 15 to 20% of the time all miss 26 to 38% of the time (0.8^6, 0.85^6); this player's other putts are few.
    expect(none).toBeGreaterThan(0.2);
    expect(none).toBeLessThan(0.6);
    expect(six?.morePutts?.rounds).toBeGreaterThan(10);
  });

  it('explains the nine on which nothing dropped and strokes were gained', () => {
    const { review } = reviewOf(records([NINE, SIX]));
    expect(review.round.value?.check.explained).toBeUndefined();
    review.roundId.value = 'round-nine';
    const explained = review.round.value?.check.explained;
    expect(explained).toMatchObject({ holes: 9, longTries: 9, threePutts: 0 });
    expect(explained?.medianFirstPutt).toBeCloseTo(feetToMetres(42), 10);
    expect(explained?.firstPutts.map(({ count }) => count)).toEqual([3, 6]);
  });
});

describe('trends', () => {
  /** Eighteen holes from 10 ft of which so many dropped; the others in two from a foot. */
  const tens = (index: number, holed: number): RoundByHand =>
    roundInFeet(
      Array.from({ length: 18 }, (_, hole) => (hole < holed ? [10] : [10, 1])),
      { id: `round-${1000 + index}`, day: `2026-03-${String(index + 1).padStart(2, '0')}` },
    );

  it('compare the newest third with the rest', () => {
    const { review } = reviewOf(records([5, 6, 7, 6, 12, 13].map((holed, i) => tens(i, holed))));
    const trend = review.trend.value;
    expect(trend?.periods).toEqual({
      before: { from: '2026-03-01', to: '2026-03-04' },
      after: { from: '2026-03-05', to: '2026-03-06' },
    });
    expect(trend?.rounds).toEqual({ before: 4, after: 2 });
    const middle = trend?.bands[2];
    expect(middle?.before).toEqual({ hits: 24, tries: 72 });
    expect(middle?.after).toEqual({ hits: 25, tries: 36 });
    // All from one place: the change above the benchmark is the plain change.
    expect(middle?.adjusted?.value).toBeCloseTo(25 / 36 - 24 / 72, 10);
    expect(middle?.adjusted?.verdict).toBe('better');
    // 6.5 holes of 18 more in one putt: as many putts fewer.
    expect(trend?.gained?.value).toBeCloseTo(6.5, 10);
  });

  it('cannot tell of one round each, and compare nothing within one day', () => {
    const { review } = reviewOf(records([tens(0, 5), tens(1, 7)]));
    expect(review.trend.value?.gained?.verdict).toBe('cannotTell');
    expect(review.trend.value?.gained?.smallestChange).toBe(Number.POSITIVE_INFINITY);
    expect(reviewOf(records([tens(0, 5)])).review.trend.value).toBeUndefined();
  });

  it('take chosen days, whatever days the filter has', () => {
    const { review } = reviewOf(records([5, 6, 7, 6].map((holed, i) => tens(i, holed))));
    review.filter.value = { ...EVERYTHING, dates: 'own', from: '2026-03-04', to: '' };
    review.ownPeriods.value = {
      before: { from: '', to: '2026-03-02' },
      after: { from: '2026-03-03', to: '' },
    };
    expect(review.trend.value?.rounds).toEqual({ before: 2, after: 2 });
  });
});
