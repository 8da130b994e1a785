/** Changes between two periods: a printed Welch interval, coverage, what adjusting for distance does, and the smallest change. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  adjustedTrend,
  type JudgedPutt,
  meanTrend,
  seededRandom,
  shareDifference,
  shareTrend,
} from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';

const rounds = (count: number, one: () => number): { values: number[] } => ({
  values: Array.from({ length: count }, one),
});

describe('the change of a mean', () => {
  it('is Welch’s for the sleep data of Student 1908, as R prints it', () => {
    // R's documentation of t.test, extra ~ group: means 0.75 and 2.33, df 17.776, interval of the first less the second
    // -3.3654832 to 0.2054832 (memory). Ours is the second less the first.
    const trend = meanTrend({
      before: { values: [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0] },
      after: { values: [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4] },
    });
    expect(trend?.before.value).toBeCloseTo(0.75, 12);
    expect(trend?.after.value).toBeCloseTo(2.33, 12);
    expect(trend?.degrees).toBeCloseTo(17.776, 3);
    expect(trend?.low).toBeCloseTo(-0.2054832, 6);
    expect(trend?.high).toBeCloseTo(3.3654832, 6);
    expect(trend?.verdict).toBe('cannotTell');
  });

  it.each([
    [4, 9, 1, 3],
    [9, 4, 1, 3],
    [12, 12, 2, 2],
    [4, 25, 1, 1],
  ])(
    'holds the truth in 95 of 100 records with %i and %i rounds that spread by %f and %f',
    (n1, n2, sd1, sd2) => {
      const normal = normals(`welch ${n1} ${n2}`);
      const runs = 3000;
      let covered = 0;
      let wrong = 0;
      for (let run = 0; run < runs; run++) {
        const before = rounds(n1, () => sd1 * normal());
        const after = rounds(n2, () => 0.4 + sd2 * normal());
        const trend = meanTrend({ before, after });
        if (trend !== undefined && trend.low <= 0.4 && trend.high >= 0.4) covered++;
        if (trend?.verdict === 'worse') wrong++;
      }
      // Counting error 0.4 points: three of them, and one for the degrees of freedom being approximate.
      expect(covered / runs).toBeGreaterThan(0.928);
      expect(covered / runs).toBeLessThan(0.972);
      expect(wrong / runs).toBeLessThan(0.025);
    },
  );

  it.each([
    [2, 10],
    [3, 25],
    [25, 3],
  ])('errs wide, not narrow, with only %i and %i rounds', (n1, n2) => {
    const normal = normals(`few ${n1} ${n2}`);
    const runs = 3000;
    let covered = 0;
    for (let run = 0; run < runs; run++) {
      const trend = meanTrend({ before: rounds(n1, normal), after: rounds(n2, normal) });
      if (trend !== undefined && trend.low <= 0 && trend.high >= 0) covered++;
    }
    // Welch's own degrees of freedom hold it in 88 to 92 of 100 here. Counting error 0.4 points.
    expect(covered / runs).toBeGreaterThan(0.945);
  });

  it('holds the truth too when rounds of nine count half as much as rounds of eighteen', () => {
    const normal = normals('nines');
    const runs = 3000;
    let covered = 0;
    // Per 18 holes a round of nine spreads by the root of two more.
    const play = (mean: number, count: number): { values: number[]; weights: number[] } => {
      const weights = Array.from({ length: count }, (_, i) => (i % 2 ? 9 : 18));
      return { values: weights.map((holes) => mean + 1.5 * Math.sqrt(18 / holes) * normal()), weights };
    };
    for (let run = 0; run < runs; run++) {
      const trend = meanTrend({ before: play(0, 8), after: play(-0.7, 12) });
      if (trend !== undefined && trend.low <= -0.7 && trend.high >= -0.7) covered++;
    }
    // As above.
    expect(covered / runs).toBeGreaterThan(0.928);
    expect(covered / runs).toBeLessThan(0.972);
  });

  it('moves and turns with the numbers', () => {
    const values = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(values, values, fc.double({ min: -3, max: 3, noNaN: true }), (one, other, shift) => {
        // Scatter of rounding alone would be compared with rounding.
        fc.pre(Math.max(...one) - Math.min(...one) > 0.01);
        const there = meanTrend({ before: { values: one }, after: { values: other } });
        const back = meanTrend({
          before: { values: other.map((value) => value + shift) },
          after: { values: one },
        });
        if (there === undefined || back === undefined) throw new Error('both periods have rounds');
        expect(back.low).toBeCloseTo(-there.high - shift, 8);
        expect(back.high).toBeCloseTo(-there.low - shift, 8);
      }),
      { seed: 37, numRuns: 100 },
    );
  });

  it('has no margin for one round, nor for rounds without scatter, and is nothing without rounds', () => {
    const everything = {
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
      verdict: 'cannotTell',
    };
    const one = meanTrend({ before: { values: [1] }, after: { values: [3, 4, 5] } });
    expect(one).toMatchObject({ value: 3, ...everything, smallestChange: Number.POSITIVE_INFINITY });
    expect(meanTrend({ before: { values: [1, 1] }, after: { values: [2, 2] } })).toMatchObject(everything);
    expect(meanTrend({ before: { values: [] }, after: { values: [2, 2] } })).toBeUndefined();
  });

  it('of the smallest size it speaks of is found about four times in five', () => {
    const normal = normals('smallest');
    const runs = 3000;
    let found = 0;
    // The change that 15 and 15 rounds of spread 1.6 show: the spread is known here, so the change is fixed beforehand:
    // (2.0484 + 0.8546) x 1.6 x sqrt(2/15) with t of 28 degrees (printed tables).
    const change = (2.0484 + 0.8546) * 1.6 * Math.sqrt(2 / 15);
    let sum = 0;
    for (let run = 0; run < runs; run++) {
      const trend = meanTrend({
        before: rounds(15, () => 1.6 * normal()),
        after: rounds(15, () => change + 1.6 * normal()),
      });
      if (trend?.verdict === 'better') found++;
      sum += trend?.smallestChange ?? 0;
    }
    // Counting error 0.7 points, and the sum of two t factors is an approximation to the noncentral t: a point.
    expect(Math.abs(found / runs - 0.8)).toBeLessThan(0.035);
    // The mean of a sample's SD is 1% under the true one.
    expect(Math.abs(sum / runs / change - 1)).toBeLessThan(0.03);
  });
});

/** A made-up benchmark, and putts played by someone `skill` times as good. */
const share = (feet: number): number => 1 / (1 + (feet / 8.5) ** 1.7);

