/** The round check: what it refuses to conclude, what it explains, and how often it is wrong for a player who is his curve. */
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type BandCheck,
  checkRound,
  feetToMetres,
  type HoleGain,
  hitCounts,
  type RecordedPutt,
  ROUND_BANDS,
  type RoundCheck,
  type RoundCheckInput,
  seededRandom,
} from '../../../sim/index.ts';
import { recorded } from '../record/recorded.ts';

/** A made-up curve for tests: about the tour's at 5, 10 and 20 ft. */
const curve = (feet: number, skill = 1): number => Math.min(0.99, skill / (1 + (feet / 8.5) ** 1.7));

const fromFeet = (feet: number, given: Partial<RecordedPutt> = {}): RecordedPutt =>
  recorded({ distance: feetToMetres(feet), ...given });

const times = (count: number, putt: RecordedPutt): RecordedPutt[] =>
  Array.from({ length: count }, () => putt);

/** A round whose player and benchmark hole `share` of everything. */
const plainRound = (
  putts: readonly RecordedPutt[],
  share: number,
  more: Partial<RoundCheckInput> = {},
): RoundCheck =>
  checkRound({
    putts,
    playerShares: [putts.map(() => share)],
    benchmarkShares: putts.map(() => share),
    roundsLookedAt: 1,
    ...more,
  });

/** Bands: everything, 3-6, 6-12, 12-20, 20+. */
const bandOf = (check: RoundCheck, row: 0 | 1 | 2 | 3 | 4): BandCheck => check.bands[row];

