/**
 * What the review asks of a record beside a benchmark: putts taken, gain by distance, one putt or three, what was said of a stroke,
 * shares in bands. Against enumeration, sums by hand and simulated players who are the benchmark.
 */
import { describe, expect, it } from 'vitest';
import {
  BENCHMARKS,
  type Benchmark,
  bandsOf,
  besideBenchmark,
  distanceBands,
  feetToMetres,
  gainedByBand,
  meanOverPutts,
  missesAsMeant,
  oneOrThree,
  playedHoles,
  puttsTaken,
  seededRandom,
  strokesGained,
  threeBeatsOne,
} from '../../../sim/index.ts';
import { holedOut, madeRecord, recordedPutt } from '../../support/recordedPutts.ts';

/** A benchmark whose putts are the same from everywhere; expected putts add up: 1 + missed + three-putts. */
const flat = (holed: number, three: number, later = 0): Benchmark => ({
  id: 'flat',
  name: 'Flat',
  source: 'made up',
  from: 0,
  to: 20,
  holedAt: () => holed,
  threePuttAt: () => three,
  expectedPuttsAt: () => 1 + (1 - holed) + three + later,
});

/** One hole after another, each first putt and its followers, m. */
const holesOf = (rounds: readonly (readonly (readonly number[])[])[]) =>
  playedHoles(
    rounds.flatMap((holes, round) =>
      holes.flatMap((distances, i) => holedOut(distances, { roundId: `r${round}`, hole: i + 1 })),
    ),
  );

describe('putts taken beside a benchmark', () => {
  it('has the distribution of two holes worked out by hand', () => {
    // One, two, three putts: 0.5, 0.4, 0.1 each. Two putts in all: 0.25; three 0.4; four 0.16 + 0.1; five 0.08; six 0.01.
    const taken = puttsTaken(flat(0.5, 0.1), holesOf([[[4, 1], [4]]]));
    expect(taken).toMatchObject({ holes: 2, putts: 3 });
    expect(taken?.expected).toBeCloseTo(3.2, 12);
    // Variance of one hole: 0.4 + 4 x 0.1 - 0.6^2 = 0.44.
    expect(taken?.sd).toBeCloseTo(Math.sqrt(0.88), 12);
    expect(taken?.soFew).toBeCloseTo(0.65, 12);
    expect(taken?.soMany).toBeCloseTo(0.75, 12);
    // Five or more: 9% and more than a twentieth; six: 1%. So nine in ten rounds take two to five.
    expect([taken?.low, taken?.high]).toEqual([2, 5]);
  });

  it('counts every way of four holes with fourth putts, as a plain loop over all of them does', () => {
    const [one, two, three, four] = [0.3, 0.45, 0.2, 0.05];
    const benchmark = flat(one, three + four, four);
    const chances = [one, two, three, four];
    const holes = holesOf([[[9, 2, 1], [5, 1], [5], [8, 3, 2, 1]]]);
    let [mean, few] = [0, 0];
    for (let way = 0; way < 4 ** 4; way++) {
      const putts = [0, 1, 2, 3].map((hole) => Math.floor(way / 4 ** hole) % 4);
      const chance = putts.reduce((product, k) => product * chances[k], 1);
      const sum = putts.reduce((total, k) => total + k + 1, 0);
      mean += chance * sum;
      if (sum <= 10) few += chance;
    }
    const taken = puttsTaken(benchmark, holes);
    expect(taken?.putts).toBe(10);
    expect(taken?.expected).toBeCloseTo(mean, 12);
    expect(taken?.soFew).toBeCloseTo(few, 12);
  });

  it('expects what expected putts say, for every benchmark and distance', () => {
    for (const benchmark of BENCHMARKS)
      for (const feet of [2, 8, 20, 45]) {
        const taken = puttsTaken(benchmark, holesOf([[[feetToMetres(feet)]]]));
        expect(taken?.expected).toBeCloseTo(benchmark.expectedPuttsAt(feetToMetres(feet)), 12);
      }
  });

  it('leaves out holes that were not putted out, and says nothing when that is all of them', () => {
    const unfinished = playedHoles([recordedPutt({ distance: 4 })]);
    expect(puttsTaken(flat(0.5, 0.1), unfinished)).toBeUndefined();
    expect(puttsTaken(flat(0.5, 0.1), [...unfinished, ...holesOf([[[4]]])])?.holes).toBe(1);
  });
});

