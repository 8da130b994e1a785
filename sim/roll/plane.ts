/**
 * A ball on a tilted plane, in closed form: no time stepping, no singular slopes.
 *
 * MODEL.md section 2 writes X, Y, T of the textbook hodograph with the single progress variable lambda = -ln q, where
 * q = (u/u0)^mu falls from 1 at the strike to 0 at rest. Every term then has the form G(e) = (1 - q^e)/e, whose limit
 * at e = 0 is lambda, so mu = 1/2, mu = 1, slope 0 and putts along the fall line need no special cases.
 * Leaves out: capture, edges (a plane has none).
 */
import { GRAVITY, HOLE_RADIUS, LONGEST_ROLL, ROLLING_FACTOR, STIMP_SPEED } from '../constants.ts';
import type { PlaneSurface, Point } from '../types.ts';
import type { Pass, Roller } from './roller.ts';

/** Rolling friction a_f, m/s^2, for a green speed in metres. */
export const frictionOf = (greenSpeed: number): number => STIMP_SPEED ** 2 / (2 * greenSpeed);
/** Steepest slope that holds a ball, rise over run: friction equals gravity's pull (7.8% at 10 ft). */
export const steepestHold = (greenSpeed: number): number =>
  frictionOf(greenSpeed) / (ROLLING_FACTOR * GRAVITY);

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
    const q = Math.exp(-lambda);
    const k = Math.exp(-kappa * lambda);
    out.vx = speed * q * (c2 / k - s2 * k);
    out.vy = 2 * speed * q * s * c;
  }
  return out;
}

/** Closest passes are solved until the along-track error is below this, m: far inside CENTRE_TOLERANCE of read/line.ts, which steers by the result. */
const PASS_TOLERANCE = 1e-10;
const MOST_STEPS = 80;
/** Progress at which a ball that stops short shows the direction it had: 5% of its speed, 0.25% of its roll left. */
const LAST_DIRECTION = 3;

