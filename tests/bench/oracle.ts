/**
 * A plain Monte Carlo of a putt: the oracle for the odds. Draws what the player sees, a line and a pace error, rolls the ball
 * by a fixed step, judges it at the rim, plays on until it is in, and counts.
 *
 * Answers for: counts with their standard errors. Shares no code with the engine but constants, types, `seededRandom`,
 * `sampleSurface` for fields and the table of the rim; the line of every ball, of later putts too, comes from its own
 * shooting (oracle-line.ts). Definitions as in DEVELOPERS.md "Decisions", sim/types.ts (Odds) and MODEL.md section 3:
 * - every ball has a ground and a green speed as seen of its own (oracle-seen.ts), and the line meant is that ground's, for
 *   the pace asked;
 * - struck: start = the one meant + lineSd z, launch energy v^2 = the one meant (1 + paceBias + paceSd z); the ball then
 *   rolls on the true ground;
 * - capture is judged once, as the ball's centre first crosses the rim circle; one that stops within it drops; one that lips
 *   out rolls on from where the rule puts it;
 * - short: missed and at rest before the hole along the line ball -> hole; otherwise high or low by the side on which it
 *   passed the hole: high is the side of the true line's aim, left for a straight putt;
 * - every putt after the first is read anew, with a sight of its own, from where the ball lies for NEXT_PUTT_PACE, or, where
 *   that has no line on the ground as seen, the next softer pace that has one. The player allows for both his habits there.
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
import { type JointErrors, meantLines, turn } from './oracle-meant.ts';
import { type Capture, newPlainRoll, rollPlain, type Setting, settingOf } from './oracle-roll.ts';
import { sightOf } from './oracle-seen.ts';

/** Paces tried in turn for a later putt, m. */
const NEXT_PACES = [NEXT_PUTT_PACE, 0.2, 0.1, 0.05];
/** A hole is given up after this many putts. */
const MOST_PUTTS = 8;
/** Lines of later putts are found this closely, m. */
const NEXT_CLOSE = 1e-4;
/** Least share of the energy meant that a ball is struck with. */
const LEAST_SHARE = 1e-6;
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
  /** Start and share struck, as counted over all first putts and as derivatives say (oracle-meant.ts). Where the ball went has no part in them. */
  readonly joint: { readonly counted: JointErrors; readonly firstOrder: JointErrors };
  /** Rolls that left the surface or never stopped, and putts without a line as seen: they must be none to speak of. */
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

/** A line as it is struck by a player who means it. */
export const struckOf = (meant: PlainLine, player: Player, normal: () => number): PlainLine => ({
  heading: meant.heading + player.lineSd * normal(),
  speed: meant.speed * Math.sqrt(Math.max(LEAST_SHARE, 1 + player.paceBias + player.paceSd * normal())),
});

/** Sums of two numbers and of their products, for means, SDs and the correlation. */
class Pairs {
  private count = 0;
  private readonly sums = new Float64Array(5);

  add(a: number, b: number): void {
    this.count++;
    const { sums } = this;
    sums[0] += a;
    sums[1] += b;
    sums[2] += a * a;
    sums[3] += b * b;
    sums[4] += a * b;
  }

  /** The first are starts from `zero`. */
  joint(zero: number): JointErrors {
    const [a, b, aa, bb, ab] = this.sums.map((sum) => sum / this.count);
    const startSd = Math.sqrt(aa - a * a);
    const shareSd = Math.sqrt(bb - b * b);
    const correlation = (ab - a * b) / (startSd * shareSd);
    return { startMean: zero + a, startSd, shareMean: b, shareSd, correlation };
  }
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
  const knowing = { ...player, readBias: 0, paceBias: 0 };
  const out = newPlainRoll();
  for (let putts = 1; putts < MOST_PUTTS; putts++) {
    const seen = sightOf(setting, knowing, normal);
    let meant: PlainLine | undefined;
    for (const pace of NEXT_PACES) {
      meant = plainLine(seen, ball, pace, NEXT_CLOSE);
      if (meant !== undefined) break;
    }
    if (meant === undefined) return undefined;
    const { heading, speed } = struckOf(meant, knowing, normal);
    rollPlain(setting, ball, heading, speed, out, capture);
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
  const lines = meantLines(setting, putt.ball, pace, player.readBias);
  if (lines === undefined)
    throw new Error(`the oracle finds no line for ${JSON.stringify(putt)}, pace ${pace}`);
  const capture = plainCapture(putt.capture);
  const zero = bearing(putt.ball, putt.hole);
  const { line } = lines;
  const start = turn(line.heading - zero);
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
  const pairs = new Pairs();
  const out = newPlainRoll();
  for (let i = 0; i < rolls; i++) {
    const meant = lines.meant(sightOf(setting, player, normal));
    if (meant === undefined) {
      count.lost++;
      continue;
    }
    const { heading, speed } = struckOf(meant, player, normal);
    pairs.add(heading - line.heading, (speed / line.speed) ** 2 - 1);
    rollPlain(setting, putt.ball, heading, speed, out, capture);
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
    joint: { counted: pairs.joint(start), firstOrder: lines.firstOrder(player) },
    lost: count.lost,
  };
}
