/**
 * What one stroke of a drill scores: the chance of each number of points, for one player at one station.
 *
 * Answers for: the odds of every kind of stroke score, and of the balls of a station that share one read. Leaves out: the rest of
 * the score (tally.ts). Nothing is simulated: holes and zones by the engine's odds, gates by their closed form.
 * What it tells of: on a known line (gates, string, balls to a mark) the stroke alone; where balls are read anew the slope as seen
 * as well, from each place for the first two balls; nowhere the green speed as seen, which is known on a green that is drilled on.
 * A distribution is a Float64Array whose entry k is the chance of exactly k points.
 */
import { puttOdds } from '../odds/compare.ts';
import { gateShare } from '../odds/gate.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import { restShares } from '../odds/rest-shares.ts';
import { withoutReading } from '../player/habits.ts';
import { LineWalk } from '../read/line.ts';
import type { NoLine, PlaneSurface, Player, Putt } from '../types.ts';
import type { PuttingDrill, Station } from './putting-drill.ts';
import { holedByRead } from './shared-read.ts';
import { times, together } from './tally.ts';

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

/** On a green that is drilled on its speed is known after a few balls, and a drill's balls are many. */
const practising = (player: Player): Player => (player.speedSd === 0 ? player : { ...player, speedSd: 0 });

/** Balls from one place that are read anew; from then on the ground there is known (ours; MODEL.md, section 9). */
export const BALLS_READ = 2;

/** Points of one stroke. @param visit balls from this place before it */
export function strokePoints(question: StrokeQuestion, visit = 0): Float64Array | NoLine {
  const { drill, player } = question;
  const known = drill.reading === 'known' || (drill.reading === 'fresh' && visit >= BALLS_READ);
  return oneStroke({ ...question, player: known ? withoutReading(player) : practising(player) });
}

/** Points of all balls of a station together. */
export function stationPoints(question: StrokeQuestion): Float64Array | NoLine {
  const { drill, station } = question;
  if (drill.reading === 'perStation') return sharedRead(question);
  const read = drill.reading === 'known' ? 0 : Math.min(station.balls, BALLS_READ);
  const first = strokePoints(question);
  const later = station.balls > read ? strokePoints(question, BALLS_READ) : first;
  if (!(first instanceof Float64Array)) return first;
  if (!(later instanceof Float64Array)) return later;
  return together(times(first, read), times(later, station.balls - read));
}

/** Balls on one line, read once: mixed over what is seen of the slope. */
function sharedRead({ drill, station, putt, player }: StrokeQuestion): Float64Array | NoLine {
  if (drill.scoring.stroke.kind !== 'holed')
    return {
      status: 'noLine',
      reason: `Got "${drill.name}", whose balls share a read and score ${drill.scoring.stroke.kind}; expected balls holed. Have every ball read anew.`,
    };
  const shares = holedByRead(putt, Math.max(station.paceM ?? drill.paceM, LEAST_PACE), practising(player));
  if (shares === undefined)
    return { status: 'noLine', reason: new LineWalk(putt).whyNot(station.paceM ?? drill.paceM) };
  const mixed = new Float64Array(station.balls + 1);
  for (const { holed, share } of shares)
    times(oneOrNothing(holed), station.balls).forEach((chance, balls) => {
      mixed[balls] += share * chance;
    });
  return mixed;
}
