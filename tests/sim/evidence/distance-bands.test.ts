/** Counting by distance, choosing putts, leaves: against plain loops over the records, and by hand. */
import { describe, expect, it } from 'vitest';
import {
  bandIndex,
  choosePutts,
  distanceBands,
  FEET_BANDS,
  feetToMetres,
  isInBand,
  leavesByBand,
  leavesOf,
  METRE_BANDS,
  type PracticeSet,
  type PuttFilter,
  playedHoles,
  type RecordedPutt,
} from '../../../sim/index.ts';
import { holedOut, madeRecord, recordedPutt } from '../../support/recordedPutts.ts';

const record = madeRecord(60, 'bands');
const holes = playedHoles(record.putts);
const everything = choosePutts({ ...record, holes }, {});

const set = (fields: Partial<PracticeSet> = {}): PracticeSet => ({
  id: 's',
  day: '2024-05-05',
  recordedAt: 0,
  distance: 2,
  attempts: 10,
  holed: 4,
  ground: 'grass',
  ...fields,
});

describe('bands', () => {
  it('hold every distance exactly once', () => {
    for (const bands of [FEET_BANDS, METRE_BANDS])
      for (let distance = 0; distance < 40; distance += 0.037) {
        const holding = bands.filter((band) => isInBand(band, distance));
        expect(holding).toEqual([bands[bandIndex(bands, distance)]]);
      }
    expect(bandIndex([{ from: 1, to: 2 }], 0.5)).toBe(-1);
    expect(bandIndex([{ from: 1, to: 2 }], 2)).toBe(-1);
  });

  it('begin with their lower end, however 3 ft came to be written in metres', () => {
    for (const threeFeet of [0.9144, feetToMetres(3), 0.9143999])
      expect(bandIndex(FEET_BANDS, threeFeet)).toBe(1);
    expect(bandIndex(FEET_BANDS, feetToMetres(2.99))).toBe(0);
  });
});

describe('tallies by band', () => {
  it('are what plain loops over the records count', () => {
    const tallies = distanceBands(everything);
    for (const [i, { from, to }] of FEET_BANDS.entries()) {
      const inside = ({ distance }: { distance: number }): boolean => distance >= from && distance < to;
      const putts = record.putts.filter(inside);
      expect(tallies[i].holedInRounds).toEqual({
        hits: putts.filter(({ holed }) => holed).length,
        tries: putts.length,
      });
      const sets = record.sets.filter(inside);
      expect(tallies[i].holedInPractice).toEqual({
        hits: sets.reduce((sum, { holed }) => sum + holed, 0),
        tries: sets.reduce((sum, { attempts }) => sum + attempts, 0),
      });
      const firsts = record.putts.filter((putt) => putt.stroke === 1 && inside(putt));
      const countOf = (putt: RecordedPutt): number =>
        record.putts.filter(({ roundId, hole }) => roundId === putt.roundId && hole === putt.hole).length;
      const counts = firsts.map(countOf);
      expect(tallies[i].holes).toBe(firsts.length);
      expect(tallies[i].threePutts).toEqual({
        hits: counts.filter((count) => count >= 3).length,
        tries: firsts.length,
      });
      expect(tallies[i].onePutts.hits).toBe(counts.filter((count) => count === 1).length);
      const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
      expect(tallies[i].meanPutts?.value).toBeCloseTo(mean, 12);
    }
  });

  it('keep a conceded hole in the tries and out of three-putts and mean putts', () => {
    const conceded = playedHoles([
      recordedPutt({ distance: 5 }),
      recordedPutt({ stroke: 2, kind: 'conceded', distance: 0.3 }),
    ]);
    const [tally] = distanceBands(choosePutts({ rounds: [], holes: conceded, sets: [] }, {}), [
      { from: 4, to: 6 },
    ]);
    expect(tally.holed).toEqual({ hits: 0, tries: 1 });
    expect(tally.onePutts).toEqual({ hits: 0, tries: 1 });
    expect(tally.threePutts).toEqual({ hits: 0, tries: 0 });
    expect(tally.meanPutts).toBeUndefined();
  });
});