describe('the round check', () => {
  it('does not conclude anything from six putts from 12 to 20 ft that all missed', () => {
    const putts = [12, 13, 15, 16, 18, 19].map((feet) => fromFeet(feet, { way: { side: 'low' } } as object));
    for (const [share, none] of [
      // 0.8^6 and 0.85^6: "26 to 38% of the time".
      [0.2, 0.262144],
      [0.15, 0.377149515625],
    ]) {
      const band = bandOf(plainRound(putts, share), 3);
      expect(band).toMatchObject({ tries: 6, holed: 0, verdict: 'nothingToConclude' });
      expect(band.byPlayer.none).toBeCloseTo(none, 12);
      expect(band.byPlayer.soFew).toBeCloseTo(none, 12);
      expect(band.byPlayer.mean).toBeCloseTo(6 * share, 12);
      expect(band.morePutts?.more).toBeGreaterThan(200);
    }
    expect(plainRound(putts, 0.2).leans.highLow.verdict).toBe('tooFew');
  });

  it('does not conclude anything from eleven putts, even if all were certain to drop and missed', () => {
    expect(bandOf(plainRound(times(11, fromFeet(5)), 0.99), 1).verdict).toBe('nothingToConclude');
  });

  it('calls eighteen misses of 15% putts chance, and thirty of 60% putts unusual', () => {
    // 0.85^18 = 5.4%; 0.4^30 = 1e-12.
    expect(bandOf(plainRound(times(18, fromFeet(15)), 0.15), 3).verdict).toBe('withinChance');
    expect(bandOf(plainRound(times(30, fromFeet(5)), 0.6), 1).verdict).toBe('unusuallyFew');
    expect(bandOf(plainRound(times(30, fromFeet(15, { holed: true })), 0.6), 3).verdict).toBe(
      'unusuallyMany',
    );
  });

  it('asks for more when more is looked at', () => {
    // 0.75^24 = 0.1%: unusual alone, not among the two bands of twenty rounds.
    const putts = times(24, fromFeet(15));
    const [alone, season] = [1, 20].map((roundsLookedAt) => plainRound(putts, 0.25, { roundsLookedAt }));
    expect(bandOf(alone, 3).verdict).toBe('unusuallyFew');
    expect(bandOf(season, 3).verdict).toBe('withinChance');
    expect(season.looks).toBe(40);
    expect(bandOf(season, 3).correctedChance).toBeCloseTo(80 * 0.75 ** 24, 12);
  });

  it('finds less unusual when the player’s curve is uncertain', () => {
    const putts = times(24, fromFeet(15));
    const draws = [0.05, 0.25, 0.45].map((share) => putts.map(() => share));
    const band = bandOf(plainRound(putts, 0.25, { playerShares: draws }), 3);
    expect(band.byPlayer.mean).toBeCloseTo(6, 10);
    expect(band.byPlayer.none).toBeCloseTo((0.95 ** 24 + 0.75 ** 24 + 0.55 ** 24) / 3, 12);
    expect(band.verdict).toBe('withinChance');
    const sure = plainRound(putts, 0.25, { playerShares: draws, playerWeights: [0, 1, 0] });
    expect(bandOf(sure, 3).verdict).toBe('unusuallyFew');
  });

  it('counts a putt at the lower end of a band in it and one at the upper end in the next', () => {
    const check = plainRound(
      [3, 5.9, 6, 12, 19.9, 20, 60, 2.5].map((feet) => fromFeet(feet)),
      0.3,
    );
    expect(check.bands.map(({ tries }) => tries)).toEqual([7, 2, 1, 2, 2]);
    // 12 ft kept in whole centimetres.
    expect(bandOf(plainRound([recorded({ distance: 3.66 })], 0.3), 3).tries).toBe(1);
    expect(bandOf(plainRound([recorded({ distance: 0.91 })], 0.3), 1).tries).toBe(1);
  });

  it('passes over conceded putts and putts from off the green, and keeps each share with its putt', () => {
    const putts = [
      fromFeet(15, { kind: 'offGreen', holed: true }),
      fromFeet(15),
      fromFeet(4, { kind: 'conceded', holed: true }),
      fromFeet(15, { holed: true }),
    ];
    const shares = [0.9, 0.2, 0.8, 0.3];
    const { bands } = checkRound({
      putts,
      playerShares: [shares],
      benchmarkShares: [0.9, 0.4, 0.8, 0.5],
      roundsLookedAt: 1,
    });
    expect(bands[0]).toMatchObject({ tries: 2, holed: 1 });
    expect(bands[0].byPlayer.mean).toBeCloseTo(0.5, 12);
    expect(bands[0].byBenchmark.mean).toBeCloseTo(0.9, 12);
    // Two putts: none 0.8 x 0.7, both 0.2 x 0.3.
    expect(bands[0].byPlayer.soFew).toBeCloseTo(0.94, 12);
    expect(bands[0].byPlayer.soMany).toBeCloseTo(0.44, 12);
  });

  it('says how many more such putts and rounds would tell, from the record where there is one', () => {
    const putts = times(6, fromFeet(15));
    const plain = bandOf(plainRound(putts, 0.18), 3).morePutts;
    expect(plain).toMatchObject({ more: (plain?.needed ?? 0) - 6 });
    const bandRecords = ROUND_BANDS.map(() => ({ alreadyHad: 150, perRound: 5 }));
    const withRecord = bandOf(plainRound(putts, 0.18, { bandRecords }), 3).morePutts;
    expect(withRecord).toMatchObject({
      more: (plain?.needed ?? 0) - 150,
      rounds: Math.ceil(((plain?.needed ?? 0) - 150) / 5),
    });
    expect(bandOf(plainRound(putts, 0.18), 1).morePutts).toBeUndefined();
  });

  it('has nothing to say of a round without putts', () => {
    const check = plainRound([], 0.5);
    expect(check.bands.every(({ tries, verdict }) => tries === 0 && verdict === 'nothingToConclude')).toBe(
      true,
    );
    expect(check.explained).toBeUndefined();
  });

  it('refuses shares that do not belong to the putts', () => {
    expect(() => plainRound([fromFeet(15)], 0.2, { benchmarkShares: [] })).toThrow(/one share per putt/);
    expect(() => plainRound([fromFeet(15)], 0.2, { playerShares: [[0.1, 0.2]] })).toThrow(RangeError);
    expect(() => plainRound([fromFeet(15)], 0.2, { playerShares: [] })).toThrow(RangeError);
    expect(() => plainRound([fromFeet(15)], 0.2, { bandRecords: [] })).toThrow(/one per band/);
  });
});

