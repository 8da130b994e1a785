/**
 * What a rule of capture answers: does a ball drop, and how does it come out if not. Answers for: the form. Leaves out: rules (capture.ts,
 * rim.ts).
 */
import type { CaptureName } from '../types.ts';

/** How a ball leaves the hole again, seen from its arrival: x along the line it arrived on, y to the left of it. */
export interface LipOut {
  /** Where it is back on the green, m from the hole centre. */
  x: number;
  y: number;
  /** How far its direction has turned, radians, positive to the left, not wrapped: more than pi is more than right back. */
  turn: number;
  /** Rolling speed there, m/s. */
  speed: number;
}

export interface CaptureRule {
  readonly name: CaptureName;
  /**
   * Fastest arrival that drops.
   * @param offset distance b of the line of travel from the hole centre, m; the sign does not matter
   * @returns m/s; 0 where only a ball that dies over the hole drops
   */
  fastestDrop(offset: number): number;
  /**
   * Widest offset that drops at this arrival speed, the inverse of `fastestDrop`.
   * @param speed m/s
   * @returns m; negative when none does
   */
  widestDrop(speed: number): number;
  /**
   * How a ball that arrives and does not drop leaves the hole. A rule without it lets such a ball roll on as if the hole
   * were covered.
   * @param speed arrival, m/s
   * @param offset b, m, positive: the hole centre lies to the left of the line of travel
   * @param out filled when the answer is true; the caller owns and reuses it
   * @returns false when the ball rolls on as if the hole were covered (it misses the rim, or feels it too little to notice)
   */
  leave?(speed: number, offset: number, out: LipOut): boolean;
}
