/**
 * The table of what the rim does to a ball, looked up: fastest drop, widest drop, and how a ball leaves again.
 *
 * Answers for: coordinates of the table (shared with its maker, tests/bench/make-rim-table.ts) and interpolation in it, without
 * allocation. Leaves out: the numbers (rim-data.ts), the calculation they come from (rim-motion.ts), tilt (rim.ts).
 *
 * Coordinates. Across: c = sqrt(1 - b/R), because near the rim the fastest drop grows as the square root of what is left.
 * Along: q = -ln(1 - u), u the fastest drop v_d over v, because near the fastest drop v_d the turn grows as the logarithm of the excess, so that it is
 * straight in q; columns are even in the root of q, which puts more of them among fast balls, where q hardly changes.
 */
import { HOLE_RADIUS } from '../constants.ts';

/** Nodes of the boundary and rows of the table run over c = 0 (the rim) to 1 (dead centre). */
export const BOUNDARY_CELLS = 96;
export const ROWS = 49;
export const COLUMNS = 41;
/** Values per node: turn (rad), bearing of the place from the direction it leaves in (rad), ln(distance / R), share of speed kept. */
export const VALUES = 4;

/** Arrivals faster than this (m/s; 15 m past on a level green of 10 ft) leave as one of this speed does. */
export const FASTEST_ARRIVAL = 4;
/** Nearest the boundary, as a share of its speed: one ball in ten thousand; closer ones turn as this one does. */
export const NEAREST_EXCESS = 1e-4;
const DEEPEST = -Math.log(NEAREST_EXCESS / (1 + NEAREST_EXCESS));

/** Offset of a place across the table, m. c: 0 at the rim, 1 dead centre. */
export const offsetAt = (c: number): number => HOLE_RADIUS * (1 - c * c);

const shallowest = (fastestDrop: number): number => -Math.log(1 - fastestDrop / FASTEST_ARRIVAL);

/** Arrival speed of a column, m/s, at an offset whose fastest drop (m/s, above 0) is known. */
export function speedAt(column: number, fastestDrop: number): number {
  const from = shallowest(fastestDrop);
  const q = from + (DEEPEST - from) * (column / (COLUMNS - 1)) ** 2;
  return fastestDrop / -Math.expm1(-q);
}

/** How a ball leaves, as the table holds it; reused. */
export interface TableLeave {
  turn: number;
  bearing: number;
  logDistance: number;
  speedShare: number;
}

export interface RimTable {
  /** v_d, m/s, at |b| (m); 0 from the rim outwards. */
  fastestDrop(offset: number): number;
  /** Its inverse, m; negative above the fastest of all. */
  widestDrop(speed: number): number;
  /** How a ball leaves that does not drop; |b| below HOLE_RADIUS, hole centre to the left. Fills `out`. */
  leave(speed: number, offset: number, out: TableLeave): void;
}

/**
 * A table from its numbers.
 * @param boundary v_d in m/s at c = 0 to 1, BOUNDARY_CELLS + 1 of them, rising from 0
 * @param leaves ROWS x COLUMNS x VALUES, rows from the rim to dead centre, columns from fast to barely too fast
 */
