/**
 * What one stroke of a drill scores: the chance of each number of points, for one player at one station.
 *
 * Answers for: the odds of every kind of stroke score, and of the balls of a station that share one read. Leaves out: the rest of
 * the score (tally.ts). Nothing is simulated: holes and zones by the engine's odds, gates by their closed form.
 * A distribution is a Float64Array whose entry k is the chance of exactly k points.
 */
import { puttOdds } from '../odds/compare.ts';
import { gateShare } from '../odds/gate.ts';
import { normalPoints } from '../odds/normal.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import { restShares } from '../odds/rest-shares.ts';
import type { NoLine, PlaneSurface, Player, Putt } from '../types.ts';
import type { PuttingDrill, Station } from './putting-drill.ts';
import { times } from './tally.ts';

export interface StrokeQuestion {
  readonly drill: PuttingDrill;
  readonly station: Station;
  readonly putt: Putt & { readonly surface: PlaneSurface };
  readonly player: Player;
  /** Holing out from everywhere; asked for only where balls are holed out. */
  readonly nextPutts: (putt: Putt, player: Player) => NextPutts;
}

/** "Stop on the mark" is a pace of nothing, for which no line is defined: a tenth of a millimetre past it, m (ours). */
const LEAST_PACE = 1e-4;

const oneOrNothing = (share: number): Float64Array => Float64Array.of(1 - share, share);

/** Shares that score so many points each, the rest none. */
function pointsOf(scoring: readonly (readonly [points: number, share: number])[]): Float64Array {
  const chances = new Float64Array(1 + Math.max(...scoring.map(([points]) => points)));
  let rest = 1;
  for (const [points, share] of scoring) {
    chances[points] += share;
    rest -= share;
  }
  chances[0] = Math.max(0, chances[0] + rest);
  return chances;
}

/** One stroke of a player who reads as his errors say. */
function oneStroke({ drill, station, putt, player, nextPutts }: StrokeQuestion): Float64Array | NoLine {
  const pace = Math.max(station.paceM ?? drill.paceM, LEAST_PACE);
  const { stroke } = drill.scoring;
  if (stroke.kind === 'gate') {
    const share = gateShare(putt, pace, player, drill.gates);
    return typeof share === 'number' ? oneOrNothing(share) : share;
  }
  if (stroke.kind === 'holingOut') {
    const odds = puttOdds(putt, pace, player, nextPutts(putt, player));
    if (odds.status === 'noLine') return odds;
    const { holed, threePutt, expectedPutts } = odds;
    // Mean putts are 1 + P(2 or more) + P(3 or more) + P(4 or more) + ...: what is left over is four or more, and hardly five.
    const more = Math.max(0, Math.min(threePutt, expectedPutts - 1 - (1 - holed) - threePutt));
    const shares = [holed, 1 - holed - threePutt, threePutt - more, more];
    return pointsOf(shares.map((share, putts) => [stroke.points[putts], share] as const));
  }
  const zones = stroke.kind === 'zones' ? stroke.zones : [];
  const rests = restShares({ putt, pace, player, zones, target: drill.target });
  if (rests.status === 'noLine') return rests;
  if (stroke.kind === 'holed') return oneOrNothing(rests.holed);
  return pointsOf([
    [stroke.holed, rests.holed] as const,
    ...stroke.zones.map(
      ({ points }, i) => [points, rests.within[i] - (i === 0 ? 0 : rests.within[i - 1])] as const,
    ),
  ]);
}

/** A player who knows the line: only stroke and pace err. */
const knowing = (player: Player): Player => ({ ...player, readSd: 0, readBias: 0 });

/** Points of one stroke. For balls that share a read: of the first of them. */
export const strokePoints = (question: StrokeQuestion): Float64Array | NoLine =>
  oneStroke(
    question.drill.reading === 'known' ? { ...question, player: knowing(question.player) } : question,
  );

/** Points of all balls of a station together. */
export function stationPoints(question: StrokeQuestion): Float64Array | NoLine {
  const { drill, station, player } = question;
  if (drill.reading !== 'perStation') {
    const one = strokePoints(question);
    return one instanceof Float64Array ? times(one, station.balls) : one;
  }
  let mixed: Float64Array | undefined;
  for (const { value, share } of normalPoints(player.readSd)) {
    const read = { ...player, readSd: 0, readBias: player.readBias + value };
    const one = oneStroke({ ...question, player: read });
    if (!(one instanceof Float64Array)) return one;
    const all = times(one, station.balls);
    mixed ??= new Float64Array(all.length);
    for (let points = 0; points < all.length; points++) mixed[points] += share * all[points];
  }
  return mixed ?? Float64Array.of(1);
}
