/**
 * The odds of one putt at one pace or many, and the pace that does best. The door to everything in this folder.
 * Leaves out: how outcomes are integrated (outcomes.ts), what a miss costs (next-putts.ts, polar-table.ts).
 */

import { vertexOf } from '../maths/minimum.ts';
import { withoutReading } from '../player/habits.ts';
import { type CentreLine, LineWalk, summarizeLine } from '../read/line.ts';
import { lengthOf, startOf } from '../roll/roll.ts';
import type { Comparison, NoLine, Odds, PaceRow, Player, Putt } from '../types.ts';
import { type DropRegion, dropRegions } from './drop-region.ts';
import { type Leaves, makeLeaves } from './leaves.ts';
import { missRests } from './lip-outs.ts';
import { prepareNextPutts } from './next-putts.ts';
import { holedOf, playOut, rangeOf } from './outcomes.ts';
import { type NextPutts, nextPuttAt } from './polar-table.ts';
import type { Rests } from './rests.ts';
import { type Sides, sidesOf } from './sides.ts';
import { type StrokeErrors, Strokes, UNSEEN } from './stroke-errors.ts';

/** All that the paces of one putt share. */
interface Ground {
  readonly putt: Putt;
  readonly regions: readonly DropRegion[];
  readonly sides: Sides;
  readonly rests: Rests;
  readonly table: NextPutts;
  readonly leaves: Leaves;
}

/** One pace of it. */
interface Played {
  readonly line: CentreLine;
  readonly strokes: StrokeErrors;
  /** The true line is aimed to the left of the hole: that is the high side. On a straight putt left stands for it. */
  readonly highIsLeft: boolean;
}

function groundFor(walk: LineWalk, strokes: readonly StrokeErrors[], table: NextPutts): Ground {
  return {
    putt: walk.putt,
    table,
    regions: dropRegions(walk),
    sides: sidesOf(walk),
    rests: missRests(walk, () => rangeOf(strokes)),
    leaves: makeLeaves(),
  };
}

const next = new Float64Array(2);
// Sums over misses, in one array because a visitor's own variables would be boxed at every addition.
const sums = new Float64Array(6);
const SHORT = 0;
const HIGH = 1;
const LOW = 2;
const MISSED_TWICE = 3;
const FURTHER = 4;
const LIPPED = 5;

function oddsOf(ground: Ground, { strokes, highIsLeft }: Played): Odds {
  const { putt, leaves, table } = ground;
  const length = lengthOf(putt);
  const towardX = (putt.hole.x - putt.ball.x) / length;
  const towardY = (putt.hole.y - putt.ball.y) / length;
  sums.fill(0);
  leaves.clear();
  const { sides } = ground;
  const holed = playOut(strokes, ground.regions, ground.rests, {
    aim: sides.aim,
    miss(share, x, y, softer, firmer, tilt, lipped) {
      nextPuttAt(table, x, y, next);
      sums[MISSED_TWICE] += share * next[0];
      sums[FURTHER] += share * next[1];
      const middle = (softer + firmer) / 2;
      if (lipped) {
        // It got to the hole, wherever it went from there; and it no longer lies on the line it was struck along.
        sums[LIPPED] += share;
        sums[sides.left(middle) === highIsLeft ? HIGH : LOW] += share;
        const away = Math.sqrt(x * x + y * y);
        leaves.add(away, away, share);
        return;
      }
      // A miss stands for balls that roll a little less far and a little farther: part of them may stop short.
      const less = softer / middle - 1;
      const more = firmer / middle - 1;
      const past = x * towardX + y * towardY;
      const softest = past + (past + length) * less;
      const spread = (past + length) * (more - less);
      const part = spread > 0 ? Math.max(0, Math.min(1, -softest / spread)) : past < 0 ? 1 : 0;
      const before = part * (1 + (tilt * (part - 1)) / 2);
      sums[SHORT] += before * share;
      sums[sides.left(middle) === highIsLeft ? HIGH : LOW] += (1 - before) * share;
      const fromX = x + towardX * length;
      const fromY = y + towardY * length;
      leaves.add(
        Math.sqrt((x + fromX * less) ** 2 + (y + fromY * less) ** 2),
        Math.sqrt((x + fromX * more) ** 2 + (y + fromY * more) ** 2),
        share,
      );
    },
  });
  // Cells lighter than rounding are left out, and the tails beyond REACH: shared out so that all putts make one.
  const total = holed + sums[SHORT] + sums[HIGH] + sums[LOW];
  return {
    status: 'ok',
    holed: holed / total,
    short: sums[SHORT] / total,
    high: sums[HIGH] / total,
    low: sums[LOW] / total,
    lippedOut: sums[LIPPED] / total,
    threePutt: sums[MISSED_TWICE] / total,
    expectedPutts: 1 + sums[FURTHER] / total,
    leaveMedian: leaves.quantile(0.5),
    leaveP10: leaves.quantile(0.1),
    leaveP90: leaves.quantile(0.9),
  };
}

/**
 * Odds of one putt at one pace.
 * @param pace metres past the covered hole
 * @param nextPutts a table of the same surface, green speed, hole (on a plane: any), capture and player; made when missing
 * @returns NoLine when no start line does it at this pace
 */
export function puttOdds(putt: Putt, pace: number, player: Player, nextPutts?: NextPutts): Odds | NoLine {
  const [row] = comparePaces(putt, [pace], player, nextPutts, false).rows;
  return row.odds ?? (row.read.status === 'noLine' ? row.read : { status: 'noLine', reason: UNSEEN });
}

