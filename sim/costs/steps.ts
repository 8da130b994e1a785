/**
 * What a player might change, one thing at a time. Answers for: each step, and the player after it. Leaves out: what it saves, and
 * how hard it is (a tenth of a degree and a point of pace are not said to be equal work).
 */
import type { Player } from '../types.ts';
import { degreesToRadians } from '../units.ts';

/** Steps everybody is shown, in this order. */
export const MAIN_STEPS = [
  'lineTenth',
  'pacePoint',
  'readPoints',
  'readHabit',
  'paceHabit',
  'bestPace',
] as const;
/** All steps that can be held against each other. */
export const STEPS = [...MAIN_STEPS, 'lineHalf', 'lineShare', 'paceShare', 'readShare'] as const;
export type StepId = (typeof STEPS)[number];

interface ErrorStep {
  readonly error: keyof Player;
  /** So much less, the same unit; never below 0. */
  readonly less?: number;
  /** So many times as large. */
  readonly times?: number;
}

/** What each does to the errors; the best pace does nothing to them. */
const ERROR_STEPS: Readonly<Record<Exclude<StepId, 'bestPace'>, ErrorStep>> = {
  lineTenth: { error: 'lineSd', less: degreesToRadians(0.1) },
  lineHalf: { error: 'lineSd', less: degreesToRadians(0.5) },
  lineShare: { error: 'lineSd', times: 0.9 },
  pacePoint: { error: 'paceSd', less: 0.01 },
  paceShare: { error: 'paceSd', times: 0.9 },
  readPoints: { error: 'readSd', less: 0.05 },
  readShare: { error: 'readSd', times: 0.9 },
  readHabit: { error: 'readBias', times: 0 },
  paceHabit: { error: 'paceBias', times: 0 },
};

/** The player after the step. */
export function afterStep(player: Player, step: StepId): Player {
  if (step === 'bestPace') return player;
  const { error, less = 0, times = 1 } = ERROR_STEPS[step];
  const now = player[error];
  // A habit has a sign and is only ever taken away; a spread cannot be less than none.
  const then = times === 0 ? 0 : Math.max(0, now * times - less);
  return then === now ? player : { ...player, [error]: then };
}
