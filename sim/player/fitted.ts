/**
 * The players that fit published records best, by `npx tsx tests/bench/fit-presets.ts`: numbers to copy from its print-out,
 * rounded to a hundredth of a degree, a tenth of a per cent of distance and a whole per cent of break. Leaves out: names and
 * sources (presets.ts), how they are fitted (benchmarks/).
 */
import type { Player } from '../types.ts';
import { degreesToRadians } from '../units.ts';
import type { PublishedPlayer } from './published.ts';

/** Biases are not fitted: holing records do not tell them from the spreads. */
export const playerOf = (lineSdDeg: number, paceSd: number, readSd: number): Player => ({
  lineSd: degreesToRadians(lineSdDeg),
  paceSd,
  readSd,
  readBias: 0,
  paceBias: 0,
});

export const FITTED_PLAYERS: Readonly<Record<PublishedPlayer, Player>> = {
  tour: playerOf(1, 0.093, 0.3),
  scratch: playerOf(1.17, 0.1, 0.4),
  averaging90: playerOf(1.59, 0.122, 0.55),
};
