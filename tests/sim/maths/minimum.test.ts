/** The search for a smallest value, on functions whose lowest point is known. */
import { describe, expect, it } from 'vitest';
import { minimize, vertexOf } from '../../../sim/maths/minimum.ts';

const SEARCH = { start: 0, step: 1, low: -10, high: 10, walks: 8, parabolas: 1 };

describe('the lowest point', () => {
  it('of a parabola is found exactly, from near and from afar', () => {
    // Closed form: the vertex; rounding.
    for (const lowest of [-6.3, -0.4, 0.2, 1.7, 7.1])
      expect(minimize((at) => 3 * (at - lowest) ** 2 + 1, SEARCH)).toBeCloseTo(lowest, 9);
  });

  it('is not looked for beyond the ends', () => {
    expect(minimize((at) => -at, { ...SEARCH, high: 2.5 })).toBe(2.5);
    expect(minimize((at) => at, { ...SEARCH, low: -2.5 })).toBe(-2.5);
  });

  it('is the best point asked where the function has no value on one side, and none where it has none at all', () => {
    const half = (at: number): number => (at < 0.5 ? Number.POSITIVE_INFINITY : (at - 3) ** 2);
    expect(minimize(half, { ...SEARCH, start: 1 })).toBeCloseTo(3, 9);
    expect(minimize(() => Number.POSITIVE_INFINITY, SEARCH)).toBeUndefined();
  });

  it('of three points on a parabola that opens downward is none', () => {
    expect(vertexOf([0, 1, 3], [1, 0, 4])).toBeCloseTo(vertexByCramer([0, 1, 3], [1, 0, 4]), 12);
    expect(vertexOf([0, 1, 2], [0, 1, 0])).toBeUndefined();
  });
});

/** -b / 2a of the parabola through three points, by Cramer's rule. */
function vertexByCramer(xs: readonly number[], ys: readonly number[]): number {
  const [x, y, z] = xs;
  const a = ys[0] * (y - z) + ys[1] * (z - x) + ys[2] * (x - y);
  const b = ys[0] * (z * z - y * y) + ys[1] * (x * x - z * z) + ys[2] * (y * y - x * x);
  return -b / (2 * a);
}
