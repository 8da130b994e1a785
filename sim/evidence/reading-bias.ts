/**
 * Does this person see too little or too much break, and by how much? The one answer of every screen that quotes a reading bias.
 *
 * Answers for: how far off one read is, the mean share of the break by which reads were off, with its interval and a cautious verdict.
 * Leaves out: grouping of the reads (training/summary.ts, training/progress.ts).
 *
 * Definition. With t the true and p the perceived aim offset the share is r = (p - t)/t. Its plain mean blows up on nearly straight
 * putts, where the hand's own half inch is a large share of nothing. So each r carries the weight w = t^2/(t^2 + c^2), which is the
 * least-squares weight for an error made of a share of t and a constant part whose ratio is c: far from straight the mean share; a dead
 * straight putt weighs nothing, and w r = t (p - t)/(t^2 + c^2) never blows up.
 * Days. Reads of one day share what the day makes of the eye: r = bias + day + rest, days normal with SD tau. The weighted mean of a
 * day is then normal about the bias with variance tau^2 + omega^2/W, W the day's weight; omega^2 from what is left within days,
 * pooled. Both spreads are uncertain, and the interval is counted out over a grid of them: so it is as wide after one day as days may
 * differ, and narrows with days, not with reads of one day.
 */
import { HOLE_RADIUS } from '../constants.ts';
import { lastPlace } from '../maths/halving.ts';
import { normalCdf } from '../maths/normal.ts';
import type { Estimate } from '../statistics/mean-interval.ts';

/** c above, m: a read within the hole's own half-width is not a share of anything. Larger: gentle putts count less. */
const STRAIGHT_SCALE = HOLE_RADIUS;
/** A read farther off than this is a slip of the finger or a wrong sign; it counts as so far off, share. */
const FARTHEST = 2;
/** Fewer effective reads than this give no verdict, however narrow the interval happens to be. */
const FEWEST_FOR_VERDICT = 5;
/** Fewer than this have no margin: one read outweighs all others. */
const FEWEST_FOR_MARGIN = 1.5;
/** An interval wholly within +- this share is called "about right": it is what a good reader's one-putt can tell. */
const ABOUT_RIGHT = 0.15;

/** What is thought of tau before any read: half-normal with this SD, share of the break. Ours: no record of days is known to us. */
const DAY_SCALE = 0.2;
/** Values of tau that are looked at, and the largest. */
const DAY_STEPS = 20;
const MOST_DAY = 0.6;
/** What is thought of omega: about this, share, worth so many reads. As the reader's model has it (training/reader-model.ts), weaker. */
const REST = 0.4;
const REST_READS = 1;
/** Values of omega that are looked at, and how many SDs of its logarithm they reach either way. */
const REST_STEPS = 11;
const REST_REACH = 3.5;

/** Pieces less likely than this share of the likeliest are left out: all of them together are a hundredth of what lies outside 95%. */
const LEAST_WEIGHT = 2e-6;
/** No end lies farther from the value, share: a bracket to halve. */
const REACH = 40;

export interface AimPair {
  /** m, positive left. */
  readonly trueAim: number;
  /** m, positive left. */
  readonly aim: number;
}

/** A read and the day it was made on. */
export interface DatedAim extends AimPair {
  /** Reads of the same day have the same. */
  readonly day: string;
}

/** How far one read is off. */
export interface Off {
  /** Of the true break, below 0 too little; within +-200%. */
  readonly share: number;
  /** 0 (dead straight) to 1. */
  readonly weight: number;
}

/** How far a read is off. @returns share 0 of weight 0 for a dead straight putt */
export const offOf = ({ trueAim, aim }: AimPair): Off =>
  trueAim === 0
    ? { share: 0, weight: 0 }
    : {
        share: Math.max(-FARTHEST, Math.min(FARTHEST, (aim - trueAim) / trueAim)),
        weight: trueAim ** 2 / (trueAim ** 2 + STRAIGHT_SCALE ** 2),
      };

export type BiasVerdict = 'tooLittle' | 'tooMuch' | 'aboutRight' | 'tooFew';

export interface ReadingBias extends Estimate {
  /** Days that went in. With one the interval holds what days are thought to differ by, not what they were seen to. */
  readonly days: number;
  /** What the interval allows one to say; tooFew: the interval is too wide, or the reads too few, to tell. */
  readonly verdict: BiasVerdict;
}

function verdictOf({ low, high, effective }: Estimate): BiasVerdict {
  if (effective < FEWEST_FOR_VERDICT) return 'tooFew';
  if (high < 0) return 'tooLittle';
  if (low > 0) return 'tooMuch';
  return low >= -ABOUT_RIGHT && high <= ABOUT_RIGHT ? 'aboutRight' : 'tooFew';
}

