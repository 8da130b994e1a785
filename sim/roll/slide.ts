/**
 * The first stretch of a putt struck without spin: the ball slides until its spin has caught up, and then rolls.
 *
 * Sliding friction mu g opposes the velocity u of the point of contact, the slip; gravity pulls a sliding ball in full. On
 * a plane (MODEL.md section 1, Skid)
 *     dv/dt = -mu g u/|u| - g grad h          du/dt = -(7/2) mu g u/|u| - g grad h          u = v at the strike.
 * The slip obeys the equation of a rolling ball with other constants, so it has that closed form (plane-motion.ts); and
 * dv = (2/7) du - (5/7) g grad h dt gives the ball's own velocity and place from it, exactly.
 * On other ground the plane is that of the gradient's mean over the slide. What the gradient is more than that early on moves
 * the end by -(g/2) T^2 times it, in full, because ball and slip feel it alike (its effect on the direction of the slip is
 * left out: a hundredth of it).
 * Answers for: that stretch, as a piece of path. Leaves out: the hole (skid.ts), the slowing by the grass while
 * the ball slides (a seventh of the sliding friction, and not Coulomb's), loft and spin off the putter.
 */
import { GRAVITY, ROLLING_FACTOR, SLIDING_FRICTION } from '../constants.ts';
import type { PlaneSurface } from '../types.ts';
import { DIRECTION_X, DIRECTION_Y, type Segment, SPEED, STATE_SIZE, TIME, X, Y } from './field-step.ts';
import { frictionOf, type PlaneState, planeState, steepnessOf } from './plane-motion.ts';

/** Slowing of the slip, m/s^2: friction slows the ball by mu g and spins it up by 5/2 of that (solid sphere). */
const SLIP_FRICTION = 3.5 * SLIDING_FRICTION * GRAVITY;
/** Share of a change of slip that is a change of the ball's own velocity. */
const SLIP_SHARE = 1 - ROLLING_FACTOR;
/** Progress of the slip at which nothing of it is left, to rounding. */
const SLIP_GONE = 38;

export interface Slide extends Segment {
  /** A strike at this heading (radians from +x) and speed (m/s) on the plane with this uphill gradient. */
  begin(strike: { readonly x: number; readonly y: number }, heading: number, speed: number): void;
  /**
   * The ground: its uphill gradient, the mean over the time of the slide, m per m.
   * @param earlyX by how much the gradient early on exceeds the mean: twice its mean weighted by the time left, less the mean
   */
  tilt(gradientX: number, gradientY: number, earlyX?: number, earlyY?: number): void;
}

/** A slide; the memory is made once. Its fractions are shares of its time, to the square of slope / (3.5 mu). */
export function makeSlide(): Slide {
  const slip: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };
  let fromX = 0;
  let fromY = 0;
  let heading = 0;
  let speed = 0;
  let slope = 0;
  let downhill = 0;
  let downX = 1;
  let downY = 0;
  let bendX = 0;
  let bendY = 0;

  const begin: Slide['begin'] = (strike, toward, fast) => {
    fromX = strike.x;
    fromY = strike.y;
    heading = toward;
    speed = fast;
  };
  const tilt: Slide['tilt'] = (gradientX, gradientY, earlyX = 0, earlyY = 0) => {
    slope = Math.sqrt(gradientX * gradientX + gradientY * gradientY);
    // On the level any direction is downhill.
    downhill = slope > 0 ? Math.atan2(-gradientY, -gradientX) : 0;
    downX = Math.cos(downhill);
    downY = Math.sin(downhill);
    bendX = (-GRAVITY / 2) * earlyX;
    bendY = (-GRAVITY / 2) * earlyY;
  };
  const at = (fraction: number, out: Float64Array): void => {
    const kappa = (GRAVITY * slope) / SLIP_FRICTION;
    const turn = heading - downhill;
    const sine = Math.sin(turn / 2);
    const cosine = Math.cos(turn / 2);
    const m = 1 - kappa * (cosine * cosine - sine * sine);
    const progress =
      fraction >= 1 ? Number.POSITIVE_INFINITY : Math.min(SLIP_GONE, -Math.log1p(-fraction) / m);
    planeState(SLIP_FRICTION, kappa, speed, sine, cosine, progress, slip);
    const { time } = slip;
    const pulled = ROLLING_FACTOR * GRAVITY * slope * time;
    const launchX = ROLLING_FACTOR * speed * Math.cos(turn);
    const launchY = ROLLING_FACTOR * speed * Math.sin(turn);
    const down = launchX * time + SLIP_SHARE * slip.x + (pulled * time) / 2;
    const across = launchY * time + SLIP_SHARE * slip.y;
    const vDown = launchX + SLIP_SHARE * slip.vx + pulled;
    const vAcross = launchY + SLIP_SHARE * slip.vy;
    // A gradient that changes evenly bends the way as 3 f^2 - 2 f^3, and leaves the velocity at the end as it is.
    const whole = (speed / SLIP_FRICTION) * ((cosine * cosine) / (1 - kappa) + (sine * sine) / (1 + kappa));
    const share = time / whole;
    const bent = time * time * (3 - 2 * share);
    const bending = 6 * time * (1 - share);
    const vx = vDown * downX - vAcross * downY + bending * bendX;
    const vy = vDown * downY + vAcross * downX + bending * bendY;
    const v = Math.sqrt(vx * vx + vy * vy);
    out[X] = fromX + down * downX - across * downY + bent * bendX;
    out[Y] = fromY + down * downY + across * downX + bent * bendY;
    out[DIRECTION_X] = vx / v;
    out[DIRECTION_Y] = vy / v;
    out[SPEED] = v;
    out[TIME] = time;
  };
  return { begin, tilt, at };
}

