/**
 * One step at a time along the path of a ball on smooth ground, with the error of each step kept small.
 *
 * Answers for: dv/dt = -a_f v/|v| - (5/7) g grad h (MODEL.md section 1), stepped by the embedded Runge-Kutta pair 5(4) of
 * Dormand & Prince 1980 (J. Comput. Appl. Math. 6, 19; same coefficients as MATLAB's ode45 and scipy's RK45), and the path
 * between two steps as the quintic through position, velocity and acceleration at both ends: for an equation of second
 * order that costs nothing and errs by O(h^6), one order better than the pair's own interpolant, which was dropped.
 * Leaves out: when to stop, the hole, edges. Friction has no direction at rest: the caller stops before (field-finish.ts).
 */
import { GRAVITY, ROLLING_FACTOR } from '../constants.ts';

/** Writes the gradient of the ground (m per m) at place[0], place[1] (m) to out[0], out[1]. The place comes in an array
 *  because numbers handed to a function that is not inlined are boxed: that made a third of a pass. */
export type GradientAt = (place: Float64Array, out: Float64Array) => void;

/** A piece of path that can be asked for any place on it. */
export interface Segment {
  /** State at `fraction` (0 start, 1 end) of the piece, laid out by the names below. */
  at(fraction: number, out: Float64Array): void;
}

/** Layout of a state: place (m), direction of travel (unit vector), speed (m/s), time (s). */
export const X = 0;
export const Y = 1;
export const DIRECTION_X = 2;
export const DIRECTION_Y = 3;
export const SPEED = 4;
export const TIME = 5;
export const STATE_SIZE = 6;

/** Error allowed per step, m and m/s. Errors of speed move the rest by v/a_f (about 4 s) times themselves; over the ten
 *  or so steps of a roll these keep rests within 0.02 mm on average and 0.2 mm on ground that barely holds the ball, and
 *  passes by the hole within 0.02 mm (measured, field-oracle.test.ts). A tenth of them costs half as much work again. */
const POSITION_TOLERANCE = 1.6e-5;
const VELOCITY_TOLERANCE = 8e-6;
/** A step may take away at most this share of the speed: it can then not run past a stop unnoticed. */
const MOST_SLOWING = 0.75;
/** Step control: safety factor and bounds on growth, the usual values (Hairer, Norsett & Wanner, section II.4). */
const SAFETY = 0.9;
const MOST_GROWTH = 4;
const MOST_SHRINKING = 0.2;
/** Below this step, s, error control gives up and accepts: only a ball turning on the spot gets here. */
const SHORTEST_STEP = 1e-7;

export interface StepperOptions {
  readonly gradientAt: GradientAt;
  /** Rolling friction a_f, m/s^2. */
  readonly friction: number;
  /** Longest way per step, m: short enough that no cell of the grid is jumped over unseen. */
  readonly longestReach: number;
  /** Divides the error allowed per step; default 1; for tests of convergence. */
  readonly tighter?: number;
  /** Fixed step in s instead of error control; for tests of the order. */
  readonly fixedStep?: number;
}

export interface Stepper extends Segment {
  begin(x: number, y: number, vx: number, vy: number): void;
  /** Take one step; the state at its end becomes the current one. */
  advance(): void;
  /** Current x, y, vx, vy, ax, ay, t. */
  readonly current: Float64Array;
  /** Replace the current velocity, m/s (a ball that turns on the spot). */
  redirect(vx: number, vy: number): void;
  /** Gradient evaluations since `begin`. */
  evaluations(): number;
}

