/** Means and the reading bias: printed examples, edge cases, recovery and coverage by simulation. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanInterval } from '../../../sim/evidence/mean-interval.ts';
import { type AimPair, readingBias } from '../../../sim/evidence/reading-bias.ts';
import { seededRandom } from '../../../sim/random.ts';
import { normals } from '../../support/normals.ts';

describe('the interval of a mean', () => {
  it('is Student’s own for the sleep data of his 1908 paper', () => {
    // Student 1908, extra hours of sleep (difference of the two drugs); interval 0.70 to 2.46 as in R's t.test (memory).
    const sleep = [1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4];
    const estimate = meanInterval(sleep);
    expect(estimate?.value).toBeCloseTo(1.58, 10);
    expect(estimate?.low).toBeCloseTo(0.7001, 3);
    expect(estimate?.high).toBeCloseTo(2.4599, 3);
  });

  it('is everything for one observation and nothing for none', () => {
    expect(meanInterval([0.3])).toMatchObject({
      value: 0.3,
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
    });
    expect(meanInterval([])).toBeUndefined();
    expect(meanInterval([1, 2], [0, 0])).toBeUndefined();
  });

  it('does not change when an observation without weight is added', () => {
    const without = meanInterval([1, 2, 4], [1, 2, 1]);
    const added = meanInterval([1, 2, 4, 99], [1, 2, 1, 0]);
    expect({ ...added, count: 3 }).toEqual(without);
  });

  it('moves and stretches with the numbers', () => {
    const numbers = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(numbers, fc.double({ min: -3, max: 3, noNaN: true }), (values, shift) => {
        const plain = meanInterval(values);
        const moved = meanInterval(values.map((value) => 2 * value + shift));
        if (plain === undefined || moved === undefined) throw new Error('three observations have a mean');
        // Rounding of numbers up to 13.
        expect(moved.low).toBeCloseTo(2 * plain.low + shift, 9);
        expect(moved.high).toBeCloseTo(2 * plain.high + shift, 9);
      }),
      { seed: 20, numRuns: 200 },
    );
  });
});

/** Reads by a person who sees (1 + bias + sd z) of the break and whose hand adds half an inch. */
const reads = (
  normal: () => number,
  random: () => number,
  count: number,
  bias: number,
  sd: number,
): AimPair[] =>
  Array.from({ length: count }, () => {
    const trueAim = (random() - 0.5) * 1.4;
    return { trueAim, aim: trueAim * (1 + bias + sd * normal()) + 0.0127 * normal() };
  });

describe('the reading bias', () => {
  it('finds the bias that was put in', () => {
    const random = seededRandom('aims');
    const bias = readingBias(reads(normals('recover'), random, 4000, -0.18, 0.2));
    // Standard error 0.2/sqrt(4000) = 0.0032, a little more for the weights: four of them.
    expect(Math.abs((bias?.value ?? 0) + 0.18)).toBeLessThan(0.014);
    expect(bias?.verdict).toBe('tooLittle');
  });

  it.each([4, 10, 30])('covers the truth 95% of the time with %i reads', (count) => {
    const normal = normals(`cover ${count}`);
    const random = seededRandom(`cover aims ${count}`);
    const runs = 3000;
    let covered = 0;
    for (let run = 0; run < runs; run++) {
      const bias = readingBias(reads(normal, random, count, 0.12, 0.25));
      if (bias !== undefined && bias.low <= 0.12 && bias.high >= 0.12) covered++;
    }
    // Counting error of 3000 runs is 0.4 points; two points for the weights being approximate, more only upwards.
    expect(covered / runs).toBeGreaterThan(0.93);
    expect(covered / runs).toBeLessThan(0.985);
  });

  it('is hardly moved by a miss on a nearly straight putt', () => {
    const steady = [0.2, -0.3, 0.4, -0.25, 0.3].map((trueAim) => ({ trueAim, aim: 0.9 * trueAim }));
    // Half an inch off where the break is a tenth of an inch: a ratio of five.
    const bias = readingBias([...steady, { trueAim: 0.0025, aim: 0.0152 }]);
    expect(Math.abs((bias?.value ?? 0) + 0.1)).toBeLessThan(0.01);
  });

  it('says nothing about straight putts alone and never gives a verdict on three reads', () => {
    expect(readingBias([{ trueAim: 0, aim: 0.1 }])).toBeUndefined();
    const three = [0.2, 0.3, 0.4].map((trueAim) => ({ trueAim, aim: 0.7 * trueAim }));
    expect(readingBias(three)?.verdict).toBe('tooFew');
  });

  it('does not care which side a putt breaks', () => {
    const pair = fc.record({
      trueAim: fc.double({ min: 0.01, max: 1, noNaN: true }),
      aim: fc.double({ min: -1, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(pair, { minLength: 2, maxLength: 10 }), (pairs) => {
        const mirrored = pairs.map(({ trueAim, aim }, i) =>
          i % 2 ? { trueAim, aim } : { trueAim: -trueAim, aim: -aim },
        );
        expect(readingBias(mirrored)).toEqual(readingBias(pairs));
      }),
      { seed: 21, numRuns: 100 },
    );
  });
});
