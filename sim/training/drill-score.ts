/**
 * The score of a putting drill that this player should expect on this ground, with its spread and a pass mark.
 *
 * Answers for: the whole distribution of the score, exact for independent strokes. Leaves out: what a stroke scores
 * (stroke-points.ts), how strokes add up (tally.ts), whether scores moved (compare-scores.ts). Strokes are independent but for
 * the read that the balls of a station share; nobody tires or warms up within a drill, and what is learnt is the ground (stroke-points.ts).
 */

import { prepareNextPutts } from '../odds/next-putts.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import { summarizeHits } from '../statistics/hit-counts.ts';
import type { CaptureName, Player, Putt } from '../types.ts';
import { type DrillGround, drillProblem, stationPutt, stationSlope } from './drill-ground.ts';
import { type PassMark, passMark, type Repetitions, repetitionsApart, withStep } from './pass-mark.ts';
import { type PuttingDrill, type Station, strokeOrder } from './putting-drill.ts';
import { BALLS_READ, stationPoints, strokePoints } from './stroke-points.ts';
import { bestOf, longestRun, meanOf, rungReached, sumOf } from './tally.ts';

/** Share of scores within the range told. */
const CENTRAL = 0.8;

export interface StationExpectation {
  readonly station: Station;
  /** Slope it is reckoned with, rise over run. */
  readonly slope: number;
  /** Mean points of one stroke; putts, where the score counts putts. */
  readonly points: number;
}

export interface DrillExpectation {
  readonly status: 'ok';
  readonly drillId: string;
  readonly version: number;
  readonly ground: DrillGround;
  readonly better: 'higher' | 'lower';
  /** Entry k: the chance of a score of exactly k. */
  readonly chances: Float64Array;
  readonly mean: number;
  /** Standard deviation of one score. */
  readonly sd: number;
  /** Ends of the range that holds at least 80% of scores; at most a tenth lies beyond either. */
  readonly low: number;
  readonly high: number;
  /** Mean score once the trained error is a step smaller. */
  readonly meanBetter: number;
  readonly mark: PassMark;
  /** Repetitions whose total tells the two levels apart. */
  readonly repetitions: Repetitions;
  readonly stations: readonly StationExpectation[];
}

export interface NoExpectation {
  readonly status: 'cannot';
  /** A sentence for the person. */
  readonly reason: string;
}

export interface DrillScoreOptions {
  readonly capture?: CaptureName;
  /**
   * Tables of next putts at hand, for drills where the ball is holed out; left out: made here, with one sensible pace from everywhere and
   * half the usual places each way (MODEL.md section 9 says what that leaves out).
   */
  readonly nextPutts?: (putt: Putt, player: Player) => NextPutts;
}

const QUICK_TABLE = { policy: 'fixed', finer: { places: 0.5 } } as const;

/** Tables by slope, for one player: all else is the same for every station. */
function tablesBySlope(): (putt: Putt, player: Player) => NextPutts {
  const known = new Map<number, NextPutts>();
  return (putt, player) => {
    const slope = putt.surface.kind === 'plane' ? putt.surface.slope : Number.NaN;
    const table = known.get(slope) ?? prepareNextPutts(putt, player, QUICK_TABLE);
    known.set(slope, table);
    return table;
  };
}

interface Scores {
  readonly chances: Float64Array;
  /** Mean points of a stroke, station by station. */
  readonly points: readonly number[];
}

/** The same for stations that are each other's image in the fall line: their scores are alike. */
const mirrored = (station: Station): string =>
  JSON.stringify({ ...station, clock: Math.min(station.clock, 12 - station.clock) % 12 });

function scoresOf(
  drill: PuttingDrill,
  player: Player,
  ground: DrillGround,
  { capture = 'rim', nextPutts = tablesBySlope() }: DrillScoreOptions,
): Scores | NoExpectation {
  const { tally, better } = drill.scoring;
  const wholeStations = tally.kind === 'sum' || tally.kind === 'best';
  const perStation: Float64Array[] = [];
  const known = new Map<string, Float64Array>();
  const points: number[] = [];
  /** Chance of success from each place once the ground there is known. */
  const later: number[] = [];
  for (const station of drill.stations) {
    const question = { drill, station, putt: stationPutt(station, ground, capture), player, nextPutts };
    const key = mirrored(station);
    const all = known.get(key) ?? (wholeStations ? stationPoints(question) : strokePoints(question));
    if (!(all instanceof Float64Array)) return { status: 'cannot', reason: all.reason };
    known.set(key, all);
    perStation.push(all);
    if (tally.kind === 'run') {
      const again = strokePoints(question, BALLS_READ);
      if (!(again instanceof Float64Array)) return { status: 'cannot', reason: again.reason };
      later.push(1 - again[0]);
    }
    points.push(meanOf(all) / (wholeStations ? station.balls : 1));
  }
  if (tally.kind === 'sum') return { chances: sumOf(perStation), points };
  if (tally.kind === 'best') return { chances: bestOf(sumOf(perStation), tally.sets, better), points };
  const success = perStation.map((chances) => 1 - chances[0]);
  if (tally.kind === 'ladder') return { chances: rungReached(success, tally), points };
  const order = strokeOrder(drill, '');
  const visits = drill.stations.map(() => 0);
  const shares = Array.from({ length: tally.strokes }, (_, stroke) => {
    const at = order[stroke % order.length];
    return visits[at]++ < BALLS_READ ? success[at] : later[at];
  });
  return { chances: longestRun(shares, tally.length), points };
}

/**
 * Expected score of a drill.
 * @param player his errors as they are
 * @returns 'cannot' with a sentence where the ground does not suit the drill or a putt has no line there
 */
export function expectedScore(
  drill: PuttingDrill,
  player: Player,
  ground: DrillGround,
  options: DrillScoreOptions = {},
): DrillExpectation | NoExpectation {
  const reason = drillProblem(drill, ground);
  if (reason !== undefined) return { status: 'cannot', reason };
  const now = scoresOf(drill, player, ground, options);
  if ('status' in now) return now;
  const improved = scoresOf(drill, withStep(player, drill.trains), ground, options);
  if ('status' in improved) return improved;
  const { better } = drill.scoring;
  return {
    status: 'ok',
    drillId: drill.id,
    version: drill.version,
    ground,
    better,
    chances: now.chances,
    ...summarizeHits(now.chances, CENTRAL),
    meanBetter: meanOf(improved.chances),
    mark: passMark(now.chances, improved.chances, better),
    repetitions: repetitionsApart(now.chances, improved.chances, better),
    stations: drill.stations.map((station, i) => ({
      station,
      slope: stationSlope(station, ground),
      points: now.points[i],
    })),
  };
}
