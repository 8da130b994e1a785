/**
 * Strokes measured without a hole: through gates, and to a target. Answers for: how likely they are for a player. They say of start
 * line and pace alone what putts say of both together with the read, so they part line from read. Leaves out: how they were
 * measured (measuring/start-line.ts, measuring/pace-control.ts); whether a player strokes on a course as he does at home, which
 * is assumed.
 */
import type { Player } from '../../types.ts';
import { shareOutside } from '../student-t.ts';
import { mixedChance, STRAY_TIMES } from './likelihood.ts';

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

const density = (error: number, sd: number): number =>
  Math.exp(-((error / sd) ** 2) / 2) / (sd * Math.sqrt(2 * Math.PI));

/**
 * Logarithm of the chance of all of them: a gate lets through 1 - shareOutside(angle/lineSd), paces are normal about paceBias. One in a
 * hundred is a stray, as among putts.
 * @param usual whose spreads, times STRAY_TIMES, are those of strays
 */
export function logOfStrokes(
  { gates, paces }: MeasuredStrokes,
  { lineSd, paceSd, paceBias }: Player,
  usual: Player,
): number {
  let sum = 0;
  for (const { angle, passes, tries } of gates) {
    const outside = mixedChance(
      shareOutside(angle / lineSd),
      shareOutside(angle / (STRAY_TIMES * usual.lineSd)),
    );
    sum += passes * Math.log1p(-outside) + (tries - passes) * Math.log(outside);
  }
  for (const error of paces)
    sum += Math.log(
      mixedChance(density(error - paceBias, paceSd), density(error, STRAY_TIMES * usual.paceSd)),
    );
  return sum;
}
