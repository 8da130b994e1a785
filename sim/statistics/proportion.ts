/**
 * A share holed, three-putted, missed low, with its honest margin.
 *
 * Answers for: the interval of a share counted in independent tries. Leaves out: what is counted; differences
 * (share-difference.ts).
 * Source: Brown, Cai & DasGupta, "Interval estimation for a binomial proportion", Statistical Science 16, 101 (2001), the
 * modified Jeffreys interval: the equal-tailed interval of a beta posterior from the prior beta(1/2, 1/2), changed at 0, 1, n - 1
 * and n hits, where the plain one holds truths near 0 and 1 too rarely. Not taken: h/n +- 1.96 standard errors, which is a point for
 * no hits; Clopper & Pearson's, which is wider than the chance it states.
 */
import { lastPlace } from '../maths/halving.ts';
import { incompleteBeta } from '../maths/incomplete-beta.ts';

/** So many of so many. */
export interface Counted {
  /** Whole, 0 to tries. */
  readonly hits: number;
  readonly tries: number;
}

export interface Proportion extends Counted {
  /** hits / tries; undefined without tries. */
  readonly value: number | undefined;
  /** Ends of the interval, 0..1; everything, 0 to 1, without tries. */
  readonly low: number;
  readonly high: number;
}

const betaQuantile = (share: number, a: number, b: number): number =>
  lastPlace((x) => incompleteBeta(x, a, b) < share, 0, 1);

/** Upper end; the lower one is its mirror image, misses taken for hits. */
function upperEnd(hits: number, tries: number, tail: number): number {
  if (hits === 0) return 1 - tail ** (1 / tries);
  if (hits >= tries - 1) return 1;
  return betaQuantile(1 - tail, hits + 0.5, tries - hits + 0.5);
}

/**
 * A share and its two-sided interval.
 * @param hits whole, 0 to tries
 * @param tries whole, 0 or more
 * @param confidence 0 < confidence < 1
 */
export function proportionInterval(hits: number, tries: number, confidence = 0.95): Proportion {
  if (tries === 0) return { value: undefined, low: 0, high: 1, hits, tries };
  const tail = (1 - confidence) / 2;
  return {
    value: hits / tries,
    low: 1 - upperEnd(tries - hits, tries, tail),
    high: upperEnd(hits, tries, tail),
    hits,
    tries,
  };
}
