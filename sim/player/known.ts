/**
 * A player and how well they are known: the errors answers are worked out for, where these come from, and who else it may be. Answers
 * for: the one value that carries a player through the engine and the screens. Leaves out: where members come from (fitted.ts for
 * presets, evidence/fit for a record), what they make of a putt (odds/, costs/).
 */
import type { Player } from '../types.ts';

/** Where a player's errors come from. */
export type PlayerOrigin =
  | { readonly kind: 'preset'; readonly id: string }
  /** Set by the person: taken as they are. */
  | { readonly kind: 'byHand' }
  /** From a record, the person's own or the invented player's. */
  | { readonly kind: 'fit'; readonly source: 'own' | 'demo' };

/** One of the players who would leave the same record. */
export interface Member {
  readonly player: Player;
  /** How likely beside the others: 0 or more, not all 0. A family's make one. */
  readonly weight: number;
}

export interface KnownPlayer {
  /** The middle one: what is worked out for one player only is worked out for this. */
  readonly player: Player;
  readonly origin: PlayerOrigin;
  /** All who may be meant, at least one. Of a player set by hand: that one alone. */
  readonly members: readonly Member[];
}

/** A player taken as they are, without doubt. */
export const setByHand = (player: Player): KnownPlayer => ({
  player,
  origin: { kind: 'byHand' },
  members: [{ player, weight: 1 }],
});
