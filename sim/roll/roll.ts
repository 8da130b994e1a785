/** One whole roll with its status: chooses the roller for the surface, then asks the capture rule. */
import { HOLE_RADIUS } from '../constants.ts';
import { captureRule } from '../hole/capture.ts';
import { type LeavingBall, leaveHole, newLeavingBall } from '../hole/leave.ts';
import { gradientAt } from '../surface/sample.ts';
import type { Putt, Roll } from '../types.ts';
import { fieldRoller } from './field.ts';
import { wayOverHole } from './over-hole.ts';
import { planeRoller } from './plane.ts';
import { newPass, type Pass, type Roller } from './roller.ts';
import { skidOnField, skidOnPlane } from './skid.ts';

/** The roller for a putt's surface, green speed, ball, hole and strike. */
export const rollerFor = (putt: Putt): Roller => {
  const { surface, greenSpeed, ball, hole } = putt;
  if (surface.kind === 'plane') {
    const roller = planeRoller(surface, greenSpeed, ball, hole);
    return putt.skid ? skidOnPlane(roller, surface) : roller;
  }
  const roller = fieldRoller(surface, greenSpeed, ball, hole);
  return putt.skid ? skidOnField(roller, surface) : roller;
};

/** Bearing from ball to hole, radians from +x: the zero of every start angle. */
export const bearingOf = (putt: Putt): number =>
  Math.atan2(putt.hole.y - putt.ball.y, putt.hole.x - putt.ball.x);

/** Angle folded into (-pi, pi]. */
export const foldAngle = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Start angle of a heading (radians from +x): radians from the ball-to-hole line, positive left. */
export const startOf = (putt: Putt, heading: number): number => foldAngle(heading - bearingOf(putt));

/** Length of the putt, m. */
export const lengthOf = (putt: Putt): number =>
  Math.hypot(putt.hole.x - putt.ball.x, putt.hole.y - putt.ball.y);

/** Does a pass drop? A ball cannot rest over a hole, so one that would stop inside the rim circle drops too. */
export const drops = (putt: Putt, pass: Pass): boolean =>
  pass.met &&
  (pass.rimSpeed <= captureRule(putt.capture).fastestDrop(pass.rimOffset) ||
    (pass.status === 'atRest' &&
      Math.hypot(pass.restX - putt.hole.x, pass.restY - putt.hole.y) < HOLE_RADIUS));

/**
 * A pass that meets the hole and does not drop: how it leaves.
 * @returns false when it rolls on as if the hole were covered
 */
export function lipsOut(putt: Putt, pass: Pass, out: LeavingBall): boolean {
  const rule = captureRule(putt.capture);
  const gradient = pass.met && rule.leave !== undefined ? gradientAt(putt.surface, putt.hole) : undefined;
  if (gradient === undefined) return false;
  const arrival = { heading: pass.missHeading, speed: pass.rimSpeed, offset: pass.rimOffset };
  return leaveHole(rule, arrival, gradient, out);
}

/** The roll that follows a lip-out is a putt of its own, from where the ball is back on the green. */
export const fromLip = (putt: Putt, leaving: LeavingBall): Putt => ({
  ...putt,
  skid: false,
  ball: { x: putt.hole.x + leaving.x, y: putt.hole.y + leaving.y },
});

/**
 * Roll one ball.
 * @param start radians from the ball-to-hole line, positive left
 * @param speed launch speed, m/s
 * @param options covered: ignore the hole
 */
export function rollBall(
  putt: Putt,
  start: number,
  speed: number,
  options: { readonly covered?: boolean } = {},
): Roll {
  const roller = rollerFor(putt);
  const heading = bearingOf(putt) + start;
  const pass = roller.pass(heading, speed, newPass());
  const path = roller.trace(heading, speed);
  const { evaluations } = pass;
  const arrival = pass.met ? { speed: pass.rimSpeed, offset: pass.rimOffset } : undefined;
  const common = { arrival, evaluations, lippedOut: false };
  if (!options.covered && drops(putt, pass)) {
    // For the eye: the ball drops in the middle.
    const { x, y } = putt.hole;
    const toRim = pathToRim(path, putt);
    const time = toRim[toRim.length - 1];
    return { ...common, status: 'holed', rest: { x, y }, time, path: joined(toRim, [x, y, time]) };
  }
  const leaving = newLeavingBall();
  if (!options.covered && lipsOut(putt, pass, leaving)) {
    const toRim = pathToRim(path, putt);
    const over = wayOverHole(pass, putt, leaving);
    later(over.path, toRim[toRim.length - 1]);
    const after = rollerFor(fromLip(putt, over.leaving));
    const { heading: away, speed: left } = over.leaving;
    const onward = after.trace(away, left);
    const began = over.path[over.path.length - 1];
    later(onward, began);
    after.pass(away, left, pass);
    const whole = joined(joined(toRim, over.path), onward);
    return { ...endOf(pass), ...common, lippedOut: true, time: began + pass.time, path: whole };
  }
  return { ...endOf(pass), ...common, time: pass.time, path };
}

const endOf = (pass: Pass): Pick<Roll, 'status' | 'rest'> => ({
  status: pass.status,
  rest: pass.status === 'neverStops' ? undefined : { x: pass.restX, y: pass.restY },
});

/** Moves a path in time, s. */
const later = (path: Float64Array, seconds: number): void => {
  for (let i = 2; i < path.length; i += 3) path[i] += seconds;
};

/** The path up to the rim circle. */
function pathToRim(path: Float64Array, { hole }: Putt): Float64Array {
  let end = 0;
  while (end < path.length - 3 && Math.hypot(path[end] - hole.x, path[end + 1] - hole.y) >= HOLE_RADIUS)
    end += 3;
  return path.slice(0, end + 3);
}

const joined = (first: Float64Array, second: ArrayLike<number>): Float64Array => {
  const path = new Float64Array(first.length + second.length);
  path.set(first);
  path.set(second, first.length);
  return path;
};
