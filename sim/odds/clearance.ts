/**
 * By how much a rolled ball drops or misses: one number, positive when it drops, that changes smoothly enough to be solved
 * for. Leaves out: the rule itself (hole/), who searches (window.ts).
 */
import { HOLE_RADIUS } from '../constants.ts';
import type { CaptureRule } from '../hole/capture.ts';
import type { Pass, Roller } from '../roll/roller.ts';

/** A miss is a miss: never report the bare rounding of a touch as a drop, m. */
const TOUCH = -1e-12;

/**
 * @returns metres to spare: of offset at the rim for a ball that arrives, of distance from the rim circle for one that
 *   would rest; the larger of the two, because either way of dropping will do
 */
export function clearanceOf(roller: Roller, rule: CaptureRule, pass: Pass): number {
  const restApart =
    pass.status === 'atRest'
      ? Math.hypot(pass.restX - roller.hole.x, pass.restY - roller.hole.y)
      : Number.POSITIVE_INFINITY;
  if (!pass.met) {
    const nearest = pass.missSpeed > 0 ? Math.min(Math.abs(pass.miss), restApart) : restApart;
    return Math.min(TOUCH, HOLE_RADIUS - nearest);
  }
  const atRim = rule.widestDrop(pass.rimSpeed) - Math.abs(pass.rimOffset);
  return Math.max(atRim > 0 ? atRim : Math.min(atRim, TOUCH), HOLE_RADIUS - restApart);
}
