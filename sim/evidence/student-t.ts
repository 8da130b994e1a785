/**
 * Student's t distribution: how far a mean of few observations may lie from the truth.
 *
 * Answers for: the half-width factor of a two-sided interval, for whole or fractional degrees of freedom.
 * Source: Student 1908; P(|T| > t) = I_x(n/2, 1/2) with x = n/(n + t^2).
 */
import { incompleteBeta } from './incomplete-beta.ts';

/** Relative width of the bracket at which the root counts as found. */
const CLOSE_ENOUGH = 1e-12;

/**
 * The t that a Student variable stays within, either side, with the given chance.
 * @param confidence 0 < confidence < 1, such as 0.95
 * @param degrees degrees of freedom, above 0, need not be whole
 * @returns t; with 0.95 and 10 degrees 2.228
 */
export function tFactor(confidence: number, degrees: number): number {
  const outside = 1 - confidence;
  const tails = (t: number): number => incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5);
  let low = 0;
  let high = 1;
  while (tails(high) > outside && Number.isFinite(high)) {
    low = high;
    high *= 2;
  }
  // The tails fall steadily with t: halving cannot fail, and speed does not matter here.
  while (high - low > CLOSE_ENOUGH * high) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (tails(middle) > outside) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