describe('a nine that gains strokes though nothing long drops', () => {
  /** Tour figures, Broadie 2014 (published.ts): mean putts, three-putts and holed share by distance in feet. */
  const TOUR: Readonly<Record<number, readonly [mean: number, three: number, holed: number]>> = {
    20: [1.87, 0.022, 0.15],
    30: [1.98, 0.05, 0.07],
    40: [2.06, 0.1, 0.04],
    50: [2.14, 0.17, 0.03],
    60: [2.21, 0.23, 0.02],
  };
  const lengths = [20, 30, 40, 40, 50, 50, 60, 60, 50];
  const holes: readonly HoleGain[] = lengths.map((feet) => ({
    firstPutt: feetToMetres(feet),
    threePutted: false,
    gained: TOUR[feet][0] - 2,
    threePuttShare: TOUR[feet][1],
  }));
  const putts = lengths.flatMap((feet, i) => [
    fromFeet(feet, { hole: i + 1 }),
    fromFeet(i === 0 ? 3 : 2, { hole: i + 1, stroke: 2, holed: true }),
  ]);
  const shares = lengths.flatMap((feet) => [TOUR[feet][2], 0.97]);
  const play = (given: Partial<RoundCheckInput> = {}): RoundCheck =>
    checkRound({
      putts,
      playerShares: [shares],
      benchmarkShares: shares,
      roundsLookedAt: 1,
      holes,
      ...given,
    });

  it('is explained by where the first putts were and by the three-putts that were not taken', () => {
    const { explained } = play();
    if (explained === undefined) throw new Error('this nine gains');
    // By hand from the table: -0.13 - 0.02 + 2(0.06) + 3(0.14) + 2(0.21); 0.022 + 0.05 + 2(0.1) + 3(0.17) + 2(0.23).
    expect(explained.gained).toBeCloseTo(0.81, 10);
    expect(explained.expectedThreePutts).toBeCloseTo(1.242, 10);
    expect(explained.benchmarkHoled.mean).toBeCloseTo(0.15 + 0.07 + 2 * 0.04 + 3 * 0.03 + 2 * 0.02, 10);
    expect(explained.benchmarkHolesNone).toBeCloseTo(0.85 * 0.93 * 0.96 ** 2 * 0.97 ** 3 * 0.98 ** 2, 10);
    expect(explained.benchmarkSoFewThreePutts).toBeCloseTo(
      0.978 * 0.95 * 0.9 ** 2 * 0.83 ** 3 * 0.77 ** 2,
      10,
    );
    expect(explained).toMatchObject({ holes: 9, longTries: 9, threePutts: 0 });
    expect(explained.medianFirstPutt).toBeCloseTo(feetToMetres(50), 10);
    expect(explained.firstPutts.map(({ count }) => count)).toEqual([1, 1, 7]);
    expect(explained.firstPutts[2].gained).toBeCloseTo(0.96, 10);
  });

  it('has nothing to explain when a putt dropped, when strokes were lost, or when no holes were handed in', () => {
    const dropped = putts.map((putt, i) => (i === 0 ? fromFeet(20, { holed: true }) : putt));
    expect(play({ putts: dropped }).explained).toBeUndefined();
    expect(play({ holes: holes.map((hole) => ({ ...hole, gained: -0.1 })) }).explained).toBeUndefined();
    expect(play({ holes: [] }).explained).toBeUndefined();
    // The holed 3-footer is a tap-in unless tap-ins are shorter.
    expect(play({ tapIn: feetToMetres(2) }).explained).toBeUndefined();
  });

  it('counts the three-putts that were taken', () => {
    const three = holes.map((hole, i) =>
      i === 8 ? { ...hole, threePutted: true, gained: hole.gained - 0.5 } : hole,
    );
    const { explained } = play({ holes: three });
    expect(explained?.threePutts).toBe(1);
    // Chance of none plus chance of exactly one, from the distribution that hit-counts.test.ts checks by brute force.
    const counts = hitCounts(holes.map(({ threePuttShare }) => threePuttShare));
    expect(explained?.benchmarkSoFewThreePutts).toBeCloseTo(counts[0] + counts[1], 12);
  });

  it('leaves holes out of the three-putts where the ball was given', () => {
    const given = holes.map((hole, i) => (i < 8 ? { ...hole, threePutted: undefined } : hole));
    // Only the last, from 50 ft: 17%.
    expect(play({ holes: given }).explained).toMatchObject({ threePutts: 0, expectedThreePutts: 0.17 });
    expect(play({ holes: given }).explained?.benchmarkSoFewThreePutts).toBeCloseTo(0.83, 12);
  });
});

