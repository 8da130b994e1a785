/** Quantiles of chi-square: the printed table, jstat, and closed forms. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { chiSquareQuantile } from '../../../sim/maths/chi-square.ts';

describe('the quantile of chi-square', () => {
  it.each([
    // Abramowitz & Stegun, table 26.8, as printed in every statistics text (memory).
    [0.95, 1, 3.841],
    [0.975, 9, 19.023],
    [0.025, 9, 2.7],
    [0.025, 4, 0.484],
    [0.975, 4, 11.143],
    [0.95, 30, 43.773],
  ])('for %f with %i degrees is the printed %f', (share, degrees, printed) => {
    expect(chiSquareQuantile(share, degrees)).toBeCloseTo(printed, 3);
  });

  it('is -2 ln(1 - share) with two degrees', () => {
    for (const share of [0.001, 0.3, 0.95, 0.999])
      expect(chiSquareQuantile(share, 2)).toBeCloseTo(-2 * Math.log1p(-share), 9);
  });

  it.each([0.5, 1, 3, 9, 19, 60, 400])(
    'with %f degrees puts the share below that jstat puts there',
    (degrees) => {
      for (const share of [0.005, 0.025, 0.5, 0.975, 0.995]) {
        const at = chiSquareQuantile(share, degrees);
        // jstat's distribution is good to about 1e-10; its own quantile only to 1e-6 or so.
        expect(jStat.chisquare.cdf(at, degrees)).toBeCloseTo(share, 8);
      }
    },
  );
});