describe('gain by distance', () => {
  const record = madeRecord(40, 'gain by distance');
  const holes = playedHoles(record.putts);
  const [tour] = BENCHMARKS;

  it('adds up to the whole, mean and all', () => {
    const parts = gainedByBand(tour, holes, bandsOf([0, 2, 5]));
    const whole = strokesGained(tour, holes);
    const sum = parts.reduce((total, { per18 }) => total + (per18?.value ?? 0), 0);
    expect(sum).toBeCloseTo(whole.per18?.value ?? Number.NaN, 10);
    expect(parts.reduce((total, { putts }) => total + putts, 0)).toBe(record.putts.length);
    const [all] = gainedByBand(tour, holes);
    expect(all.per18?.low).toBeCloseTo(whole.per18?.low ?? Number.NaN, 10);
    expect(all.puttsPer18).toBeCloseTo((record.putts.length / (40 * 18)) * 18, 10);
  });

  it('says where a player who misses every putt from near loses strokes, and not where he is the benchmark', () => {
    // Worth a putt and a half from anywhere: from 4 m in two he loses half a stroke with the second, gains nothing else.
    const benchmark: Benchmark = { ...flat(0.5, 0), expectedPuttsAt: (distance) => (distance > 3 ? 2 : 1) };
    // From 4 m to 1 m: 2 - 1 - 1 = 0. From 1 m to 0.5 m: 1 - 1 - 1 = -1. From 0.5 m holed: 0.
    const rounds = holesOf(
      Array.from({ length: 12 }, () => [
        [4, 1, 0.5],
        [4, 1, 0.5],
      ]),
    );
    const [near, far] = gainedByBand(benchmark, rounds, bandsOf([0, 3]));
    expect(near.verdict).toBe('loses');
    expect(near.per18?.value).toBeCloseTo(-18, 12);
    expect(far.verdict).toBe('cannotTell');
    expect(far.per18?.value).toBeCloseTo(0, 12);
  });
});

describe('one putt or three', () => {
  it('judges the holes that took one or three by the sign test, all bands considered', () => {
    // 14 one-putts, no three-putt: 2 x 0.5^14 = 0.00012. 13 of 20: 2 x 0.1316 = 0.26 (binomial table). Ten alone are too few.
    const near = holesOf([Array.from({ length: 14 }, () => [1])]);
    const far = holesOf([
      [...Array.from({ length: 13 }, () => [12, 4, 1]), ...Array.from({ length: 7 }, () => [12])],
      Array.from({ length: 10 }, () => [7, 2, 1]),
    ]);
    const tallies = distanceBands({ holes: [...near, ...far], struck: [], sets: [] }, bandsOf([0, 5, 10]));
    expect(oneOrThree(tallies).map(({ verdict }) => verdict)).toEqual(['one', 'cannotTell', 'cannotTell']);
    const clear = distanceBands(
      { holes: holesOf([Array.from({ length: 14 }, () => [12, 4, 1])]), struck: [], sets: [] },
      bandsOf([0, 5]),
    );
    expect(oneOrThree(clear)[1]).toMatchObject({ onePutts: 0, threePutts: 14, verdict: 'three' });
  });

  it('finds where curves meet that are known: 1 - d/10 and d/30 at 7.5 m', () => {
    const benchmark = {
      ...flat(0, 0),
      from: 0.1,
      to: 10,
      holedAt: (d: number) => 1 - d / 10,
      threePuttAt: (d: number) => d / 30,
    };
    expect(threeBeatsOne(benchmark)).toBeCloseTo(7.5, 9);
    expect(threeBeatsOne({ ...benchmark, to: 7 })).toBeUndefined();
  });

  it('has tour players three-putt more often than they one-putt from somewhere beyond 30 ft (Broadie 2014: 6.6 and 6.7% from 33 ft, memory)', () => {
    const metres = threeBeatsOne(BENCHMARKS[0]) ?? 0;
    expect(metres).toBeGreaterThan(feetToMetres(30));
    expect(metres).toBeLessThan(feetToMetres(36));
  });
});

