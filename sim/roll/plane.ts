/**
 * A ball on a tilted plane and the hole it may pass: the roller made of the closed form (plane-motion.ts).
 *
 * Answers for: the closest pass, the rim, the rest, each as a root in the progress variable, by Newton kept in a bracket.
 * A pass costs 1 to 4 microseconds, so its inner functions share variables instead of making objects
 * (which is why they stand in one file of more than 400 lines).
 * Leaves out: capture, edges (a plane has none).
 */
import { HOLE_RADIUS, LONGEST_ROLL } from '../constants.ts';
import type { PlaneSurface, Point } from '../types.ts';
import { frictionOf, type PlaneState, planeState, steepnessOf } from './plane-motion.ts';
import type { MovableRoller, Pass } from './roller.ts';

export {
  frictionOf,
  type PlaneState,
  planeReach,
  planeState,
  steepestHold,
  steepnessOf,
} from './plane-motion.ts';

/** Events are solved until the last step is below this, m: far inside the tolerances of read/, which steers by the result. */
const PLACE_TOLERANCE = 1e-11;
const MOST_STEPS = 60;
/** Halvings when a ball may have come past, or inside, and turned back between two looks. */
const HALVINGS = 24;
/** Share of the launch speed below which passing is judged by the direction the ball then has (as on a field). */
const SETTLED_SHARE = 0.05;
/** -ln of that share: no ball settles before this progress over 1 + kappa, not even straight uphill. */
const SETTLED_LAMBDA = 2.9957;
/** Up to this kappa the four terms are made of two exponentials, with no danger of overflow or of a vanishing exponent. */
const PLAIN_KAPPA = 0.95;
/** From this kappa on a slope can turn a ball round and bring it past the hole again. */
const TURNING_KAPPA = 0.4;
/** Distance between traced points, m, and the most and fewest of them. */
const TRACE_SPACING = 0.025;
/** A ball that never stops is traced this far, m: beyond any green. */
const LONGEST_TRACE = 60;
const MOST_POINTS = 1000;
const FEWEST_POINTS = 40;