describe('choosing', () => {
  const filters: readonly PuttFilter[] = [
    { from: '2020-01-10', to: '2020-01-20' },
    { climb: 'down' },
    { breaks: 'straight', paceMeant: 'die' },
    { distance: { from: 2, to: 4 }, kind: 'rounds' },
  ];
  it.each(filters)('takes the putts a plain loop takes: %o', (filter) => {
    const days = new Map(record.rounds.map(({ id, day }) => [id, day]));
    const fits = (putt: RecordedPutt): boolean => {
      const day = days.get(putt.roundId) ?? '';
      return (
        day >= (filter.from ?? '') &&
        day <= (filter.to ?? '9') &&
        putt.climb === (filter.climb ?? putt.climb) &&
        putt.breaks === (filter.breaks ?? putt.breaks) &&
        putt.paceMeant === (filter.paceMeant ?? putt.paceMeant) &&
        putt.distance >= (filter.distance?.from ?? 0) &&
        putt.distance < (filter.distance?.to ?? 99)
      );
    };
    const expected = record.putts.filter(fits);
    expect(expected.length).toBeGreaterThan(20);
    const chosen = choosePutts({ ...record, holes }, filter);
    expect(chosen.struck.map(({ putt }) => putt.id)).toEqual(expected.map(({ id }) => id));
    expect(chosen.holes.map(({ first }) => first.id)).toEqual(
      expected.filter(({ stroke }) => stroke === 1).map(({ id }) => id),
    );
  });

  it('keeps rounds and practice apart when asked, and asks practice nothing it cannot know', () => {
    const of = (filter: PuttFilter): number[] => {
      const { struck, sets } = choosePutts({ ...record, holes }, filter);
      return [struck.length, sets.length];
    };
    expect(of({ kind: 'practice' })).toEqual([0, 60]);
    expect(of({ kind: 'rounds' })).toEqual([record.putts.length, 0]);
    expect(of({ paceMeant: 'firm' })[1]).toBe(0);
    expect(of({ climb: 'up' })[1]).toBe(0);
    const grass = record.sets.filter(({ ground }) => ground === 'grass').length;
    expect(of({ withoutCarpet: true })[1]).toBe(grass);
  });

  it('takes days as the calendar writes them, both ends included, and no putt without a day', () => {
    const day = { from: '2020-01-05', to: '2020-01-05' };
    const { holes: chosen, sets } = choosePutts({ ...record, holes }, day);
    expect(new Set(chosen.map(({ roundId }) => roundId))).toEqual(new Set(['round-4']));
    expect(sets.map(({ id }) => id)).toEqual(['set-4']);
    expect(choosePutts({ rounds: [], holes, sets: [] }, day).holes).toEqual([]);
    expect(choosePutts({ rounds: [], holes, sets: [] }, {}).holes).toHaveLength(holes.length);
  });

  it('leaves out holes begun from off the green when asked', () => {
    const fringe = playedHoles([
      recordedPutt({ kind: 'offGreen' }),
      ...holedOut([2]).map((putt) => ({ ...putt, stroke: 2 })),
    ]);
    expect(choosePutts({ rounds: [], holes: fringe, sets: [] }, {}).holes).toHaveLength(1);
    expect(choosePutts({ rounds: [], holes: fringe, sets: [] }, { withoutOffGreen: true }).struck).toEqual(
      [],
    );
  });
});

describe('leaves', () => {
  it('have the quartiles of R (type 7): 1, 2, 3, 4, 10 -> 2, 3, 4', () => {
    // R: quantile(c(1, 2, 3, 4, 10)) gives 1 2 3 4 10; of c(1, 2, 3, 4): 1.75 2.50 3.25 (memory; by its printed formula too).
    const leaves = (values: readonly number[]): ReturnType<typeof leavesOf>['leave'] =>
      leavesOf(
        playedHoles(values.map((leave, i) => recordedPutt({ hole: i + 1, miss: { leave } }))).flatMap(
          (hole) => hole.putts,
        ),
      ).leave;
    expect(leaves([10, 3, 1, 4, 2])).toEqual({ count: 5, median: 3, lower: 2, upper: 4 });
    expect(leaves([1, 2, 3, 4])).toEqual({ count: 4, median: 2.5, lower: 1.75, upper: 3.25 });
    expect(leaves([])).toBeUndefined();
  });

  it('count short against past and high against low, each only where it was written down', () => {
    const misses = playedHoles([
      recordedPutt({ hole: 1, miss: { leave: 1, side: 'high', reach: 'past' } }),
      recordedPutt({ hole: 2, miss: { leave: 1, side: 'low', reach: 'short' } }),
      recordedPutt({ hole: 3, miss: { leave: 1, side: 'low' } }),
      recordedPutt({ hole: 4, miss: { leave: 1, side: 'online', reach: 'short' } }),
      recordedPutt({ hole: 5, miss: { leave: 1, side: 'left', reach: 'past' } }),
      recordedPutt({ hole: 6, holed: true }),
    ]).flatMap((hole) => hole.putts);
    const sets = [
      set({ misses: { short: 2, past: 3 } }),
      // Only one of a pair was counted: that says nothing of the share.
      set({ misses: { short: 4, high: 1 } }),
    ];
    expect(leavesOf(misses, sets)).toMatchObject({
      misses: 5,
      short: { hits: 2 + 2, tries: 4 + 5 },
      high: { hits: 1, tries: 3 },
      left: { hits: 1, tries: 1 },
      online: 1,
    });
  });

  it('by band are those of the band’s putts', () => {
    const byBand = leavesByBand(everything.struck, everything.sets, FEET_BANDS);
    const [, second] = FEET_BANDS;
    expect(byBand[1]).toEqual(
      leavesOf(
        everything.struck.filter(({ putt }) => isInBand(second, putt.distance)),
        everything.sets.filter(({ distance }) => isInBand(second, distance)),
      ),
    );
  });
});
