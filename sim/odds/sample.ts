/**
 * A cloud of single rolls, for the eye: each with errors drawn at random, rolled for good. The odds do not come from here.
 */
import { newLeavingBall } from '../hole/leave.ts';
import { seededRandom } from '../random.ts';
import { LineWalk } from '../read/line.ts';
import { bearingOf, drops, fromLip, lipsOut, rollerFor } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import type { Player, Putt } from '../types.ts';
import { newStarts, Strokes } from './stroke-errors.ts';

export interface Misses {
  /** Where each ball ended, x and y in turn, m: the hole's centre for those holed. */
  readonly rests: Float64Array;
  /** 1 for those holed. */
  readonly holed: Uint8Array;
  /** 1 for those that touched the hole and left it again. */
  readonly lippedOut: Uint8Array;
  /** How each was struck, for `rollBall`: start angle, radians from ball->hole, and launch speed, m/s. */
  readonly starts: Float64Array;
  readonly speeds: Float64Array;
}

const cloudOf = (count: number): Misses => ({
  rests: new Float64Array(2 * count),
  holed: new Uint8Array(count),
  lippedOut: new Uint8Array(count),
  starts: new Float64Array(count),
  speeds: new Float64Array(count),
});

/** Two independent standard normal numbers from two uniform ones (Box & Muller 1958). */
function fillNormals(random: () => number, out: Float64Array): void {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  const angle = 2 * Math.PI * random();
  out[0] = radius * Math.cos(angle);
  out[1] = radius * Math.sin(angle);
}

/**
 * Roll `count` putts with the player's errors.
 * @param pace metres past the covered hole
 * @param seed same seed, same cloud
 * @returns empty when this pace has no line
 */
export function sampleMisses(putt: Putt, pace: number, player: Player, count: number, seed: number): Misses {
  const walk = new LineWalk(putt);
  const strokes = walk.lineAt(pace) && new Strokes(putt, player).at(pace);
  if (strokes === undefined) return cloudOf(0);
  const { roller } = walk.search;
  const zero = bearingOf(putt);
  const random = seededRandom(seed);
  const pass = newPass();
  const draw = new Float64Array(2);
  const cloud = cloudOf(count);
  const { rests, holed, lippedOut, starts, speeds } = cloud;
  const leaving = newLeavingBall();
  const given = newStarts(strokes.curves);
  for (let i = 0; i < count; i++) {
    fillNormals(random, draw);
    const energy = strokes.energyAt(draw[0]);
    strokes.startsAt(energy, given);
    let curve = 0;
    for (let left = random() - given.shares[0]; left > 0 && curve < strokes.curves - 1; )
      left -= given.shares[++curve];
    starts[i] = given.means[curve] + given.sds[curve] * draw[1];
    speeds[i] = Math.sqrt(energy);
    roller.pass(zero + starts[i], speeds[i], pass);
    holed[i] = drops(putt, pass) ? 1 : 0;
    if (!holed[i] && lipsOut(putt, pass, leaving)) {
      lippedOut[i] = 1;
      rollerFor(fromLip(putt, leaving)).pass(leaving.heading, leaving.speed, pass);
    }
    rests[2 * i] = holed[i] ? putt.hole.x : pass.restX;
    rests[2 * i + 1] = holed[i] ? putt.hole.y : pass.restY;
  }
  return cloud;
}
