/**
 * By how much a rolled ball drops or misses: numbers in metres, positive when it drops, that change smoothly enough to be
 * solved for. A ball drops because it arrives slowly and near the middle, or because it would come to rest in the hole.
 * Leaves out: the rule itself (hole/), who searches (drop-region.ts).
 */
import { HOLE_RADIUS } from '../constants.ts';
import type { CaptureRule } from '../hole/rule.ts';
import type { Pass, Roller } from '../roll/roller.ts';

export type Clearance = (roller: Roller, rule: CaptureRule, pass: Pass) => number;

/** A miss is a miss: never report the bare rounding of a touch as a drop, m. */
const TOUCH = -1e-12;
/** Makes the clearance of a ball that barely reaches the rim begin at zero: metres per m/s of its speed there. */
const BARELY = 0.1;

/** To spare at rest: how far inside the rim circle the ball would rest. */
export const restClearance: Clearance = (roller, _rule, pass) =>
  pass.status === 'atRest'
    ? HOLE_RADIUS - Math.hypot(pass.restX - roller.hole.x, pass.restY - roller.hole.y)
    : Number.NEGATIVE_INFINITY;

/**
 * To spare on arrival: offset at the rim. A ball that passes outside is judged by the same rule at its nearest: the two meet
 * where it just touches, so that a touch is no edge of its own (it was, and a root finder took it for one).
 */
export const arrivalClearance: Clearance = (roller, rule, pass) => {
  if (pass.met) {
    const offset = rule.widestDrop(pass.rimSpeed) - Math.abs(pass.rimOffset);
    return offset > 0 ? Math.min(offset, BARELY * pass.rimSpeed) : Math.min(offset, TOUCH);
  }
  return pass.missSpeed > 0
    ? Math.min(TOUCH, rule.widestDrop(pass.missSpeed) - Math.abs(pass.miss))
    : Math.min(TOUCH, Math.max(-HOLE_RADIUS, restClearance(roller, rule, pass)));
};

/** The larger of the two: either way of dropping will do. For rules that drop a slow ball right out to the rim. */
export const eitherClearance: Clearance = (roller, rule, pass) => {
  const atRest = restClearance(roller, rule, pass);
  const arriving = pass.met
    ? rule.widestDrop(pass.rimSpeed) - Math.abs(pass.rimOffset)
    : pass.missSpeed > 0
      ? rule.widestDrop(pass.missSpeed) - Math.abs(pass.miss)
      : -HOLE_RADIUS;
  return pass.met ? Math.max(arriving, atRest) : Math.min(TOUCH, Math.max(arriving, atRest));
};
