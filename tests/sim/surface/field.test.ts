/** The smooth surface through a grid of heights: exact where it must be, and as exact elsewhere as it says. */
import { describe, expect, it } from 'vitest';
import {
  type FieldSurface,
  fieldSurface,
  type HeightSample,
  planeSurface,
  sampleSurface,
  surfaceBounds,
} from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';

const ground = (): HeightSample => ({ height: Number.NaN, gradientX: Number.NaN, gradientY: Number.NaN });

const gridOf = (
  height: (x: number, y: number) => number,
  spacing: number,
  columns: number,
  rows = columns,
  origin = { x: 0, y: 0 },
): FieldSurface => {
  const heights: number[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      heights.push(height(origin.x + column * spacing, origin.y + row * spacing));
  return fieldSurface({ origin, spacing, columns, rows, heights });
};

const at = (surface: FieldSurface, x: number, y: number): HeightSample => {
  const sample = ground();
  expect(sampleSurface(surface, x, y, sample)).toBe(true);
  return sample;
};

describe('a height field', () => {
  it('reproduces every cubic in x and y, height and gradient, up to the border', () => {
    // Exact by construction ("not a knot"); 1e-11 is rounding on heights of a few metres.
    const p = (x: number): number => 0.3 - 0.2 * x + 0.5 * x ** 2 - 0.7 * x ** 3;
    const slopeP = (x: number): number => -0.2 + x - 2.1 * x ** 2;
    const q = (y: number): number => 1 + 0.4 * y - 0.6 * y ** 2 + 0.2 * y ** 3;
    const slopeQ = (y: number): number => 0.4 - 1.2 * y + 0.6 * y ** 2;
    const surface = gridOf((x, y) => p(x) * q(y), 0.1, 12, 9, { x: -0.4, y: 0.3 });
    const random = seededRandom(1);
    const bounds = surfaceBounds(surface);
    if (bounds === undefined) throw new Error('a field has bounds');
    for (let i = 0; i < 300; i++) {
      const x = bounds.minX + random() * (bounds.maxX - bounds.minX);
      const y = bounds.minY + random() * (bounds.maxY - bounds.minY);
      const sample = at(surface, x, y);
      expect(Math.abs(sample.height - p(x) * q(y))).toBeLessThan(1e-11);
      expect(Math.abs(sample.gradientX - slopeP(x) * q(y))).toBeLessThan(1e-11);
      expect(Math.abs(sample.gradientY - p(x) * slopeQ(y))).toBeLessThan(1e-11);
    }
  });

  it('passes through every node', () => {
    const random = seededRandom(2);
    const surface = gridOf(() => random() * 0.1, 0.25, 9, 7);
    for (let row = 0; row < 7; row++)
      for (let column = 0; column < 9; column++)
        expect(at(surface, column * 0.25, row * 0.25).height).toBeCloseTo(
          surface.heights[row * 9 + column],
          14,
        );
  });

  it('errs by the fourth power of the spacing in height and at least the third in gradient', () => {
    // Known ground; halving the spacing must divide the largest error by about 16 and 8. de Boor 1978, chapter V.
    const height = (x: number, y: number): number => 0.1 * Math.sin(1.3 * x + 0.4) * Math.cos(0.9 * y);
    const slopeX = (x: number, y: number): number => 0.13 * Math.cos(1.3 * x + 0.4) * Math.cos(0.9 * y);
    const worst = (cells: number): { height: number; gradient: number } => {
      const surface = gridOf(height, 4 / cells, cells + 1);
      const found = { height: 0, gradient: 0 };
      for (let i = 0; i <= 97; i++)
        for (let j = 0; j <= 97; j++) {
          const [x, y] = [(4 * i) / 97, (4 * j) / 97];
          const sample = at(surface, x, y);
          found.height = Math.max(found.height, Math.abs(sample.height - height(x, y)));
          found.gradient = Math.max(found.gradient, Math.abs(sample.gradientX - slopeX(x, y)));
        }
      return found;
    };
    const coarse = worst(20);
    const fine = worst(40);
    expect(coarse.height / fine.height).toBeGreaterThan(12);
    expect(coarse.gradient / fine.gradient).toBeGreaterThan(6);
    // At 10 cm the slope of this ground, steeper and shorter than a green's, is right to 0.01%.
    expect(fine.gradient).toBeLessThan(1e-4);
  });

  it('has no kink where cells meet, even over rough heights: gradient and curvature run on', () => {
    const random = seededRandom(3);
    const surface = gridOf(() => random() * 0.02, 0.2, 8);
    const small = 1e-6;
    for (let line = 1; line < 7; line++)
      for (const y of [0.13, 0.55, 0.97]) {
        const x = line * 0.2;
        const [before, here, after] = [
          at(surface, x - small, y),
          at(surface, x, y),
          at(surface, x + small, y),
        ];
        // One-sided curvatures, 1/m; the largest third derivative here is below 50 /m^2, so 1e-6 m adds 5e-5.
        const left = (here.gradientX - before.gradientX) / small;
        const right = (after.gradientX - here.gradientX) / small;
        expect(Math.abs(right - left)).toBeLessThan(1e-3);
        expect(Math.abs(after.gradientY - before.gradientY)).toBeLessThan(1e-5);
      }
  });

  it('is the flattest polynomial the data allow on grids of two and three nodes', () => {
    const twoByTwo = gridOf((x, y) => 1 + 0.02 * x - 0.03 * y, 2, 2);
    expect(at(twoByTwo, 0.5, 1.5).height).toBeCloseTo(1 + 0.01 - 0.045, 12);
    expect(at(twoByTwo, 0.5, 1.5).gradientY).toBeCloseTo(-0.03, 12);
    const threeByTwo = gridOf((x) => 0.01 * x ** 2, 1, 3, 2);
    expect(at(threeByTwo, 1.7, 0.2).height).toBeCloseTo(0.01 * 1.7 ** 2, 12);
    expect(at(threeByTwo, 1.7, 0.2).gradientX).toBeCloseTo(0.034, 12);
  });

  it('ends at its outer nodes and says so', () => {
    const surface = gridOf((x) => 0.02 * x, 0.5, 5, 3, { x: 1, y: 2 });
    expect(surfaceBounds(surface)).toEqual({ minX: 1, minY: 2, maxX: 3, maxY: 3 });
    const sample = ground();
    expect(sampleSurface(surface, 3, 3, sample)).toBe(true);
    for (const [x, y] of [
      [0.999, 2.5],
      [3.001, 2.5],
      [2, 1.999],
      [2, 3.001],
      [Number.NaN, 2.5],
    ]) {
      const untouched = ground();
      expect(sampleSurface(surface, x, y, untouched)).toBe(false);
      expect(untouched.height).toBeNaN();
    }
  });

  it('stays plain data: a copy sent to a worker is the same ground', () => {
    const surface = gridOf((x, y) => 0.01 * Math.sin(x) + 0.02 * y, 0.25, 12);
    const here = at(surface, 1.1, 1.3);
    expect(at(structuredClone(surface), 1.1, 1.3)).toEqual(here);
  });

  it('refuses what is no grid, saying what it got, what it expected and how to mend it', () => {
    const good = { origin: { x: 0, y: 0 }, spacing: 0.1, columns: 2, rows: 2, heights: [0, 0, 0, 0] };
    const bad: [object, RegExp][] = [
      [{ heights: [0, 0, 0] }, /Got 3 heights, expected 2 x 2 = 4: .*row by row/],
      [{ heights: [0, 0, Number.NaN, 0] }, /Got a height of NaN at place 2, expected/],
      [{ heights: [0, 0, 0, 3000] }, /Got a height of 3000 .*metres/],
      [{ spacing: 0 }, /Got a grid spacing of 0 m, expected/],
      [{ spacing: Number.NaN }, /Got a grid spacing of NaN m/],
      [{ columns: 1, rows: 4 }, /at least 2 of each/],
      [{ columns: 2.5 }, /whole numbers/],
      [{ columns: 5000, rows: 5000 }, /at most/],
      [{ origin: { x: Number.POSITIVE_INFINITY, y: 0 } }, /Got a grid origin of Infinity/],
    ];
    for (const [change, message] of bad) expect(() => fieldSurface({ ...good, ...change })).toThrow(message);
  });
});

describe('a plane', () => {
  it('falls by its slope towards downhill, everywhere, without an edge', () => {
    const surface = planeSurface({ slope: 0.03, downhill: Math.PI / 2 });
    const sample = ground();
    expect(sampleSurface(surface, -50, 20, sample)).toBe(true);
    expect(sample.height).toBeCloseTo(-0.6, 12);
    expect(sample.gradientX).toBeCloseTo(0, 12);
    expect(sample.gradientY).toBeCloseTo(-0.03, 12);
    expect(surfaceBounds(surface)).toBeUndefined();
    expect(sampleSurface(surface, Number.NaN, 0, sample)).toBe(false);
  });

  it('refuses slopes and directions it cannot use', () => {
    expect(() => planeSurface({ slope: -0.01, downhill: 0 })).toThrow(/Got a slope of -0.01, expected 0 to/);
    expect(() => planeSurface({ slope: Number.NaN, downhill: 0 })).toThrow(/expected 0 to/);
    expect(() => planeSurface({ slope: 0.02, downhill: Number.NaN })).toThrow(/expected a finite angle/);
  });
});
