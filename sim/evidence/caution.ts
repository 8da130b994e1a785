/**
 * How much must be there before anything is concluded. Answers for: the one count below which neither a lean nor a round says
 * more than what was counted. Leaves out: the verdicts themselves (lean.ts, round-check.ts).
 */

/**
 * Fewest putts, or misses, that a verdict may rest on; ours. Of six, only a perfect record is unlikely by a fair coin (3.1% both
 * ways), and six misses from six of a 15 to 20% putt are ordinary; of twelve, ten one way already are unlikely (3.9%).
 * Smaller: a round of nine would give verdicts.
 */
export const FEWEST_TO_CONCLUDE = 12;