/** Uphill gradient of a plane, m per m. */
export const gradientOfPlane = ({ slope, downhill }: PlaneSurface): readonly [number, number] => [
  -slope * Math.cos(downhill),
  -slope * Math.sin(downhill),
];

/** All places of skidding balls on a plane for each unit of v^2 (m per m^2/s^2): both stretches grow as v^2 (Cross). */
export interface SkidShape {
  /** Heading that the rest is for, radians from +x: fills restX, restY. */
  aim(heading: number): void;
  /** Progress: share of the slide below 1, above it 1 + lambda of the roll. Fills x, y. */
  look(progress: number): void;
  readonly x: number;
  readonly y: number;
  readonly restX: number;
  readonly restY: number;
}

/** The plane must hold the ball. */
export function skidShape(surface: PlaneSurface, greenSpeed: number): SkidShape {
  const friction = frictionOf(greenSpeed);
  const kappa = steepnessOf(surface, greenSpeed);
  const { downhill } = surface;
  const downX = Math.cos(downhill);
  const downY = Math.sin(downhill);
  const slide = makeSlide();
  slide.tilt(...gradientOfPlane(surface));
  const origin = { x: 0, y: 0 };
  const state = new Float64Array(STATE_SIZE);
  const roll: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };
  let rollX = 0;
  let rollY = 0;
  let rollSpeed = 0;
  let s = 0;
  let c = 1;
  const shape = { x: 0, y: 0, restX: 0, restY: 0 };
  const rolled = (lambda: number): void => {
    planeState(friction, kappa, rollSpeed, s, c, lambda, roll);
    shape.x = rollX + roll.x * downX - roll.y * downY;
    shape.y = rollY + roll.x * downY + roll.y * downX;
  };
  return Object.assign(shape, {
    aim(heading: number): void {
      slide.begin(origin, heading, 1);
      slide.at(1, state);
      rollX = state[X];
      rollY = state[Y];
      rollSpeed = state[SPEED];
      const half = (Math.atan2(state[DIRECTION_Y], state[DIRECTION_X]) - downhill) / 2;
      s = Math.sin(half);
      c = Math.cos(half);
      rolled(Number.POSITIVE_INFINITY);
      shape.restX = shape.x;
      shape.restY = shape.y;
    },
    look(progress: number): void {
      if (progress >= 1) {
        rolled(progress - 1);
        return;
      }
      slide.at(progress, state);
      shape.x = state[X];
      shape.y = state[Y];
    },
  });
}

/** `planeReach` for a ball that skids first: it rests at ball + v^2 times this. The plane must hold the ball. */
export function skidReach(
  surface: PlaneSurface,
  greenSpeed: number,
): (heading: number, out: { x: number; y: number }) => void {
  const shape = skidShape(surface, greenSpeed);
  return (heading, out) => {
    shape.aim(heading);
    out.x = shape.restX;
    out.y = shape.restY;
  };
}