describe('the round check of a player who is exactly his curve', () => {
  const ROUNDS = 4000;
  const SEASON = 20;
  const lengths = [
    ...[3, 4, 4, 5, 5, 3.5, 4.5, 5.5, 3, 4, 5, 3.2, 4.8],
    ...[6, 8, 10, 11, 7],
    ...[12, 13, 14, 15, 16, 17, 18, 19, 14, 15, 16, 13.5],
    ...[22, 30, 45, 60],
  ];
  const shareSets = [0.9, 1, 1.1].map((skill) => lengths.map((feet) => curve(feet, skill)));
  /** Randomized places of the number holed in its distribution, and rounds called unusual. */
  let places: number[] = [];
  let unusual = 0;
  let unusualSeasons = 0;

  beforeAll(() => {
    const random = seededRandom('his own curve');
    let season = false;
    for (let round = 0; round < ROUNDS; round++) {
      // The player of this round is one of the draws: what he is, is as uncertain as the check supposes.
      const shares = shareSets[Math.floor(random() * shareSets.length)];
      const putts = lengths.map((feet, i) => fromFeet(feet, { holed: random() < shares[i] }));
      const check = checkRound({
        putts,
        playerShares: shareSets,
        benchmarkShares: shares,
        roundsLookedAt: 1,
      });
      const [all] = check.bands;
      const { soFew, soMany } = all.byPlayer;
      places.push(1 - soMany + random() * (soFew + soMany - 1));
      if (check.bands.some(({ verdict }) => verdict.startsWith('unusually'))) unusual++;
      season ||= check.bands.some(({ correctedChance }) => SEASON * correctedChance < 0.01);
      if (round % SEASON === SEASON - 1) {
        if (season) unusualSeasons++;
        season = false;
      }
    }
    places = places.sort((a, b) => a - b);
  });

  it('spreads the places of what happened evenly between 0 and 1', () => {
    // Rosenblatt 1952: with a draw inside the step the place is exactly uniform. Kolmogorov's distance stays under 1.95/sqrt(n) in
    // 999 of 1000 samples.
    const distance = Math.max(
      ...places.map((place, i) => Math.max((i + 1) / ROUNDS - place, place - i / ROUNDS)),
    );
    expect(distance).toBeLessThan(1.95 / Math.sqrt(ROUNDS));
  });

  it('calls at most one round in a hundred unusual, and at most one season in a hundred', () => {
    // Counting errors: 0.16 points of 4000 rounds, 0.7 points of 200 seasons; three of them.
    expect(unusual / ROUNDS).toBeLessThan(0.01 + 0.0048);
    expect(unusualSeasons / (ROUNDS / SEASON)).toBeLessThan(0.01 + 0.021);
    // Counts go in steps, so the rule is more careful than it says; but not dead.
    expect(unusual).toBeGreaterThan(0);
  });
});
