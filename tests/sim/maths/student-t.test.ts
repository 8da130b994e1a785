/** Student's t and the incomplete beta against an independent library and printed tables. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { incompleteBeta, logGamma } from '../../../sim/maths/incomplete-beta.ts';
import { tFactor } from '../../../sim/maths/student-t.ts';

describe('the incomplete beta function', () => {
  it('agrees with jstat over shapes and places', () => {
    // jstat is the coarser side: its fraction stops at a relative change of 3e-7, and at I_0.5(0.5, 0.5), which is 0.5 by
    // symmetry, it is 1.8e-8 off. 1e-7: five times that, and a wrong term or shape shows far above it.
    for (const a of [0.5, 1, 2.5, 7, 40])
      for (const b of [0.5, 1.3, 6, 30])
        for (const x of [0.01, 0.2, 0.5, 0.83, 0.999])
          expect(Math.abs(incompleteBeta(x, a, b) - jStat.ibeta(x, a, b))).toBeLessThan(1e-7);
  });

  it('is the upper tail of a binomial count for whole shapes, counted in whole numbers', () => {
    // DLMF 8.17.5: I_x(a, b) = sum over j >= a of C(n, j) x^j (1 - x)^(n - j), n = a + b - 1; x in hundredths, exact.
    const choose = (n: number, k: number): bigint => {
      let ways = 1n;
      for (let i = 0; i < k; i++) ways = (ways * BigInt(n - i)) / BigInt(i + 1);
      return ways;
    };
    const tail = (hundredths: number, a: number, b: number): number => {
      const n = a + b - 1;
      let sum = 0n;
      for (let j = a; j <= n; j++)
        sum += choose(n, j) * BigInt(hundredths) ** BigInt(j) * BigInt(100 - hundredths) ** BigInt(n - j);
      return Number((sum * 10n ** 20n) / 100n ** BigInt(n)) / 1e20;
    };
    // 1e-12 is what incomplete-beta.ts promises.
    for (const a of [1, 2, 7, 40])
      for (const b of [1, 6, 30])
        for (const hundredths of [1, 20, 50, 83, 99])
          expect(Math.abs(incompleteBeta(hundredths / 100, a, b) - tail(hundredths, a, b))).toBeLessThan(
            1e-12,
          );
  });

  it('is x itself for the uniform case and complements under exchange', () => {
    expect(incompleteBeta(0.37, 1, 1)).toBeCloseTo(0.37, 13);
    expect(incompleteBeta(0.37, 3, 8) + incompleteBeta(0.63, 8, 3)).toBeCloseTo(1, 13);
  });

  it('has the known logarithms of the gamma function: (10)! and the root of pi', () => {
    expect(logGamma(11)).toBeCloseTo(Math.log(3628800), 11);
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 12);
  });
});

describe('the t factor', () => {
  it.each([
    // Two-sided 95% and 99%, as printed in every table of Student's t (memory, five figures).
    [0.95, 1, 12.706],
    [0.95, 2, 4.3027],
    [0.95, 4, 2.7764],
    [0.95, 9, 2.2622],
    [0.95, 30, 2.0423],
    [0.99, 5, 4.0321],
  ])('at %f with %i degrees is the printed one', (confidence, degrees, printed) => {
    // Half a unit of the last printed figure, relative.
    expect(Math.abs(tFactor(confidence, degrees) / printed - 1)).toBeLessThan(5e-5);
  });

  it('agrees with jstat, also for degrees that are not whole', () => {
    // jstat's inverse works on its own beta, up to 2e-8 off (above); in t this came to 4e-8. Five times that.
    for (const degrees of [0.7, 1.5, 3.3, 9, 57.2, 400])
      for (const confidence of [0.5, 0.9, 0.95, 0.999])
        expect(
          Math.abs(tFactor(confidence, degrees) / jStat.studentt.inv((1 + confidence) / 2, degrees) - 1),
        ).toBeLessThan(2e-7);
  });

  it('is exact for one degree, where it is a tangent', () => {
    // Cauchy distribution: quantile tan(pi (p - 1/2)).
    expect(tFactor(0.8, 1)).toBeCloseTo(Math.tan(0.4 * Math.PI), 10);
  });
});
