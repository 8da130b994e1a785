/**
 * How likely a record is for a player. Answers for: the logarithm of the product over all that was recorded. Leaves out: priors
 * (prior.ts), the search (posterior.ts).
 *
 * One in a hundred putts is taken to say nothing of its player (a number mistyped, a tap-in missed in a hurry): its chance is that
 * of a player with three times the usual errors. Without it a single such putt could outweigh thirty honest ones.
 */
import type { Player } from '../../types.ts';
import { type Bands, type ErrorShares, fillShares, newErrorShares, UNASKED } from './error-shares.ts';
import type { Recorded } from './outcomes.ts';
import { chanceOf, type Pattern } from './patterns.ts';

/** Share of putts that are another player's, so to speak, and how many times his errors are the usual ones (both ours). */
const STRAY = 0.01;
export const STRAY_TIMES = 3;
/** No chance is smaller: what no player does is a slip of the pen. */
const LEAST = 1e-12;

export interface Likelihood {
  /** Logarithm of the chance of all of it. */
  of(player: Player, bands: Bands): number;
  readonly asked: { readonly start: boolean; readonly pace: boolean };
}

/** Chance of one outcome, strays included. @param stray its chance for the stray player */
export const mixedChance = (chance: number, stray: number): number =>
  Math.max(LEAST, (1 - STRAY) * chance + STRAY * stray);

/** The shares of the player that strays are taken from. */
export function strayShares({ lineSd, paceSd, readSd }: Player, bands: Bands): ErrorShares {
  const shares = newErrorShares();
  const player = {
    lineSd: STRAY_TIMES * lineSd,
    paceSd: STRAY_TIMES * paceSd,
    readSd: STRAY_TIMES * readSd,
    readBias: 0,
    paceBias: 0,
  };
  fillShares(player, bands, { start: true, pace: true }, shares);
  return shares;
}

const patternsOf = (record: readonly Recorded[]): Pattern[] =>
  record.flatMap(({ patterns }) => patterns.flat());

/** @param usual whose errors times STRAY_TIMES are those of strays */
export function likelihoodOf(record: readonly Recorded[], usual: Player, usualBands: Bands): Likelihood {
  const all = patternsOf(record);
  const asked = {
    start: all.some(({ startAnswer }) => startAnswer !== UNASKED),
    pace: all.some(({ paceAnswer }) => paceAnswer !== UNASKED),
  };
  const strayOf = strayShares(usual, usualBands);
  const strays = record.map(({ patterns }) =>
    patterns.map((outcomes) => Float64Array.from(outcomes, (pattern) => chanceOf(pattern, strayOf))),
  );
  const shares = newErrorShares();
  return {
    asked,
    of(player, bands) {
      fillShares(player, bands, asked, shares);
      let sum = 0;
      for (let r = 0; r < record.length; r++) {
        const { shares: grounds, patterns, counts } = record[r];
        if (grounds.length === 1) {
          sum += logOnGround(patterns[0], counts, strays[r][0], shares);
          continue;
        }
        const logs = patterns.map((outcomes, g) => logOnGround(outcomes, counts, strays[r][g], shares));
        const most = Math.max(...logs);
        sum += most + Math.log(logs.reduce((total, log, g) => total + grounds[g] * Math.exp(log - most), 0));
      }
      return sum;
    },
  };
}

function logOnGround(
  outcomes: readonly Pattern[],
  counts: readonly number[],
  strays: Float64Array,
  shares: ErrorShares,
): number {
  let sum = 0;
  for (let o = 0; o < outcomes.length; o++)
    sum += counts[o] * Math.log(mixedChance(chanceOf(outcomes[o], shares), strays[o]));
  return sum;
}
