/**
 * Do misses lean one way more than chance makes them?
 *
 * Answers for: the chance of a count as lopsided as this, the share with its interval, and a cautious verdict. Leaves out: which
 * misses count and what the two ways are (miss-leans.ts).
 *
 * The chance is exact: twice the smaller tail of the binomial distribution. With an expected share of a half this is the sign test.
 * A verdict needs three things: enough misses (caution.ts), a chance that stays below 5% when multiplied by the number of leans
 * looked at (Bonferroni: whoever looks at many finds one in twenty without cause), and an expected share outside the interval.
 * A lean alone does not tell read, aim, start and pace apart.
 */

import { incompleteBeta } from '../maths/incomplete-beta.ts';
import { type Proportion, proportionInterval } from '../statistics/proportion.ts';
import { FEWEST_TO_CONCLUDE } from './caution.ts';

/** Chance, over all leans looked at, of calling one that is not there. */
const FALSE_LEANS = 0.05;

export interface WayCounts {
  /** Misses that went the first way, and the second. */
  readonly first: number;
  readonly second: number;
}

export interface LeanOptions {
  /** Share that goes the first way without any fault, 0 < share < 1; default a half. Short or past is not a fair coin: miss-leans.ts. */
  readonly expectedShare?: number;
  /** How many leans are looked at together, this one included; default 1. */
  readonly looks?: number;
}

/**
 * tooFew: nothing can be said. leans: more than chance does. even: no more than chance does, which is not "the shares are equal":
 * the interval says what they may be.
 */
export type LeanVerdict = 'tooFew' | 'even' | 'leans';

export interface Lean {
  /** Share that went the first way, with its 95% interval; hits and tries are the counts. */
  readonly share: Proportion;
  readonly expectedShare: number;
  /** Chance of a count as far from the expected share as this, either way. */
  readonly chance: number;
  /** The same when all leans looked at are considered, at most 1. */
  readonly correctedChance: number;
  readonly verdict: LeanVerdict;
  /** Which way the verdict is about; undefined unless it leans. */
  readonly way: 'first' | 'second' | undefined;
}

/** Chance of `hits` or fewer in `tries` (DLMF 8.17.5). */
const binomialAtMost = (hits: number, tries: number, share: number): number =>
  hits < 0 ? 0 : hits >= tries ? 1 : incompleteBeta(1 - share, tries - hits, hits + 1);

/** Twice the smaller tail, at most 1. */
const binomialChance = (hits: number, tries: number, share: number): number =>
  Math.min(
    1,
    2 * Math.min(binomialAtMost(hits, tries, share), binomialAtMost(tries - hits, tries, 1 - share)),
  );

/** Judges the two counts; see the header for the rule. */
export function judgeLean({ first, second }: WayCounts, options: LeanOptions = {}): Lean {
  const { expectedShare = 0.5, looks = 1 } = options;
  const misses = first + second;
  const share = proportionInterval(first, misses);
  const chance = binomialChance(first, misses, expectedShare);
  const correctedChance = Math.min(1, looks * chance);
  const clear = expectedShare < share.low || expectedShare > share.high;
  const verdict =
    misses < FEWEST_TO_CONCLUDE ? 'tooFew' : correctedChance < FALSE_LEANS && clear ? 'leans' : 'even';
  const way = verdict !== 'leans' ? undefined : first > expectedShare * misses ? 'first' : 'second';
  return { share, expectedShare, chance, correctedChance, verdict, way };
}
