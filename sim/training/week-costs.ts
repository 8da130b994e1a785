/**
 * From what steps save to how a week's practice time is shared out among the three errors.
 *
 * Answers for: the saving that stands for each error, and its share of the time. Leaves out: what a step saves (costs/), which drills
 * fill the time (week-plan.ts).
 * The rule (ours): time goes by strokes saved a round; errors whose intervals overlap, each at least as wide as the engine's own error,
 * cannot be told apart and share their time evenly; an error whose step saves nothing gets none, unless none saves anything.
 */
import type { Interval } from '../costs/intervals.ts';
import { ENGINE_ERROR, type StepCost } from '../costs/round-costs.ts';
import type { StepId } from '../costs/steps.ts';
import type { Trained } from './putting-drill.ts';

export const WEEK_ERRORS = ['line', 'pace', 'read'] as const satisfies readonly Trained[];
export type WeekError = (typeof WEEK_ERRORS)[number];

export interface ErrorCost {
  readonly error: WeekError;
  /** The step that stands for it. */
  readonly step: StepId;
  /** Strokes a round. */
  readonly saved: Interval;
}

/** What stands for an error: all numbers of its area, habits too, within reach (costs/steps.ts). */
const STEP_OF: Readonly<Record<WeekError, StepId>> = {
  line: 'lineReach',
  pace: 'paceReach',
  read: 'readReach',
};

/**
 * The three errors, dearest first.
 * @throws RangeError where the step of an error is missing
 */
export const errorCosts = (steps: readonly StepCost[]): ErrorCost[] =>
  WEEK_ERRORS.map((error): ErrorCost => {
    const found = steps.find(({ step }) => step === STEP_OF[error]);
    if (found === undefined)
      throw new RangeError(`Got no saving for the ${error}; expected that of ${STEP_OF[error]}.`);
    return { error, step: found.step, saved: found.saved };
  }).sort((one, other) => other.saved.value - one.saved.value);

export interface TimeShare {
  readonly error: WeekError;
  /** Of the time, 0..1; the shares make one. */
  readonly share: number;
  /** Errors it cannot be told apart from, itself included. */
  readonly together: readonly WeekError[];
}

const widened = ({ value, low, high }: Interval): { readonly low: number; readonly high: number } => ({
  low: Math.min(low, value - ENGINE_ERROR),
  high: Math.max(high, value + ENGINE_ERROR),
});

/** Shares of the time, dearest error first. @param costs in any order, one for each error */
export function timeShares(costs: readonly ErrorCost[]): TimeShare[] {
  const inOrder = [...costs].sort((one, other) => other.saved.value - one.saved.value);
  // Sorted by value, whoever overlaps a dearer one overlaps, or is overlapped by, all between: groups are runs.
  const groups: ErrorCost[][] = [];
  let lowest = Number.POSITIVE_INFINITY;
  for (const cost of inOrder) {
    const { low, high } = widened(cost.saved);
    const overlaps = high >= lowest;
    if (overlaps) groups[groups.length - 1].push(cost);
    else groups.push([cost]);
    lowest = overlaps ? Math.min(lowest, low) : low;
  }
  const weighted = groups.flatMap((group) => {
    const mean = group.reduce((sum, { saved }) => sum + Math.max(0, saved.value), 0) / group.length;
    const together = group.map(({ error }) => error);
    return group.map(({ error }) => ({ error, together, weight: mean }));
  });
  const all = weighted.reduce((sum, { weight }) => sum + weight, 0);
  return weighted.map(({ error, together, weight }) => ({
    error,
    together,
    share: all > 0 ? weight / all : 1 / weighted.length,
  }));
}
