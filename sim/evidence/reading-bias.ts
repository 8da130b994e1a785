/**
 * Does this person see too little or too much break, and by how much?
 *
 * Answers for: the mean share of the break by which the reads were off, with its interval and a cautious verdict.
 * Leaves out: grouping of the reads (training/summary.ts).
 *
 * Definition. MODEL.md section 3: perceived = (1 + bias + SD z) true. With t the true and p the perceived aim offset the
 * share is r = (p - t)/t. Its plain mean blows up on nearly straight putts, where the hand's own half inch is a large
 * share of nothing. So each r carries the weight w = t^2/(t^2 + c^2), which is the least-squares weight for an error
 * made of a share of t and a constant part whose ratio is c: a regression of p - t on t through the origin. Far from
 * straight it is the mean share; a dead straight putt weighs nothing, and w r = t (p - t)/(t^2 + c^2) never blows up.
 * Tried and dropped: plain regression through the origin (w = t^2): one long lag putt then outweighs nine short ones.
 */
import { HOLE_RADIUS } from '../constants.ts';
import { type Estimate, meanInterval } from './mean-interval.ts';

/** c above, m: a read within the hole's own half-width is not a share of anything. Larger: gentle putts count less. */
const STRAIGHT_SCALE = HOLE_RADIUS;
/** Fewer effective reads than this give no verdict, however narrow the interval happens to be. */
const FEWEST_FOR_VERDICT = 5;
/** An interval wholly within +- this share is called "about right": it is what a good reader's one-putt can tell. */
const ABOUT_RIGHT = 0.15;

export interface AimPair {
  /** m, positive left. */
  readonly trueAim: number;
  /** m, positive left. */
  readonly aim: number;
}

export type BiasVerdict = 'tooLittle' | 'tooMuch' | 'aboutRight' | 'tooFew';

export interface ReadingBias extends Estimate {
  /** What the interval allows one to say; tooFew: the interval is too wide, or the reads too few, to tell. */
  readonly verdict: BiasVerdict;
}

function verdictOf({ low, high, effective }: Estimate): BiasVerdict {
  if (effective < FEWEST_FOR_VERDICT) return 'tooFew';
  if (high < 0) return 'tooLittle';
  if (low > 0) return 'tooMuch';
  return low >= -ABOUT_RIGHT && high <= ABOUT_RIGHT ? 'aboutRight' : 'tooFew';
}

/**
 * Mean share of the break by which the aims were off: below 0 too little break, above 0 too much.
 * @returns undefined when there are no reads, or only dead straight ones
 */
export function readingBias(pairs: readonly AimPair[], confidence = 0.95): ReadingBias | undefined {
  const shares: number[] = [];
  const weights: number[] = [];
  for (const { trueAim, aim } of pairs) {
    if (trueAim === 0) continue;
    shares.push((aim - trueAim) / trueAim);
    weights.push(trueAim ** 2 / (trueAim ** 2 + STRAIGHT_SCALE ** 2));
  }
  const estimate = meanInterval(shares, weights, confidence);
  if (estimate === undefined || !Number.isFinite(estimate.value)) return undefined;
  return { ...estimate, count: pairs.length, verdict: verdictOf(estimate) };
}
