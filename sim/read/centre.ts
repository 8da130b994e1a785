/** Lines that cross the hole centre, whatever their pace: what they are. Leaves out: how they are found (plane-line.ts, skid-line.ts, roll-walk.ts). */
import type { Pass, Roller } from '../roll/roller.ts';

/** A line that crosses the hole centre: heading (radians from +x), launch speed (m/s), and the pass it makes. */
export interface CentreLine {
  heading: number;
  speed: number;
  /** Distance from the hole to the rest, m. */
  pace: number;
}

/** Work shared by the solver's steps. */
export interface LineSearch {
  readonly roller: Roller;
  readonly pass: Pass;
  rolls: number;
}