/**
 * Odds at each pace, metres past; rows come back in the order asked. See `puttOdds` for the rest.
 * @param refined whether the best pace is sought between the rows
 */
export function comparePaces(
  putt: Putt,
  paces: readonly number[],
  player: Player,
  nextPutts?: NextPutts,
  refined = true,
): Comparison {
  const { walk, played, oddsAt } = playable(putt, paces, player, nextPutts);
  const rows = paces.map((pace): PaceRow => {
    const play = played.get(pace);
    if (play !== undefined) return { pace, read: summarizeLine(putt, walk, play.line), odds: oddsAt(pace) };
    const reason = walk.lineAt(pace) === undefined ? walk.whyNot(pace) : UNSEEN;
    return { pace, read: { status: 'noLine', reason }, odds: undefined };
  });
  if (!refined || played.size === 0) return { rows, best: undefined };
  const fewest = bestPace(rows, oddsAt, (odds) => odds.expectedPutts);
  const most = bestPace(rows, oddsAt, (odds) => -odds.holed);
  return { rows, best: { fewestPutts: fewest.pace, odds: fewest.odds, mostHoled: most.pace } };
}

/** The pace that needs fewest putts, m past, its odds, and those of any pace near it, undefined where it has no line. */
interface FewestPutts {
  readonly pace: number;
  readonly odds: Odds;
  readonly oddsAt: (pace: number) => Odds | undefined;
}

/**
 * As `comparePaces`, for who wants that pace alone, on a plane: half the work.
 * @returns undefined when no pace has a line
 */
export function fewestPutts(
  putt: Putt,
  paces: readonly number[],
  player: Player,
  nextPutts: NextPutts,
): FewestPutts | undefined {
  const { played, oddsAt } = playable(putt, paces, player, nextPutts);
  if (played.size === 0) return undefined;
  const rows = paces.map((pace) => ({ pace, odds: oddsAt(pace) }));
  return { ...bestPace(rows, oddsAt, (odds) => odds.expectedPutts), oddsAt };
}

/** One putt by one player: its lines, those of these paces that there are, and odds, for which all paces share one ground. */
function playable(putt: Putt, paces: readonly number[], player: Player, nextPutts?: NextPutts) {
  const walk = new LineWalk(putt);
  const byPace = new Strokes(putt, player);
  const playAt = (pace: number): Played | undefined => {
    const line = walk.lineAt(pace);
    const strokes = line && byPace.at(pace);
    return strokes && { line, strokes, highIsLeft: startOf(putt, line.heading) >= 0 };
  };
  // Firm first: the walk goes from nearly straight lines to those that break most.
  const played = new Map<number, Played>();
  for (const pace of [...paces].sort((first, second) => second - first)) {
    const play = playAt(pace);
    if (play !== undefined) played.set(pace, play);
  }
  const strokes = [...played.values()].map((play) => play.strokes);
  const ground = strokes.length > 0 && groundFor(walk, strokes, nextPutts ?? prepareNextPutts(putt, player));
  const oddsAt = (pace: number): Odds | undefined => {
    const play = played.get(pace) ?? playAt(pace);
    return ground && play ? oddsOf(ground, play) : undefined;
  };
  return { walk, played, oddsAt };
}

/** Paces closer than this are the same to any player, m. */
const PACE_RESOLUTION = 0.005;

/** Pace with the smallest cost, and its odds: the best row, then parabolas through its neighbours. */
function bestPace(
  rows: readonly Pick<PaceRow, 'pace' | 'odds'>[],
  oddsAt: (pace: number) => Odds | undefined,
  costOf: (odds: Odds) => number,
): { readonly pace: number; readonly odds: Odds } {
  const known = rows
    .flatMap(({ pace, odds }) => (odds ? [{ pace, odds, cost: costOf(odds) }] : []))
    .sort((first, second) => first.pace - second.pace);
  const bestIndex = (): number =>
    known.reduce((best, { cost }, i) => (cost < known[best].cost ? i : best), 0);
  for (let round = 0; round < 4; round++) {
    const i = bestIndex();
    if (i === 0 || i === known.length - 1) break;
    const [left, middle, right] = [known[i - 1], known[i], known[i + 1]];
    const vertex = vertexOf([left.pace, middle.pace, right.pace], [left.cost, middle.cost, right.cost]);
    if (vertex === undefined) break;
    const pace = Math.max(left.pace + PACE_RESOLUTION, Math.min(right.pace - PACE_RESOLUTION, vertex));
    if (known.some((other) => Math.abs(other.pace - pace) < PACE_RESOLUTION)) break;
    const odds = oddsAt(pace);
    if (odds === undefined) break;
    known.push({ pace, odds, cost: costOf(odds) });
    known.sort((first, second) => first.pace - second.pace);
  }
  return known[bestIndex()];
}

/**
 * Chance of holing when the player means this aim and knows it: nothing is misread, the errors of the stroke as they are.
 * @param aimOffset metres beside the hole centre, positive left; undefined: the true line's
 * @returns share, 0 to 1; 0 when this pace has no line
 */
export function holedShare(putt: Putt, pace: number, player: Player, aimOffset?: number): number {
  const walk = new LineWalk(putt);
  const knowing = withoutReading(player);
  const line = walk.lineAt(pace);
  if (line === undefined) return 0;
  const start = startOf(putt, line.heading);
  const turn = aimOffset === undefined ? 0 : Math.atan2(aimOffset, lengthOf(putt)) - start;
  const strokes = new Strokes(putt, knowing).at(pace, { turn });
  return strokes === undefined ? 0 : holedOf(strokes, dropRegions(walk));
}