/** Roller for a plane; see Roller. O(1) memory, no allocation per pass. */
export function planeRoller(
  surface: PlaneSurface,
  greenSpeed: number,
  ball: Point,
  hole: Point,
): MovableRoller {
  const a = frictionOf(greenSpeed);
  const kappa = steepnessOf(surface, greenSpeed);
  const stops = kappa < 1;
  const plain = kappa < PLAIN_KAPPA;
  const downX = Math.cos(surface.downhill);
  const downY = Math.sin(surface.downhill);
  // Where the ball starts, and the hole as seen from there: downhill, to the left of downhill.
  let startX = 0;
  let startY = 0;
  let holeX = 0;
  let holeLeft = 0;
  let distance = 0;
  const startFrom = (x: number, y: number): void => {
    startX = x;
    startY = y;
    holeX = (hole.x - x) * downX + (hole.y - y) * downY;
    holeLeft = -(hole.x - x) * downY + (hole.y - y) * downX;
    distance = Math.hypot(hole.x - x, hole.y - y);
  };
  startFrom(ball.x, ball.y);
  const state: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };

  // The launch in hand: half-angle from downhill, with the hole mirrored to go with it.
  let side = 1;
  let s = 0;
  let c = 1;
  let v0 = 1;
  let holeY = 0;
  let settledAt = 0;
  let settledX = 1;
  let settledY = 0;
  const launch = (heading: number, speed: number): void => {
    s = Math.sin((heading - surface.downhill) / 2);
    c = Math.cos((heading - surface.downhill) / 2);
    side = s * c < 0 ? -1 : 1;
    s = Math.abs(s);
    c = Math.abs(c);
    v0 = speed;
    holeY = side * holeLeft;
    settledAt = -1;
    lookedAt = -1;
  };
  const worldX = (x: number, y: number): number => startX + x * downX - side * y * downY;
  const worldY = (x: number, y: number): number => startY + x * downY + side * y * downX;

  // Where the ball is at the progress last looked at: place, direction (unit vector), speed.
  let placeX = 0;
  let placeY = 0;
  let goingX = 1;
  let goingY = 0;
  let pace = 0;
  // What is left of the two parts of the speed, that down and that up the slope.
  let faster = 1;
  let slower = 1;
  let lookedAt = -1;
  const look = (lambda: number): void => {
    if (!plain) {
      planeState(a, kappa, v0, s, c, lambda, state);
      placeX = state.x;
      placeY = state.y;
      // From the terms, not from the velocity: that may have come down to nothing.
      const turn = Math.exp(-kappa * lambda);
      const down = c * c - s * s * turn * turn;
      const total = c * c + s * s * turn * turn;
      goingX = down / total;
      goingY = (2 * s * c * turn) / total;
      pace = Math.sqrt(state.vx * state.vx + state.vy * state.vy);
      return;
    }
    if (lambda === lookedAt) return;
    lookedAt = lambda;
    const q = Math.exp(-lambda);
    const k = Math.exp(kappa * lambda);
    faster = q * k;
    slower = q / k;
    const c2 = c * c;
    const s2 = s * s;
    const reach = (v0 * v0) / a;
    placeX =
      reach *
      ((c2 * c2 * (1 - faster * faster)) / (2 - 2 * kappa) -
        (s2 * s2 * (1 - slower * slower)) / (2 + 2 * kappa));
    placeY =
      2 * reach * s * c * ((c2 * (1 - q * faster)) / (2 - kappa) + (s2 * (1 - q * slower)) / (2 + kappa));
    const total = c2 * faster + s2 * slower;
    goingX = (c2 * faster - s2 * slower) / total;
    goingY = (2 * s * c * q) / total;
    pace = v0 * total;
  };

  /** Seconds to the progress last looked at. */
  const timeThere = (): number =>
    plain
      ? (v0 / a) * ((c * c * (1 - faster)) / (1 - kappa) + (s * s * (1 - slower)) / (1 + kappa))
      : state.time;

  /**
   * Progress at which the ball has SETTLED_SHARE of its speed left: Newton on a convex, falling logarithm. Also keeps the
   * direction it has there.
   */
  const settles = (): number => {
    if (settledAt >= 0) return settledAt;
    if (!stops) return Number.POSITIVE_INFINITY;
    const c2 = c * c;
    const s2 = s * s;
    let lambda = 0;
    let turn = 1;
    for (let step = 0; step < MOST_STEPS; step++) {
      turn = Math.exp(-2 * kappa * lambda);
      const total = c2 + s2 * turn;
      const off = (kappa - 1) * lambda + Math.log(total / SETTLED_SHARE);
      const more = off / (1 - (kappa * (c2 - s2 * turn)) / total);
      lambda += more;
      if (more < 1e-9) break;
    }
    settledAt = lambda;
    const total = c2 + s2 * turn;
    settledX = (c2 - s2 * turn) / total;
    settledY = (2 * s * c * Math.sqrt(turn)) / total;
    return lambda;
  };

  // Direction of travel by which passing is judged, and how fast `along` grows with progress: set by `along`.
  let towardX = 1;
  let towardY = 0;
  let alongStep = 0;
  /**
   * How far the ball is past its closest pass, along its direction, m (negative: not yet there). In its last millimetres a
   * ball hooks straight downhill, and would "pass" a hole it never reached; once settled it keeps the direction it had.
   */
  const along = (lambda: number): number => {
    if (lambda * (1 + kappa) > SETTLED_LAMBDA && lambda > settles()) {
      towardX = settledX;
      towardY = settledY;
      look(lambda);
      alongStep = ((pace * pace) / a) * (goingX * towardX + goingY * towardY);
      return (placeX - holeX) * towardX + (placeY - holeY) * towardY;
    }
    look(lambda);
    towardX = goingX;
    towardY = goingY;
    const offX = placeX - holeX;
    const offY = placeY - holeY;
    // The angle from downhill falls at kappa times its sine.
    alongStep = (pace * pace) / a + kappa * goingY * (offX * goingY - offY * goingX);
    return offX * towardX + offY * towardY;
  };
  /** How far inside the rim circle, m; sets alongStep likewise. */
  const within = (lambda: number): number => {
    look(lambda);
    const offX = placeX - holeX;
    const offY = placeY - holeY;
    const apart = Math.sqrt(offX * offX + offY * offY);
    alongStep = ((-pace * pace) / a) * ((offX * goingX + offY * goingY) / apart);
    return HOLE_RADIUS - apart;
  };

  /** A progress at which the ball is past, between one where it draws near and one where it draws away, both short of it. */
  const comesPast = (from: number, to: number): number | undefined => {
    let low = from;
    let high = to;
    for (let step = 0; step < HALVINGS; step++) {
      const middle = (low + high) / 2;
      if (along(middle) >= 0) return middle;
      if (alongStep > 0) low = middle;
      else high = middle;
    }
    return undefined;
  };

  /**
   * Root of `f` (negative at low, not at high) from a place it was just asked for: Newton kept in its bracket, in the
   * measure of way: that grows by less with each progress, as the square of the speed falls (Halley's step).
   */
  const solve = (
    f: (lambda: number) => number,
    from: number,
    to: number,
    at: number,
    there: number,
  ): number => {
    let low = from;
    let high = to;
    let lambda = at;
    let value = there;
    for (let step = 0; step < MOST_STEPS; step++) {
      if (value < 0) low = lambda;
      else high = lambda;
      if (Math.abs(value) < PLACE_TOLERANCE) break;
      const newton = value / alongStep;
      let next = lambda - newton / (1 + (1 - kappa * goingX) * newton);
      if (!(next > low && next < high)) next = (low + high) / 2;
      if (next === lambda) break;
      lambda = next;
      value = f(lambda);
    }
    return lambda;
  };

  /** Largest progress worth looking at: at rest to rounding, or LONGEST_ROLL for a ball that gathers speed. */
  const lastLambda = (): number => {
    if (stops) return 38 / (2 - 2 * kappa);
    let high = 1;
    while (planeState(a, kappa, v0, s, c, high, state).time < LONGEST_ROLL && high < 700) high *= 1.5;
    return high;
  };

  /** Of the pass in hand: the closest so far, and the first progress known to lie inside the rim circle with one before it outside. */
  let nearest = 0;
  let nearestAt = 0;
  let insideAt = -1;
  let outsideAt = 0;
  /** Keep what `along` last looked at if it is the nearest so far. */
  const note = (lambda: number, speed: number, out: Pass): void => {
    const offX = placeX - holeX;
    const offY = placeY - holeY;
    const apart = Math.sqrt(offX * offX + offY * offY);
    if (insideAt < 0) {
      if (apart < HOLE_RADIUS) insideAt = lambda;
      else outsideAt = lambda;
    }
    if (apart >= nearest) return;
    nearest = apart;
    nearestAt = lambda;
    out.miss = side * (towardY * offX - towardX * offY);
    out.missSpeed = speed;
    out.missHeading = Math.atan2(
      towardX * downY + side * towardY * downX,
      towardX * downX - side * towardY * downY,
    );
  };

  /** A settled ball that creeps back down a steep slope may still come over the rim: sets insideAt. */
  const creepIn = (end: number): void => {
    const settled = settles();
    look(settled);
    const left = (pace * pace) / (2 * a * (1 - kappa));
    if (Math.hypot(placeX - holeX, placeY - holeY) > HOLE_RADIUS + left) return;
    let before = settled;
    let ahead = within(before) < 0 && alongStep > 0;
    for (let stride = 0.3; before < end; stride *= 1.4) {
      const bound = Math.min(settled + stride, end);
      const inside = within(bound) >= 0;
      if (inside) insideAt = bound;
      else if (ahead && alongStep < 0) {
        // Nearest in between: halve on the sign of the approach.
        let low = before;
        let high = bound;
        for (let step = 0; step < HALVINGS && insideAt < 0; step++) {
          const middle = (low + high) / 2;
          if (within(middle) >= 0) insideAt = middle;
          else if (alongStep > 0) low = middle;
          else high = middle;
        }
      }
      if (insideAt >= 0) {
        outsideAt = before;
        return;
      }
      ahead = alongStep > 0;
      before = bound;
    }
  };

  const pass = (heading: number, speed: number, out: Pass): Pass => {
    launch(heading, speed);
    const end = lastLambda();
    out.status = stops ? 'atRest' : 'neverStops';
    out.evaluations = 0;
    out.met = false;
    out.rimSpeed = 0;
    out.rimOffset = 0;
    nearest = Number.POSITIVE_INFINITY;
    insideAt = -1;
    outsideAt = 0;

    // Look ahead in growing strides for places where the hole falls behind.
    const cosine = c * c - s * s;
    const share = (2 * a * (1 - kappa * cosine) * distance) / (speed * speed);
    const guess = share < 0.98 && stops ? -Math.log1p(-share) / (2 - 2 * kappa * cosine) : 0;
    let before = 0;
    let ahead = -holeX * cosine - holeY * 2 * s * c < 0;
    if (!ahead) {
      along(0);
      note(0, speed, out);
    }
    for (let upTo = guess > 0 && guess < end ? guess * 1.1 : 0.3; ; upTo *= 1.4) {
      // Where no ball turns round, one that has settled goes on as it goes: a last look will do.
      if (kappa < TURNING_KAPPA && upTo * (1 + kappa) > SETTLED_LAMBDA && upTo > settles()) upTo = end;
      let bound = Math.min(upTo, end);
      let off = along(bound);
      let passed = off >= 0;
      if (!passed && ahead && alongStep < 0 && kappa >= TURNING_KAPPA) {
        const between = comesPast(before, bound);
        if (between !== undefined) {
          off = along(between);
          passed = true;
          bound = between;
          upTo = between;
        }
      }
      if (passed && ahead) {
        note(solve(along, before, bound, bound, off), pace, out);
        if (kappa < TURNING_KAPPA) break;
      }
      ahead = !passed;
      before = bound;
      if (bound === end) {
        if (ahead) note(end, 0, out);
        break;
      }
    }

    if (insideAt < 0 && stops && kappa >= TURNING_KAPPA) creepIn(end);
    look(nearestAt);
    out.missTime = timeThere();
    planeState(a, kappa, speed, s, c, stops ? Number.POSITIVE_INFINITY : end, state);
    out.time = state.time;
    out.restX = worldX(state.x, state.y);
    out.restY = worldY(state.x, state.y);
    if (insideAt < 0 && stops && Math.hypot(state.x - holeX, state.y - holeY) < HOLE_RADIUS) insideAt = end;
    if (insideAt >= 0) {
      // A ball struck inside the circle meets the rim at once.
      let rim = 0;
      if (insideAt > 0 && distance > HOLE_RADIUS) {
        look(insideAt);
        const chord = Math.sqrt(
          Math.max(0, HOLE_RADIUS ** 2 - (placeX - holeX) ** 2 - (placeY - holeY) ** 2),
        );
        // One chord back, over which the ball was faster.
        const back = (chord * a) / (pace * pace);
        const guess = insideAt - back / (1 + (1 - kappa * goingX) * back);
        rim = guess > outsideAt ? guess : (outsideAt + insideAt) / 2;
        rim = solve(within, outsideAt, insideAt, rim, within(rim));
      }
      look(rim);
      out.met = true;
      out.rimSpeed = pace;
      out.rimOffset = side * (goingX * (holeY - placeY) - goingY * (holeX - placeX));
    }
    return out;
  };

  /** Progress after this way (m) of a ball that gathers speed, at most `end`: halved, it is only drawn. */
  const lambdaAt = (way: number, end: number): number => {
    let low = 0;
    let high = end;
    if (planeState(a, kappa, v0, s, c, end, state).length <= way) return end;
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (planeState(a, kappa, v0, s, c, middle, state).length < way) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };

  const trace = (heading: number, speed: number): Float64Array => {
    launch(heading, speed);
    const end = stops ? Number.POSITIVE_INFINITY : lambdaAt(LONGEST_TRACE, lastLambda());
    planeState(a, kappa, v0, s, c, end, state);
    const total = state.length;
    const count = Math.min(MOST_POINTS, Math.max(FEWEST_POINTS, Math.ceil(total / TRACE_SPACING)));
    const cosine = c * c - s * s;
    const m = Math.max(0.1, 2 - 2 * kappa * cosine);
    const path = new Float64Array(3 * (count + 1));
    for (let i = 0; i < count; i++) {
      // Where a ball slows to rest the way is nearly even in 1 - q^m; where it gathers speed its way is solved for.
      look(stops ? Math.min(lastLambda(), -Math.log1p(-i / count) / m) : lambdaAt((total * i) / count, end));
      path[3 * i] = worldX(placeX, placeY);
      path[3 * i + 1] = worldY(placeX, placeY);
      path[3 * i + 2] = timeThere();
    }
    planeState(a, kappa, v0, s, c, end, state);
    path[3 * count] = worldX(state.x, state.y);
    path[3 * count + 1] = worldY(state.x, state.y);
    path[3 * count + 2] = state.time;
    return path;
  };

  return { ball, hole, pass, trace, startFrom };
}
