/** One whole roll with its status: chooses the roller for the surface, then asks the capture rule. */
import { HOLE_RADIUS } from '../constants.ts';
import { captureRule } from '../hole/capture.ts';
import type { Putt, Roll } from '../types.ts';
import { fieldRoller } from './field.ts';
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
  const arrival = pass.met ? { speed: pass.rimSpeed, offset: pass.rimOffset } : undefined;
  if (!options.covered && drops(putt, pass)) {
    const cut = pathToRim(path, putt);
    return {
      status: 'holed',
      rest: { x: putt.hole.x, y: putt.hole.y },
      time: cut[cut.length - 1],
      path: cut,
      arrival,
      evaluations: pass.evaluations,
    };
  }
  return {
    status: pass.status,
    rest: pass.status === 'neverStops' ? undefined : { x: pass.restX, y: pass.restY },
    time: pass.time,
    path,
    arrival,
    evaluations: pass.evaluations,
  };
}

/** The path up to the rim circle, then straight to the hole centre (for the eye: the ball drops). */
function pathToRim(path: Float64Array, putt: Putt): Float64Array {
  const { x, y } = putt.hole;
  let end = 0;
  while (end < path.length - 3 && Math.hypot(path[end] - x, path[end + 1] - y) >= HOLE_RADIUS) end += 3;
  const cut = new Float64Array(end + 3);
  cut.set(path.subarray(0, end));
  cut.set([x, y, path[end + 2]], end);
  return cut;
}