/** Roller for a plane; see Roller. O(1) memory, no allocation per pass. */
export function planeRoller(surface: PlaneSurface, greenSpeed: number, ball: Point, hole: Point): Roller {
  const a = frictionOf(greenSpeed);
  const kappa = (ROLLING_FACTOR * GRAVITY * surface.slope) / a;
  const stops = kappa < 1;
  const downX = Math.cos(surface.downhill);
  const downY = Math.sin(surface.downhill);
  const toHoleX = hole.x - ball.x;
  const toHoleY = hole.y - ball.y;
  const holeDown = toHoleX * downX + toHoleY * downY;
  const holeLeft = -toHoleX * downY + toHoleY * downX;
  const state: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };

  // Launch values of the pass in hand: set by `launch`, read by the small helpers below.
  let side = 1;
  let s = 0;
  let c = 1;
  let v0 = 1;
  let holeX = 0;
  let holeY = 0;

  const launch = (heading: number, speed: number): void => {
    const fromDown = Math.atan2(Math.sin(heading - surface.downhill), Math.cos(heading - surface.downhill));
    side = fromDown < 0 ? -1 : 1;
    s = Math.sin(Math.abs(fromDown) / 2);
    c = Math.cos(Math.abs(fromDown) / 2);
    v0 = speed;
    holeX = holeDown;
    holeY = side * holeLeft;
  };
  const at = (lambda: number): PlaneState => planeState(a, kappa, v0, s, c, lambda, state);

  // Direction of travel by which passing is judged (unit vector): set by `look`.
  let towardX = 1;
  let towardY = 0;
  /**
   * Takes the ball's direction at this progress, or at LAST_DIRECTION if it is later: in its last millimetres a ball
   * hooks straight downhill, and would "pass" a hole it never reached. Which of two directions a ball has so late does
   * not move a path that crosses the hole centre. A ball that never stops has no such end.
   */
  const look = (lambda: number): void => {
    const p = at(stops ? Math.min(lambda, LAST_DIRECTION) : lambda);
    const v = Math.hypot(p.vx, p.vy);
    towardX = p.vx / v;
    towardY = p.vy / v;
  };
  const worldX = (x: number, y: number): number => ball.x + x * downX - side * y * downY;
  const worldY = (x: number, y: number): number => ball.y + x * downY + side * y * downX;

  /** How far the ball is past its closest pass, along its direction, m (negative: not yet there). */
  const along = (lambda: number): number => {
    look(lambda);
    const p = at(lambda);
    return (p.x - holeX) * towardX + (p.y - holeY) * towardY;
  };
  const apart = (p: PlaneState): number => Math.hypot(p.x - holeX, p.y - holeY);

  /** Largest progress worth looking at: at rest to rounding, or LONGEST_ROLL for a ball that gathers speed. */
  const lastLambda = (): number => {
    if (stops) return 38 / (2 - 2 * kappa);
    let high = 1;
    while (at(high).time < LONGEST_ROLL && high < 700) high *= 1.5;
    return high;
  };

  /**
   * First root of `f` (negative to positive) between progress 0 and `end`, by the secant method kept in a bracket. Works in
   * y = 1 - q^m, with m chosen so that the distance rolled is nearly linear in y: two or three steps for most putts.
   */
  const solve = (f: (lambda: number) => number, end: number, firstGuess: number): number => {
    const cosine = c * c - s * s;
    const m = Math.max(0.05, 2 - 2 * kappa * cosine);
    let low = 0;
    let high = -Math.expm1(-m * end);
    let y = Math.min(Math.max(firstGuess, 0), high * 0.999);
    let previousY = 0;
    let previousF = f(0);
    for (let step = 0; step < MOST_STEPS; step++) {
      const value = f(-Math.log1p(-y) / m);
      if (Math.abs(value) < PASS_TOLERANCE) break;
      if (value < 0) low = y;
      else high = y;
      const slope = (value - previousF) / (y - previousY);
      previousY = y;
      previousF = value;
      const next = y - value / slope;
      y = next > low && next < high ? next : (low + high) / 2;
      if (high - low < 1e-15) break;
    }
    return -Math.log1p(-y) / m;
  };

  const distance = Math.hypot(toHoleX, toHoleY);
  const guess = (length: number): number => {
    const cosine = c * c - s * s;
    return Math.min(0.98, (2 * a * (1 - kappa * cosine) * length) / (v0 * v0));
  };

  /** First crossing of the rim circle by marching no farther than the gap allows: slow, never misses one. */
  const marchToRim = (from: number, end: number): number | undefined => {
    let lambda = from;
    for (let step = 0; step < 400 && lambda < end; step++) {
      const p = at(lambda);
      const free = apart(p) - HOLE_RADIUS;
      if (free < 1e-9) return lambda;
      const v2 = p.vx * p.vx + p.vy * p.vy;
      if (v2 < 1e-14) return undefined;
      // dS/dlambda = v^2/a; where the ball slows this step can only fall short of the rim. 0.05: gathering speed.
      lambda += stops ? (free * a) / v2 : Math.min((free * a) / v2 / 2, 0.05);
    }
    return undefined;
  };

  const pass = (heading: number, speed: number, out: Pass): Pass => {
    launch(heading, speed);
    const end = lastLambda();
    const rest = at(stops ? Number.POSITIVE_INFINITY : end);
    out.status = stops ? 'atRest' : 'neverStops';
    out.restX = worldX(rest.x, rest.y);
    out.restY = worldY(rest.x, rest.y);
    out.time = rest.time;
    out.evaluations = 0;
    out.met = false;
    out.rimSpeed = 0;
    out.rimOffset = 0;
    const restApart = apart(rest);

    // The first progress at which the pass is behind the ball brackets it.
    let lambda = end;
    let reaches = false;
    for (let upTo = 0.25; ; upTo *= 1.5) {
      const bound = Math.min(upTo, end);
      if (along(bound) >= 0) {
        reaches = true;
        lambda = solve(along, bound, guess(distance));
        break;
      }
      if (bound === end) break;
    }
    look(lambda);
    const p = at(lambda);
    out.miss = side * (towardX * (holeY - p.y) - towardY * (holeX - p.x));
    out.missSpeed = reaches ? Math.hypot(p.vx, p.vy) : 0;
    out.missHeading = Math.atan2(p.vx * downY + side * p.vy * downX, p.vx * downX - side * p.vy * downY);
    out.missTime = p.time;

    let rim: number | undefined;
    if (apart(p) < HOLE_RADIUS || (stops && restApart < HOLE_RADIUS)) {
      const target = (progress: number): number => HOLE_RADIUS - apart(at(progress));
      const chord = Math.sqrt(Math.max(0, HOLE_RADIUS ** 2 - out.miss ** 2));
      rim = solve(target, Math.max(lambda, 1e-12), guess(distance - chord));
    } else if (reaches && kappa > 0.4) {
      // A steep slope can bring a ball back down past the hole after its first pass.
      rim = marchToRim(lambda, end);
    }
    if (rim !== undefined) {
      const r = at(rim);
      const rimSpeed = Math.hypot(r.vx, r.vy);
      out.met = true;
      out.rimSpeed = rimSpeed;
      out.rimOffset = (side * (r.vx * (holeY - r.y) - r.vy * (holeX - r.x))) / rimSpeed;
    }
    return out;
  };

  const trace = (heading: number, speed: number): Float64Array => {
    launch(heading, speed);
    const cosine = c * c - s * s;
    const m = Math.max(0.1, 2 - 2 * kappa * cosine);
    const end = lastLambda();
    const total = at(stops ? Number.POSITIVE_INFINITY : end).length;
    const count = Math.min(1200, Math.max(40, Math.ceil((stops ? total : Math.min(total, 60)) / 0.02)));
    const path = new Float64Array(3 * (count + 1));
    for (let i = 0; i <= count; i++) {
      const lambda =
        stops && i === count ? Number.POSITIVE_INFINITY : Math.min(end, -Math.log1p(-i / count) / m);
      const p = at(lambda);
      path[3 * i] = worldX(p.x, p.y);
      path[3 * i + 1] = worldY(p.x, p.y);
      path[3 * i + 2] = p.time;
    }
    return path;
  };

  return { ball, hole, pass, trace };
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
  const kappa = (ROLLING_FACTOR * GRAVITY * surface.slope) / a;
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
