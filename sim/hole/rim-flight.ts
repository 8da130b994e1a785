/**
 * A ball in the air over the hole: how far it is from everything, and when it next touches.
 * Answers for: the parabola and the first contact on it. Leaves out: what the contact does (rim-contact.ts).
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import { HOLE_DEPTH } from './rim-contact.ts';

/** Height of the centre of a ball on the floor, m. */
export const FLOOR_HEIGHT = BALL_RADIUS - HOLE_DEPTH;

/** Longest and first look ahead, s: a ball of 2 m/s moves 0.5 mm between looks, and the shortest hop is seen. */
const LOOK = 2.5e-4;
const FIRST_LOOK = 1e-6;
/** Contact is taken as reached this far in, m: well above rounding, far below anything felt. */
const TOUCH = 1e-13;
/** Halvings that find the moment of contact to rounding. */
const HALVINGS = 60;

/** Gap between ball and green, rim or wall, m; negative inside. */
function sideGap(x: number, y: number, z: number): number {
  const rho = Math.hypot(x, y);
  if (rho >= HOLE_RADIUS) return z - BALL_RADIUS;
  return (z > 0 ? Math.hypot(HOLE_RADIUS - rho, z) : HOLE_RADIUS - rho) - BALL_RADIUS;
}

/** Where the ball is after t seconds of flight. */
export function fly(from: Float64Array, gravity: Float64Array, t: number, to: Float64Array): void {
  to.set(from);
  for (let i = 0; i < 3; i++) {
    to[i] = from[i] + from[i + 3] * t + (gravity[i] * t * t) / 2;
    to[i + 3] = from[i + 3] + gravity[i] * t;
  }
}

/**
 * Flies to the next contact.
 * @param seen called with the state at moments on the way and the time since `from`
 * @returns s of flight; `state` is then at the contact
 */
export function flyToContact(
  state: Float64Array,
  gravity: Float64Array,
  seen?: (state: Float64Array, after: number) => void,
): number {
  const from = state.slice();
  const gap = (t: number): number => {
    fly(from, gravity, t, state);
    return Math.min(sideGap(state[0], state[1], state[2]), state[2] - FLOOR_HEIGHT);
  };
  let [low, look] = [0, FIRST_LOOK];
  let lowGap = gap(0);
  for (;;) {
    const high = low + look;
    let reached = high;
    let highGap = gap(high);
    // A graze between two looks: the parabola through the gaps of three looks may dip below zero.
    const middle = low + look / 2;
    const middleGap = gap(middle);
    const bend = lowGap - 2 * middleGap + highGap;
    if (highGap > -TOUCH && bend > 0) {
      const lowest = middle + ((look / 4) * (lowGap - highGap)) / bend;
      if (lowest > low && lowest < high && gap(lowest) < -TOUCH) {
        reached = lowest;
        highGap = gap(lowest);
      }
    }
    if (highGap < -TOUCH) {
      for (let i = 0; i < HALVINGS; i++) {
        const t = (low + reached) / 2;
        if (gap(t) < -TOUCH) reached = t;
        else low = t;
      }
      gap(reached);
      return reached;
    }
    low = high;
    lowGap = highGap;
    look = Math.min(LOOK, 2 * look);
    if (seen !== undefined) {
      gap(low);
      seen(state, low);
    }
  }
}
