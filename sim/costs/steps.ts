/**
 * What a player might change, one thing at a time. Answers for: each step, and the player after it; which errors make an area of
 * practice. Leaves out: what it saves.
 *
 * Two kinds. A tenth off all errors of an area is taken for equal effort in each area (MODEL.md, section 10): by these areas are ranked and
 * weeks planned. Steps of a stated size (a tenth of a degree, a point of pace) are for asking; equal steps of those are not equal efforts.
 */
import type { Player } from '../types.ts';
import { degreesToRadians } from '../units.ts';

/** What a person is told as one thing, and practises by one kind of drill: spreads and habits together. */
export const AREAS = {
  line: ['lineSd'],
  pace: ['paceSd', 'paceBias'],
  read: ['slopeSd', 'speedSd', 'readBias'],
} as const satisfies Readonly<Record<string, readonly (keyof Player)[]>>;
export type Area = keyof typeof AREAS;

/** Steps everybody is shown, in this order. */
export const MAIN_STEPS = [
  'lineShare',
  'paceShare',
  'readShare',
  'readHabit',
  'paceHabit',
  'bestPace',
] as const;
/** All steps that can be held against each other. */
export const STEPS = [
  ...MAIN_STEPS,
  'lineTenth',
  'lineHalf',
  'pacePoint',
  'readPoints',
  'slopePoints',
  'speedPoints',
  'slopeShare',
  'speedShare',
] as const;
export type StepId = (typeof STEPS)[number];

interface ErrorStep {
  /** So much less, the same unit; never below 0. */
  readonly less?: number;
  /** So many times as large. */
  readonly times?: number;
}

/** A tenth less. */
const TENTH: ErrorStep = { times: 0.9 };
const GONE: ErrorStep = { times: 0 };
/** Rise over run, and share of the green speed: about a tenth of what a low handicap misreads. */
const SLOPE_LESS: ErrorStep = { less: 0.0005 };
const SPEED_LESS: ErrorStep = { less: 0.005 };

const tenthOff = (area: Area): Partial<Record<keyof Player, ErrorStep>> =>
  Object.fromEntries(AREAS[area].map((error) => [error, TENTH]));

/** What each does to the errors; the best pace does nothing to them. */
const ERROR_STEPS: Readonly<
  Record<Exclude<StepId, 'bestPace'>, Readonly<Partial<Record<keyof Player, ErrorStep>>>>
> = {
  lineShare: tenthOff('line'),
  paceShare: tenthOff('pace'),
  readShare: tenthOff('read'),
  readHabit: { readBias: GONE },
  paceHabit: { paceBias: GONE },
  lineTenth: { lineSd: { less: degreesToRadians(0.1) } },
  lineHalf: { lineSd: { less: degreesToRadians(0.5) } },
  pacePoint: { paceSd: { less: 0.01 } },
  readPoints: { slopeSd: SLOPE_LESS, speedSd: SPEED_LESS },
  slopePoints: { slopeSd: SLOPE_LESS },
  speedPoints: { speedSd: SPEED_LESS },
  slopeShare: { slopeSd: TENTH },
  speedShare: { speedSd: TENTH },
};

/** The player after the step; the same object where it changes nothing. */
export function afterStep(player: Player, step: StepId): Player {
  if (step === 'bestPace') return player;
  const changed = Object.entries(ERROR_STEPS[step]).flatMap(([name, { less = 0, times = 1 }]) => {
    const error = name as keyof Player;
    const now = player[error];
    // A habit has a sign and only shrinks; a spread cannot be less than none.
    const then = less === 0 ? now * times || 0 : Math.max(0, now - less);
    return then === now ? [] : [[error, then] as const];
  });
  return changed.length === 0 ? player : { ...player, ...Object.fromEntries(changed) };
}
