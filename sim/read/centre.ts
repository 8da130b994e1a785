/**
 * Lines that cross the hole centre, whatever their pace: what they are and how to turn a start until its path does so.
 * Leaves out: pace (line.ts and the two walks).
 */
import type { Pass, Roller } from '../roll/roller.ts';

/** The path must cross the hole centre within this, m. Far below the 0.5 mm asked of aim offsets, so that whoever solves for something else over these lines sees a smooth function. */
const CENTRE_TOLERANCE = 1e-8;

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

/**
 * Turn the start until the path crosses the hole centre at this speed.
 * @param heading first guess, radians from +x
 * @returns heading, or undefined when no such start is near (ball too slow, or off the surface)
 */
export function centreHeading(search: LineSearch, heading: number, speed: number): number | undefined {
  const { roller, pass } = search;
  const distance = Math.hypot(roller.hole.x - roller.ball.x, roller.hole.y - roller.ball.y);
  let turn = 1 / distance;
  let at = heading;
  let previous: { heading: number; miss: number } | undefined;
  for (let step = 0; step < 30; step++) {
    roller.pass(at, speed, pass);
    search.rolls++;
    if (pass.missSpeed === 0) return undefined;
    const miss = pass.miss;
    if (Math.abs(miss) < CENTRE_TOLERANCE) return at;
    if (previous !== undefined && miss !== previous.miss) {
      const secant = (previous.heading - at) / (miss - previous.miss);
      if (Number.isFinite(secant) && secant > 0 && secant < 20 / distance) turn = secant;
    }
    previous = { heading: at, miss };
    at += Math.max(-0.2, Math.min(0.2, miss * turn));
  }
  return undefined;
}
