/**
 * The read: the start direction and speed with which the ball crosses the hole centre and would rest a given pace past it.
 *
 * Method: begin with a firm putt, whose line is nearly straight, and walk the speed down, keeping the start direction on
 * the hole centre by a secant at each step. Following the line from the straight one yields the direct line, not the lob.
 * Leaves out: the chance of holing (odds/).
 */
import { GRAVITY, ROLLING_FACTOR } from '../constants.ts';
import { frictionOf } from '../roll/plane.ts';
import { bearingOf, lengthOf, rollerFor } from '../roll/roll.ts';
import { newPass, type Pass, type Roller } from '../roll/roller.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { Line, LineSummary, Point, Putt, Read } from '../types.ts';
import { paceBand, startBand } from './bands.ts';
import { type PlaneLine, type PlaneLines, planeLines } from './plane-line.ts';

/** The path must cross the hole centre within this, m. Far below the 0.5 mm asked of aim offsets, so that pace, the outer unknown, is a smooth function. */
const CENTRE_TOLERANCE = 1e-8;
/** The rest must lie this close to the asked pace, m. */
const PACE_TOLERANCE = 1e-7;
/** Firmer than any hole can hold: where the walk begins, m past on the level. */
const FIRM_START = 3;
/** The walk gives up beyond this many rolls: about ten times what the steepest plane that holds a ball needs. */
const MOST_ROLLS = 600;

/** A line that crosses the hole centre: heading (radians from +x), launch speed (m/s), and the pass it makes. */
export interface CentreLine {
  heading: number;
  speed: number;
  /** Distance from the hole to the rest, m; Infinity when the ball does not rest. */
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

const paceOf = (search: LineSearch): number =>
  search.pass.status === 'atRest'
    ? Math.hypot(search.pass.restX - search.roller.hole.x, search.pass.restY - search.roller.hole.y)
    : Number.POSITIVE_INFINITY;

/** Energy a ball needs to roll `metres` beyond the straight distance and climb to the hole, as a speed, m/s. */
function speedForDistance(putt: Putt, metres: number): number {
  const ballGround = { height: 0, gradientX: 0, gradientY: 0 };
  const holeGround = { height: 0, gradientX: 0, gradientY: 0 };
  sampleSurface(putt.surface, putt.ball.x, putt.ball.y, ballGround);
  sampleSurface(putt.surface, putt.hole.x, putt.hole.y, holeGround);
  const climb = 2 * ROLLING_FACTOR * GRAVITY * (holeGround.height - ballGround.height);
  const friction = 2 * frictionOf(putt.greenSpeed) * (lengthOf(putt) + metres);
  return Math.sqrt(Math.max(friction + climb, 0.02));
}

/**
 * Walks centre lines from firm to soft for one putt. `lineAt(pace)` solves a pace; `lineAtSpeed` continues from the last
 * line found. Kept as one object so that forty paces of a comparison cost forty short steps.
 */
class RollWalk {
  private readonly known: CentreLine[] = [];
  readonly reason: string | undefined;

  constructor(
    readonly putt: Putt,
    readonly search: LineSearch,
  ) {
    this.reason = this.begin();
  }

  private begin(): string | undefined {
    let heading = bearingOf(this.putt);
    for (const past of [FIRM_START, 6, 12]) {
      const speed = speedForDistance(this.putt, past);
      const found = centreHeading(this.search, heading, speed);
      if (found !== undefined) {
        heading = found;
        this.known.push({ heading, speed, pace: paceOf(this.search) });
        return undefined;
      }
    }
    return 'No start line found: even a firm ball does not cross the hole from here. Move the ball closer or choose a gentler slope.';
  }

  /** Step from a known line to a new speed, in as many parts as it takes. */
  private stepTo(from: CentreLine, speed: number): CentreLine | undefined {
    let current = from;
    let part = speed - from.speed;
    for (let guard = 0; guard < 60 && this.search.rolls < MOST_ROLLS; guard++) {
      const left = speed - current.speed;
      if (Math.abs(left) < 1e-13) return current;
      if (Math.abs(part) > Math.abs(left)) part = left;
      const target = current.speed + part;
      const heading = centreHeading(this.search, this.predict(target, current), target);
      if (heading === undefined) {
        part /= 2;
        if (Math.abs(part) < 1e-6) return undefined;
        continue;
      }
      current = { heading, speed: target, pace: paceOf(this.search) };
      this.known.push(current);
    }
    return undefined;
  }

