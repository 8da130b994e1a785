/** The small parts the odds are built of, each against something that is not ours. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../sim/index.ts';
import { lagrange, monotoneCubic } from '../../../sim/maths/interpolation.ts';
import { GAUSS_3, GAUSS_5, normalCdf } from '../../../sim/maths/normal.ts';
import { edgeBeyond, edgeNear } from '../../../sim/odds/edge.ts';
import { makeLeaves } from '../../../sim/odds/leaves.ts';

describe('the normal distribution', () => {
  it('agrees with jstat 1.9.6 out to six SD', () => {
    for (let z = -6; z <= 6; z += 0.173) {
      // Abramowitz & Stegun 26.2.17 promises 7.5e-8; jstat is good to about 2e-8 here.
      expect(Math.abs(normalCdf(z) - jStat.normal.cdf(z, 0, 1))).toBeLessThan(1e-7);
    }
  });
  it('is nothing and all at the ends', () => {
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
  });
});

describe('Gauss-Legendre points', () => {
  it.each([
    ['three', GAUSS_3, 5],
    ['five', GAUSS_5, 9],
  ] as const)(
    '%s integrate powers exactly up to their theorem’s degree, and no farther',
    (_, rule, degree) => {
      const integral = (power: number): number =>
        rule.nodes.reduce((sum, node, i) => sum + rule.weights[i] * node ** power, 0);
      // Over [-1, 1]: 2 / (power + 1) for even powers, 0 for odd ones. Nodes are given to 15 digits.
      for (let power = 0; power <= degree; power++)
        expect(integral(power)).toBeCloseTo(power % 2 === 0 ? 2 / (power + 1) : 0, 13);
      expect(Math.abs(integral(degree + 1) - 2 / (degree + 2))).toBeGreaterThan(1e-3);
    },
  );
});

describe('curves through points', () => {
  it('reproduce a cubic exactly from four nodes', () => {
    const cubic = (x: number): number => 2 - x + 0.5 * x ** 2 - 0.1 * x ** 3;
    const out = { first: 0, w: new Float64Array(4) };
    for (const at of [0, 0.3, 2.5, 4.99, 6]) {
      lagrange(at, 6, out);
      const value = out.w.reduce((sum, weight, i) => sum + weight * cubic(out.first + i), 0);
      expect(value).toBeCloseTo(cubic(at), 12);
    }
  });
  it('never leave the range of their neighbours through unequal steps', () => {
    const random = seededRandom('monotone');
    const xs = new Float64Array(12);
    for (let i = 1; i < xs.length; i++) xs[i] = xs[i - 1] + 0.05 + random();
    const ys = xs.map(() => random());
    const curve = monotoneCubic(xs, ys);
    for (let i = 1; i < xs.length; i++)
      for (let share = 0; share <= 1; share += 0.1) {
        const y = curve(xs[i - 1] + share * (xs[i] - xs[i - 1]));
        expect(y).toBeGreaterThan(Math.min(ys[i - 1], ys[i]) - 1e-12);
        expect(y).toBeLessThan(Math.max(ys[i - 1], ys[i]) + 1e-12);
      }
  });
});

describe('leaves', () => {
  it('give the quantiles of distances spread evenly', () => {
    const leaves = makeLeaves();
    leaves.add(3, 9, 0.4);
    leaves.clear();
    // Even between 0.5 and 2.5 m, in stretches of 5 mm; the first share is cleared away.
    for (let i = 0; i < 400; i++) leaves.add(0.5 + i / 200, 0.5 + (i + 1) / 200, 0.001);
    expect(leaves.quantile(0.5)).toBeCloseTo(1.5, 2);
    expect(leaves.quantile(0.1)).toBeCloseTo(0.7, 2);
    expect(leaves.quantile(0.9)).toBeCloseTo(2.3, 2);
  });
  it('of no misses are nothing', () => {
    expect(makeLeaves().quantile(0.5)).toBe(0);
  });
});

describe('an edge', () => {
  // Positive between -1 and 2.
  const hump = (x: number): number => 0.01 * (x + 1) * (2 - x);
  it('is found from a guess on either side, near or far', () => {
    for (const guess of [1.9, 2.1, 9, 0.5001]) expect(edgeBeyond(hump, 0.5, guess)).toBeCloseTo(2, 2);
    for (const guess of [-0.9, -1.1, -9]) expect(edgeBeyond(hump, 0.5, guess)).toBeCloseTo(-1, 2);
  });
  it('close to a guess is found from the slope, and refused where the function falls the other way', () => {
    expect(edgeNear(hump, 2.05, -1, new Float64Array(2), 1)).toBeCloseTo(2, 2);
    expect(edgeNear(hump, -1.05, 1, new Float64Array(2), 0)).toBeCloseTo(-1, 2);
    expect(edgeNear(hump, 2.05, 1, new Float64Array(2), 0)).toBeUndefined();
  });
});
