/**
 * The line on a plane that holds a ball, in closed form: no rolls.
 *
 * By Cross's scaling a path keeps its shape and grows as v^2. In units of v^2/a_f let P(alpha, lambda) be where a ball
 * struck at alpha from straight downhill is after progress lambda (roll/plane.ts), and D(alpha) where it rests. A path
 * crosses the hole at progress lambda when P points to the hole; that fixes alpha, then v^2 = a_f L / |P|, and the pace
 * is L |D - P| / |P|. So every line is named by how far its ball has slowed at the hole, and the pace falls from infinity
 * (lambda = 0) to nothing (lambda = infinity).
 *
 * There always is one: at each lambda the direction of P runs from straight down (alpha = 0) to straight up (alpha = pi),
 * so some alpha points to the hole, and the pace then takes every value. It is the only one: both run monotonically
 * (tests/sim/read/plane-line.test.ts looks). Launch speed has a smallest value along the way, which is why speed does not name a
 * line. Leaves out: planes too steep to hold a ball, where nothing rests.
 */
import { frictionOf, type PlaneState, planeState, steepnessOf } from '../roll/plane.ts';
import type { PlaneSurface, Point, Putt } from '../types.ts';

/** A line: its start and where on it the hole lies. */
export interface PlaneLine {
  /** Radians from +x. */
  heading: number;
  /** Launch speed, m/s. */
  speed: number;
  /** Rest past the covered hole, m. */
  pace: number;
  /** Progress lambda = -ln q at the hole centre. */
  progress: number;
  /** Angles tried. */
  rolls: number;
}

/** What happens on a line: see LineSummary for units. */
export interface PlaneEvents {
  readonly curveHeight: number;
  readonly apex: Point;
  readonly arrivalSpeed: number;
  readonly entry: number;
  readonly time: number;
  readonly rest: Point;
}

export interface PlaneLines {
  /** The line for a pace, m past the covered hole, > 0. */
  lineAt(pace: number): PlaneLine | undefined;
  eventsOn(line: { readonly heading: number; readonly speed: number; readonly pace: number }): PlaneEvents;
}

/** Headings are solved to this, radians: 2e-12 m at 20 m. */
const ANGLE_TOLERANCE = 1e-13;
/** Relative error left in pace. */
const PACE_TOLERANCE = 1e-12;
const MOST_STEPS = 100;

