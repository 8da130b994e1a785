/**
 * The length of a step, from a known length paced off.
 *
 * Answers for: one step's length with its interval, from one walk or several. Leaves out: that one steps differently on a slope
 * or in a hurry. Distances paced with it are off by the same share as the step, and by half a step for counting whole ones.
 */
import { CONFIDENCE, type Measured, marginOf } from './measured.ts';
import { poolReadings } from './readings.ts';

export interface Walk {
  /** m */
  readonly length: number;
  /** Halves are welcome. */
  readonly steps: number;
}

/** What a walk's count is expected to be off by, steps: whole ones counted (1/sqrt(12)). Only the prior of the scatter. */
const COUNT_SPREAD = 1 / Math.sqrt(12);
/** How much the step itself differs from walk to walk, share; 1%, ours. Only the prior of the scatter. */
const STRIDE_SPREAD = 0.01;

export interface StepLength {
  /** m */
  readonly step: Measured;
  readonly walks: number;
}

/** @returns undefined without walks; lengths and steps above 0 */
export function stepLength(walks: readonly Walk[], confidence = CONFIDENCE): StepLength | undefined {
  if (walks.length === 0) return undefined;
  const { means, degrees } = poolReadings([
    // The error of the count is a share of the step that falls with the steps counted.
    walks.map(({ length, steps }) => ({
      value: Math.log(length / steps),
      sd: Math.hypot(COUNT_SPREAD / steps, STRIDE_SPREAD),
    })),
  ]);
  const half = marginOf({ own: means[0].variance, degrees, shared: 0 }, confidence);
  const value = Math.exp(means[0].value);
  return { step: { value, low: value * Math.exp(-half), high: value * Math.exp(half) }, walks: walks.length };
}
