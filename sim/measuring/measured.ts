/**
 * A number that was measured, with its margin: what the rest of this folder returns.
 *
 * Answers for: the interval of a quantity whose error has two parts, one that more readings average out and one common to
 * all of them (a late thumb, a ramp that is 3 mm too high). Leaves out: where either part comes from.
 * Source: the variances add, and the factor is Student's for the effective degrees of freedom of the sum (Welch-Satterthwaite,
 * as in the Guide to the Expression of Uncertainty in Measurement, annex G.4; memory). The common part counts as known.
 */
import { tFactor, zFactor } from '../maths/student-t.ts';

export interface Measured {
  readonly value: number;
  /** Ends of the interval; may be infinite: then nothing is known on that side. */
  readonly low: number;
  readonly high: number;
}

/** Intervals of this folder unless asked otherwise. */
export const CONFIDENCE = 0.95;

/** Both parts of an error, as variances of the quantity. */
export interface ErrorParts {
  /** Averages out with more readings. */
  readonly own: number;
  /** Degrees of freedom with which `own` is known. */
  readonly degrees: number;
  /** Common to all readings; 0: none. */
  readonly shared: number;
}

/** Half the width of the interval: factor times the standard error; in the units of the square root of the variances. */
export function marginOf({ own, degrees, shared }: ErrorParts, confidence = CONFIDENCE): number {
  const total = own + shared;
  if (total === 0) return 0;
  const factor = own === 0 ? zFactor(confidence) : tFactor(confidence, degrees * (total / own) ** 2);
  return factor * Math.sqrt(total);
}

/** Half the width of an interval. */
export const halfWidth = ({ low, high }: Measured): number => (high - low) / 2;
