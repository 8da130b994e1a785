/**
 * Student's t distribution: how far a mean of few observations may lie from the truth.
 *
 * Answers for: the half-width factor of a two-sided interval, for whole or fractional degrees of freedom, and its limit for
 * ever more of them, the normal one.
 * Source: Student 1908; P(|T| > t) = I_x(n/2, 1/2) with x = n/(n + t^2).
 */

import { lastPlace } from './halving.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { shareBelow } from './normal.ts';

/** The place where falling tails come down to what may lie outside. */
function factorOf(tails: (t: number) => number, outside: number): number {
  let low = 0;
  let high = 1;
  while (tails(high) > outside && Number.isFinite(high)) {
    low = high;
    high *= 2;
  }
  return lastPlace((t) => tails(t) > outside, low, high);
}

/**
 * The t that a Student variable stays within, either side, with the given chance.
 * @param confidence 0 < confidence < 1, such as 0.95
 * @param degrees degrees of freedom, above 0, need not be whole
 * @returns t; with 0.95 and 10 degrees 2.228
 */
export const tFactor = (confidence: number, degrees: number): number =>
  factorOf((t) => incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5), 1 - confidence);

/**
 * The chance that a standard normal variable lies farther from 0 than z, either side: small ones to their last figures.
 * @param z 0 or more
 */
export const shareOutside = (z: number): number => 2 * shareBelow(-z);

/**
 * The z that a standard normal variable stays within, either side, with the given chance.
 * @param confidence 0 < confidence < 1
 * @returns z; with 0.95 1.960
 */
export const zFactor = (confidence: number): number => factorOf(shareOutside, 1 - confidence);
