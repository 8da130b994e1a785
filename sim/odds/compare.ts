/**
 * The odds of one putt at one pace or many, and the pace that does best. The door to everything in this folder.
 * Leaves out: how outcomes are integrated (outcomes.ts), what a miss costs (next-putts.ts, polar-table.ts).
 */
import { type CentreLine, LineWalk, noLineReason, summarizeLine } from '../read/line.ts';
import { lengthOf, startOf } from '../roll/roll.ts';
import type { Comparison, NoLine, Odds, PaceRow, Player, Putt } from '../types.ts';
import { type DropRegion, dropRegions } from './drop-region.ts';
import { type Leaves, makeLeaves } from './leaves.ts';
import { missRests } from './lip-outs.ts';
import { vertexOf } from './minimum.ts';
import { prepareNextPutts } from './next-putts.ts';
import { type Intent, playOut, rangeOf } from './outcomes.ts';
import { type NextPutts, nextPuttAt } from './polar-table.ts';
import { COVERED, type Rests } from './rests.ts';
import { type Sides, sidesOf } from './sides.ts';

/** All that the paces of one putt share. */
interface Ground {
  readonly putt: Putt;
  readonly player: Player;
  readonly regions: readonly DropRegion[];
  readonly sides: Sides;
  readonly rests: Rests;
  readonly table: NextPutts;
  readonly leaves: Leaves;
}

const intentOf = (putt: Putt, line: CentreLine): Intent => ({
  start: startOf(putt, line.heading),
  energy: line.speed ** 2,
});

function groundFor(walk: LineWalk, lines: readonly CentreLine[], player: Player, table: NextPutts): Ground {
  const { putt } = walk;
  const intents = lines.map((line) => intentOf(putt, line));
  return {
    putt,
    player,
    table,
    regions: dropRegions(walk),
    sides: sidesOf(walk),
    rests: missRests(walk, rangeOf(intents, player)),
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

function oddsOf(ground: Ground, line: CentreLine): Odds {
  const { putt, leaves, table } = ground;
  const intent = intentOf(putt, line);
  const length = lengthOf(putt);
  const towardX = (putt.hole.x - putt.ball.x) / length;
  const towardY = (putt.hole.y - putt.ball.y) / length;
  // The high side is the side the aim lies on; on a straight putt there is none, and left stands for it.
  const highIsLeft = intent.start >= 0;
  sums.fill(0);
  leaves.clear();
  const { sides } = ground;
  const holed = playOut(intent, ground.player, ground.regions, ground.rests, {
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
  const walk = new LineWalk(putt);
  if (walk.reason !== undefined) return { status: 'noLine', reason: walk.reason };
  const line = walk.lineAt(pace);
  if (line === undefined) return { status: 'noLine', reason: noLineReason(pace) };
  return oddsOf(groundFor(walk, [line], player, nextPutts ?? prepareNextPutts(putt, player)), line);
}

/** Odds at each pace, metres past; rows come back in the order asked. See `puttOdds` for the rest. */
export function comparePaces(
  putt: Putt,
  paces: readonly number[],
  player: Player,
  nextPutts?: NextPutts,
): Comparison {
  const walk = new LineWalk(putt);
  const nothing = (pace: number, reason: string): PaceRow => ({
    pace,
    read: { status: 'noLine', reason },
    odds: undefined,
  });
  const { reason } = walk;
  if (reason !== undefined) return { rows: paces.map((pace) => nothing(pace, reason)), best: undefined };
  // Firm first: the walk goes from nearly straight lines to those that break most.
  const lines = new Map<number, CentreLine>();
  for (const pace of [...paces].sort((first, second) => second - first)) {
    const line = walk.lineAt(pace);
    if (line !== undefined) lines.set(pace, line);
  }
  if (lines.size === 0)
    return { rows: paces.map((pace) => nothing(pace, noLineReason(pace))), best: undefined };
  const ground = groundFor(walk, [...lines.values()], player, nextPutts ?? prepareNextPutts(putt, player));
  const rows = paces.map((pace): PaceRow => {
    const line = lines.get(pace);
    return line === undefined
      ? nothing(pace, noLineReason(pace))
      : { pace, read: summarizeLine(putt, walk, line), odds: oddsOf(ground, line) };
  });
  const oddsAt = (pace: number): Odds | undefined => {
    const line = walk.lineAt(pace);
    return line && oddsOf(ground, line);
  };
  const fewest = bestPace(rows, oddsAt, (odds) => odds.expectedPutts);
  const most = bestPace(rows, oddsAt, (odds) => -odds.holed);
  return { rows, best: { fewestPutts: fewest.pace, odds: fewest.odds, mostHoled: most.pace } };
}

/** Paces closer than this are the same to any player, m. */
const PACE_RESOLUTION = 0.005;

/** Pace with the smallest cost, and its odds: the best row, then parabolas through its neighbours. */
function bestPace(
  rows: readonly PaceRow[],
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
 * Chance of holing when the player means this aim and knows it: no read error, the other errors as they are.
 * @param aimOffset metres beside the hole centre, positive left; undefined: the true line's
 * @returns share, 0 to 1; 0 when this pace has no line
 */
export function holedShare(putt: Putt, pace: number, player: Player, aimOffset?: number): number {
  const walk = new LineWalk(putt);
  const line = walk.reason === undefined ? walk.lineAt(pace) : undefined;
  if (line === undefined) return 0;
  const reader: Player = { ...player, readSd: 0, readBias: 0 };
  const meant = intentOf(putt, line);
  const start = aimOffset === undefined ? meant.start : Math.atan2(aimOffset, lengthOf(putt));
  return playOut({ ...meant, start }, reader, dropRegions(walk), NOWHERE, UNHEARD);
}

/** Where misses go when nobody asks. */
const NOWHERE: Rests = { ...COVERED, aim: () => undefined, at: () => undefined };
const UNHEARD = { aim: () => undefined, miss: () => undefined };
