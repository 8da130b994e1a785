/**
 * Lines on planes by table: a fit asks for a million of them. Answers for: launch energy and start of the line for any pace on any
 * plane that holds a ball. Leaves out: solving (read/plane-line.ts, from which the table is made at the first question).
 *
 * By Cross's scaling a line depends on three numbers only: how steep the plane is beside what holds a ball, where the hole lies on it,
 * and the pace as a share of the way. Kept is the energy beside that of level ground, and that times the start; between nodes cubics
 * (Lagrange) are within 0.04% of the energy and 0.01 degrees of the start (tests).
 */
import { GRAVITY, ROLLING_FACTOR } from '../../constants.ts';
import { lagrange } from '../../maths/interpolation.ts';
import { planeLines } from '../../read/plane-line.ts';
import { STEEPEST_SEEN } from '../../read/seen.ts';
import { frictionOf } from '../../roll/plane.ts';
import { startOf } from '../../roll/roll.ts';
import type { PlaneSurface, Putt } from '../../types.ts';

/** Nodes: steepness 0 to MOST_STEEP, direction 0 (straight up) to pi, root of pace over way and pace. */
const STEEPS = 33;
const MOST_STEEP = 0.94;
const TURNS = 31;
const ROOTS = 17;
const LEAST_ROOT = 0.04;
const MOST_ROOT = 0.94;

let table: Float64Array | undefined;

function makeTable(): Float64Array {
  const made = new Float64Array(STEEPS * TURNS * ROOTS * 2);
  const greenSpeed = 3;
  const friction = frictionOf(greenSpeed);
  let at = 0;
  for (let i = 0; i < STEEPS; i++)
    for (let j = 0; j < TURNS; j++) {
      const slope = ((MOST_STEEP * i) / (STEEPS - 1)) * (friction / (ROLLING_FACTOR * GRAVITY));
      // The hole lies along +x; uphill is at this angle to the left of that.
      const uphill = (Math.PI * j) / (TURNS - 1);
      const surface: PlaneSurface = { kind: 'plane', slope, downhill: uphill + Math.PI };
      const putt: Putt & { readonly surface: PlaneSurface } = {
        surface,
        greenSpeed,
        ball: { x: 0, y: 0 },
        hole: { x: 1, y: 0 },
        capture: 'rim',
      };
      const lines = planeLines(putt);
      for (let k = 0; k < ROOTS; k++) {
        const root = LEAST_ROOT + ((MOST_ROOT - LEAST_ROOT) * k) / (ROOTS - 1);
        const pace = root ** 2 / (1 - root ** 2);
        const line = lines?.lineAt(pace);
        if (line === undefined)
          throw new Error('Got no line on a plane that holds a ball; expected one at any pace.');
        const energy = line.speed ** 2 / (2 * friction * (1 + pace));
        made[at++] = energy;
        made[at++] = energy * startOf(putt, line.heading);
      }
    }
  return made;
}

const ofSteep = { first: 0, w: new Float64Array(4) };
const ofTurn = { first: 0, w: new Float64Array(4) };
const ofRoot = { first: 0, w: new Float64Array(4) };

/** A line as seen; sweep is start x energy, radians m^2/s^2. */
export interface TableLine {
  energy: number;
  sweep: number;
}

/**
 * @param length m @param pace m past
 * @param along rise per metre to the hole @param across rise per metre to the side that counts as positive @param greenSpeed m
 */
export function tableLine(
  {
    length,
    pace,
    along,
    across,
    greenSpeed,
  }: {
    readonly length: number;
    readonly pace: number;
    readonly along: number;
    readonly across: number;
    readonly greenSpeed: number;
  },
  out: TableLine,
): void {
  table ??= makeTable();
  const friction = frictionOf(greenSpeed);
  const steep = Math.min(
    STEEPEST_SEEN,
    (ROLLING_FACTOR * GRAVITY * Math.sqrt(along * along + across * across)) / friction,
  );
  const turn = Math.atan2(Math.abs(across), along);
  const root = Math.sqrt(pace / (length + pace));
  lagrange((steep / MOST_STEEP) * (STEEPS - 1), STEEPS - 1, ofSteep);
  lagrange((turn / Math.PI) * (TURNS - 1), TURNS - 1, ofTurn);
  lagrange(((root - LEAST_ROOT) / (MOST_ROOT - LEAST_ROOT)) * (ROOTS - 1), ROOTS - 1, ofRoot);
  let energy = 0;
  let sweep = 0;
  for (let a = 0; a < 4; a++)
    for (let b = 0; b < 4; b++) {
      const weight = ofSteep.w[a] * ofTurn.w[b];
      const at = (((ofSteep.first + a) * TURNS + ofTurn.first + b) * ROOTS + ofRoot.first) * 2;
      for (let c = 0; c < 4; c++) {
        const w = weight * ofRoot.w[c];
        energy += w * table[at + 2 * c];
        sweep += w * table[at + 2 * c + 1];
      }
    }
  const level = 2 * friction * (length + pace);
  out.energy = level * energy;
  out.sweep = (across < 0 ? -1 : 1) * level * sweep;
}
