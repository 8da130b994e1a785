/** Means: a printed example, edge cases, laws. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanInterval } from '../../../sim/statistics/mean-interval.ts';

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
