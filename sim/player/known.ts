/**
 * A player and how well they are known: the errors answers are worked out for, where these come from, and who else it may be. Answers
 * for: the one value that carries a player through the engine and the screens. Leaves out: where members come from (fitted.ts for
 * presets, evidence/fit for a record), how measurements narrow them (costs/narrowed.ts), what they make of a putt (odds/, costs/).
 */
import type { Player } from '../types.ts';

/** Something measured that tells likely players apart. */
export type Measurement =
  | {
      /** Balls through one gate, aimed through its middle on a known line. */
      readonly kind: 'gate';
      /** Between the inner sides, and ball to gate, m. */
      readonly width: number;
      readonly distance: number;
      readonly passed: number;
      readonly tries: number;
    }
  | {
      /** Balls to targets on known ground: how far beyond, share of the distance meant. */
      readonly kind: 'ladder';
      readonly errors: readonly number[];
    }
  | {
      /** Slopes named, along the line or across it, beside the true ones, rise over run. */
      readonly kind: 'readingSet';
      readonly slopes: readonly { readonly named: number; readonly true: number }[];
    };

/** What was measured at one sitting. */
export interface Sitting {
  /** Calendar day, YYYY-MM-DD. */
  readonly day: string;
  /** At least one. */
  readonly results: readonly Measurement[];
}

/** Where a player's errors come from. */
export type PlayerOrigin =
  | {
      readonly kind: 'preset';
      readonly id: string;
      /** What has narrowed the preset's family since; left out: nothing. */
      readonly narrowedBy?: readonly Sitting[];
    }
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

/** Likely players who have together no more than this share of the weight count for nobody, as in the tail of a central 95%: no advice turns on them. */
export const AS_GOOD_AS_NOBODY = 0.025;

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
