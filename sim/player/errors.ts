/** A player's errors by name: the list of them, and a player made error by error. Leaves out: what they mean (types.ts). */
import type { Player } from '../types.ts';

/** In the order of MODEL.md, section 3. */
export const PLAYER_ERRORS = [
  'lineSd',
  'paceSd',
  'paceBias',
  'slopeSd',
  'speedSd',
  'readBias',
] as const satisfies readonly (keyof Player)[];

/** The player of whom each error is so much. */
export const playerBy = (of: (error: keyof Player) => number): Player => ({
  lineSd: of('lineSd'),
  paceSd: of('paceSd'),
  paceBias: of('paceBias'),
  slopeSd: of('slopeSd'),
  speedSd: of('speedSd'),
  readBias: of('readBias'),
});

/**
 * How golfers of one level differ in a spread, SD of its logarithm (ours): from the tour's presets to those of a golfer averaging 90 line,
 * pace and slope grow by a factor e^0.45 to e^0.5, so that one SD either side of the middle takes in nearly both ends.
 */
export const LOG_SPREAD = 0.45;
