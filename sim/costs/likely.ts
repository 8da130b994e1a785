/**
 * The players one player may be: their middle, how they spread, some of them. Leaves out: what they take (cost-table.ts).
 */
import { PLAYER_ERRORS, playerBy } from '../player/errors.ts';
import type { Member } from '../player/known.ts';
import type { Player } from '../types.ts';
import type { Axis } from './surrogate.ts';

/** How far to either side the surrogate's players stand, SD of the likely ones. */
const ASIDE = 1.5;
/** A spread is never played below this share of the middle one. */
const LEAST = 0.25;
/** An error that varies less than this among the likely players does not vary. */
const NO_SPREAD = 1e-6;

/** Mean and variance of a number over the players. @param players weights 0 or more, not all 0 */
export function momentsOf(
  players: readonly Member[],
  numberOf: (player: Player) => number,
): { readonly mean: number; readonly variance: number } {
  const all = players.reduce((sum, { weight }) => sum + weight, 0);
  const mean = players.reduce((sum, { player, weight }) => sum + weight * numberOf(player), 0) / all;
  const square = players.reduce(
    (sum, { player, weight }) => sum + weight * (numberOf(player) - mean) ** 2,
    0,
  );
  return { mean, variance: square / all };
}

/** Their middle: the mean of each error. */
export const meanOf = (players: readonly Member[]): Player =>
  players.length === 1
    ? players[0].player
    : playerBy((error) => momentsOf(players, (player) => player[error]).mean);

/** The errors that vary among them, and how far to either side of their middle the surrogate plays each. */
export const axesOf = (players: readonly Member[]): Axis[] =>
  PLAYER_ERRORS.flatMap((error): Axis[] => {
    const { mean, variance } = momentsOf(players, (player) => player[error]);
    const aside = ASIDE * Math.sqrt(variance);
    if (!(aside > NO_SPREAD)) return [];
    if (error === 'readBias' || error === 'paceBias')
      // Without the habit, too: it is taken away from everybody.
      return [{ error, below: Math.min(-aside, -mean), above: Math.max(aside, -mean) }];
    return [{ error, below: Math.max(-aside, (LEAST - 1) * mean), above: aside }];
  });

/** So many of the players, far apart in their list. */
export const spreadOut = (players: readonly Member[], count: number): Player[] =>
  Array.from({ length: Math.min(count, players.length) }, (_, i) => {
    const at = Math.floor(((i + 0.5) * players.length) / Math.min(count, players.length));
    return players[at].player;
  });
