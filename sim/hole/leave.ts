/**
 * A ball that lips out, in the frame of the green: where it is back on the grass, which way it rolls and how fast.
 * Answers for: turning a rule's answer (given along the line of arrival) to the ground, tilt included. Leaves out: the rim
 * itself (rim.ts), the roll that follows.
 */
import type { Point } from '../types.ts';
import { tiltedLeave } from './rim.ts';
import type { CaptureRule, LipOut } from './rule.ts';

/** Reused by its owner. */
export interface LeavingBall {
  /** Where it is back on the green, relative to the hole centre, m. */
  x: number;
  y: number;
  /** Direction it rolls in, radians from +x. */
  heading: number;
  /** m/s */
  speed: number;
}

export const newLeavingBall = (): LeavingBall => ({ x: 0, y: 0, heading: 0, speed: 0 });

export interface Arrival {
  /** Direction of travel, radians from +x. */
  heading: number;
  /** Speed as the centre crosses the rim circle, m/s. */
  speed: number;
  /** b, m, positive: the hole centre lies to the left of travel. */
  offset: number;
}

const seen: LipOut = { x: 0, y: 0, turn: 0, speed: 0 };
const tilt = { x: 0, y: 0 };

/**
 * @param gradient of the ground at the hole, m per m: leaving higher than it came, the ball has slowed
 * @returns false when the ball rolls on as if the hole were covered
 */
export function leaveHole(rule: CaptureRule, arrival: Arrival, gradient: Point, out: LeavingBall): boolean {
  const { heading, speed, offset } = arrival;
  if (rule.leave === undefined || !rule.leave(speed, offset, seen)) return false;
  const alongX = Math.cos(heading);
  const alongY = Math.sin(heading);
  tilt.x = gradient.x * alongX + gradient.y * alongY;
  tilt.y = gradient.y * alongX - gradient.x * alongY;
  tiltedLeave(offset, tilt, seen);
  out.x = seen.x * alongX - seen.y * alongY;
  out.y = seen.x * alongY + seen.y * alongX;
  out.heading = heading + seen.turn;
  out.speed = seen.speed;
  return true;
}
