/**
 * A plain Monte Carlo of a putt: the oracle for the odds. Draws a read, a line and a pace error, rolls the ball by a fixed
 * step, judges it at the rim, plays on until it is in, and counts.
 *
 * Answers for: counts with their standard errors. Shares no code with the engine but constants, types, `seededRandom` and,
 * for fields, `sampleSurface`; the line of every putt, the later ones too, comes from its own shooting (oracle-line.ts).
 * Definitions as in DEVELOPERS.md "Decisions" and sim/types.ts (Odds):
 * - pace error multiplies the distance: v = v0 sqrt(max(0, 1 + paceBias + paceSd z));
 * - read error multiplies the aim offset: start = atan2(sin(start) (1 + readBias + readSd z), cos(start)) + lineSd z;
 * - capture is judged once, as the ball's centre first crosses the rim circle; one that stops within it drops; one that lips
 *   out rolls on from where the rule puts it;
 * - short: missed and at rest before the hole along the line ball -> hole; otherwise high or low by the side on which it
 *   passed the hole: high is the side of the aim, left for a straight putt;
 * - every putt after the first is read anew from where the ball lies for NEXT_PUTT_PACE, or, where that has no line, the
 *   next softer pace that has one.
 */
import {
  BALL_RADIUS,
  GRAVITY,
  HOLE_RADIUS,
  NEXT_PUTT_PACE,
  SIMPLE_CENTRE_SPEED,
} from '../../sim/constants.ts';
import { captureRule } from '../../sim/hole/capture.ts';
import { seededRandom } from '../../sim/random.ts';
import type { CaptureName, Player, Point, Putt } from '../../sim/types.ts';
import { type PlainLine, plainLine } from './oracle-line.ts';
import {
  type Capture,
  newPlainRoll,
  type PlainRoll,
  rollPlain,
  type Setting,
  settingOf,
} from './oracle-roll.ts';

/** Paces tried in turn for a later putt, m. */
const NEXT_PACES = [NEXT_PUTT_PACE, 0.2, 0.1, 0.05];
/** A hole is given up after this many putts. */
const MOST_PUTTS = 8;
/** Lines are found this closely, m: the first once, to a hundredth of a millimetre; later ones by the ten thousand. */
const FIRST_CLOSE = 1e-5;
const NEXT_CLOSE = 1e-4;
/** A start nearer the hole than this, radians, is straight. */
const STRAIGHT = 1e-4;

/**
 * The rules of MODEL.md section 2, written again; but for the rim, whose table is the engine's: it is checked against the
 * direct calculation elsewhere (tests/sim/hole), what the odds make of it is checked here.
 */
export const plainCapture = (name: CaptureName): Capture =>
  name === 'rim'
    ? plainRim
    : name === 'simple'
      ? (speed, offset) => speed <= SIMPLE_CENTRE_SPEED * (1 - (offset / HOLE_RADIUS) ** 2)
      : (speed, offset) => {
          const inner = HOLE_RADIUS - BALL_RADIUS;
          if (Math.abs(offset) >= inner) return false;
          const flight = Math.sqrt(HOLE_RADIUS ** 2 - offset ** 2) + Math.sqrt(inner ** 2 - offset ** 2);
          return speed <= flight / Math.sqrt((2 * BALL_RADIUS) / GRAVITY);
        };

const plainRim: Capture = (speed, offset) => {
  const rule = captureRule('rim');
  if (speed <= rule.fastestDrop(offset)) return true;
  const out = { x: 0, y: 0, turn: 0, speed: 0 };
  return rule.leave?.(speed, offset, out) ? out : false;
};

export interface OracleOptions {
  /** First putts rolled: they give holed, short, high, low and the leaves. */
  readonly rolls: number;
  /** How many of those are played on until holed: they give three-putts and expected putts. At most `rolls`. */
  readonly playedOut: number;
  readonly seed: number | string;
  /** s. */
  readonly step: number;
}

/** A number and its standard error. */
export interface Measured {
  readonly value: number;
  readonly se: number;
}

export interface OracleOdds {
  /** The intended start, radians from the ball-to-hole line, positive left, and launch speed, m/s. */
  readonly start: number;
  readonly speed: number;
  readonly holed: Measured;
  readonly short: Measured;
  readonly high: Measured;
  readonly low: Measured;
  /** Of high and low, those that touched the hole. */
  readonly lippedOut: Measured;
  readonly threePutt: Measured;
  readonly expectedPutts: Measured;
  /** m, among misses. */
  readonly leaveMedian: Measured;
  /** Rolls that left the surface or never stopped, and later putts without a line: they must be none to speak of. */
  readonly lost: number;
}

const bearing = (from: Point, to: Point): number => Math.atan2(to.y - from.y, to.x - from.x);

/** A source of standard normal numbers (Box & Muller 1958). */
export function normals(seed: number | string): () => number {
  const random = seededRandom(seed);
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    const size = Math.sqrt(-2 * Math.log(1 - random()));
    const turn = 2 * Math.PI * random();
    spare = size * Math.sin(turn);
    return size * Math.cos(turn);
  };
}

