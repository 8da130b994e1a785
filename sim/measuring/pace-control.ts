/**
 * Pace errors from balls rolled to a target, each with where it stopped.
 *
 * Answers for: spread and bias of the distance rolled, as shares of the distance meant, and spread and bias of the direction
 * when left and right were written down. Leaves out: holing; the read (a straight, level line is asked for).
 * The player of MODEL.md section 3 rolls (1 + bias + spread z) times what is meant, whatever the distance: so each ball is
 * divided by its own, and targets may differ. Intervals: Student's for the bias, chi-square's for the spread.
 */
import { chiSquareQuantile } from '../maths/chi-square.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { CONFIDENCE, type Measured } from './measured.ts';

export interface PaceRoll {
  /** Ball to target, m. */
  readonly target: number;
  /** How far beyond the target it stopped, along the line, m; short: negative. */
  readonly past: number;
  /** How far to the left of the line it stopped, m; right: negative; left out: not written down. */
  readonly left?: number;
}

/** Spread and mean of some errors. */
export interface MeasuredSpread {
  readonly sd: Measured;
  readonly bias: Measured;
  readonly count: number;
}

export interface PaceControl {
  /** Shares of the distance meant. */
  readonly pace: MeasuredSpread;
  /** Direction of rest, radians, positive left; undefined with fewer than two balls that have a side. */
  readonly direction: MeasuredSpread | undefined;
  readonly rolls: number;
  /** All balls to one distance: a task that is done better than ever new distances (Karlsen & Nilsson 2008, abstract read). */
  readonly oneTarget: boolean;
}

/** Targets this near one another, relative, count as one distance; ours. */
const SAME_TARGET = 0.05;

/**
 * Spread of normal errors: s with n - 1 in its square, between s sqrt((n - 1)/chi^2) for both ends of chi-square.
 * @returns undefined with fewer than two
 */
export function spreadOf(errors: readonly number[], confidence = CONFIDENCE): MeasuredSpread | undefined {
  const mean = meanInterval(errors, undefined, confidence);
  const degrees = errors.length - 1;
  if (mean === undefined || degrees < 1) return undefined;
  const squares = errors.reduce((sum, error) => sum + (error - mean.value) ** 2, 0);
  const tail = (1 - confidence) / 2;
  return {
    sd: {
      value: Math.sqrt(squares / degrees),
      low: Math.sqrt(squares / chiSquareQuantile(1 - tail, degrees)),
      high: Math.sqrt(squares / chiSquareQuantile(tail, degrees)),
    },
    bias: { value: mean.value, low: mean.low, high: mean.high },
    count: errors.length,
  };
}

/**
 * @param rolls targets above 0; past no less than minus the target
 * @returns undefined with fewer than two
 */
export function paceControl(rolls: readonly PaceRoll[], confidence = CONFIDENCE): PaceControl | undefined {
  const pace = spreadOf(
    rolls.map(({ target, past }) => past / target),
    confidence,
  );
  if (pace === undefined) return undefined;
  const sided = rolls.flatMap(({ target, past, left }) =>
    left === undefined ? [] : [Math.atan2(left, target + past)],
  );
  const targets = rolls.map(({ target }) => target);
  return {
    pace,
    direction: spreadOf(sided, confidence),
    rolls: rolls.length,
    oneTarget: Math.max(...targets) <= Math.min(...targets) * (1 + SAME_TARGET),
  };
}