  /** Heading at a speed from the two nearest known lines (linear in 1/v^2, the natural measure of break). */
  private predict(speed: number, current: CentreLine): number {
    let other: CentreLine | undefined;
    for (const line of this.known)
      if (
        line !== current &&
        (other === undefined || Math.abs(line.speed - speed) < Math.abs(other.speed - speed))
      )
        other = line;
    if (other === undefined || Math.abs(other.speed - current.speed) < 1e-9) return current.heading;
    const x = (v: number): number => 1 / (v * v);
    const slope = (other.heading - current.heading) / (x(other.speed) - x(current.speed));
    const change = slope * (x(speed) - x(current.speed));
    return current.heading + Math.max(-0.3, Math.min(0.3, change));
  }

  /** The centre line at this launch speed, if the ball gets there. */
  lineAtSpeed(speed: number): CentreLine | undefined {
    if (this.known.length === 0) return undefined;
    this.search.rolls = 0;
    let nearest = this.known[0];
    for (const line of this.known)
      if (Math.abs(line.speed - speed) < Math.abs(nearest.speed - speed)) nearest = line;
    return this.stepTo(nearest, speed);
  }

  /** The centre line whose ball would rest `pace` metres past the covered hole. */
  lineAt(pace: number): CentreLine | undefined {
    if (this.known.length === 0) return undefined;
    this.search.rolls = 0;
    let high: CentreLine | undefined;
    let low: CentreLine | undefined;
    for (const line of this.known) {
      if (line.pace >= pace && (high === undefined || line.pace < high.pace)) high = line;
      if (line.pace < pace && (low === undefined || line.pace > low.pace)) low = line;
    }
    // Pace known only as Infinity or too soft: go firmer until it is bracketed from above.
    while (high === undefined && low !== undefined) {
      const firmer = this.stepTo(low, low.speed * 1.15);
      if (firmer === undefined) return undefined;
      if (firmer.pace >= pace) high = firmer;
      else low = firmer;
    }
    if (high === undefined) return undefined;
    let slowest = low?.speed ?? 0;
    let bound: CentreLine | undefined = low;
    for (let step = 0; step < 80 && this.search.rolls < MOST_ROLLS; step++) {
      const error = high.pace - pace;
      if (Math.abs(error) < PACE_TOLERANCE) return high;
      // v^2 grows with the distance rolled: interpolate there, or fall back on the energy of the surplus distance.
      const v2 = high.speed ** 2;
      let target: number;
      if (bound !== undefined && Number.isFinite(high.pace)) {
        const t = (pace - bound.pace) / (high.pace - bound.pace);
        target = Math.sqrt(bound.speed ** 2 + t * (v2 - bound.speed ** 2));
      } else if (Number.isFinite(high.pace)) {
        const friction = frictionOf(this.putt.greenSpeed);
        target = Math.sqrt(Math.max(v2 - 2 * friction * error, (slowest ** 2 + v2) / 2 - 1e-12));
      } else target = (high.speed * 3 + slowest) / 4;
      if (!(target > slowest && target < high.speed)) target = (slowest + high.speed) / 2;
      const next = this.stepTo(high, target);
      if (next === undefined) {
        slowest = target;
        if (high.speed - slowest < 1e-9) return undefined;
        continue;
      }
      if (Math.abs(next.pace - pace) < PACE_TOLERANCE) return next;
      if (next.pace > pace) high = next;
      else {
        bound = next;
        slowest = next.speed;
      }
      if (bound !== undefined && step % 3 === 2) {
        const middle = this.stepTo(high, (bound.speed + high.speed) / 2);
        if (middle === undefined) continue;
        if (middle.pace > pace) high = middle;
        else {
          bound = middle;
          slowest = middle.speed;
        }
      }
    }
    return Math.abs(high.pace - pace) < 1e-5 ? high : undefined;
  }
}

/** Lines of one putt, one after another: in closed form on a plane, by rolling on other ground. */
export class LineWalk {
  readonly search: LineSearch;
  /** Why there is no line at any pace; undefined when there are some. */
  readonly reason: string | undefined;
  readonly plane: PlaneLines | undefined;
  private readonly rolled: RollWalk | undefined;

  constructor(readonly putt: Putt) {
    this.search = { roller: rollerFor(putt), pass: newPass(), rolls: 0 };
    const { surface } = putt;
    if (surface.kind === 'plane') {
      this.plane = planeLines({ ...putt, surface });
      if (this.plane === undefined) this.reason = NEVER_RESTS;
    } else {
      this.rolled = new RollWalk(putt, this.search);
      this.reason = this.rolled.reason;
    }
  }

