/**
 * What a player might change, one thing at a time. Answers for: each step, and the player after it; which errors make an area of
 * practice. Leaves out: what it saves.
 *
 * Three kinds. A tenth off all errors of an area; an area as a stated reachable player has it, by which weeks are planned (MODEL.md,
 * section 10); steps of a stated size, for asking: equal steps of those are not equal efforts.
 */
import { FITTED_PLAYERS } from '../player/fitted.ts';
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
  'slopeShare',
  'speedShare',
  'lineReach',
  'paceReach',
  'readReach',
] as const;
export type StepId = (typeof STEPS)[number];

interface ErrorStep {
  /** So much less, the same unit; never below 0. */
  readonly less?: number;
  /** So many times as large. */
  readonly times?: number;
  /** And no larger than this. */
  readonly most?: number;
}

/** Whose errors practice may be hoped to reach (ours): a scratch player's, without habits. Who is there already is a tenth from where they may get. */
export const REACHABLE: Player = FITTED_PLAYERS.scratch;

/** A tenth less. */
const TENTH: ErrorStep = { times: 0.9 };
const GONE: ErrorStep = { times: 0 };

type Steps = Readonly<Partial<Record<keyof Player, ErrorStep>>>;

const tenthOff = (area: Area): Steps => Object.fromEntries(AREAS[area].map((error) => [error, TENTH]));
const withinReach = (area: Area): Steps =>
  Object.fromEntries(AREAS[area].map((error) => [error, { ...TENTH, most: Math.abs(REACHABLE[error]) }]));

/** What each does to the errors; the best pace does nothing to them. */
const ERROR_STEPS: Readonly<Record<Exclude<StepId, 'bestPace'>, Steps>> = {
  lineShare: tenthOff('line'),
  paceShare: tenthOff('pace'),
  readShare: tenthOff('read'),
  readHabit: { readBias: GONE },
  paceHabit: { paceBias: GONE },
  lineTenth: { lineSd: { less: degreesToRadians(0.1) } },
  lineHalf: { lineSd: { less: degreesToRadians(0.5) } },
  pacePoint: { paceSd: { less: 0.01 } },
  // Rise over run, and share of the green speed: about a tenth of what a low handicap misreads.
  readPoints: { slopeSd: { less: 0.0005 }, speedSd: { less: 0.005 } },
  slopeShare: { slopeSd: TENTH },
  speedShare: { speedSd: TENTH },
  lineReach: withinReach('line'),
  paceReach: withinReach('pace'),
  readReach: withinReach('read'),
};

/** The player after the step; the same object where it changes nothing. */
export function afterStep(player: Player, step: StepId): Player {
  if (step === 'bestPace') return player;
  const changed = Object.entries(ERROR_STEPS[step]).flatMap(
    ([name, { less = 0, times = 1, most = Infinity }]) => {
      const error = name as keyof Player;
      const now = player[error];
      // A habit has a sign and only shrinks; a spread cannot be less than none.
      const size = Math.min(most, Math.max(0, Math.abs(now) * times - less));
      const then = now < 0 ? -size || 0 : size;
      return then === now ? [] : [[error, then] as const];
    },
  );
  return changed.length === 0 ? player : { ...player, ...Object.fromEntries(changed) };
}
