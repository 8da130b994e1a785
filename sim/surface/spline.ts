/**
 * A smooth surface through the heights of a grid: the tensor-product cubic B-spline interpolant.
 *
 * Answers for: height continuous to its second derivative, gradient continuous to its first, passing exactly through
 * every node. Error on smooth ground O(spacing^4) in height and O(spacing^3) in gradient (O(spacing^4) at nodes), up to
 * and including the border, because the end condition is "not a knot" (third derivative continuous across the first
 * inner node), which reproduces every cubic. Natural ends were dropped: they flatten the border, O(spacing^2) there.
 * Bicubic Hermite patches were dropped: gradient only C0 across cells, which an integrator feels as kinks.
 * Leaves out: holes in the data, unequal spacing. Beyond the border the last cell's polynomial goes on, for stages of an
 * integrator that look just past it. Source: de Boor, A Practical Guide to Splines (1978), chapter IV.
 */

/** Coefficients of one surface; (columns + 2) x (rows + 2), row by row, x fastest. */
export interface Spline {
  readonly originX: number;
  readonly originY: number;
  readonly spacing: number;
  readonly columns: number;
  readonly rows: number;
  readonly coefficients: Float64Array;
}

export interface Grid {
  readonly origin: { readonly x: number; readonly y: number };
  readonly spacing: number;
  readonly columns: number;
  readonly rows: number;
  readonly heights: Float64Array;
}

/**
 * One line of `count` values (read at `from`, every `step`) to `count + 2` coefficients (written at `to`, every `stride`).
 * Inside: (c[i-1] + 4 c[i] + c[i+1]) / 6 = value[i]. "Not a knot" at both ends fixes c[1] and c[count-2] outright, which
 * leaves a diagonally dominant tridiagonal system between them. `scratch` holds at least 2 * count numbers.
 */
function prefilter(
  line: { source: Float64Array; from: number; step: number; count: number },
  target: { values: Float64Array; to: number; stride: number },
  scratch: Float64Array,
): void {
  const { source, from, step, count } = line;
  const { values, to, stride } = target;
  const value = (i: number): number => source[from + i * step];
  // Coefficient i (from -1 to count) lives one place further on.
  const at = (i: number): number => to + (i + 1) * stride;
  const bend = (i: number): number => value(i - 1) - 2 * value(i) + value(i + 1);
  if (count === 2) {
    values[at(0)] = value(0);
    values[at(1)] = value(1);
  } else if (count === 3) {
    for (let i = 0; i < 3; i++) values[at(i)] = value(i) - bend(1) / 6;
  } else {
    const first = 1;
    const last = count - 2;
    values[at(first)] = value(first) - bend(first) / 6;
    values[at(last)] = value(last) - bend(last) / 6;
    // Thomas algorithm for c[2..count-3].
    let pivot = 4;
    let carried = values[at(first)];
    for (let i = first + 1; i < last; i++) {
      const right = 6 * value(i) - (i === last - 1 ? values[at(last)] : 0);
      if (i === first + 1) {
        scratch[i] = pivot;
        carried = right - carried;
      } else {
        const factor = 1 / pivot;
        pivot = 4 - factor;
        scratch[i] = pivot;
        carried = right - factor * carried;
      }
      scratch[count + i] = carried;
    }
    for (let i = last - 1; i > first; i--) {
      const next = i === last - 1 ? 0 : values[at(i + 1)];
      values[at(i)] = (scratch[count + i] - next) / scratch[i];
    }
    values[at(0)] = 6 * value(1) - 4 * values[at(1)] - values[at(2)];
    values[at(count - 1)] = 6 * value(count - 2) - 4 * values[at(count - 2)] - values[at(count - 3)];
  }
  values[at(-1)] = 6 * value(0) - 4 * values[at(0)] - values[at(1)];
  values[at(count)] = 6 * value(count - 1) - 4 * values[at(count - 1)] - values[at(count - 2)];
}

/** The interpolant of a grid; O(columns x rows) once. */
export function makeSpline(grid: Grid): Spline {
  const { columns, rows, heights } = grid;
  const width = columns + 2;
  const height = rows + 2;
  const along = new Float64Array(width * rows);
  const scratch = new Float64Array(2 * Math.max(columns, rows));
  for (let row = 0; row < rows; row++)
    prefilter(
      { source: heights, from: row * columns, step: 1, count: columns },
      { values: along, to: row * width, stride: 1 },
      scratch,
    );
  const coefficients = new Float64Array(width * height);
  for (let column = 0; column < width; column++)
    prefilter(
      { source: along, from: column, step: width, count: rows },
      { values: coefficients, to: column, stride: width },
      scratch,
    );
  return {
    originX: grid.origin.x,
    originY: grid.origin.y,
    spacing: grid.spacing,
    columns,
    rows,
    coefficients,
  };
}

