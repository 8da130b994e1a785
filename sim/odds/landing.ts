/**
 * Where a ball that leaves the hole again comes to rest: for any direction and speed, from the hole.
 * On a plane exact (roll/plane.ts). On a height field rests are rolled from the hole on a grid of directions by speeds, once
 * for each green, green speed and hole, and interpolated; that a lip-out starts a few centimetres off the hole's centre
 * shifts its rest by as much and changes the ground it rolls over by nothing that counts.
 */

import { lagrange } from '../maths/interpolation.ts';
import { planeReach } from '../roll/plane.ts';
import { rollerFor } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import type { FieldSurface, Putt } from '../types.ts';

/** Fills `out` with rest minus start, m, of a ball rolling off at this heading (radians from +x) and speed (m/s). */
export type Landing = (heading: number, speed: number, out: { x: number; y: number }) => void;

/** Directions rolled: every 15 degrees; speeds up to the fastest that a ball still has when it has touched the hole. */
const HEADINGS = 24;
const SPEEDS = 7;
const FASTEST = 3;

/** @param putt its ball does not matter */
export function landingFrom(putt: Putt): Landing {
  const { surface } = putt;
  if (surface.kind === 'field') return fieldLanding({ ...putt, surface });
  const reach = planeReach(surface, putt.greenSpeed);
  return (heading, speed, out) => {
    reach(heading, out);
    out.x *= speed * speed;
    out.y *= speed * speed;
  };
}

interface Known {
  readonly greenSpeed: number;
  readonly x: number;
  readonly y: number;
  readonly landing: Landing;
}
/** The last one made for each green: every place of a table asks for the same. */
const known = new WeakMap<FieldSurface, Known>();

function fieldLanding(putt: Putt & { readonly surface: FieldSurface }): Landing {
  const { surface, greenSpeed, hole } = putt;
  const last = known.get(surface);
  if (last?.greenSpeed === greenSpeed && last.x === hole.x && last.y === hole.y) return last.landing;
  const landing = rolled(putt);
  known.set(surface, { greenSpeed, x: hole.x, y: hole.y, landing });
  return landing;
}

/** Rests for each unit of v^2, which change little with v: two numbers for each direction, speeds fastest. */
function rolled(putt: Putt): Landing {
  const roller = rollerFor({ ...putt, ball: putt.hole, skid: false });
  const pass = newPass();
  const columns = HEADINGS + 3;
  const reachX = new Float64Array(columns * SPEEDS);
  const reachY = new Float64Array(columns * SPEEDS);
  for (let i = 0; i < HEADINGS; i++)
    for (let j = 0; j < SPEEDS; j++) {
      const speed = (FASTEST * (j + 0.5)) / SPEEDS;
      roller.pass((2 * Math.PI * i) / HEADINGS, speed, pass);
      reachX[i * SPEEDS + j] = (pass.restX - putt.hole.x) / speed ** 2;
      reachY[i * SPEEDS + j] = (pass.restY - putt.hole.y) / speed ** 2;
    }
  // A cubic needs one direction before and two after: the first three stand once more at the end.
  reachX.copyWithin(HEADINGS * SPEEDS, 0, 3 * SPEEDS);
  reachY.copyWithin(HEADINGS * SPEEDS, 0, 3 * SPEEDS);
  const round = { first: 0, w: new Float64Array(4) };
  const along = { first: 0, w: new Float64Array(4) };
  return (heading, speed, out) => {
    let turn = (heading / (2 * Math.PI)) * HEADINGS;
    turn -= HEADINGS * Math.floor(turn / HEADINGS);
    lagrange(turn < 1 ? turn + HEADINGS : turn, columns - 1, round);
    lagrange(Math.max(0, Math.min(SPEEDS - 1, (speed * SPEEDS) / FASTEST - 0.5)), SPEEDS - 1, along);
    let x = 0;
    let y = 0;
    for (let k = 0; k < 4; k++)
      for (let l = 0; l < 4; l++) {
        const at = (round.first + k) * SPEEDS + along.first + l;
        x += round.w[k] * along.w[l] * reachX[at];
        y += round.w[k] * along.w[l] * reachY[at];
      }
    out.x = x * speed * speed;
    out.y = y * speed * speed;
  };
}
