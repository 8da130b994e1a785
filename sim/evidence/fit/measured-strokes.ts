/**
 * Strokes measured without a hole: through gates, and to a target. Answers for: how likely they are for a player. They say of start
 * line and pace alone what putts say of both together with the read, so they part line from read. Leaves out: how they were
 * measured (measuring/start-line.ts, measuring/pace-control.ts); whether a player strokes on a course as he does at home, which
 * is assumed.
 */

import { incompleteBeta } from '../../maths/incomplete-beta.ts';
import { INVERSE_ROOT_TWO_PI } from '../../maths/normal.ts';
import type { Player } from '../../types.ts';
import type { Someone } from './player-strokes.ts';
import { mixedChance, STRAY_TIMES } from './strays.ts';
import { Tails } from './tails.ts';

/** Balls rolled through one gate. */
export interface GateCount {
  /** Of the start to either side within which a ball passes, radians. */
  readonly angle: number;
  /** Clean passes, whole, 0 to tries. */
  readonly passes: number;
  readonly tries: number;
}

export interface MeasuredStrokes {
  readonly gates: readonly GateCount[];
  /** How much too far each ball rolled, shares of the distance meant; too short: negative. */
  readonly paces: readonly number[];
}

export const NO_STROKES: MeasuredStrokes = { gates: [], paces: [] };

/** How many balls that is. */
export const strokesIn = ({ gates, paces }: MeasuredStrokes): number =>
  gates.reduce((sum, { tries }) => sum + tries, paces.length);

/** Share of strokes beyond this many spreads on either side, and how densely they lie there; by the t of tails.ts. */
const outsideOf = (spreads: number, tails: Tails, degrees: number): number => {
  const t = spreads * Math.sqrt(tails.squared);
  return incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5);
};
/** Of one error alone, in its spreads: the t of tails.ts without the other. */
const densityOf = (error: number, tails: Tails, degrees: number): number =>
  Math.sqrt(tails.squared) *
  (1 + (error * error * tails.squared) / degrees) ** (-(degrees + 1) / 2) *
  // Gamma((n+1)/2) / (Gamma(n/2) sqrt(n pi)), by its series: within 0.13% from two degrees on.
  (INVERSE_ROOT_TWO_PI * (1 - 1 / (4 * degrees) + 1 / (32 * degrees ** 2) + 5 / (128 * degrees ** 3)));

const tails = new Tails();

/**
 * Logarithm of the chance of all of them: a gate lets through what lies within its angle, paces lie about paceBias.
 * @param usual whose spreads, times STRAY_TIMES, are those of strays
 */
export function logOfStrokes({ gates, paces }: MeasuredStrokes, someone: Someone, usual: Player): number {
  const { player, tails: degrees } = someone;
  tails.set(degrees);
  let sum = 0;
  for (const { angle, passes, tries } of gates) {
    const outside = mixedChance(
      outsideOf(angle / player.lineSd, tails, degrees),
      outsideOf(angle / (STRAY_TIMES * usual.lineSd), tails, degrees),
    );
    sum += passes * Math.log1p(-outside) + (tries - passes) * Math.log(outside);
  }
  const { paceSd, paceBias } = player;
  const strayPace = STRAY_TIMES * usual.paceSd;
  for (const error of paces)
    sum += Math.log(
      mixedChance(
        densityOf((error - paceBias) / paceSd, tails, degrees) / paceSd,
        densityOf(error / strayPace, tails, degrees) / strayPace,
      ),
    );
  return sum;
}
