/**
 * By how much do two shares differ: holed this month and last, made by one player and another?
 *
 * Answers for: the difference of two shares of independent tries, with its interval. Leaves out: changes of other things (trend.ts).
 * Source: Newcombe, "Interval estimation for the difference between independent proportions", Statistics in Medicine 17, 873 (1998),
 * method 10: each share's score interval (Wilson 1927), joined by the distances from value to end. Not taken: the plain difference +-
 * 1.96 standard errors, which is a point for 0 of 10 beside 0 of 10.
 */

import { zFactor } from '../maths/student-t.ts';
import type { Counted } from './proportion.ts';

export interface ShareDifference {
  /** Share after less share before, -1..1; undefined when one of them has no tries. */
  readonly value: number | undefined;
  /** Ends of the interval; everything, -1 to 1, when one of them has no tries. */
  readonly low: number;
  readonly high: number;
}

/** Wilson's interval: the shares p from which h/n is not more than z standard errors, sqrt(p (1 - p)/n), away. */
function scoreInterval({ hits, tries }: Counted, z: number): { low: number; high: number } {
  const middle = hits + z ** 2 / 2;
  const half = z * Math.sqrt((hits * (tries - hits)) / tries + z ** 2 / 4);
  const all = tries + z ** 2;
  return { low: (middle - half) / all, high: (middle + half) / all };
}

/** `after` less `before`, with the two-sided interval of this confidence. */
export function shareDifference(before: Counted, after: Counted, confidence = 0.95): ShareDifference {
  if (before.tries === 0 || after.tries === 0) return { value: undefined, low: -1, high: 1 };
  const z = zFactor(confidence);
  const [first, second] = [scoreInterval(before, z), scoreInterval(after, z)];
  const [p1, p2] = [before.hits / before.tries, after.hits / after.tries];
  const value = p2 - p1;
  return {
    value,
    low: value - Math.hypot(p2 - second.low, first.high - p1),
    high: value + Math.hypot(second.high - p2, p1 - first.low),
  };
}