/** One putt by this player from `ball` along an intended line. */
export function strike(
  setting: Setting,
  ball: Point,
  line: PlainLine,
  player: Player,
  capture: Capture,
  normal: () => number,
  out: PlainRoll,
): PlainRoll {
  const zero = bearing(ball, setting.hole);
  const intended = line.heading - zero;
  const seen = 1 + player.readBias + player.readSd * normal();
  const start = Math.atan2(Math.sin(intended) * seen, Math.cos(intended)) + player.lineSd * normal();
  const distance = Math.max(0, 1 + player.paceBias + player.paceSd * normal());
  return rollPlain(setting, ball, zero + start, line.speed * Math.sqrt(distance), out, capture);
}

/** Putts taken from `ball`, or undefined when one is lost or has no line. */
function playOut(
  setting: Setting,
  from: Point,
  player: Player,
  capture: Capture,
  normal: () => number,
): number | undefined {
  let ball = from;
  const out = newPlainRoll();
  for (let putts = 1; putts < MOST_PUTTS; putts++) {
    let line: PlainLine | undefined;
    for (const pace of NEXT_PACES) {
      line = plainLine(setting, ball, pace, NEXT_CLOSE);
      if (line !== undefined) break;
    }
    if (line === undefined) return undefined;
    strike(setting, ball, line, player, capture, normal, out);
    if (out.status === 'lost') return undefined;
    if (out.status === 'dropped') return putts;
    ball = { x: out.x, y: out.y };
  }
  return MOST_PUTTS - 1;
}

const share = (count: number, of: number): Measured => {
  const value = count / of;
  // One more of each kind, so that a count of none does not claim to be exact (Laplace's rule of succession).
  const smooth = (count + 1) / (of + 2);
  return { value, se: Math.sqrt((smooth * (1 - smooth)) / of) };
};

/** Roll and count; `pace` in m past the covered hole. */
export function oracleOdds(
  putt: Putt,
  pace: number,
  player: Player,
  { rolls, playedOut, seed, step }: OracleOptions,
): OracleOdds {
  const setting = settingOf(putt, step);
  const line = plainLine(setting, putt.ball, pace, FIRST_CLOSE);
  if (line === undefined)
    throw new Error(`the oracle finds no line for ${JSON.stringify(putt)}, pace ${pace}`);
  const capture = plainCapture(putt.capture);
  const zero = bearing(putt.ball, putt.hole);
  const start = Math.atan2(Math.sin(line.heading - zero), Math.cos(line.heading - zero));
  // Straight within what the shooting can tell: left counts as high.
  const aimsLeft = start > -STRAIGHT;
  const normal = normals(`first ${seed}`);
  const nextNormal = normals(`next ${seed}`);
  const toHole = { x: Math.cos(zero), y: Math.sin(zero) };
  const count = { holed: 0, short: 0, high: 0, low: 0, lipped: 0, three: 0, lost: 0, out: 0 };
  let putts = 0;
  let puttsSquared = 0;
  const leaves = new Float64Array(rolls);
  let missed = 0;
  const out = newPlainRoll();
  for (let i = 0; i < rolls; i++) {
    strike(setting, putt.ball, line, player, capture, normal, out);
    let taken = 1;
    if (out.status === 'dropped') count.holed++;
    else if (out.status === 'lost') {
      count.lost++;
      continue;
    } else {
      const dx = out.x - putt.hole.x;
      const dy = out.y - putt.hole.y;
      leaves[missed++] = Math.hypot(dx, dy);
      if (out.lipped) count.lipped++;
      // A ball that touched the hole was not short of it, wherever it rolled from there.
      if (!out.lipped && dx * toHole.x + dy * toHole.y < 0) count.short++;
      // A hole to the right of the path was passed on its left.
      else if (out.offset < 0 === aimsLeft) count.high++;
      else count.low++;
      if (i < playedOut) {
        const more = playOut(setting, { x: out.x, y: out.y }, player, capture, nextNormal);
        if (more === undefined) {
          count.lost++;
          continue;
        }
        taken += more;
      }
    }
    if (i < playedOut) {
      count.out++;
      putts += taken;
      puttsSquared += taken * taken;
      if (taken >= 3) count.three++;
    }
  }
  const sorted = leaves.subarray(0, missed).sort();
  const mean = putts / count.out;
  const at = (rank: number): number => sorted[Math.min(missed - 1, Math.max(0, Math.round(rank)))];
  // Rank of the median is binomial, SD half the root of the count.
  const spread = Math.sqrt(missed) / 2;
  return {
    start,
    speed: line.speed,
    holed: share(count.holed, rolls),
    short: share(count.short, rolls),
    high: share(count.high, rolls),
    low: share(count.low, rolls),
    lippedOut: share(count.lipped, rolls),
    threePutt: share(count.three, count.out),
    expectedPutts: {
      value: mean,
      se: Math.sqrt(Math.max(0, puttsSquared / count.out - mean * mean) / count.out),
    },
    leaveMedian: {
      value: at(missed / 2),
      se: (at(missed / 2 + spread) - at(missed / 2 - spread)) / 2,
    },
    lost: count.lost,
  };
}
