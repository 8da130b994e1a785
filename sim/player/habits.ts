/** A player who knows his habits and allows for them: the errors that are left. Leaves out: what a habit costs before that. */
import type { Player } from '../types.ts';

/** The player who allows for both habits in full. */
export const withoutHabits = (player: Player): Player =>
  player.readBias === 0 && player.paceBias === 0 ? player : { ...player, readBias: 0, paceBias: 0 };

/** The player who knows the ground and its speed: only the stroke errs. */
export const withoutReading = (player: Player): Player => ({
  ...player,
  slopeSd: 0,
  speedSd: 0,
  readBias: 0,
});