/** The reads of one day together. */
interface Day {
  readonly mean: number;
  readonly weight: number;
}

/** Days, and what is left within them: omega^2 and its degrees of freedom, the prior's reads among them. */
interface Days {
  readonly days: readonly Day[];
  readonly rest: number;
  readonly degrees: number;
}

function daysOf(reads: readonly DatedAim[]): Days {
  const groups = new Map<string, Off[]>();
  for (const read of reads) {
    const off = offOf(read);
    if (off.weight > 0) groups.set(read.day, [...(groups.get(read.day) ?? []), off]);
  }
  let [left, room, degrees] = [0, 0, 0];
  const days = [...groups.values()].map((offs) => {
    const weight = offs.reduce((sum, off) => sum + off.weight, 0);
    const mean = offs.reduce((sum, off) => sum + off.weight * off.share, 0) / weight;
    const squares = offs.reduce((sum, off) => sum + off.weight ** 2, 0);
    // By the residuals themselves, so that it holds though reads of gentle putts spread otherwise than the weights say.
    left += offs.reduce((sum, off) => sum + (off.weight * (off.share - mean)) ** 2, 0);
    room += weight - squares / weight;
    degrees += weight ** 2 / squares - 1;
    return { mean, weight };
  });
  const seen = room > 0 ? (degrees * left) / room : 0;
  return {
    days,
    rest: (seen + REST_READS * REST ** 2) / (degrees + REST_READS),
    degrees: degrees + REST_READS,
  };
}

/** A normal distribution of the bias, for one tau and omega, and the chance of those. */
interface Piece {
  readonly mean: number;
  readonly sd: number;
  readonly weight: number;
}

function pieces({ days, rest, degrees }: Days): Piece[] {
  const found: { mean: number; sd: number; log: number }[] = [];
  for (let i = 0; i < DAY_STEPS; i++) {
    const tau = (MOST_DAY * (i + 0.5)) / DAY_STEPS;
    for (let j = 0; j < REST_STEPS; j++) {
      // SD of the logarithm of omega: 1/sqrt(2 degrees).
      const far = (REST_REACH * ((2 * j) / (REST_STEPS - 1) - 1)) / Math.sqrt(2 * degrees);
      const omega = rest * Math.exp(2 * far);
      let log = -((tau / DAY_SCALE) ** 2) / 2 - degrees * far - (degrees * rest) / (2 * omega);
      let [precision, sum] = [0, 0];
      for (const { mean, weight } of days) {
        const own = 1 / (tau ** 2 + omega / weight);
        precision += own;
        sum += own * mean;
        log += Math.log(own) / 2;
      }
      const mean = sum / precision;
      log -= Math.log(precision) / 2;
      for (const day of days) log -= (day.mean - mean) ** 2 / (tau ** 2 + omega / day.weight) / 2;
      found.push({ mean, sd: 1 / Math.sqrt(precision), log });
    }
  }
  const most = Math.max(...found.map(({ log }) => log));
  const likely = found.filter(({ log }) => log > most + Math.log(LEAST_WEIGHT));
  const total = likely.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
  return likely.map(({ mean, sd, log }) => ({ mean, sd, weight: Math.exp(log - most) / total }));
}

/**
 * Mean share of the break by which the aims were off in the long run of days: below 0 too little break, above 0 too much.
 * @returns undefined when there are no reads, or only dead straight ones
 */
export function readingBias(reads: readonly DatedAim[], confidence = 0.95): ReadingBias | undefined {
  const found = daysOf(reads);
  if (found.days.length === 0) return undefined;
  const weights = reads.map((read) => offOf(read).weight);
  const effective =
    weights.reduce((sum, weight) => sum + weight, 0) ** 2 /
    weights.reduce((sum, weight) => sum + weight ** 2, 0);
  const all = pieces(found);
  const value = all.reduce((sum, { mean, weight }) => sum + weight * mean, 0);
  const below = (place: number): number =>
    all.reduce((sum, { mean, sd, weight }) => sum + weight * normalCdf((place - mean) / sd), 0);
  const end = (part: number): number =>
    value - REACH + lastPlace((place) => below(value - REACH + place) < part, 0, 2 * REACH);
  const [low, high] =
    effective < FEWEST_FOR_MARGIN
      ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
      : [end((1 - confidence) / 2), end((1 + confidence) / 2)];
  const estimate = { value, low, high, count: reads.length, effective };
  return { ...estimate, days: found.days.length, verdict: verdictOf(estimate) };
}
