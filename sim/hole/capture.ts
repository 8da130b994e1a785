/**
 * When a ball that reaches the hole drops, and how it leaves when it does not. Three rules of one form (rule.ts): the simple rule,
 * free fall, and the rim model (rim.ts), the only one that turns a ball that does not drop.
 * Arrival is taken as the ball's centre crosses the rim circle, radius HOLE_RADIUS: from there on no friction acts.
 */
import { BALL_RADIUS, GRAVITY, HOLE_RADIUS, SIMPLE_CENTRE_SPEED } from '../constants.ts';
import type { CaptureName } from '../types.ts';
import { rimRule } from './rim.ts';
import type { CaptureRule } from './rule.ts';

/** Holmes 1991, Penner 2002 (memory): 1.63 (1 - (b/R)^2) m/s. */
const simple: CaptureRule = {
  name: 'simple',
  fastestDrop: (offset) => Math.max(0, SIMPLE_CENTRE_SPEED * (1 - (offset / HOLE_RADIUS) ** 2)),
  widestDrop: (speed) =>
    speed > SIMPLE_CENTRE_SPEED ? -1 : HOLE_RADIUS * Math.sqrt(1 - speed / SIMPLE_CENTRE_SPEED),
};

/** sqrt(g / 2r), 1/s: turns the flight over the hole into the fastest speed that falls one ball radius on the way. */
const FALL_RATE = Math.sqrt(GRAVITY / (2 * BALL_RADIUS));
/** Beyond this offset the flight touches the rim before the ball has fallen: free fall alone cannot hole it. */
const FREE_OFFSET = HOLE_RADIUS - BALL_RADIUS;
const freeFallSpeed = (offset: number): number => {
  const b = Math.abs(offset);
  return b < FREE_OFFSET
    ? (Math.sqrt(HOLE_RADIUS ** 2 - b * b) + Math.sqrt(FREE_OFFSET ** 2 - b * b)) * FALL_RATE
    : 0;
};
const FREE_EDGE_SPEED = Math.sqrt(HOLE_RADIUS ** 2 - FREE_OFFSET ** 2) * FALL_RATE;

/** Free fall without a bounce: a lower bound (derived, MODEL.md). */
const freeFall: CaptureRule = {
  name: 'freeFall',
  fastestDrop: freeFallSpeed,
  widestDrop: (speed) => {
    if (speed > freeFallSpeed(0)) return -1;
    if (speed <= FREE_EDGE_SPEED) return FREE_OFFSET;
    // sqrt(R^2-b^2) + sqrt(F^2-b^2) = w solved for b^2: with d = R^2 - F^2, sqrt(R^2-b^2) = (w + d/w)/2.
    const w = speed / FALL_RATE;
    const half = (w + (HOLE_RADIUS ** 2 - FREE_OFFSET ** 2) / w) / 2;
    return Math.sqrt(Math.max(0, HOLE_RADIUS ** 2 - half * half));
  },
};

const RULES: Readonly<Record<CaptureName, CaptureRule>> = { simple, freeFall, rim: rimRule };

/** The rule of that name. */
export const captureRule = (name: CaptureName): CaptureRule => RULES[name];
