/**
 * The players that fit published records best, by `npx tsx tests/bench/fit-presets.ts`: numbers to copy from its print-out,
 * rounded to a hundredth of a degree, a tenth of a per cent of distance and of speed and a hundredth of a per cent of slope. Leaves out: names and
 * sources (presets.ts), how they are fitted (benchmarks/).
 */
import type { Player } from '../types.ts';
import { degreesToRadians } from '../units.ts';
import type { PublishedPlayer } from './published.ts';

/** Biases are not fitted: holing records do not tell them from the spreads. */
export const playerOf = (lineSdDeg: number, paceSd: number, slopeSd: number, speedSd: number): Player => ({
  lineSd: degreesToRadians(lineSdDeg),
  paceSd,
  slopeSd,
  speedSd,
  readBias: 0,
  paceBias: 0,
});

export const FITTED_PLAYERS: Readonly<Record<PublishedPlayer, Player>> = {
  tour: playerOf(0.83, 0.042, 0.0045, 0.02),
  scratch: playerOf(1.02, 0.052, 0.005, 0.027),
  averaging90: playerOf(1.5, 0.085, 0.0065, 0.05),
};

/**
 * Players who meet the same record by distance about as well, from mostly stroke to mostly reading: slope and speed are held, start line
 * and pace fitted. Directions, gates, targets and reading sets tell them apart; the one above lies between them.
 */
export const FITTED_FAMILIES: Readonly<Record<PublishedPlayer, readonly Player[]>> = {
  tour: [
    playerOf(1.15, 0.06, 0.001, 0.005),
    playerOf(1.05, 0.055, 0.0025, 0.01),
    playerOf(0.95, 0.05, 0.0035, 0.015),
    playerOf(0.7, 0.035, 0.0052, 0.025),
    playerOf(0.55, 0.025, 0.006, 0.03),
  ],
  scratch: [
    playerOf(1.3, 0.075, 0.001, 0.01),
    playerOf(1.2, 0.07, 0.0025, 0.015),
    playerOf(1.1, 0.06, 0.004, 0.02),
    playerOf(0.9, 0.045, 0.006, 0.035),
    playerOf(0.75, 0.035, 0.007, 0.04),
  ],
  averaging90: [
    playerOf(1.85, 0.12, 0.0015, 0.02),
    playerOf(1.75, 0.11, 0.0035, 0.03),
    playerOf(1.65, 0.1, 0.005, 0.04),
    playerOf(1.3, 0.075, 0.008, 0.06),
    playerOf(1.1, 0.065, 0.009, 0.07),
  ],
};
