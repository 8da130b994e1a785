/**
 * What becomes of strokes at one putt, whoever plays it: several hundred starts and launch energies, each rolled once. Answers
 * for: which drop, and where the others come to lie, beside, along and how far from the hole. Leaves out: how likely a player
 * makes a stroke (player-strokes.ts), what he writes of it (words.ts).
 *
 * Strokes are spread evenly over two wide bell-like curves (Kronecker's lattice through the inverse of the logistic
 * distribution), half of them about the lines that cross the hole, where what drops and what is high or low is decided. Each
 * carries 1 / (how densely they lie there): a sum over them is an integral over all strokes.
 * High is positive throughout: ground that breaks the other way is its mirror image.
 */
import { HOLE_RADIUS } from '../../constants.ts';
import { captureRule } from '../../hole/capture.ts';
import { newLeavingBall } from '../../hole/leave.ts';
import type { LineWalk } from '../../read/line.ts';
import { bearingOf, fromLip, lengthOf, lipsOut, rollerFor, startOf } from '../../roll/roll.ts';
import { newPass } from '../../roll/roller.ts';

export interface GroundStrokes {
  readonly count: number;
  /** Radians from ball->hole to the high side; launch energy v^2, m^2/s^2. */
  readonly start: Float64Array;
  readonly energy: Float64Array;
  /** Radians m^2/s^2: how much of all strokes it stands for. */
  readonly weight: Float64Array;
  /**
   * It drops where a hole takes in balls as fast as this share of what the rim rule says; 0: it dies over the hole; Infinity: it passes
   * the hole by.
   */
  readonly needs: Float64Array;
  /** Of a miss, m. Positive high: where it passed the hole, or where it lies beside the line to it when it stayed short. */
  readonly beside: Float64Array;
  /** m past the hole along that line, negative short; a lip-out got there. */
  readonly along: Float64Array;
  /** m to the hole. */
  readonly leave: Float64Array;
}

/** Scale of the wide curve of starts, radians: beside the hole of level ground, and per radian of break (ours). */
const START_SCALE = 0.022;
const START_SCALE_SHARE = 0.3;
/** Of the narrow one, hole radii. */
const NEAR_SCALE = 0.55;
/** Of the logarithm of energy, and per part of the length that the usual paces lie apart (short putts). */
const ENERGY_SCALE = 0.105;
const ENERGY_SCALE_PACES = 0.25;
/** As "along" of a ball that touched the hole, m: plainly not short. */
const LIPPED = 1;
/** Powers of the root of x^3 = x + 1 fill a square evenly (Roberts 2018, memory). */
const PLASTIC = 1.324717957244746;
/** Beyond this share of the rule's speed no hole takes a ball in; under its inverse every hole does. */
export const OPEN = 1.6;

const fraction = (value: number): number => value - Math.floor(value);
const logistic = (part: number): number => Math.log(part / (1 - part));
const logisticDensity = (x: number): number => {
  const e = Math.exp(-Math.abs(x));
  return e / ((1 + e) * (1 + e));
};

/**
 * @param high 1 where the high side is the left, -1 where it is the right
 * @param count how many @param begins where the lattice begins, 0 to 1 in each direction: anywhere, for grounds not to share its gaps
 */
