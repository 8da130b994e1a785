/**
 * How far a line may be off and still drop: the starts at its speed, the paces on its start.
 *
 * Answers for: the two edges nearest to the line, each a bracketed root of one number that is positive while the ball
 * drops and changes continuously across either way of missing: past the rim, or short of it. Leaves out: a second band
 * beyond a gap; the chance of staying inside (odds/).
 */
import { HOLE_RADIUS } from '../constants.ts';
import { captureRule } from '../hole/capture.ts';
import type { CaptureRule } from '../hole/rule.ts';
import { frictionOf } from '../roll/plane.ts';
import { drops, lengthOf, startOf } from '../roll/roll.ts';
import { newPass, type Pass, type Roller } from '../roll/roller.ts';
import type { Band, Putt } from '../types.ts';

/** Edges are solved until the ball is this close to the brink, m: far below what a reader of the band can see. */
const BRINK = 5e-6;
/** ... or until the bracket is this share of the first step. */
const NARROW = 1e-7;
const MOST_STRIDES = 40;
const MOST_STEPS = 60;

interface Start {
  readonly heading: number;
  readonly speed: number;
}

/** What a ball at the rim has to spare, m; either of two measures, so that each edge is solved in the one it is smooth in. */
type Spare = (rule: CaptureRule, speed: number, offset: number) => number;

const spareOffset: Spare = (rule, speed, offset) => {
  const widest = rule.widestDrop(speed);
  const fastest = rule.fastestDrop(0);
  return widest < 0
    ? (HOLE_RADIUS * (fastest - speed)) / fastest - Math.abs(offset)
    : widest - Math.abs(offset);
};
const spareSpeed: Spare = (rule, speed, offset) =>
  (HOLE_RADIUS * (rule.fastestDrop(offset) - speed)) / rule.fastestDrop(0);

/** The two ways to drop, each positive while it does, m: over the rim, slow enough; and at rest over the hole. */
interface Brinks {
  readonly arriving: (pass: Pass) => number;
  readonly resting: (pass: Pass) => number;
}

function brinksOf(putt: Putt, spare: Spare): Brinks {
  const rule = captureRule(putt.capture);
  const friction = frictionOf(putt.greenSpeed);
  const resting = (pass: Pass): number =>
    pass.status === 'atRest'
      ? HOLE_RADIUS - Math.hypot(pass.restX - putt.hole.x, pass.restY - putt.hole.y)
      : Number.NEGATIVE_INFINITY;
  return {
    resting,
    arriving: (pass) => {
      if (!pass.met) {
        const passing = pass.missSpeed > 0 ? HOLE_RADIUS - Math.abs(pass.miss) : Number.NEGATIVE_INFINITY;
        return Math.min(-BRINK, Math.max(passing, resting(pass)));
      }
      // What it would still roll on the level ties a ball that just reaches the rim to one that just does not.
      const beyond = pass.rimSpeed ** 2 / (2 * friction);
      return Math.min(spare(rule, pass.rimSpeed, pass.rimOffset), beyond);
    },
  };
}

/** The pass of a value, rolled once however often it is asked for in a row. */
function rememberLast(roll: (value: number, out: Pass) => Pass): (value: number) => Pass {
  const pass = newPass();
  let last = Number.NaN;
  return (value) => {
    if (value !== last) roll(value, pass);
    last = value;
    return pass;
  };
}

/** Follow one way of dropping to its end, and there the other if that has begun, so that no gap is stepped over. */
function lastDrop(
  inside: number,
  step: number,
  passAt: (value: number) => Pass,
  { arriving, resting }: Brinks,
): number {
  let at = inside;
  let stride = step;
  for (let turn = 0; turn < 4; turn++) {
    const pass = passAt(at);
    const [here, other] = turn % 2 === 0 ? [arriving, resting] : [resting, arriving];
    if (here(pass) >= 0) {
      at = edge(at, stride, (value) => here(passAt(value)));
      stride = step / 8;
      if (other(passAt(at)) < BRINK) break;
    } else if (other(pass) < 0) break;
  }
  return at;
}

/** Last value that drops: stride out from `inside` until the ball misses, then a secant kept in its bracket (Illinois). */
function edge(inside: number, step: number, brinkAt: (value: number) => number): number {
  let near = inside;
  let nearBrink = brinkAt(near);
  let far = inside + step;
  let farBrink = brinkAt(far);
  for (let stride = 0; farBrink >= 0 && stride < MOST_STRIDES; stride++) {
    near = far;
    nearBrink = farBrink;
    // The last stride tells how fast it comes near the brink; a little beyond that, and never far beyond.
    far += step * (0.25 + stride / 4);
    farBrink = brinkAt(far);
  }
  if (farBrink >= 0) return far;
  const narrow = Math.abs(step) * NARROW;
  let kept = 0;
  for (let i = 0; i < MOST_STEPS && Math.abs(far - near) > narrow; i++) {
    const value = i % 6 === 5 ? (near + far) / 2 : near + ((far - near) * nearBrink) / (nearBrink - farBrink);
    const brink = brinkAt(value);
    if (Math.abs(brink) < BRINK) return value;
    if (brink >= 0) {
      near = value;
      nearBrink = brink;
      if (kept > 0) farBrink /= 2;
      kept = 1;
    } else {
      far = value;
      farBrink = brink;
      if (kept < 0) nearBrink /= 2;
      kept = -1;
    }
  }
  return near;
}

/** Start angles (radians from ball->hole) that still drop at the line's speed; undefined when the line itself does not. */
export function startBand(putt: Putt, roller: Roller, line: Start): Band | undefined {
  const passAt = rememberLast((heading, out) => roller.pass(heading, line.speed, out));
  if (!drops(putt, passAt(line.heading))) return undefined;
  const brinks = brinksOf(putt, spareOffset);
  const start = startOf(putt, line.heading);
  // On level ground a turn moves the pass by the length times it.
  const step = (1.02 * Math.max(brinks.arriving(passAt(line.heading)), 1e-4)) / lengthOf(putt);
  return {
    low: start + lastDrop(line.heading, -step, passAt, brinks) - line.heading,
    high: start + lastDrop(line.heading, step, passAt, brinks) - line.heading,
  };
}

/** Paces (m past) on the line's start that still drop; one that stops short of the hole is negative. */
export function paceBand(
  putt: Putt,
  roller: Roller,
  line: Start & { readonly pace: number },
  arrivalSpeed: number,
): Band | undefined {
  const energy = line.speed ** 2;
  // Energies, because distances are nearly linear in them.
  const passAt = rememberLast((value, out) =>
    roller.pass(line.heading, Math.sqrt(Math.max(value, 1e-9)), out),
  );
  if (!drops(putt, passAt(energy))) return undefined;
  const paceAt = (value: number): number => {
    const { restX, restY, missSpeed } = passAt(value);
    const past = Math.hypot(restX - putt.hole.x, restY - putt.hole.y);
    return missSpeed === 0 ? -past : past;
  };
  const spare = captureRule(putt.capture).fastestDrop(0) ** 2 - arrivalSpeed ** 2;
  const share = (line.pace + HOLE_RADIUS) / (lengthOf(putt) + line.pace);
  const down = -1.02 * energy * Math.min(share, 0.5);
  const up = 1.02 * Math.max(spare, energy / 1000);
  return {
    low: paceAt(lastDrop(energy, down, passAt, brinksOf(putt, spareOffset))),
    high: paceAt(lastDrop(energy, up, passAt, brinksOf(putt, spareSpeed))),
  };
}