describe('what was said of a stroke', () => {
  it('counts each answer, a stroke off in both for both, and silence apart', () => {
    const miss = { leave: 0.5, side: 'low', reach: 'past' } as const;
    const struck = [
      { startedAsMeant: true, paceAsMeant: true },
      { startedAsMeant: false, paceAsMeant: true },
      { startedAsMeant: false, paceAsMeant: false },
      { startedAsMeant: true },
      {},
    ].map((said) => ({ putt: recordedPutt({ ...said, miss }), rest: 0.5 }));
    const holed = { putt: recordedPutt({ holed: true, startedAsMeant: false }), rest: 0 };
    expect(missesAsMeant([...struck, holed])).toEqual([
      { kind: 'strokeAsMeant', misses: 1, high: 0, low: 1, short: 0, past: 1 },
      { kind: 'startOff', misses: 2, high: 0, low: 2, short: 0, past: 2 },
      { kind: 'paceOff', misses: 1, high: 0, low: 1, short: 0, past: 1 },
      { kind: 'notTold', misses: 2, high: 0, low: 2, short: 0, past: 2 },
    ]);
  });
});

describe('shares beside a benchmark', () => {
  it('averages over the tries in a band, practice sets by their attempts', () => {
    const tried = { distances: Float64Array.of(1, 3, 3, 8), tries: Float64Array.of(1, 1, 8, 2) };
    const [near, middle, far, beyond] = meanOverPutts(
      tried,
      bandsOf([0, 2, 5, 9]),
      (distance) => distance / 10,
    );
    expect(near).toBeCloseTo(0.1, 12);
    expect(middle).toBeCloseTo(0.3, 12);
    expect(far).toBeCloseTo(0.8, 12);
    expect(beyond).toBeUndefined();
  });

  it('says nothing of fewer than twelve tries, and names a clear difference', () => {
    // 0 of 30 where a third is expected: 2 x (2/3)^30 is 1 in 96 000, far below a twentieth of two looks.
    const counts = [
      { hits: 0, tries: 11 },
      { hits: 0, tries: 30 },
    ];
    expect(besideBenchmark(counts, [1 / 3, 1 / 3]).map(({ verdict }) => verdict)).toEqual([
      'tooFew',
      'fewer',
    ]);
    expect(besideBenchmark([{ hits: 30, tries: 30 }], [1 / 3])[0].verdict).toBe('more');
    expect(besideBenchmark([{ hits: 10, tries: 30 }], [1 / 3])[0].verdict).toBe('cannotTell');
    expect(besideBenchmark([{ hits: 0, tries: 0 }], [undefined])[0].verdict).toBe('tooFew');
  });

  it('calls a player who is the benchmark different in some band at most once in twenty records', () => {
    const random = seededRandom('beside');
    const shares = [0.9, 0.6, 0.35, 0.15, 0.05];
    let wrong = 0;
    const records = 2000;
    for (let record = 0; record < records; record++) {
      const counts = shares.map((share) => {
        let hits = 0;
        for (let putt = 0; putt < 60; putt++) if (random() < share) hits++;
        return { hits, tries: 60 };
      });
      if (besideBenchmark(counts, shares).some(({ verdict }) => verdict === 'fewer' || verdict === 'more'))
        wrong++;
    }
    // Three standard errors of 5% in 2000 records: 1.5 points.
    expect(wrong / records).toBeLessThan(0.065);
    expect(wrong).toBeGreaterThan(0);
  });
});
