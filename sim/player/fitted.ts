/**
 * Players who meet published records, found with `npx tsx tests/bench/fit-presets.ts`: the middle ones moved by hand, within what distance
 * leaves open, to where directions and the spread of distance agree best (MODEL.md, section 3); to a hundredth of a degree, a tenth of a
 * per cent of distance and of speed, a hundredth of a per cent of slope. Leaves out: names and sources (presets.ts), the records (benchmarks/).
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
  tour: playerOf(0.83, 0.048, 0.0044, 0.025),
  scratch: playerOf(1.08, 0.06, 0.005, 0.035),
  averaging90: playerOf(1.55, 0.07, 0.007, 0.052),
};

/**
 * Players who meet the same record by distance about as well, from mostly stroke to mostly reading: pace, slope and speed are held, the
 * start line is fitted. Directions, gates, targets and reading sets tell them apart; the one above lies between them.
 */
export const FITTED_FAMILIES: Readonly<Record<PublishedPlayer, readonly Player[]>> = {
  tour: [
    playerOf(1.25, 0.08, 0.0013, 0.01),
    playerOf(1.16, 0.067, 0.0025, 0.01),
    playerOf(1, 0.057, 0.0035, 0.015),
    playerOf(0.72, 0.037, 0.0048, 0.021),
    playerOf(0.66, 0.032, 0.005, 0.022),
  ],
  scratch: [
    playerOf(1.56, 0.085, 0.0015, 0.01),
    playerOf(1.45, 0.075, 0.003, 0.018),
    playerOf(1.33, 0.065, 0.004, 0.022),
    playerOf(1.05, 0.042, 0.0055, 0.029),
    playerOf(0.99, 0.037, 0.0058, 0.03),
  ],
  averaging90: [
    playerOf(2.06, 0.101, 0.002, 0.02),
    playerOf(1.94, 0.094, 0.0035, 0.03),
    playerOf(1.74, 0.087, 0.005, 0.04),
    playerOf(1.46, 0.055, 0.0075, 0.055),
    playerOf(1.38, 0.049, 0.0078, 0.057),
  ],
};