/** A stepper; its memory is made once, stepping allocates nothing. */
export function makeStepper(options: StepperOptions): Stepper {
  const { gradientAt, friction, longestReach, tighter = 1, fixedStep = 0 } = options;
  const pull = ROLLING_FACTOR * GRAVITY;
  const previous = new Float64Array(7);
  const current = new Float64Array(7);
  const stage = new Float64Array(4);
  const force = new Float64Array(2);
  const gradient = new Float64Array(2);
  // Step size to try next, evaluations: kept in a typed array because doubles in closures are boxed.
  const keep = new Float64Array(2);

  /** Acceleration of `stage` (x, y, vx, vy) into `force`. */
  const accelerate = (): void => {
    gradientAt(stage, gradient);
    const vx = stage[2];
    const vy = stage[3];
    const speed = Math.sqrt(vx * vx + vy * vy);
    const drag = speed > 0 ? friction / speed : 0;
    force[0] = -drag * vx - pull * gradient[0];
    force[1] = -drag * vy - pull * gradient[1];
    keep[1]++;
  };

  const redirect = (vx: number, vy: number): void => {
    current[2] = vx;
    current[3] = vy;
    stage.set(current.subarray(0, 4));
    accelerate();
    current[4] = force[0];
    current[5] = force[1];
    keep[0] = Math.max(SHORTEST_STEP, Math.sqrt(vx * vx + vy * vy) / friction);
  };

  const begin = (x: number, y: number, vx: number, vy: number): void => {
    current[0] = x;
    current[1] = y;
    current[6] = 0;
    keep[1] = 0;
    redirect(vx, vy);
    previous.set(current);
  };

  const advance = (): void => {
    previous.set(current);
    const x = previous[0];
    const y = previous[1];
    const vx1 = previous[2];
    const vy1 = previous[3];
    const ax1 = previous[4];
    const ay1 = previous[5];
    const speed = Math.sqrt(vx1 * vx1 + vy1 * vy1);
    const along = speed > 0 ? (ax1 * vx1 + ay1 * vy1) / speed : 0;
    const size = Math.sqrt(ax1 * ax1 + ay1 * ay1);
    let limit = longestReach / Math.max(speed, Math.sqrt(size * longestReach));
    if (along < 0) limit = Math.min(limit, (MOST_SLOWING * speed) / -along);
    let h = fixedStep > 0 ? fixedStep : Math.min(keep[0], limit);
    for (;;) {
      const vx2 = vx1 + h * (1 / 5) * ax1;
      const vy2 = vy1 + h * (1 / 5) * ay1;
      stage[0] = x + h * (1 / 5) * vx1;
      stage[1] = y + h * (1 / 5) * vy1;
      stage[2] = vx2;
      stage[3] = vy2;
      accelerate();
      const ax2 = force[0];
      const ay2 = force[1];
      const vx3 = vx1 + h * ((3 / 40) * ax1 + (9 / 40) * ax2);
      const vy3 = vy1 + h * ((3 / 40) * ay1 + (9 / 40) * ay2);
      stage[0] = x + h * ((3 / 40) * vx1 + (9 / 40) * vx2);
      stage[1] = y + h * ((3 / 40) * vy1 + (9 / 40) * vy2);
      stage[2] = vx3;
      stage[3] = vy3;
      accelerate();
      const ax3 = force[0];
      const ay3 = force[1];
      const vx4 = vx1 + h * ((44 / 45) * ax1 - (56 / 15) * ax2 + (32 / 9) * ax3);
      const vy4 = vy1 + h * ((44 / 45) * ay1 - (56 / 15) * ay2 + (32 / 9) * ay3);
      stage[0] = x + h * ((44 / 45) * vx1 - (56 / 15) * vx2 + (32 / 9) * vx3);
      stage[1] = y + h * ((44 / 45) * vy1 - (56 / 15) * vy2 + (32 / 9) * vy3);
      stage[2] = vx4;
      stage[3] = vy4;
      accelerate();
      const ax4 = force[0];
      const ay4 = force[1];
      const vx5 =
        vx1 + h * ((19372 / 6561) * ax1 - (25360 / 2187) * ax2 + (64448 / 6561) * ax3 - (212 / 729) * ax4);
      const vy5 =
        vy1 + h * ((19372 / 6561) * ay1 - (25360 / 2187) * ay2 + (64448 / 6561) * ay3 - (212 / 729) * ay4);
      stage[0] =
        x + h * ((19372 / 6561) * vx1 - (25360 / 2187) * vx2 + (64448 / 6561) * vx3 - (212 / 729) * vx4);
      stage[1] =
        y + h * ((19372 / 6561) * vy1 - (25360 / 2187) * vy2 + (64448 / 6561) * vy3 - (212 / 729) * vy4);
      stage[2] = vx5;
      stage[3] = vy5;
      accelerate();
      const ax5 = force[0];
      const ay5 = force[1];
      const vx6 =
        vx1 +
        h *
          ((9017 / 3168) * ax1 -
            (355 / 33) * ax2 +
            (46732 / 5247) * ax3 +
            (49 / 176) * ax4 -
            (5103 / 18656) * ax5);
      const vy6 =
        vy1 +
        h *
          ((9017 / 3168) * ay1 -
            (355 / 33) * ay2 +
            (46732 / 5247) * ay3 +
            (49 / 176) * ay4 -
            (5103 / 18656) * ay5);
      stage[0] =
        x +
        h *
          ((9017 / 3168) * vx1 -
            (355 / 33) * vx2 +
            (46732 / 5247) * vx3 +
            (49 / 176) * vx4 -
            (5103 / 18656) * vx5);
      stage[1] =
        y +
        h *
          ((9017 / 3168) * vy1 -
            (355 / 33) * vy2 +
            (46732 / 5247) * vy3 +
            (49 / 176) * vy4 -
            (5103 / 18656) * vy5);
      stage[2] = vx6;
      stage[3] = vy6;
      accelerate();
      const ax6 = force[0];
      const ay6 = force[1];
      const vx7 =
        vx1 +
        h *
          ((35 / 384) * ax1 + (500 / 1113) * ax3 + (125 / 192) * ax4 - (2187 / 6784) * ax5 + (11 / 84) * ax6);
      const vy7 =
        vy1 +
        h *
          ((35 / 384) * ay1 + (500 / 1113) * ay3 + (125 / 192) * ay4 - (2187 / 6784) * ay5 + (11 / 84) * ay6);
      const x7 =
        x +
        h *
          ((35 / 384) * vx1 + (500 / 1113) * vx3 + (125 / 192) * vx4 - (2187 / 6784) * vx5 + (11 / 84) * vx6);
      const y7 =
        y +
        h *
          ((35 / 384) * vy1 + (500 / 1113) * vy3 + (125 / 192) * vy4 - (2187 / 6784) * vy5 + (11 / 84) * vy6);
      stage[0] = x7;
      stage[1] = y7;
      stage[2] = vx7;
      stage[3] = vy7;
      accelerate();
      const ax7 = force[0];
      const ay7 = force[1];
      let accepted = true;
      if (fixedStep === 0) {
        const errorX = estimate(vx1, vx3, vx4, vx5, vx6, vx7);
        const errorY = estimate(vy1, vy3, vy4, vy5, vy6, vy7);
        const errorVx = estimate(ax1, ax3, ax4, ax5, ax6, ax7);
        const errorVy = estimate(ay1, ay3, ay4, ay5, ay6, ay7);
        const error =
          h *
          tighter *
          Math.max(
            Math.sqrt(errorX * errorX + errorY * errorY) / POSITION_TOLERANCE,
            Math.sqrt(errorVx * errorVx + errorVy * errorVy) / VELOCITY_TOLERANCE,
          );
        const factor = error > 0 ? SAFETY * error ** -0.2 : MOST_GROWTH;
        accepted = error <= 1 || h <= SHORTEST_STEP;
        keep[0] = h * Math.min(MOST_GROWTH, Math.max(MOST_SHRINKING, factor));
      }
      if (accepted) {
        current[0] = x7;
        current[1] = y7;
        current[2] = vx7;
        current[3] = vy7;
        current[4] = ax7;
        current[5] = ay7;
        current[6] = previous[6] + h;
        return;
      }
      h = Math.max(SHORTEST_STEP, keep[0]);
    }
  };

  const at = (fraction: number, out: Float64Array): void => {
    const h = current[6] - previous[6];
    const x = quintic(previous, current, 0, h, fraction);
    const y = quintic(previous, current, 1, h, fraction);
    const vx = h > 0 ? quinticSlope(previous, current, 0, h, fraction) : current[2];
    const vy = h > 0 ? quinticSlope(previous, current, 1, h, fraction) : current[3];
    const speed = Math.sqrt(vx * vx + vy * vy);
    out[X] = x;
    out[Y] = y;
    out[DIRECTION_X] = speed > 0 ? vx / speed : 1;
    out[DIRECTION_Y] = speed > 0 ? vy / speed : 0;
    out[SPEED] = speed;
    out[TIME] = previous[6] + fraction * h;
  };

  return { begin, advance, at, current, redirect, evaluations: () => keep[1] };
}

