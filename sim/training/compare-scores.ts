/**
 * Test and retest: did the scores of one drill change between two periods, and by how much?
 *
 * Answers for: comparing like with like only, the change with its interval, a verdict by the interval alone. Leaves out: causes, and
 * which scores belong to which period.
 * Where a score counts successes of independent strokes the change is that of a share (share-difference.ts). Otherwise that of a mean:
 * by the scatter of the scores alone (trend.ts), or, where the engine's spread of one score is given, by the larger of the two.
 */

import { meanTrend, shareTrend, type TrendVerdict, type TwoPeriods } from '../evidence/trend.ts';
import { zFactor } from '../maths/student-t.ts';
import { type WeightedMean, weightedMean } from '../statistics/mean-interval.ts';
import type { Counted } from '../statistics/proportion.ts';
import type { GroundKind } from './drill-ground.ts';
import { type PuttingDrill, strokesOf } from './putting-drill.ts';

/** A drill done once. */
export interface DrillResult {
  readonly drillId: string;
  readonly version: number;
  readonly ground: GroundKind;
  readonly score: number;
  /** Stimpmeter reading, m, as far as known. */
  readonly greenSpeed?: number;
}

export interface ScoreChange {
  readonly status: 'ok';
  /** share: of all strokes, -1..1. points: per score. */
  readonly unit: 'share' | 'points';
  /** After less before. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** In the drill's sense of better. */
  readonly verdict: TrendVerdict;
  /** A true change of this size would be found four times in five; Infinity: none would. */
  readonly smallestChange: number;
  /** Mean green speed after less before, m, where both are known: another green is part of the change. */
  readonly greenSpeedChange: number | undefined;
}

export interface Unlike {
  readonly status: 'unlike';
  /** A sentence for the person: why the two are not compared. */
  readonly reason: string;
}

export interface CompareOptions {
  readonly confidence?: number;
  /** Standard deviation of one score by the engine (DrillExpectation), so that two alike are not taken for exact. */
  readonly expectedSd?: number;
}

/** The chance with which the "smallest change" is found. */
const POWER = 0.8;

/** What keeps two periods from being compared. */
function difference(
  drill: PuttingDrill,
  { before, after }: TwoPeriods<readonly DrillResult[]>,
): string | undefined {
  const all = [...before, ...after];
  if (before.length === 0 || after.length === 0)
    return 'Got a period without scores; expected one or more before and after. Do the drill again.';
  const other = all.find(({ drillId }) => drillId !== drill.id);
  if (other !== undefined)
    return `Got a score of the drill "${other.drillId}" beside those of "${drill.id}"; expected one drill. Choose scores of the same drill.`;
  const version = all.find((one) => one.version !== drill.version);
  if (version !== undefined)
    return `Got scores of versions ${version.version} and ${drill.version} of "${drill.name}", whose set-up or scoring differ; expected one version. Start a new series.`;
  if (all.some(({ ground }) => ground !== all[0].ground))
    return 'Got scores on grass and on carpet; expected one of the two. Compare each with its own.';
  return undefined;
}

const countsStrokes = ({ scoring: { stroke, tally }, reading }: PuttingDrill): boolean =>
  tally.kind === 'sum' && (stroke.kind === 'holed' || stroke.kind === 'gate') && reading !== 'perStation';

const scoresOf = (results: readonly DrillResult[]): number[] => results.map(({ score }) => score);

const meanSpeed = (results: readonly DrillResult[]): number | undefined =>
  weightedMean(results.flatMap(({ greenSpeed }) => (greenSpeed === undefined ? [] : [greenSpeed])))?.value;

type Change = Pick<ScoreChange, 'unit' | 'value' | 'low' | 'high' | 'smallestChange'>;

/** Every stroke of every score counts as one try. */
function changeOfShare(
  drill: PuttingDrill,
  { before, after }: TwoPeriods<readonly DrillResult[]>,
  { confidence }: CompareOptions,
): Change {
  const counted = (results: readonly DrillResult[]): Counted => ({
    hits: scoresOf(results).reduce((sum, score) => sum + score, 0),
    tries: results.length * strokesOf(drill),
  });
  const { value = 0, ...rest } = shareTrend({ before: counted(before), after: counted(after) }, confidence);
  return { unit: 'share', value, ...rest };
}

function changeOfMean(
  { before, after }: TwoPeriods<readonly DrillResult[]>,
  { confidence = 0.95, expectedSd }: CompareOptions,
): Change {
  const [first, second] = [scoresOf(before), scoresOf(after)];
  const trend = meanTrend({ before: { values: first }, after: { values: second } }, confidence);
  if (trend === undefined) throw new RangeError('Got a period without scores; expected one or more.');
  if (expectedSd === undefined) return { unit: 'points', ...trend };
  /** Variance of a mean: of the scatter or by the engine, whichever is larger; one score has no scatter. */
  const varianceOf = ({ variance, count }: WeightedMean): number =>
    Math.max(Number.isFinite(variance) ? variance : 0, expectedSd ** 2 / count);
  const standardError = Math.sqrt(varianceOf(trend.before) + varianceOf(trend.after));
  const half = zFactor(confidence) * standardError;
  return {
    unit: 'points',
    value: trend.value,
    low: trend.value - half,
    high: trend.value + half,
    smallestChange: half + zFactor(2 * POWER - 1) * standardError,
  };
}

/**
 * Change of a drill's score.
 * @param drill as it is now; scores of other versions are turned down
 * @returns 'unlike' with a sentence where the periods cannot be compared
 */
export function compareScores(
  drill: PuttingDrill,
  periods: TwoPeriods<readonly DrillResult[]>,
  options: CompareOptions = {},
): ScoreChange | Unlike {
  const reason = difference(drill, periods);
  if (reason !== undefined) return { status: 'unlike', reason };
  const [slower, faster] = [meanSpeed(periods.before), meanSpeed(periods.after)];
  const change = countsStrokes(drill)
    ? changeOfShare(drill, periods, options)
    : changeOfMean(periods, options);
  const { low, high } = change;
  const sense = drill.scoring.better === 'higher' ? 1 : -1;
  const [least, most] = sense > 0 ? [low, high] : [-high, -low];
  return {
    status: 'ok',
    ...change,
    verdict: least > 0 ? 'better' : most < 0 ? 'worse' : 'cannotTell',
    greenSpeedChange: slower === undefined || faster === undefined ? undefined : faster - slower,
  };
}