export function groundStrokes(
  walk: LineWalk,
  high: 1 | -1,
  count: number,
  begins: readonly [number, number, number],
): GroundStrokes {
  const { putt } = walk;
  const curve = walk.curve();
  const length = lengthOf(putt);
  const bearing = bearingOf(putt);
  const centre = walk.lineAt(0.4) ?? curve[0];
  const middle = Math.log(centre.speed ** 2);
  const energyScale = ENERGY_SCALE + (ENERGY_SCALE_PACES * 0.4) / (length + 0.4);
  // Start that crosses the middle of the hole, by softness 1/v^2, from 0 for an endless speed.
  const softness = [0, ...curve.map(({ speed }) => 1 / speed ** 2)];
  const starts = [0, ...curve.map(({ heading }) => high * startOf(putt, heading))];
  const centreOf = (energy: number): number => {
    const at = 1 / energy;
    let i = 1;
    while (i < softness.length - 1 && softness[i] < at) i++;
    const share = Math.min(1.5, (at - softness[i - 1]) / (softness[i] - softness[i - 1]));
    return starts[i - 1] + share * (starts[i] - starts[i - 1]);
  };
  const wide = START_SCALE + START_SCALE_SHARE * Math.abs(startOf(putt, centre.heading));
  const narrow = Math.min(wide, (NEAR_SCALE * HOLE_RADIUS) / length);

  const made = {
    count,
    start: new Float64Array(count),
    energy: new Float64Array(count),
    weight: new Float64Array(count),
    needs: new Float64Array(count),
    beside: new Float64Array(count),
    along: new Float64Array(count),
    leave: new Float64Array(count),
  };
  const rule = captureRule(putt.capture);
  const { roller } = walk.search;
  const towardX = Math.cos(bearing);
  const towardY = Math.sin(bearing);
  const pass = newPass();
  const leaving = newLeavingBall();
  for (let i = 0; i < count; i++) {
    const score = logistic(fraction((i + 0.5) / count + begins[0]) || 0.5 / count);
    const energy = Math.exp(middle + energyScale * score);
    // Now from the wide curve, now from the narrow one.
    const turn = fraction((i + 1) / PLASTIC + begins[1]);
    const part = Math.min(1 - 1e-9, Math.max(1e-9, fraction((i + 1) / PLASTIC ** 2 + begins[2])));
    const about = centreOf(energy);
    const off = (turn < 0.5 ? wide : narrow) * logistic(part);
    const acrossDensity = (logisticDensity(off / wide) / wide + logisticDensity(off / narrow) / narrow) / 2;
    const energyDensity = logisticDensity(score) / (energyScale * energy);
    made.start[i] = about + off;
    made.energy[i] = energy;
    made.weight[i] = 1 / (count * acrossDensity * energyDensity);
    roller.pass(bearing + high * (about + off), Math.sqrt(energy), pass);
    const atRest = Math.hypot(pass.restX - putt.hole.x, pass.restY - putt.hole.y);
    made.needs[i] = !pass.met
      ? Number.POSITIVE_INFINITY
      : pass.status === 'atRest' && atRest < HOLE_RADIUS
        ? 0
        : pass.rimSpeed / Math.max(1e-9, rule.fastestDrop(pass.rimOffset));
    if (made.needs[i] < 1 / OPEN) continue;
    const passed = -high * (pass.met ? pass.rimOffset : pass.miss);
    const lipped = lipsOut(putt, pass, leaving);
    if (lipped) rollerFor(fromLip(putt, leaving)).pass(leaving.heading, leaving.speed, pass);
    const [x, y] = [pass.restX - putt.hole.x, pass.restY - putt.hole.y];
    const along = x * towardX + y * towardY;
    made.along[i] = lipped ? LIPPED : along;
    made.beside[i] = along < 0 && !lipped ? high * (y * towardX - x * towardY) : passed;
    made.leave[i] = Math.hypot(x, y);
  }
  return made;
}

/** Of balls that need so much, the share that drops where holes take in `rim` of what the rule says: near the edge either may be. */
export const dropShare = (needs: number, rim: number): number => shareWithin(needs, rim, sharpnessOf(rim));
/** The same for many at one rim, whose sharpness is worked out once. */
export const shareWithin = (needs: number, rim: number, sharpness: number): number => {
  const share = 0.5 + (rim - needs) * sharpness;
  return share > 1 ? 1 : Math.max(0, share);
};
export const sharpnessOf = (rim: number): number => 1 / (2 * EDGE * rim);
/** Half the width of that edge, share of the speed (ours: no hole is cut alike, no rim is level). */
const EDGE = 0.06;
