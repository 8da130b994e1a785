/**
 * The read: the start direction and speed with which the ball crosses the hole centre and would rest a given pace past it.
 *
 * Answers for: which line a pace has, and what a line says. Leaves out: how it is solved (plane-line.ts, roll-walk.ts), the
 * bands (bands.ts), the chance of holing (odds/).
 */
import { frictionOf, steepnessOf } from '../roll/plane.ts';
import { bearingOf, lengthOf, rollerFor, startOf } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import type { Line, LineSummary, Point, Putt, Read } from '../types.ts';
import { radiansToDegrees } from '../units.ts';
import { paceBand, startBand } from './bands.ts';
import type { CentreLine, LineSearch } from './centre.ts';
import { type PlaneLines, planeLines } from './plane-line.ts';
import { type RolledLine, RollWalk } from './roll-walk.ts';
import { type SkidLine, type SkidLines, skidLines } from './skid-line.ts';

export type { CentreLine, LineSearch } from './centre.ts';

/** Why no pace has a line. */
const NEVER_RESTS =
  'No line: on this slope at this green speed a ball never comes to rest. Choose a gentler slope or a slower green.';

/** A line that starts farther off the hole than this is none to play, radians (60 degrees): the ball is putted away from the hole. */
const WIDEST_START = Math.PI / 3;
/** Nor is one whose ball takes longer to the hole than this, s: it all but stands still on the way. */
const LONGEST_TIME = 120;

/** Paces of the lines of `curve`, m past the hole, firm first: the walk goes from nearly straight lines to those that break. */
const CURVE_PACES = [5, 2.5, 1.6, 1, 0.6, 0.35, 0.2, 0.1, 0.05, 0.02];

/** Lines of one putt, one after another: in closed form on a plane, by rolling on other ground. Sensible ones, unless any is asked for. */
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

  /** The line to play whose ball would rest `pace` metres past the covered hole. */
  lineAt(pace: number): CentreLine | undefined {
    const line = this.anyLineAt(pace);
    return line !== undefined && this.senselessness(line) === undefined ? line : undefined;
  }

  /** Why there is no line to play for a pace that has none, for the person. */
  whyNot(pace: number): string {
    const line = this.anyLineAt(pace);
    return (line && this.senselessness(line)) ?? this.reason ?? noLineReason(pace);
  }

  /** The centre line of a pace, sensible or not. */
  anyLineAt(pace: number): CentreLine | undefined {
    return this.exact === undefined ? this.rolled?.lineAt(pace) : this.counted(this.exact.lineAt(pace));
  }

  /** Another line with this pace; a plane has none. On other ground up to 48 rolls are spent on looking for it. */
  otherLine(line: CentreLine): CentreLine | undefined {
    return this.rolled?.otherLine(line);
  }

  /** What is wrong with a line that nobody would play; undefined: nothing. */
  private senselessness(line: CentreLine): string | undefined {
    const { putt } = this;
    const start = Math.abs(startOf(putt, line.heading));
    if (start > WIDEST_START)
      return `No sensible line: for ${line.pace.toFixed(2)} m past it the ball would have to start ${Math.round(radiansToDegrees(start))}° off the hole, and more than 60° is no putt anybody plays. Try a firmer pace, a slower green or a gentler slope.`;
    const time = this.timeTo(line);
    return time > LONGEST_TIME
      ? `No sensible line: the ball would take ${Math.round(time)} s to the hole, and more than two minutes is no putt anybody plays. Try a firmer pace, a slower green or a gentler slope.`
      : undefined;
  }

  /** When the ball of a line crosses the hole, s; 0 on a plane where it is soon enough anyhow. */
  private timeTo(line: CentreLine): number {
    const { surface, greenSpeed } = this.putt;
    if (surface.kind !== 'plane') return (line as RolledLine).time;
    // It slows by no less than straight downhill, with or without a skid.
    const slowest = frictionOf(greenSpeed) * (1 - steepnessOf(surface, greenSpeed));
    if (line.speed <= LONGEST_TIME * slowest) return 0;
    return this.search.roller.pass(line.heading, line.speed, this.search.pass).missTime;
  }

  /** Lines through the hole's centre from a trickle to a gallop, for whoever follows them: solved once, firm first. */
  curve(): readonly CentreLine[] {
    this.curveLines ??= CURVE_PACES.map((pace) => this.anyLineAt(pace)).filter((line) => line !== undefined);
    return this.curveLines;
  }

  private counted(line: SkidLine | undefined): CentreLine | undefined {
    this.search.rolls = line?.rolls ?? 0;
    return line;
  }
}

/** Why a pace has no line at all, for the person. */
const noLineReason = (pace: number): string =>
  `No start line lets the ball cross the hole and rest ${pace.toFixed(2)} m past it: the slope is too steep for this green speed, or the ball would leave the green. Try a slower green, a gentler slope or a shorter putt.`;

/** Beside the hole centre where the start line passes it, m; undefined when it starts 90 degrees or more off. */
export const aimOffsetOf = (start: number, length: number): number | undefined =>
  Math.abs(start) < Math.PI / 2 ? length * Math.tan(start) : undefined;

/** Solve one pace. See `Line` for what comes back. @param pace metres past the covered hole, > 0 */
export function readPutt(putt: Putt, pace: number): Read {
  const walk = new LineWalk(putt);
  const found = walk.lineAt(pace);
  return found === undefined
    ? { status: 'noLine', reason: walk.whyNot(pace) }
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
