/**
 * The spread of a few observations, with its interval.
 *
 * Answers for: standard deviation and interval of normal observations. Leaves out: observations with long tails, for which the
 * interval is too narrow. (n - 1) s^2 / sigma^2 is chi-squared.
 */
import { chiSquareQuantile } from '../maths/chi-square.ts';
import type { Estimate } from './mean-interval.ts';

/** Standard deviation with its interval. @returns undefined for fewer than two values */
export function spreadInterval(
  values: readonly number[],
  confidence = 0.95,
): Pick<Estimate, 'value' | 'low' | 'high' | 'count'> | undefined {
  const count = values.length;
  if (count < 2) return undefined;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const outside = (1 - confidence) / 2;
  return {
    value: Math.sqrt(squares / (count - 1)),
    low: Math.sqrt(squares / chiSquareQuantile(1 - outside, count - 1)),
    high: Math.sqrt(squares / chiSquareQuantile(outside, count - 1)),
    count,
  };
}