/**
 * Gradient (m per m) at place[0], place[1] (m) into out[0], out[1]: the integrator's inner loop, no allocation.
 * The weights of the four basis functions at fraction t of a cell are (1-t)^3, 3t^3-6t^2+4, -3t^3+3t^2+3t+1, t^3, all / 6.
 */
export function splineGradient(spline: Spline, place: Float64Array, out: Float64Array): void {
  const c = spline.coefficients;
  const width = spline.columns + 2;
  const inverse = 1 / spline.spacing;
  const u = (place[0] - spline.originX) * inverse;
  const v = (place[1] - spline.originY) * inverse;
  let column = Math.floor(u);
  let row = Math.floor(v);
  if (!(column > 0)) column = 0;
  else if (column > spline.columns - 2) column = spline.columns - 2;
  if (!(row > 0)) row = 0;
  else if (row > spline.rows - 2) row = spline.rows - 2;
  const t = u - column;
  const s = v - row;
  const t2 = t * t;
  const t3 = t2 * t;
  const t1 = 1 - t;
  const a0 = t1 * t1 * t1;
  const a1 = 3 * t3 - 6 * t2 + 4;
  const a2 = 3 * (t + t2 - t3) + 1;
  const b0 = -t1 * t1;
  const b1 = 3 * t2 - 4 * t;
  const b2 = 1 + 2 * t - 3 * t2;
  let at = row * width + column;
  const p0 = a0 * c[at] + a1 * c[at + 1] + a2 * c[at + 2] + t3 * c[at + 3];
  const q0 = b0 * c[at] + b1 * c[at + 1] + b2 * c[at + 2] + t2 * c[at + 3];
  at += width;
  const p1 = a0 * c[at] + a1 * c[at + 1] + a2 * c[at + 2] + t3 * c[at + 3];
  const q1 = b0 * c[at] + b1 * c[at + 1] + b2 * c[at + 2] + t2 * c[at + 3];
  at += width;
  const p2 = a0 * c[at] + a1 * c[at + 1] + a2 * c[at + 2] + t3 * c[at + 3];
  const q2 = b0 * c[at] + b1 * c[at + 1] + b2 * c[at + 2] + t2 * c[at + 3];
  at += width;
  const p3 = a0 * c[at] + a1 * c[at + 1] + a2 * c[at + 2] + t3 * c[at + 3];
  const q3 = b0 * c[at] + b1 * c[at + 1] + b2 * c[at + 2] + t2 * c[at + 3];
  const s2 = s * s;
  const s3 = s2 * s;
  const s1 = 1 - s;
  // a sums to 6 and b, half the derivative of a / 3, carries 3: 1/6 * 1/2 = 1/12.
  const scale = inverse / 12;
  out[0] = scale * (s1 * s1 * s1 * q0 + (3 * s3 - 6 * s2 + 4) * q1 + (3 * (s + s2 - s3) + 1) * q2 + s3 * q3);
  out[1] = scale * (-s1 * s1 * p0 + (3 * s2 - 4 * s) * p1 + (1 + 2 * s - 3 * s2) * p2 + s2 * p3);
}

/** Height (m) at x, y (m). For drawing and checks: not in the integrator's loop. */
export function splineHeight(spline: Spline, x: number, y: number): number {
  const u = (x - spline.originX) / spline.spacing;
  const v = (y - spline.originY) / spline.spacing;
  const column = Math.max(0, Math.min(spline.columns - 2, Math.floor(u)));
  const row = Math.max(0, Math.min(spline.rows - 2, Math.floor(v)));
  const across = basis(u - column);
  const away = basis(v - row);
  let sum = 0;
  for (let j = 0; j < 4; j++)
    for (let i = 0; i < 4; i++)
      sum += away[j] * across[i] * spline.coefficients[(row + j) * (spline.columns + 2) + column + i];
  return sum;
}

const basis = (t: number): readonly [number, number, number, number] => [
  (1 - t) ** 3 / 6,
  (3 * t ** 3 - 6 * t ** 2 + 4) / 6,
  (-3 * t ** 3 + 3 * t ** 2 + 3 * t + 1) / 6,
  t ** 3 / 6,
];