/** Lines of one putt; undefined when the plane does not hold a ball. */
export function planeLines({
  surface,
  greenSpeed,
  ball,
  hole,
}: Putt & { readonly surface: PlaneSurface }): PlaneLines | undefined {
  const friction = frictionOf(greenSpeed);
  const kappa = steepnessOf(surface, greenSpeed);
  if (!(kappa < 1)) return undefined;
  const downX = Math.cos(surface.downhill);
  const downY = Math.sin(surface.downhill);
  const holeDown = (hole.x - ball.x) * downX + (hole.y - ball.y) * downY;
  const holeLeft = -(hole.x - ball.x) * downY + (hole.y - ball.y) * downX;
  const length = Math.hypot(holeDown, holeLeft);
  // Mirrored so that the hole lies at 0 to pi from downhill.
  const side = holeLeft < 0 ? -1 : 1;
  const toHole = Math.atan2(Math.abs(holeLeft), holeDown);
  // Exponents of the four terms of position.
  const e1 = 2 - 2 * kappa;
  const e2 = 2 + 2 * kappa;
  const e3 = 2 - kappa;
  const e4 = 2 + kappa;

  // Of the last `look`: decay, way gone and way to go of each term at one progress.
  let q1 = 1;
  let q2 = 1;
  let q3 = 1;
  let q4 = 1;
  let g1 = 0;
  let g2 = 0;
  let g3 = 0;
  let g4 = 0;
  const setProgress = (lambda: number): void => {
    q1 = Math.exp(-e1 * lambda);
    q2 = Math.exp(-e2 * lambda);
    q3 = Math.exp(-e3 * lambda);
    q4 = Math.exp(-e4 * lambda);
    g1 = -Math.expm1(-e1 * lambda) / e1;
    g2 = -Math.expm1(-e2 * lambda) / e2;
    g3 = -Math.expm1(-e3 * lambda) / e3;
    g4 = -Math.expm1(-e4 * lambda) / e4;
  };
  // Of the last `setAngle`: P and its derivatives by angle and progress.
  let s = 0;
  let c = 1;
  let x = 0;
  let y = 0;
  let xByAngle = 0;
  let yByAngle = 0;
  const setAngle = (alpha: number): void => {
    s = Math.sin(alpha / 2);
    c = Math.cos(alpha / 2);
    const c2 = c * c;
    const s2 = s * s;
    const sc = s * c;
    x = c2 * c2 * g1 - s2 * s2 * g2;
    y = 2 * sc * (c2 * g3 + s2 * g4);
    xByAngle = -2 * sc * (c2 * g1 + s2 * g2);
    yByAngle = c2 * (c2 - 3 * s2) * g3 + s2 * (3 * c2 - s2) * g4;
  };

  let tried = 0;
  /** Launch angle whose path points to the hole at the progress set: Newton kept in its bracket. */
  const solveAngle = (guess: number): number => {
    let low = 0;
    let high = Math.PI;
    let alpha = guess > low && guess < high ? guess : toHole;
    for (let step = 0; step < MOST_STEPS; step++) {
      tried++;
      setAngle(alpha);
      const off = Math.atan2(y, x) - toHole;
      if (off < 0) low = alpha;
      else high = alpha;
      const slope = (x * yByAngle - y * xByAngle) / (x * x + y * y);
      let next = alpha - off / slope;
      if (!(next >= low && next <= high)) next = (low + high) / 2;
      if (Math.abs(next - alpha) < ANGLE_TOLERANCE) return alpha;
      alpha = next;
    }
    return alpha;
  };

  /** First guess of the angle: the chord is parallel to the path about halfway. */
  const guessAngle = (lambda: number): number => {
    const halfway = -0.5 * Math.log((1 + Math.exp(-2 * lambda)) / 2);
    return 2 * Math.atan2(Math.sin(toHole / 2), Math.cos(toHole / 2) * Math.exp(-kappa * halfway));
  };

  const lineOf = (alpha: number, lambda: number, pace: number): PlaneLine => ({
    heading: surface.downhill + side * alpha,
    speed: Math.sqrt((friction * length) / Math.hypot(x, y)),
    pace,
    progress: lambda,
    rolls: tried,
  });

  /** Way from P to the rest, relative, and its derivatives, at the angle and progress set. */
  const restAfter = (): { x: number; y: number; byAngleX: number; byAngleY: number } => {
    const c2 = c * c;
    const s2 = s * s;
    const t1 = q1 / e1;
    const t2 = q2 / e2;
    const t3 = q3 / e3;
    const t4 = q4 / e4;
    return {
      x: c2 * c2 * t1 - s2 * s2 * t2,
      y: 2 * s * c * (c2 * t3 + s2 * t4),
      byAngleX: -2 * s * c * (c2 * t1 + s2 * t2),
      byAngleY: c2 * (c2 - 3 * s2) * t3 + s2 * (3 * c2 - s2) * t4,
    };
  };

  const lineAt = (pace: number): PlaneLine | undefined => {
    if (!(pace > 0)) return undefined;
    tried = 0;
    // ln(1 + |P| / |D - P|) is 2 lambda on the level, and nearly a straight line elsewhere.
    const wanted = Math.log1p(length / pace);
    let low = 0;
    let high = Number.POSITIVE_INFINITY;
    let lambda = wanted / (2 - 2 * kappa * Math.cos(toHole));
    let alpha = guessAngle(lambda);
    for (let step = 0; step < MOST_STEPS; step++) {
      setProgress(lambda);
      alpha = solveAngle(alpha);
      const after = restAfter();
      const gone = Math.hypot(x, y);
      const left = Math.hypot(after.x, after.y);
      const off = Math.log1p(gone / left) - wanted;
      if (Math.abs(off) < PACE_TOLERANCE) return lineOf(alpha, lambda, (length * left) / gone);
      if (off < 0) low = lambda;
      else high = lambda;
      // Derivative along the lines: the angle follows the progress so that P keeps pointing to the hole.
      const c2 = c * c;
      const s2 = s * s;
      const xStep = c2 * c2 * q1 - s2 * s2 * q2;
      const yStep = 2 * s * c * (c2 * q3 + s2 * q4);
      const turn = -(x * yStep - y * xStep) / (x * yByAngle - y * xByAngle);
      const goneStep = (x * (xStep + turn * xByAngle) + y * (yStep + turn * yByAngle)) / (gone * gone);
      const leftStep =
        (after.x * (turn * after.byAngleX - xStep) + after.y * (turn * after.byAngleY - yStep)) /
        (left * left);
      const slope = (gone / (gone + left)) * (goneStep - leftStep);
      let next = lambda - off / slope;
      if (!(next > low && next < high))
        next = high === Number.POSITIVE_INFINITY ? 2 * lambda : (low + high) / 2;
      if (Math.abs(next - lambda) < 1e-15 * lambda) return lineOf(alpha, lambda, (length * left) / gone);
      alpha += Math.max(-0.2, Math.min(0.2, turn * (next - lambda)));
      lambda = next;
    }
    return undefined;
  };

  const state: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };
  const worldX = (down: number, across: number): number => ball.x + down * downX - side * across * downY;
  const worldY = (down: number, across: number): number => ball.y + down * downY + side * across * downX;

  const eventsOn: PlaneLines['eventsOn'] = (line) => {
    const alpha = side * (line.heading - surface.downhill);
    const sine = Math.sin(alpha / 2);
    const cosine = Math.cos(alpha / 2);
    const at = (lambda: number): PlaneState =>
      planeState(friction, kappa, line.speed, sine, cosine, lambda, state);
    const holeProgress = progressOf(line, sine, cosine);
    const rest = at(Number.POSITIVE_INFINITY);
    const restPoint = { x: worldX(rest.x, rest.y), y: worldY(rest.x, rest.y) };
    // The tangent of half the angle of travel falls as exp(-kappa lambda): the apex is where it is the chord's.
    const ratio = (sine * Math.cos(toHole / 2)) / (cosine * Math.sin(toHole / 2));
    const parallel = kappa > 1e-12 && ratio > 1 ? Math.log(ratio) / kappa : holeProgress / 2;
    const top = at(Math.min(parallel, holeProgress));
    const apex = { x: worldX(top.x, top.y), y: worldY(top.x, top.y) };
    const curveHeight =
      ((hole.x - ball.x) * (apex.y - ball.y) - (hole.y - ball.y) * (apex.x - ball.x)) / length;
    const there = at(holeProgress);
    return {
      curveHeight,
      apex,
      arrivalSpeed: Math.hypot(there.vx, there.vy),
      entry: Math.atan2(
        there.vx * downY + side * there.vy * downX,
        there.vx * downX - side * there.vy * downY,
      ),
      time: there.time,
      rest: restPoint,
    };
  };

  /** Progress at the hole of a line that crosses it: |P| is known from the speed, the rest from the pace. */
  const progressOf = (
    line: { readonly speed: number; readonly pace: number },
    sine: number,
    cosine: number,
  ): number => {
    s = sine;
    c = cosine;
    const unit = (line.speed * line.speed) / friction;
    const c2 = c * c;
    const s2 = s * s;
    let low = 0;
    let high = Number.POSITIVE_INFINITY;
    let lambda = Math.log1p(length / line.pace) / (2 - 2 * kappa * Math.cos(toHole));
    for (let step = 0; step < MOST_STEPS; step++) {
      setProgress(lambda);
      const after = restAfter();
      const left = Math.hypot(after.x, after.y) * unit;
      const off = Math.log(line.pace / left);
      if (off < 0) low = lambda;
      else high = lambda;
      const xStep = c2 * c2 * q1 - s2 * s2 * q2;
      const yStep = 2 * s * c * (c2 * q3 + s2 * q4);
      const slope = ((after.x * xStep + after.y * yStep) * unit * unit) / (left * left);
      let next = lambda - off / slope;
      if (!(next > low && next < high))
        next = high === Number.POSITIVE_INFINITY ? 2 * lambda : (low + high) / 2;
      if (Math.abs(next - lambda) < 1e-14 * lambda) return next;
      lambda = next;
    }
    return lambda;
  };

  return { lineAt, eventsOn };
}
