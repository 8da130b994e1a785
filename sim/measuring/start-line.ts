/**
 * Start-line spread from balls rolled through gates: how many of how many passed.
 *
 * Answers for: the spread of the start angle with its interval, from one gate or several. Leaves out: which side the misses went;
 * a habit to one side (it counts as spread here).
 * Source (derived): the ball's centre has a = (width - ball)/2 to either side at distance d, so it passes with the chance
 * p = 2 Phi(angle/sd) - 1, angle = atan(a/d). The interval is Jeffreys': equal tails of the posterior from the prior that is the
 * root of the Fisher information, changed at the ends as Brown, Cai & DasGupta (2001) do for a share. With one gate that is
 * the interval of the share (proportion.ts) turned into angles, because Jeffreys' prior does not depend on what one calls the
 * unknown.
 */
import { BALL_RADIUS } from '../constants.ts';
import { lastPlace } from '../maths/halving.ts';
import { shareOutside } from '../maths/student-t.ts';
import { CONFIDENCE } from './measured.ts';

export interface GateRun {
  /** Between the inner sides, m. */
  readonly width: number;
  /** Ball to gate, m. */
  readonly distance: number;
  /** Clean passes, whole, 0 to tries. */
  readonly passes: number;
  readonly tries: number;
}

export interface StartLine {
  /** Most likely spread, radians; undefined where all balls passed or none: then any smaller (larger) one is likelier still. */
  readonly value: number | undefined;
  /** Ends of the interval, radians; low 0 and high Infinity: the record gives no such end. */
  readonly low: number;
  readonly high: number;
  readonly passes: number;
  readonly tries: number;
}

/** Places of the logarithm of the spread at which the posterior is summed: ends within 1e-4 of themselves (tested). */
const PLACES = 2500;
/** From a ninth of the narrowest angle (where a miss is one in 1e18) to far more than the widest: with few passes the posterior has a long tail. */
const NARROWEST = 1 / 9;
const WIDEST = 1e5;
/** Beyond this z the shares outside are read from their limit, 2 density/z; they underflow from 38 on. */
const FAR = 30;

/** Angle to either side within which a ball passes, radians. @throws RangeError when no ball can pass */
export function gateAngle({ width, distance }: Pick<GateRun, 'width' | 'distance'>): number {
  const room = width / 2 - BALL_RADIUS;
  if (!(room > 0 && distance > 0))
    throw new RangeError(
      `Got a gate ${width} m wide, ${distance} m away; expected one wider than a ball (${2 * BALL_RADIUS} m) and ahead of it: set it wider.`,
    );
  return Math.atan2(room, distance);
}

/**
 * The z at which a gate tells most of the spread: the Fisher information of ln sd, (2 z density)^2/(p (1 - p)), is largest there
 * (found by brute force in the tests); 87% of the balls pass.
 */
const MOST_TELLING = 1.5;

/** Width of the gate at this distance that tells most of such a spread, m: about six balls in seven pass it. */
export const tellingWidth = (sd: number, distance: number): number =>
  2 * (distance * Math.tan(MOST_TELLING * sd) + BALL_RADIUS);

interface GateRecord {
  readonly angle: number;
  readonly passes: number;
  readonly misses: number;
}

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** How fast the share outside grows with ln sd, over that share. */
const growth = (z: number): number => (z > FAR ? z * z : (2 * z * density(z)) / shareOutside(z));

const logLikelihood = (gates: readonly GateRecord[], sd: number): number =>
  gates.reduce((sum, { angle, passes, misses }) => {
    const outside = shareOutside(angle / sd);
    return (
      sum + (passes > 0 ? passes * Math.log1p(-outside) : 0) + (misses > 0 ? misses * Math.log(outside) : 0)
    );
  }, 0);

/** Slope of the logarithm of the likelihood in ln sd. */
const score = (gates: readonly GateRecord[], sd: number): number =>
  gates.reduce((sum, { angle, passes, misses }) => {
    const z = angle / sd;
    const outside = shareOutside(z);
    return sum + growth(z) * (misses - (passes * outside) / (1 - outside));
  }, 0);

/** Fisher information of ln sd. */
const information = (gates: readonly GateRecord[], sd: number): number =>
  gates.reduce((sum, { angle, passes, misses }) => {
    const z = angle / sd;
    const outside = shareOutside(z);
    return sum + ((passes + misses) * growth(z) ** 2 * outside) / (1 - outside);
  }, 0);

/** Quantiles of the posterior of the spread, by the trapezoid rule in ln sd. */
function posteriorEnds(
  gates: readonly GateRecord[],
  [from, to]: readonly [number, number],
  shares: readonly number[],
): number[] {
  const step = Math.log(to / from) / (PLACES - 1);
  const sds = Array.from({ length: PLACES }, (_, i) => from * Math.exp(i * step));
  const logs = sds.map((sd) => logLikelihood(gates, sd));
  const most = Math.max(...logs);
  const heights = sds.map((sd, i) => Math.exp(logs[i] - most) * Math.sqrt(information(gates, sd)));
  const below = [0];
  for (let i = 1; i < PLACES; i++) below.push(below[i - 1] + (heights[i - 1] + heights[i]) / 2);
  return shares.map((share) => {
    const sought = share * below[PLACES - 1];
    const next = below.findIndex((sum) => sum >= sought);
    const within = (sought - below[next - 1]) / (below[next] - below[next - 1]);
    return sds[next - 1] * Math.exp(within * step);
  });
}

/**
 * @param gates at least one with tries
 * @returns undefined without tries
 * @throws RangeError when a gate is no wider than a ball
 */
export function startLine(gates: readonly GateRun[], confidence = CONFIDENCE): StartLine | undefined {
  const records = gates
    .filter(({ tries }) => tries > 0)
    .map((gate) => ({ angle: gateAngle(gate), passes: gate.passes, misses: gate.tries - gate.passes }));
  if (records.length === 0) return undefined;
  const passes = records.reduce((sum, gate) => sum + gate.passes, 0);
  const misses = records.reduce((sum, gate) => sum + gate.misses, 0);
  const angles = records.map(({ angle }) => angle);
  const bracket = [Math.min(...angles) * NARROWEST, Math.max(...angles) * WIDEST] as const;
  const tail = (1 - confidence) / 2;
  // The spread at which all passing, or none, would happen once in forty records (at 95%).
  const unlikely = Math.log(tail);
  const counts = { passes, tries: passes + misses };
  if (misses === 0) {
    const high = lastPlace((sd) => logLikelihood(records, sd) > unlikely, ...bracket);
    return { value: undefined, low: 0, high, ...counts };
  }
  if (passes === 0) {
    const low = lastPlace((sd) => logLikelihood(records, sd) < unlikely, ...bracket);
    return { value: undefined, low, high: Number.POSITIVE_INFINITY, ...counts };
  }
  const [low, high] = posteriorEnds(records, bracket, [tail, 1 - tail]);
  return {
    value: lastPlace((sd) => score(records, sd) > 0, ...bracket),
    low: misses === 1 ? 0 : low,
    high: passes === 1 ? Number.POSITIVE_INFINITY : high,
    ...counts,
  };
}
