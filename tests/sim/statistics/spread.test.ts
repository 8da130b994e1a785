/** The spread of a few observations: quantiles against jstat, coverage by simulation. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { spreadInterval } from '../../../sim/statistics/spread.ts';
import { normals } from '../../support/normals.ts';

describe('the interval of a spread', () => {
  it.each([2, 5, 8, 10, 30])('of %i observations is jstat’s chi-squared one', (count) => {
    const normal = normals(`spread ${count}`);
    const found = spreadInterval(Array.from({ length: count }, () => 3 + 2 * normal()));
    if (found === undefined) throw new Error('no spread');
    const squares = found.value ** 2 * (count - 1);
    const end = (share: number): number => Math.sqrt(squares / jStat.chisquare.inv(share, count - 1));
    // Relative; jstat's quantiles are good to 1e-6 or so.
    expect(Math.abs(found.low / end(0.975) - 1)).toBeLessThan(1e-5);
    expect(Math.abs(found.high / end(0.025) - 1)).toBeLessThan(1e-5);
  });

  it('is of two values at least, and as wide as that is', () => {
    expect(spreadInterval([1])).toBeUndefined();
    const two = spreadInterval([1, 3]);
    expect(two?.value).toBeCloseTo(Math.SQRT2, 12);
    expect(two?.high).toBeGreaterThan(20);
  });

  it('holds the true spread in 95% of sets of ten', () => {
    const normal = normals('coverage of spreads');
    const tries = 2000;
    let held = 0;
    for (let one = 0; one < tries; one++) {
      const found = spreadInterval(Array.from({ length: 10 }, () => 0.7 * normal()));
      if (found !== undefined && found.low < 0.7 && found.high > 0.7) held += 1;
    }
    // Standard error of the share: 0.49 points.
    expect(Math.abs(held / tries - 0.95)).toBeLessThan(0.015);
  });
});