/** Difference of the fifth and fourth order results per unit of step (the second stage does not enter). */
const estimate = (k1: number, k3: number, k4: number, k5: number, k6: number, k7: number): number =>
  (71 / 57600) * k1 -
  (71 / 16695) * k3 +
  (71 / 1920) * k4 -
  (17253 / 339200) * k5 +
  (22 / 525) * k6 -
  (1 / 40) * k7;

/** Hermite quintic of component `i` between two states a step h apart. */
function quintic(a: Float64Array, b: Float64Array, i: number, h: number, t: number): number {
  const v = h * a[i + 2];
  const w = h * h * a[i + 4];
  const d = b[i] - a[i] - v - w / 2;
  const e = h * b[i + 2] - v - w;
  const f = h * h * b[i + 4] - w;
  const c3 = 10 * d - 4 * e + f / 2;
  const c4 = -15 * d + 7 * e - f;
  const c5 = 6 * d - 3 * e + f / 2;
  return a[i] + t * (v + t * (w / 2 + t * (c3 + t * (c4 + t * c5))));
}

/** Its time derivative. */
function quinticSlope(a: Float64Array, b: Float64Array, i: number, h: number, t: number): number {
  const v = h * a[i + 2];
  const w = h * h * a[i + 4];
  const d = b[i] - a[i] - v - w / 2;
  const e = h * b[i + 2] - v - w;
  const f = h * h * b[i + 4] - w;
  const c3 = 10 * d - 4 * e + f / 2;
  const c4 = -15 * d + 7 * e - f;
  const c5 = 6 * d - 3 * e + f / 2;
  return (v + t * (w + t * (3 * c3 + t * (4 * c4 + t * 5 * c5)))) / h;
}
