/**
 * Did it change between two periods, and by how much?
 *
 * Answers for: the change of a share holed, of putts holed above a benchmark and of strokes gained per round, each with its interval,
 * a verdict by the interval alone, and the smallest change that such a record could have shown. Leaves out: which putts belong to
 * which period, and causes. Periods chosen after a look at the record find changes that are not there.
 * Sources: share-difference.ts, welch.ts; the rest derived as MODEL.md section 5 says.
 */

import { tFactor, zFactor } from '../maths/student-t.ts';
import { type WeightedMean, weightedMean } from '../statistics/mean-interval.ts';
import type { Counted } from '../statistics/proportion.ts';
import { type ShareDifference, shareDifference } from '../statistics/share-difference.ts';
import { type MeanDifference, meanDifference } from '../statistics/welch.ts';

/** Chance with which the "smallest change" would be found. */
const POWER = 0.8;

/** Better or worse only when the whole interval says so. */
export type TrendVerdict = 'better' | 'worse' | 'cannotTell';

interface Trend {
  readonly verdict: TrendVerdict;
  /** A true change of this size would be found four times in five, in the unit of the change; Infinity: none would. */
  readonly smallestChange: number;
}

/** Two periods, each without the other's putts. */
export interface TwoPeriods<Period> {
  readonly before: Period;
  readonly after: Period;
}

/** For quantities of which more is better. */
const verdictOf = ({ low, high }: { readonly low: number; readonly high: number }): TrendVerdict =>
  low > 0 ? 'better' : high < 0 ? 'worse' : 'cannotTell';

/** A chance above a half on one side, as the two-sided confidence with the same end. */
const asTwoSided = (chance: number): number => 2 * chance - 1;

export interface ShareTrend extends ShareDifference, Trend {}

/**
 * Change of a share, such as of putts holed from a band. Putts from nearer within the band look like better putting:
 * adjustedTrend sees to that.
 */
export function shareTrend({ before, after }: TwoPeriods<Counted>, confidence = 0.95): ShareTrend {
  const difference = shareDifference(before, after, confidence);
  // Half a hit and half a miss more (the median of Jeffreys' prior): the spread of no hits in ten is not nothing.
  const share = (before.hits + after.hits + 0.5) / (before.tries + after.tries + 1);
  const standardError = Math.sqrt(share * (1 - share) * (1 / before.tries + 1 / after.tries));
  const smallest = (zFactor(confidence) + zFactor(asTwoSided(POWER))) * standardError;
  return {
    ...difference,
    verdict: verdictOf(difference),
    // No share changes by more than 1.
    smallestChange: smallest > 1 ? Number.POSITIVE_INFINITY : smallest,
  };
}

export interface MeanTrend extends MeanDifference, Trend {
  readonly before: WeightedMean;
  readonly after: WeightedMean;
}

/** How many changes are looked at together; the verdict, not the interval, is made that much stricter (Bonferroni). */
interface Looks {
  /** This one included; default 1. */
  readonly looks?: number;
}

function trendOfMeans(
  { before, after }: TwoPeriods<WeightedMean | undefined>,
  confidence: number,
  looks = 1,
): MeanTrend | undefined {
  if (before === undefined || after === undefined) return undefined;
  const difference = meanDifference(before, after, confidence);
  const strictly = 1 - (1 - confidence) / looks;
  const { standardError, degrees } = difference;
  return {
    ...difference,
    before,
    after,
    verdict: verdictOf(looks === 1 ? difference : meanDifference(before, after, strictly)),
    smallestChange:
      degrees === 0
        ? Number.POSITIVE_INFINITY
        : (tFactor(strictly, degrees) + tFactor(asTwoSided(POWER), degrees)) * standardError,
  };
}

/** One number per round, with a weight where rounds do not count alike: holes, for strokes gained per 18. */
export interface RoundValues {
  readonly values: readonly number[];
  readonly weights?: readonly number[];
}

/**
 * Change of a mean, such as of strokes gained per round.
 * @returns undefined when a period has no rounds
 */
export const meanTrend = (
  { before, after }: TwoPeriods<RoundValues>,
  confidence = 0.95,
): MeanTrend | undefined =>
  trendOfMeans(
    {
      before: weightedMean(before.values, before.weights),
      after: weightedMean(after.values, after.weights),
    },
    confidence,
  );

/** A putt beside the benchmark. */
export interface JudgedPutt {
  readonly holed: boolean;
  /** The benchmark's share holed from there, 0..1. */
  readonly benchmarkShare: number;
}

/** Putts holed above the benchmark, per putt; variance: the larger of what scatter says and of what the benchmark's shares say. */
function aboveBenchmark(putts: readonly JudgedPutt[]): WeightedMean | undefined {
  const mean = weightedMean(putts.map(({ holed, benchmarkShare }) => (holed ? 1 : 0) - benchmarkShare));
  if (mean === undefined) return undefined;
  const byShares = putts.reduce((sum, { benchmarkShare: p }) => sum + p * (1 - p), 0) / putts.length ** 2;
  return { ...mean, variance: Math.max(mean.variance, byShares) };
}

/**
 * Change of putts holed above the benchmark, per putt: what remains of a change of the share holed when the putts of one period
 * were nearer than those of the other.
 * @returns undefined when a period has no putts
 */
export const adjustedTrend = (
  { before, after }: TwoPeriods<readonly JudgedPutt[]>,
  confidence = 0.95,
  { looks }: Looks = {},
): MeanTrend | undefined =>
  trendOfMeans({ before: aboveBenchmark(before), after: aboveBenchmark(after) }, confidence, looks);
