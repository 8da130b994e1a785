/**
 * How a ball moves on a tilted plane, in closed form: no time stepping, no singular slopes.
 *
 * MODEL.md section 1 writes X, Y, T of the textbook hodograph with the single progress variable lambda = -ln q, where
 * q = (u/u0)^mu falls from 1 at the strike to 0 at rest. Every term then has the form G(e) = (1 - q^e)/e, whose limit
 * at e = 0 is lambda, so mu = 1/2, mu = 1, slope 0 and putts along the fall line need no special cases.
 * Leaves out: the hole (plane.ts), edges (a plane has none).
 */
import { GRAVITY, ROLLING_FACTOR, STIMP_SPEED } from '../constants.ts';
import type { PlaneSurface } from '../types.ts';

/** Rolling friction a_f, m/s^2, for a green speed in metres. */
export const frictionOf = (greenSpeed: number): number => STIMP_SPEED ** 2 / (2 * greenSpeed);
/** Steepest slope that holds a ball, rise over run: friction equals gravity's pull (7.8% at 10 ft). */
export const steepestHold = (greenSpeed: number): number =>
  frictionOf(greenSpeed) / (ROLLING_FACTOR * GRAVITY);
/** kappa: share of friction that the slope's pull undoes; at 1 or more nothing rests. */
export const steepnessOf = (surface: PlaneSurface, greenSpeed: number): number =>
  (ROLLING_FACTOR * GRAVITY * surface.slope) / frictionOf(greenSpeed);

/** Where a ball on a plane is: x downhill, y across (towards the side it was launched), velocity, all from the start. */
export interface PlaneState {
  x: number;
  y: number;
  vx: number;
  vy: number;
  time: number;
  /** Path length, m. */
  length: number;
}

/** (1 - q^e)/e for q = exp(-lambda); below |e| = 1e-9 the first-order limit is exact to rounding for lambda < 1e3. */
const gap = (e: number, lambda: number): number => {
  if (lambda === Number.POSITIVE_INFINITY) return e > 0 ? 1 / e : Number.POSITIVE_INFINITY;
  return Math.abs(e) < 1e-9 ? lambda : -Math.expm1(-e * lambda) / e;
};

/**
 * State of a ball launched at `speed` (m/s), half-angle given by s = sin(phi0/2), c = cos(phi0/2) from straight
 * downhill, after progress lambda. a = friction a_f (m/s^2), kappa = a_g/a_f.
 */
export function planeState(
  a: number,
  kappa: number,
  speed: number,
  s: number,
  c: number,
  lambda: number,
  out: PlaneState,
): PlaneState {
  const reach = (speed * speed) / a;
  const c2 = c * c;
  const s2 = s * s;
  const gDown = c2 === 0 ? 0 : c2 * c2 * gap(2 - 2 * kappa, lambda);
  const gUp = s2 === 0 ? 0 : s2 * s2 * gap(2 + 2 * kappa, lambda);
  out.x = reach * (gDown - gUp);
  out.y = s * c === 0 ? 0 : 2 * reach * s * c * (c2 * gap(2 - kappa, lambda) + s2 * gap(2 + kappa, lambda));
  out.length = reach * (gDown + gUp + (s * c === 0 ? 0 : 2 * c2 * s2 * gap(2, lambda)));
  out.time =
    (speed / a) *
    ((c2 === 0 ? 0 : c2 * gap(1 - kappa, lambda)) + (s2 === 0 ? 0 : s2 * gap(1 + kappa, lambda)));
  if (lambda === Number.POSITIVE_INFINITY) {
    out.vx = 0;
    out.vy = 0;
  } else {
    out.vx = speed * (c2 * Math.exp((kappa - 1) * lambda) - s2 * Math.exp((-kappa - 1) * lambda));
    out.vy = 2 * speed * Math.exp(-lambda) * s * c;
  }
  return out;
}

/**
 * Where balls rest for each unit of v^2 (m^2/s^2): by Cross's scaling a ball struck at v rests at ball + v^2 D(heading).
 * @returns function that fills `out` with D (m per m^2/s^2) for a heading (radians from +x); the plane must hold the ball
 */
export function planeReach(
  surface: PlaneSurface,
  greenSpeed: number,
): (heading: number, out: { x: number; y: number }) => void {
  const a = frictionOf(greenSpeed);
  const kappa = steepnessOf(surface, greenSpeed);
  const downX = Math.cos(surface.downhill);
  const downY = Math.sin(surface.downhill);
  const state: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };
  return (heading, out) => {
    const half = (heading - surface.downhill) / 2;
    planeState(a, kappa, 1, Math.sin(half), Math.cos(half), Number.POSITIVE_INFINITY, state);
    out.x = state.x * downX - state.y * downY;
    out.y = state.x * downY + state.y * downX;
  };
}