export function makeRimTable(boundary: Float64Array, leaves: Float64Array): RimTable {
  const slopes = monotoneSlopes(boundary);
  const highest = boundary[BOUNDARY_CELLS];

  /** v_d at `t` of a cell, by the cubic through its ends and their slopes. */
  const inCell = (cell: number, t: number): number => {
    const a = boundary[cell];
    const rise = boundary[cell + 1] - a;
    const p = slopes[cell];
    const s = slopes[cell + 1];
    return a + t * (p + t * (3 * rise - 2 * p - s + t * (p + s - 2 * rise)));
  };

  const fastestDrop = (offset: number): number => {
    const share = 1 - Math.abs(offset) / HOLE_RADIUS;
    if (!(share > 0)) return 0;
    const place = Math.sqrt(share) * BOUNDARY_CELLS;
    const cell = Math.min(BOUNDARY_CELLS - 1, Math.floor(place));
    return inCell(cell, place - cell);
  };

  const widestDrop = (speed: number): number => {
    if (speed > highest) return -1;
    if (!(speed > 0)) return HOLE_RADIUS;
    let first = 0;
    let last = BOUNDARY_CELLS;
    while (last - first > 1) {
      const middle = (first + last) >> 1;
      if (boundary[middle] <= speed) first = middle;
      else last = middle;
    }
    // The cubic rises throughout the cell: Newton's step where it stays in the bracket, half the bracket elsewhere.
    let low = 0;
    let high = 1;
    const a = boundary[first];
    const rise = boundary[first + 1] - a;
    const p = slopes[first];
    const s = slopes[first + 1];
    let t = rise > 0 ? (speed - a) / rise : 0;
    for (let i = 0; i < MOST_INVERTING; i++) {
      const over = inCell(first, t) - speed;
      if (over > 0) high = t;
      else low = t;
      const steep = p + t * (2 * (3 * rise - 2 * p - s) + 3 * t * (p + s - 2 * rise));
      const step = over / steep;
      if (Math.abs(step) < INVERTED) break;
      t = t - step > low && t - step < high ? t - step : (low + high) / 2;
    }
    const c = (first + t) / BOUNDARY_CELLS;
    return HOLE_RADIUS * (1 - c * c);
  };

  const leave = (speed: number, offset: number, out: TableLeave): void => {
    const share = 1 - Math.abs(offset) / HOLE_RADIUS;
    const fastest = Math.max(fastestDrop(offset), 1e-9);
    const excess = Math.max(
      1 - fastest / Math.min(speed, FASTEST_ARRIVAL),
      NEAREST_EXCESS / (1 + NEAREST_EXCESS),
    );
    const from = shallowest(fastest);
    const depth = Math.min(1, Math.max(0, (-Math.log(excess) - from) / (DEEPEST - from)));
    const across = Math.sqrt(Math.max(0, share)) * (ROWS - 1);
    const along = Math.sqrt(depth) * (COLUMNS - 1);
    const row = Math.min(ROWS - 2, Math.floor(across));
    const column = Math.min(COLUMNS - 2, Math.floor(along));
    const f = across - row;
    const g = along - column;
    const near = (row * COLUMNS + column) * VALUES;
    const far = near + COLUMNS * VALUES;
    const w00 = (1 - f) * (1 - g);
    const w01 = (1 - f) * g;
    const w10 = f * (1 - g);
    const w11 = f * g;
    out.turn = w00 * leaves[near] + w01 * leaves[near + 4] + w10 * leaves[far] + w11 * leaves[far + 4];
    out.bearing =
      w00 * leaves[near + 1] + w01 * leaves[near + 5] + w10 * leaves[far + 1] + w11 * leaves[far + 5];
    out.logDistance =
      w00 * leaves[near + 2] + w01 * leaves[near + 6] + w10 * leaves[far + 2] + w11 * leaves[far + 6];
    out.speedShare =
      w00 * leaves[near + 3] + w01 * leaves[near + 7] + w10 * leaves[far + 3] + w11 * leaves[far + 7];
  };
  return { fastestDrop, widestDrop, leave };
}

/** Share of a cell to which the inverse is found, and the steps allowed for it; it takes about four. */
const INVERTED = 1e-13;
const MOST_INVERTING = 60;

/** Slopes per cell that keep the cubic rising where the nodes rise (Fritsch & Butland 1984, as in SciPy's PCHIP; memory). */
function monotoneSlopes(nodes: Float64Array): Float64Array {
  const slopes = new Float64Array(nodes.length);
  const last = nodes.length - 1;
  for (let i = 1; i < last; i++) {
    const before = nodes[i] - nodes[i - 1];
    const after = nodes[i + 1] - nodes[i];
    slopes[i] = before * after > 0 ? (2 * before * after) / (before + after) : 0;
  }
  slopes[0] = nodes[1] - nodes[0];
  slopes[last] = nodes[last] - nodes[last - 1];
  return slopes;
}