describe('the change of a share', () => {
  it('has the interval of the difference and a verdict by it alone', () => {
    const [before, after] = [
      { hits: 48, tries: 80 },
      { hits: 56, tries: 70 },
    ];
    expect(shareTrend({ before, after })).toMatchObject(shareDifference(before, after));
    expect(shareTrend({ before, after }).verdict).toBe('better');
    expect(shareTrend({ before: after, after: before }).verdict).toBe('worse');
    expect(shareTrend({ before: { hits: 1, tries: 6 }, after: { hits: 4, tries: 6 } }).verdict).toBe(
      'cannotTell',
    );
  });

  it('could not have shown anything without putts, nor with two', () => {
    const none = { hits: 0, tries: 0 };
    expect(shareTrend({ before: none, after: none }).smallestChange).toBe(Number.POSITIVE_INFINITY);
    const two = { hits: 1, tries: 2 };
    expect(shareTrend({ before: two, after: two }).smallestChange).toBe(Number.POSITIVE_INFINITY);
  });

  it('of the smallest size it speaks of is found about four times in five', () => {
    const random = seededRandom('smallest share');
    const play = (p: number, tries: number): { hits: number; tries: number } => ({
      hits: Array.from({ length: tries }, () => random()).filter((u) => u < p).length,
      tries,
    });
    const [tries, middle] = [150, 0.4];
    // As it is known beforehand, with z 1.960 and 0.842: (1.960 + 0.842) sqrt(2 p q / n).
    const change = (1.96 + 0.8416) * Math.sqrt((2 * middle * (1 - middle)) / tries);
    const runs = 2000;
    let found = 0;
    let sum = 0;
    for (let run = 0; run < runs; run++) {
      const trend = shareTrend({
        before: play(middle - change / 2, tries),
        after: play(middle + change / 2, tries),
      });
      if (trend.verdict === 'better') found++;
      sum += trend.smallestChange;
    }
    // Counting error 0.9 points; the score interval is not the normal one: two points.
    expect(Math.abs(found / runs - 0.8)).toBeLessThan(0.045);
    expect(Math.abs(sum / runs / change - 1)).toBeLessThan(0.02);
  });
});

