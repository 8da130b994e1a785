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
  tour: playerOf(0.81, 0.045, 0.0044, 0.03),
  scratch: playerOf(1.07, 0.06, 0.005, 0.035),
  averaging90: playerOf(1.5, 0.085, 0.0065, 0.05),
};
