/**
 * The player whose putts come nearest to a published record. Fitted: start line and pace error, and the slope error where the record
 * knows of directions; held: the green speed error, which no record tells, and no habit of reading or pace, because a player who
 * picks the best pace makes up for it. Takes minutes for each. Leaves out: the record and its weights (misfit.ts).
 */

import { type Found, findLeast } from '../maths/nelder-mead.ts';
import { type HeldPolicy, holdPolicy, tableUnder } from '../odds/held-policy.ts';
import { FITTED_PLAYERS, playerOf } from '../player/fitted.ts';
import type { PublishedPlayer } from '../player/published.ts';
import type { Player, Putt } from '../types.ts';
import { radiansToDegrees } from '../units.ts';
import { compareWithRecord, misfitOf } from './misfit.ts';
import type { MixOptions } from './mix.ts';

export interface PlayerFit {
  readonly status: Found['status'];
  readonly player: Player;
  /** Of the rows fitted (misfit.ts). */
  readonly misfit: number;
}

/** First steps: degrees, shares, rise over run. */
const STEPS = { line: 0.08, pace: 0.01, slope: 0.0006 };
/** Share of a first step: a few hundredths of the answer, as finely as presets are written. */
const TOLERANCE = 0.15;

export interface FitOptions {
  /** Errors that are held: what a family's members differ in. Missing: the slope error is fitted, the speed error the stored player's. */
  readonly slopeSd?: number;
  readonly speedSd?: number;
  readonly paceSd?: number;
}

/** Tables of next putts by the choices of the stored player: a tenth of the time (odds/held-policy.ts). */
function heldTables(record: PublishedPlayer): MixOptions['tableOf'] {
  const held = new Map<string, HeldPolicy>();
  return (green: Putt, player: Player) => {
    const key = JSON.stringify([green.surface, green.greenSpeed]);
    const policy = held.get(key) ?? holdPolicy(green, FITTED_PLAYERS[record]);
    held.set(key, policy);
    return tableUnder(policy, player);
  };
}

/** The player nearest to a record: by distance and direction, or with a slope error held by distance alone. */
export function fitPlayer(record: PublishedPlayer, options: FitOptions = {}): PlayerFit {
  const stored = FITTED_PLAYERS[record];
  const { slopeSd, paceSd, speedSd = stored.speedSd } = options;
  const free = (['line', 'pace', 'slope'] as const).filter(
    (name) => !((name === 'slope' && slopeSd !== undefined) || (name === 'pace' && paceSd !== undefined)),
  );
  const begin = { line: radiansToDegrees(stored.lineSd), pace: stored.paceSd, slope: stored.slopeSd };
  const playerAt = (numbers: readonly number[]): Player => {
    const of = (name: keyof typeof begin, held: number | undefined): number =>
      held ?? numbers[free.indexOf(name)];
    return playerOf(of('line', undefined), of('pace', paceSd), of('slope', slopeSd), speedSd);
  };
  const tableOf = heldTables(record);
  const which = slopeSd === undefined ? 'fitted' : 'distance';
  const { status, at, misfit } = findLeast({
    misfit: (numbers) =>
      numbers.every((number) => number > 0)
        ? misfitOf(compareWithRecord(record, playerAt(numbers), { which, tableOf }))
        : Number.POSITIVE_INFINITY,
    start: free.map((name) => begin[name]),
    steps: free.map((name) => STEPS[name]),
    tolerance: TOLERANCE,
    mostTries: 26,
  });
  return { status, player: playerAt(at), misfit };
}
