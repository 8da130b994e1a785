/**
 * Putts that say nothing of their player: one in two hundred (a number mistyped, a tap-in missed in a hurry) has the chance of a player with
 * three times the usual errors. Answers for: mixing it in. Leaves out: bad strokes, another thing (tails.ts).
 */

/** Share of putts that are another player's, so to speak, and how many times his errors are the usual ones (both ours). */
const STRAY = 0.005;
export const STRAY_TIMES = 3;
/** No chance is smaller: what no player does is a slip of the pen. */
const LEAST = 1e-12;

/** Chance of one outcome, strays included. @param stray its chance for the stray player */
export const mixedChance = (chance: number, stray: number): number =>
  Math.max(LEAST, (1 - STRAY) * chance + STRAY * stray);
