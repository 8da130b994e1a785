/**
 * When a read counts as a hit, and how hard a question is.
 *
 * Answers for: the aims that count, the share of them. Leaves out: which questions are asked (choose-next.ts).
 * Definition. A hit is an aim from which the ball drops, struck at the speed of the true line; from 20 ft on, where one putts to
 * leave it dead, an aim that passes within 18 in of the true one counts too: half of the circle of three feet about the hole,
 * the other half being left to the pace (common practice, no source). Difficulty is the break divided by half the width of
 * what counts: a read off by a share s of the break hits when s is below 1/difficulty.
 */
import type { Band } from '../types.ts';
import { feetToMetres, inchesToMetres } from '../units.ts';

/** From here one putts to leave it dead, m. */
const LAG_FROM = feetToMetres(20);
/** Either side of the true aim, m. */
const LAG_WIDTH = inchesToMetres(18);

/**
 * Aim offsets that count as a hit, m, positive left.
 * @param trueAim m @param length m @param startBand start angles that drop, radians, positive left
 * @returns undefined when no aim does
 */
export function hitAimsOf(trueAim: number, length: number, startBand: Band | undefined): Band | undefined {
  const drops = startBand && {
    low: length * Math.tan(startBand.low),
    high: length * Math.tan(startBand.high),
  };
  if (length < LAG_FROM) return drops;
  return {
    low: Math.min(trueAim - LAG_WIDTH, drops?.low ?? trueAim),
    high: Math.max(trueAim + LAG_WIDTH, drops?.high ?? trueAim),
  };
}

/** What of a question decides about hits. */
export interface Aimed {
  /** m, positive left. */
  readonly trueAim: number;
  readonly hitAims?: Band | undefined;
}

/** @returns undefined for questions that know no hits */
export const isHit = ({ hitAims }: Aimed, aim: number): boolean | undefined =>
  hitAims && aim >= hitAims.low && aim <= hitAims.high;

/** Break over half the width of what counts, 0 or more; undefined for questions that know no hits. */
export const difficultyOf = ({ trueAim, hitAims }: Aimed): number | undefined =>
  hitAims && (2 * Math.abs(trueAim)) / (hitAims.high - hitAims.low);
