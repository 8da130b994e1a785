/**
 * The read: the start direction and speed with which the ball crosses the hole centre and would rest a given pace past it.
 *
 * Answers for: which line a pace has, and what a line says. Leaves out: how it is solved (plane-line.ts, roll-walk.ts), the
 * bands (bands.ts), the chance of holing (odds/).
 */
import { bearingOf, lengthOf, rollerFor, startOf } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import type { Line, LineSummary, Point, Putt, Read } from '../types.ts';
import { paceBand, startBand } from './bands.ts';
import type { CentreLine, LineSearch } from './centre.ts';
import { type PlaneLines, planeLines } from './plane-line.ts';
import { RollWalk } from './roll-walk.ts';
import { type SkidLine, type SkidLines, skidLines } from './skid-line.ts';

export { type CentreLine, centreHeading, type LineSearch } from './centre.ts';

/** Why no pace has a line. */
const NEVER_RESTS =
  'No line: on this slope at this green speed a ball never comes to rest. Choose a gentler slope or a slower green.';

/** Paces of the lines of `curve`, m past the hole, firm first: the walk goes from nearly straight lines to those that break. */
const CURVE_PACES = [5, 2.5, 1.6, 1, 0.6, 0.35, 0.2, 0.1, 0.05, 0.02];

/** Lines of one putt, one after another: in closed form on a plane, by rolling on other ground. */
export class LineWalk {
  readonly search: LineSearch;
  /** Why there is no line at any pace; undefined when there are some. */
  readonly reason: string | undefined;
  /** Events in closed form, for a ball that rolls from the start. */
  readonly plane: PlaneLines | undefined;
  private readonly exact: SkidLines | undefined;
  private readonly rolled: RollWalk | undefined;
  private curveLines: readonly CentreLine[] | undefined;

  constructor(readonly putt: Putt) {
    this.search = { roller: rollerFor(putt), pass: newPass(), rolls: 0 };
    const { surface } = putt;
    if (surface.kind === 'plane') {
      if (putt.skid) this.exact = skidLines({ ...putt, surface });
      else this.exact = this.plane = planeLines({ ...putt, surface });
      if (this.exact === undefined) this.reason = NEVER_RESTS;
    } else {
      this.rolled = new RollWalk(putt, this.search);
    }
  }

  /** The centre line whose ball would rest `pace` metres past the covered hole. */
  lineAt(pace: number): CentreLine | undefined {
    return this.exact === undefined ? this.rolled?.lineAt(pace) : this.counted(this.exact.lineAt(pace));
  }

  /** The centre line at this launch speed, m/s; the firmer where there are two. */
  lineAtSpeed(speed: number): CentreLine | undefined {
    return this.exact === undefined
      ? this.rolled?.lineAtSpeed(speed)
      : this.counted(this.exact.lineAtSpeed(speed));
  }

  /** Another line with this pace; a plane has none. On other ground up to 48 rolls are spent on looking for it. */
  otherLine(line: CentreLine): CentreLine | undefined {
    return this.rolled?.otherLine(line);
  }

  /** Lines through the hole's centre from a trickle to a gallop, for whoever follows them: solved once, firm first. */
  curve(): readonly CentreLine[] {
    this.curveLines ??= CURVE_PACES.map((pace) => this.lineAt(pace)).filter((line) => line !== undefined);
    return this.curveLines;
  }

  private counted(line: SkidLine | undefined): CentreLine | undefined {
    this.search.rolls = line?.rolls ?? 0;
    return line;
  }
}

/** Why a pace has no line, for the person. */
export const noLineReason = (pace: number): string =>
  `No start line lets the ball cross the hole and rest ${pace.toFixed(2)} m past it: the slope is too steep for this green speed, or the ball would leave the green. Try a slower green, a gentler slope or a shorter putt.`;

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
export const summarizeLine = (putt: Putt, walk: LineWalk, line: CentreLine): LineSummary =>
  summaryOf(putt, walk, line, () => walk.search.roller.trace(line.heading, line.speed));

/**
 * All that a line says beside its start and speed. Where another line has the same pace, the direct one of the two is
 * described, and the other's start is told.
 */
export function describeLine(putt: Putt, walk: LineWalk, line: CentreLine): Line {
  const { roller, rolls } = walk.search;
  const other = walk.otherLine(line);
  walk.search.rolls = rolls;
  const swap = other && Math.abs(startOf(putt, other.heading)) < Math.abs(startOf(putt, line.heading));
  const direct = swap ? other : line;
  const path = roller.trace(direct.heading, direct.speed);
  const summary = summaryOf(putt, walk, direct, () => path);
  return {
    ...summary,
    path,
    startBand: startBand(putt, roller, direct),
    paceBand: paceBand(putt, roller, direct, summary.arrivalSpeed),
    otherStart: other && startOf(putt, (swap ? line : other).heading),
  };
}

function summaryOf(putt: Putt, walk: LineWalk, line: CentreLine, pathOf: () => Float64Array): LineSummary {
  const start = startOf(putt, line.heading);
  const common = {
    status: 'ok',
    start,
    speed: line.speed,
    aimOffset: aimOffsetOf(start, lengthOf(putt)),
    rolls: walk.search.rolls,
  } as const;
  if (walk.plane !== undefined) return { ...common, ...walk.plane.eventsOn(line) };
  const pass = walk.search.roller.pass(line.heading, line.speed, newPass());
  return {
    ...common,
    ...highestPoint(putt, pathOf(), pass.missTime),
    arrivalSpeed: pass.missSpeed,
    entry: pass.missHeading,
    time: pass.missTime,
    rest: { x: pass.restX, y: pass.restY },
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
