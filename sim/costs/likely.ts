/**
 * The players one player may be: their middle, how they spread, some of them. Leaves out: what they take (cost-table.ts).
 */
import type { Player } from '../types.ts';
import { type Axis, ERRORS } from './surrogate.ts';

/** One player this one may be, and how likely he is beside the others. */
export interface LikelyPlayer {
  readonly player: Player;
  /** 0 or more; they need not make one. */
  readonly weight: number;
}

/** How far to either side the surrogate's players stand, SD of the likely ones. */
const ASIDE = 1.5;
/** A spread is never played below this share of the middle one. */
const LEAST = 0.25;
/** An error that varies less than this among the likely players does not vary. */
const NO_SPREAD = 1e-6;

/** Their middle: the mean of each error. */
export function meanOf(players: readonly LikelyPlayer[]): Player {
  if (players.length === 1) return players[0].player;
  const all = players.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (error: keyof Player): number =>
    players.reduce((sum, { player, weight }) => sum + weight * player[error], 0) / all;
  return {
    lineSd: mean('lineSd'),
    paceSd: mean('paceSd'),
    paceBias: mean('paceBias'),
    slopeSd: mean('slopeSd'),
    speedSd: mean('speedSd'),
    readBias: mean('readBias'),
  };
}

/** The errors that vary among them, and how far to either side the surrogate plays each. */
export function axesOf(players: readonly LikelyPlayer[], middle: Player): Axis[] {
  const all = players.reduce((sum, { weight }) => sum + weight, 0);
  return ERRORS.flatMap((error): Axis[] => {
    const square = players.reduce(
      (sum, { player, weight }) => sum + weight * (player[error] - middle[error]) ** 2,
      0,
    );
    const aside = ASIDE * Math.sqrt(square / all);
    if (!(aside > NO_SPREAD)) return [];
    if (error === 'readBias' || error === 'paceBias')
      // Without the habit, too: it is taken away from everybody.
      return [{ error, below: Math.min(-aside, -middle[error]), above: Math.max(aside, -middle[error]) }];
    return [{ error, below: Math.max(-aside, (LEAST - 1) * middle[error]), above: aside }];
  });
}

/** So many of the players, far apart in their list. */
export const spreadOut = (players: readonly LikelyPlayer[], count: number): Player[] =>
  Array.from({ length: Math.min(count, players.length) }, (_, i) => {
    const at = Math.floor(((i + 0.5) * players.length) / Math.min(count, players.length));
    return players[at].player;
  });
