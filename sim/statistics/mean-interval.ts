/**
 * A mean with its honest margin, for plain and for weighted observations.
 *
 * Answers for: mean, interval, degrees of freedom. Leaves out: what the numbers are. One observation has a mean and no
 * margin: its interval is everything.
 * Equal weights give Student's interval exactly. Unequal weights: variance by the residuals themselves, each divided by
 * 1 - its share of the weight (HC2, MacKinnon & White 1985: unbiased when all spread alike), and as many degrees of
 * freedom as the effective number of observations less one (Kish 1965: (sum w)^2 / sum w^2).
 */
import { tFactor } from '../maths/student-t.ts';

export interface Estimate {
  readonly value: number;
  /** Ends of the interval; -Infinity and Infinity when there is no margin. */
  readonly low: number;
  readonly high: number;
  /** Observations that went in. */
  readonly count: number;
  /** Effective number of observations, at most `count`. */
  readonly effective: number;
}

/** A weighted mean and how far it may be off, before any confidence is asked for. */
export interface WeightedMean {
  readonly value: number;
  /** Variance of the mean itself, not of one observation; Infinity when there is no margin. */
  readonly variance: number;
  /** Of the interval; 0 when there is no margin. */
  readonly degrees: number;
  readonly count: number;
  readonly effective: number;
}

/**
 * Weighted mean with its variance.
 * @param values observations
 * @param weights one per value, 0 or more; left out: all equal
 * @returns undefined when nothing carries weight
 */
export function weightedMean(
  values: readonly number[],
  weights: readonly number[] = values.map(() => 1),
): WeightedMean | undefined {
  let total = 0;
  let squares = 0;
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    if (weights[i] === 0) continue;
    total += weights[i];
    squares += weights[i] ** 2;
    sum += weights[i] * values[i];
  }
  if (!(total > 0)) return undefined;
  const value = sum / total;
  const effective = total ** 2 / squares;
  const degrees = effective - 1;
  const count = values.length;
  // Less than half a degree of freedom: one observation outweighs the rest, and the factor would be in the thousands.
  if (degrees < 0.5) return { value, variance: Number.POSITIVE_INFINITY, degrees: 0, count, effective };
  let variance = 0;
  for (let i = 0; i < values.length; i++) {
    const share = weights[i] / total;
    variance += (share * (values[i] - value)) ** 2 / (1 - share);
  }
  return { value, variance, degrees, count, effective };
}

/**
 * Weighted mean with a two-sided interval.
 * @param values observations
 * @param weights one per value, 0 or more; left out: all equal
 * @returns undefined when nothing carries weight
 */
export function meanInterval(
  values: readonly number[],
  weights?: readonly number[],
  confidence = 0.95,
): Estimate | undefined {
  const mean = weightedMean(values, weights);
  if (mean === undefined) return undefined;
  const { value, variance, degrees, count, effective } = mean;
  const half = degrees === 0 ? Number.POSITIVE_INFINITY : tFactor(confidence, degrees) * Math.sqrt(variance);
  return { value, low: value - half, high: value + half, count, effective };
}