describe('the change adjusted for distance', () => {
  const play = (
    random: () => number,
    { count, from, to, skill }: { count: number; from: number; to: number; skill: number },
  ): JudgedPutt[] =>
    Array.from({ length: count }, () => {
      const benchmarkShare = share(from + (to - from) * random());
      return { benchmarkShare, holed: random() < skill * benchmarkShare };
    });

  it('does not take nearer putts for better putting', () => {
    const random = seededRandom('nearer');
    const runs = 1500;
    let plain = 0;
    let adjusted = 0;
    for (let run = 0; run < runs; run++) {
      const before = play(random, { count: 80, from: 12, to: 20, skill: 1 });
      const after = play(random, { count: 80, from: 6, to: 12, skill: 1 });
      const counted = (putts: readonly JudgedPutt[]): { hits: number; tries: number } => ({
        hits: putts.filter(({ holed }) => holed).length,
        tries: putts.length,
      });
      if (shareTrend({ before: counted(before), after: counted(after) }).verdict === 'better') plain++;
      if (adjustedTrend({ before, after })?.verdict === 'better') adjusted++;
    }
    // Half from 8.5 ft and a quarter from 16: a difference of 20 points, three standard errors. Adjusted: 2.5%, counting error 0.4.
    expect(plain / runs).toBeGreaterThan(0.7);
    expect(adjusted / runs).toBeLessThan(0.037);
  });

  it.each([
    [15, 15, 1, 1],
    [30, 80, 0.6, 0.6],
    [60, 40, 0.7, 1.1],
  ])('holds the truth in at least 95 of 100 records of %i and %i putts', (n1, n2, skill1, skill2) => {
    const random = seededRandom(`adjusted ${n1}`);
    // Mean share of the benchmark over the stretch, by the midpoint rule with many points.
    const meanShare = (from: number, to: number): number =>
      Array.from({ length: 2000 }, (_, i) => share(from + ((i + 0.5) / 2000) * (to - from))).reduce(
        (sum, p) => sum + p / 2000,
        0,
      );
    const truth = (skill2 - 1) * meanShare(6, 20) - (skill1 - 1) * meanShare(4, 12);
    const runs = 3000;
    let covered = 0;
    for (let run = 0; run < runs; run++) {
      const before = play(random, { count: n1, from: 4, to: 12, skill: skill1 });
      const after = play(random, { count: n2, from: 6, to: 20, skill: skill2 });
      const trend = adjustedTrend({ before, after });
      if (trend !== undefined && trend.low <= truth && trend.high >= truth) covered++;
    }
    // Counting error 0.4 points. Above: a player below the benchmark scatters less than its shares say, which errs wide.
    expect(covered / runs).toBeGreaterThan(0.938);
    expect(covered / runs).toBeLessThan(0.985);
  });

  it('does not take three misses beside three misses for certainty', () => {
    const misses = (p: number): JudgedPutt[] =>
      Array.from({ length: 3 }, () => ({ holed: false, benchmarkShare: p }));
    const trend = adjustedTrend({ before: misses(0.5), after: misses(0.1) });
    expect(trend?.value).toBeCloseTo(0.4, 12);
    // Variances 0.25/3 and 0.09/3, two degrees each: printed t at least 2.776.
    expect(trend?.standardError).toBeCloseTo(Math.sqrt(0.34 / 3), 12);
    expect(trend?.verdict).toBe('cannotTell');
    expect(adjustedTrend({ before: [], after: misses(0.1) })).toBeUndefined();
  });
});
