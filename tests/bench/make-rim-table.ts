/**
 * Writes sim/hole/rim-data.ts: the fastest drop and how balls leave, from the direct calculation (sim/hole/rim-motion.ts).
 * Half a minute on one core; run it again when the calculation or its material changes: `npx tsx tests/bench/make-rim-table.ts`.
 */
import { writeFileSync } from 'node:fs';
import { HOLE_RADIUS } from '../../sim/constants.ts';
import { rimMotion } from '../../sim/hole/rim-motion.ts';
import { BOUNDARY_CELLS, COLUMNS, offsetAt, ROWS, speedAt, VALUES } from '../../sim/hole/rim-table.ts';

const FILE = new URL('../../sim/hole/rim-data.ts', import.meta.url);
/** Dead centre is taken this share of the radius off it: exactly there left and right are a matter of rounding. */
const CENTRE = 1e-4;
const SCAN = 0.02;
const HALVINGS = 36;
/** Units of the integers written: m/s for the boundary; rad, rad, 1, 1 for a node. */
const BOUNDARY_UNIT = 1e-6;
const UNITS = [1e-3, 1e-3, 1e-3, 1e-4];

const offsetOf = (c: number): number => Math.max(CENTRE * HOLE_RADIUS, offsetAt(c));
const drops = (speed: number, offset: number): boolean => rimMotion({ speed, offset }).status === 'holed';

/** Fastest arrival up to which every ball drops, m/s. */
function fastestDrop(offset: number): number {
  let low = 0;
  let high = SCAN;
  while (drops(high, offset)) {
    low = high;
    high += SCAN;
  }
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (drops(middle, offset)) low = middle;
    else high = middle;
  }
  return low;
}

const boundary = [0];
for (let i = 1; i <= BOUNDARY_CELLS; i++) boundary.push(fastestDrop(offsetOf(i / BOUNDARY_CELLS)));

const leaves: number[] = [];
let filled = 0;
// At the rim itself: straight on, at a right angle to the rim's radius.
for (let column = 0; column < COLUMNS; column++) leaves.push(0, -Math.PI / 2, 0, 1);
for (let row = 1; row < ROWS; row++) {
  const offset = offsetOf(row / (ROWS - 1));
  const fastest = fastestDrop(offset);
  for (let column = 0; column < COLUMNS; column++) {
    const speed = speedAt(column, fastest);
    const out = rimMotion({ speed, offset });
    if (out.status !== 'out') {
      // In the island of fast balls that drop, or on the boundary's own rounding: as the next faster one.
      filled++;
      leaves.push(...leaves.slice(-VALUES));
      continue;
    }
    const bearing = Math.atan2(out.y, out.x) - out.turn;
    leaves.push(
      out.turn,
      bearing - 2 * Math.PI * Math.round(bearing / (2 * Math.PI)),
      Math.max(0, Math.log(Math.hypot(out.x, out.y) / HOLE_RADIUS)),
      out.speed / speed,
    );
  }
}

const text = (numbers: readonly number[]): string => numbers.map((value) => String(value)).join(', ');
const rounded = (value: number, unit: number): number => Math.round(value / unit) + 0;
writeFileSync(
  FILE,
  `/**
 * Numbers made by tests/bench/make-rim-table.ts: do not edit. Layout and coordinates: rim-table.ts.
 */

/** Unit of RIM_BOUNDARY, m/s. */
export const RIM_BOUNDARY_UNIT = ${BOUNDARY_UNIT};
/** Fastest drop from the rim to dead centre. */
export const RIM_BOUNDARY: readonly number[] = [${text(boundary.map((value) => rounded(value, BOUNDARY_UNIT)))}];

/** Units of the four values of a node: rad, rad, 1, 1. */
export const RIM_LEAVE_UNITS: readonly number[] = [${text(UNITS)}];
/** Turn, bearing of the place, ln(distance / R), share of speed kept; row by row. */
export const RIM_LEAVES: readonly number[] = [${text(leaves.map((value, i) => rounded(value, UNITS[i % VALUES])))}];
`,
);
console.log(
  `${boundary.length} boundary nodes, ${leaves.length / VALUES} nodes of leaves, ${filled} filled in`,
);
