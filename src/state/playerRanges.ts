/** Between which values each error of a player may be set: slider ends, and the gate for loaded and measured values. SI. */
import { degreesToRadians, type Player, playerBy } from '../../sim/index.ts';

export const PLAYER_RANGES: Readonly<Record<keyof Player, { readonly min: number; readonly max: number }>> = {
  lineSd: { min: degreesToRadians(0.1), max: degreesToRadians(4) },
  paceSd: { min: 0.01, max: 0.3 },
  // Whoever sees a green of 2% as level or as 4% two times in three does not read at all.
  slopeSd: { min: 0, max: 0.02 },
  speedSd: { min: 0, max: 0.2 },
  readBias: { min: -0.6, max: 0.6 },
  paceBias: { min: -0.2, max: 0.2 },
};

/** Each error at the nearest value that may be set. */
export const withinRanges = (errors: Player): Player =>
  playerBy((error) => Math.min(Math.max(errors[error], PLAYER_RANGES[error].min), PLAYER_RANGES[error].max));