  /** The centre line whose ball would rest `pace` metres past the covered hole. */
  lineAt(pace: number): CentreLine | undefined {
    return this.plane === undefined ? this.rolled?.lineAt(pace) : this.counted(this.plane.lineAt(pace));
  }

  /** The centre line at this launch speed, m/s; the firmer where there are two. */
  lineAtSpeed(speed: number): CentreLine | undefined {
    return this.plane === undefined
      ? this.rolled?.lineAtSpeed(speed)
      : this.counted(this.plane.lineAtSpeed(speed));
  }

  private counted(line: PlaneLine | undefined): CentreLine | undefined {
    this.search.rolls = line?.rolls ?? 0;
    return line;
  }
}

const NEVER_RESTS =
  'No line: on this slope at this green speed a ball never comes to rest. Choose a gentler slope or a slower green.';

/** Why a pace has no line, for the person. */
export const noLineReason = (pace: number): string =>
  `No start line lets the ball cross the hole and rest ${pace.toFixed(2)} m past it: the slope is too steep for this green speed, or the ball would leave the green. Try a slower green, a gentler slope or a shorter putt.`;

/** Angle folded into (-pi, pi]. */
export const foldAngle = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Beside the hole centre where the start line passes it, m; undefined when it starts 90 degrees or more off. */
export const aimOffsetOf = (start: number, length: number): number | undefined =>
  Math.abs(start) < Math.PI / 2 ? length * Math.tan(start) : undefined;

/** Solve one pace. See `Line` for what comes back. @param pace metres past the covered hole, > 0 */
export function readPutt(putt: Putt, pace: number): Read {
  const walk = new LineWalk(putt);
  if (walk.reason !== undefined) return { status: 'noLine', reason: walk.reason };
  const found = walk.lineAt(pace);
  return found === undefined
    ? { status: 'noLine', reason: noLineReason(pace) }
    : describeLine(putt, walk, found);
}

/** What a line says without its path and bands. */
export function summarizeLine(putt: Putt, walk: LineWalk, line: CentreLine): LineSummary {
  const start = foldAngle(line.heading - bearingOf(putt));
  const common = {
    status: 'ok',
    start,
    speed: line.speed,
    aimOffset: aimOffsetOf(start, lengthOf(putt)),
    rolls: walk.search.rolls,
  } as const;
  if (walk.plane !== undefined) return { ...common, ...walk.plane.eventsOn(line) };
  const { roller } = walk.search;
  const pass = roller.pass(line.heading, line.speed, newPass());
  return {
    ...common,
    ...highestPoint(putt, roller.trace(line.heading, line.speed), pass.missTime),
    arrivalSpeed: pass.missSpeed,
    entry: pass.missHeading,
    time: pass.missTime,
    rest: { x: pass.restX, y: pass.restY },
  };
}

/** All that a line says beside its start and speed. */
export function describeLine(putt: Putt, walk: LineWalk, line: CentreLine): Line {
  const { roller } = walk.search;
  const summary = summarizeLine(putt, walk, line);
  return {
    ...summary,
    path: roller.trace(line.heading, line.speed),
    startBand: startBand(putt, roller, line),
    paceBand: paceBand(putt, roller, line, summary.arrivalSpeed),
    otherStart: undefined,
  };
}

function highestPoint(putt: Putt, path: Float64Array, until: number): { curveHeight: number; apex: Point } {
  const bearing = bearingOf(putt);
  const sine = Math.sin(bearing);
  const cosine = Math.cos(bearing);
  const off = (i: number): number => (path[i + 1] - putt.ball.y) * cosine - (path[i] - putt.ball.x) * sine;
  let best = 0;
  for (let i = 0; i < path.length && path[i + 2] <= until; i += 3)
    if (Math.abs(off(i)) > Math.abs(off(best))) best = i;
  // A parabola through the three nearest points: the apex is flat, so this is exact to far below a millimetre.
  let shift = 0;
  if (best > 0 && best + 3 < path.length) {
    const [p, q, r] = [off(best - 3), off(best), off(best + 3)];
    const bend = p - 2 * q + r;
    if (Math.abs(bend) > 1e-15) shift = Math.max(-1, Math.min(1, (p - r) / (2 * bend)));
    const to = shift < 0 ? best - 3 : best + 3;
    const w = Math.abs(shift);
    return {
      curveHeight: q - ((p - r) * shift) / 4,
      apex: {
        x: path[best] + w * (path[to] - path[best]),
        y: path[best + 1] + w * (path[to + 1] - path[best + 1]),
      },
    };
  }
  return { curveHeight: off(best), apex: { x: path[best], y: path[best + 1] } };
}
