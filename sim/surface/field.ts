/**
 * A green given as heights on a square grid.
 *
 * Answers for: making one from measured or generated heights (checked), and its smooth interpolant, made once and
 * remembered. Leaves out: the interpolation itself (spline.ts). The surface stays plain data that can be copied to a
 * worker, so its coefficients live in a WeakMap beside it, not in it.
 */
import type { FieldSurface, HeightSample, Point } from '../types.ts';
import { makeSpline, type Spline, splineGradient, splineHeight } from './spline.ts';

/** Most nodes accepted: 1000 x 1000, 100 m x 100 m at 10 cm. More is a mistake and would stall the page. */
const MOST_NODES = 1_000_000;
/** Heights beyond this (m) are a unit mistake (millimetres or feet for metres), not a green. */
const HIGHEST = 100;
/** Grid spacings accepted, m: below, rounding noise becomes slope; above, nothing a ball feels is left. */
const FINEST_SPACING = 0.01;
const COARSEST_SPACING = 10;

export interface FieldOptions {
  /** Lower left node, m. */
  readonly origin: Point;
  /** Distance between nodes, m. */
  readonly spacing: number;
  readonly columns: number;
  readonly rows: number;
  /** Heights, m, row by row, x fastest; copied. */
  readonly heights: ArrayLike<number>;
}

const wrong = (got: string, expected: string, mend: string): RangeError =>
  new RangeError(`Got ${got}, expected ${expected}: ${mend}.`);

/**
 * A green from heights on a grid.
 * @throws RangeError saying what it got, what it expected and how to mend it
 * @example fieldSurface({ origin: { x: 0, y: 0 }, spacing: 0.1, columns: 81, rows: 81, heights })
 */
export function fieldSurface(options: FieldOptions): FieldSurface {
  const { origin, spacing, columns, rows, heights } = options;
  if (!(Number.isFinite(origin.x) && Number.isFinite(origin.y)))
    throw wrong(
      `a grid origin of ${origin.x}, ${origin.y}`,
      'two finite numbers in metres',
      'give where the first height was taken',
    );
  if (!(spacing >= FINEST_SPACING && spacing <= COARSEST_SPACING))
    throw wrong(
      `a grid spacing of ${spacing} m`,
      `${FINEST_SPACING} to ${COARSEST_SPACING} m`,
      'give the distance between neighbouring heights in metres',
    );
  if (!(Number.isInteger(columns) && Number.isInteger(rows) && columns >= 2 && rows >= 2))
    throw wrong(
      `a grid of ${columns} columns and ${rows} rows`,
      'whole numbers, at least 2 of each',
      'count the heights along x for columns and along y for rows',
    );
  if (columns * rows > MOST_NODES)
    throw wrong(
      `a grid of ${columns * rows} heights`,
      `at most ${MOST_NODES}`,
      'use a wider spacing or a smaller green',
    );
  if (heights.length !== columns * rows)
    throw wrong(
      `${heights.length} heights`,
      `${columns} x ${rows} = ${columns * rows}`,
      'give one height per node, row by row, x fastest',
    );
  const copy = new Float64Array(columns * rows);
  for (let i = 0; i < copy.length; i++) {
    const height = heights[i];
    if (typeof height !== 'number' || !(Math.abs(height) <= HIGHEST))
      throw wrong(
        `a height of ${String(height)} at place ${i}`,
        `a number of metres between -${HIGHEST} and ${HIGHEST}`,
        'fill gaps and give heights in metres above any level',
      );
    copy[i] = height;
  }
  return { kind: 'field', origin: { x: origin.x, y: origin.y }, spacing, columns, rows, heights: copy };
}

const splines = new WeakMap<FieldSurface, Spline>();

/** The interpolant of a field, made on first use; heights must not change afterwards. */
export function splineOf(surface: FieldSurface): Spline {
  let spline = splines.get(surface);
  if (spline === undefined) {
    spline = makeSpline(surface);
    splines.set(surface, spline);
  }
  return spline;
}

export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The rectangle a field covers, m. */
export const fieldBounds = (surface: FieldSurface): Bounds => ({
  minX: surface.origin.x,
  minY: surface.origin.y,
  maxX: surface.origin.x + (surface.columns - 1) * surface.spacing,
  maxY: surface.origin.y + (surface.rows - 1) * surface.spacing,
});

const gradient = new Float64Array(2);
const place = new Float64Array(2);

/** Height (m) and gradient at x, y (m); false, and `out` untouched, off the grid. */
export function sampleField(surface: FieldSurface, x: number, y: number, out: HeightSample): boolean {
  const u = x - surface.origin.x;
  const v = y - surface.origin.y;
  if (!(u >= 0 && v >= 0)) return false;
  if (u > (surface.columns - 1) * surface.spacing || v > (surface.rows - 1) * surface.spacing) return false;
  const spline = splineOf(surface);
  place[0] = x;
  place[1] = y;
  splineGradient(spline, place, gradient);
  out.height = splineHeight(spline, x, y);
  out.gradientX = gradient[0];
  out.gradientY = gradient[1];
  return true;
}
