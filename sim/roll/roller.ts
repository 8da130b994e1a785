/**
 * What every way of rolling a ball offers the layers above: one quick pass with the hole covered, and one full trace.
 * A roller is made for one ball, one hole, one surface and one green speed. Leaves out: capture (hole/).
 */
import type { Point } from '../types.ts';

/** Result of a quick pass; the caller owns and reuses it. */
export interface Pass {
  status: 'atRest' | 'neverStops' | 'leftSurface';
  /** Rest with the hole covered (where it left the surface, for leftSurface), m. */
  restX: number;
  restY: number;
  /** True when the ball's centre comes within HOLE_RADIUS of the hole centre. */
  met: boolean;
  /** Speed as the centre first crosses the rim circle, m/s; 0 when not met. */
  rimSpeed: number;
  /** Signed distance of the line of travel at the rim from the hole centre, m; positive: hole centre to the left. */
  rimOffset: number;
  /** Signed closest approach of the path to the hole centre, m, same sign; a ball that stops before its closest pass gives
   *  the offset of the hole from the line through its last direction instead (so the sign and size vary smoothly). */
  miss: number;
  /** Speed at that pass, m/s; 0 when the ball stops before it. */
  missSpeed: number;
  /** Direction of travel at that pass, radians from +x. */
  missHeading: number;
  /** Seconds to that pass and to the end. */
  missTime: number;
  time: number;
  /** Surface evaluations spent. */
  evaluations: number;
}

export const newPass = (): Pass => ({
  status: 'atRest',
  restX: 0,
  restY: 0,
  met: false,
  rimSpeed: 0,
  rimOffset: 0,
  miss: 0,
  missSpeed: 0,
  missHeading: 0,
  missTime: 0,
  time: 0,
  evaluations: 0,
});

export interface Roller {
  readonly ball: Point;
  readonly hole: Point;
  /** Roll with the hole covered. heading: radians from +x; speed: m/s. Fills and returns `out`. */
  pass(heading: number, speed: number, out: Pass): Pass;
  /** The whole covered roll as x, y, t triples, ordered in time, at most about 1 cm between chord and path. */
  trace(heading: number, speed: number): Float64Array;
}

/** A roller whose ball can be put down elsewhere: the second stretch of a roll begins where the first ended. */
export interface MovableRoller extends Roller {
  /** Passes and traces from now on begin at this place, m. */
  startFrom(x: number, y: number): void;
}
