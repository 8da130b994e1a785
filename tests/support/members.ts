/** A middling player, and families about them, for tests of what a family agrees on. */
import type { Member, Player } from '../../sim/index.ts';

export const MIDDLING: Player = {
  lineSd: 0.015,
  paceSd: 0.08,
  paceBias: 0,
  slopeSd: 0.005,
  speedSd: 0.04,
  readBias: 0,
};

/** Equally likely members who differ so from the middling player. */
export const familyOf = (changes: readonly Partial<Player>[]): Member[] =>
  changes.map((change) => ({ player: { ...MIDDLING, ...change }, weight: 1 / changes.length }));
