/**
 * Slope by a level, such as a telephone laid on a board: read, turned half round, read again.
 *
 * Answers for: slope along one direction without the level's own zero error, and size and direction of the fall from two
 * directions at right angles, each with its interval. Leaves out: the sensor (src), a board that is not straight.
 * Source (MODEL.md section 6, derived): a level shows angle + zero, and turned round -angle + zero; half the difference is the
 * angle, half the sum the zero error. Slope = tan(angle).
 */
import { tFactor } from '../maths/student-t.ts';
import { CONFIDENCE, type Measured, marginOf } from './measured.ts';
import { type PooledMean, poolReadings } from './readings.ts';

/** One place, read twice. Angles in radians, positive where the end that pointed forwards at first is the higher one. */
export interface LevelPair {
  readonly facing: number;
  /** As the level shows it when turned round: about the opposite sign. */
  readonly turned: number;
}

/** Spread of one reading of a level laid down anew, radians; 0.1 degree, ours. Only the prior of the scatter. */
export const LEVEL_SPREAD = (0.1 * Math.PI) / 180;

export interface LevelSlope {
  /** Share, positive: climbs forwards. */
  readonly slope: Measured;
  /** What the level shows on level ground, radians. */
  readonly zeroError: number;
  readonly pairs: number;
  /** Scatter of the pairs over what was expected (1: as expected). */
  readonly scatter: number;
}

const angleOf = ({ facing, turned }: LevelPair): number => (facing - turned) / 2;
const zeroOf = (pairs: readonly LevelPair[]): number =>
  pairs.reduce((sum, { facing, turned }) => sum + (facing + turned) / 2, 0) / pairs.length;
const readingsOf = (pairs: readonly LevelPair[], spread: number) =>
  // Half the difference of two readings.
  pairs.map((pair) => ({ value: angleOf(pair), sd: spread / Math.SQRT2 }));

const slopeWithin = ({ value }: PooledMean, half: number): Measured => ({
  value: Math.tan(value),
  low: Math.tan(value - half),
  high: Math.tan(value + half),
});

/**
 * @param spread expected of one reading, radians; for a level that shows whole degrees 0.29 degrees (a step over the root of 12)
 * @returns undefined without pairs
 */
export function slopeByLevel(
  pairs: readonly LevelPair[],
  spread = LEVEL_SPREAD,
  confidence = CONFIDENCE,
): LevelSlope | undefined {
  if (pairs.length === 0) return undefined;
  const { means, degrees, dispersion } = poolReadings([readingsOf(pairs, spread)]);
  const half = marginOf({ own: means[0].variance, degrees, shared: 0 }, confidence);
  return {
    slope: slopeWithin(means[0], half),
    zeroError: zeroOf(pairs),
    pairs: pairs.length,
    scatter: Math.sqrt(dispersion),
  };
}

export interface LevelFall {
  /** Size of the steepest slope, share; `low` is 0 when level ground is not ruled out. */
  readonly slope: Measured;
  /** Straight uphill, radians from forwards, positive to the left; undefined when level ground is not ruled out. */
  readonly uphill: Measured | undefined;
  readonly forwards: Measured;
  readonly left: Measured;
  readonly pairs: number;
  readonly scatter: number;
}

/**
 * The fall from readings along two directions at right angles.
 *
 * The estimate of the gradient has two normal components; level ground is ruled out when they lie outside the region that holds
 * them with this confidence on level ground (squared length over 2 variances: F with 2 and n degrees, whose quantile has a
 * closed form). Otherwise the size of the estimate says little: errors alone make it positive.
 * @param forwards pairs along the first direction
 * @param left pairs along the direction a quarter turn to its left
 * @returns undefined when either has none
 */
export function fallByLevel(
  { forwards, left }: { readonly forwards: readonly LevelPair[]; readonly left: readonly LevelPair[] },
  spread = LEVEL_SPREAD,
  confidence = CONFIDENCE,
): LevelFall | undefined {
  if (forwards.length === 0 || left.length === 0) return undefined;
  const { means, degrees, dispersion } = poolReadings([
    readingsOf(forwards, spread),
    readingsOf(left, spread),
  ]);
  const factor = tFactor(confidence, degrees);
  const [ahead, aside] = means.map((mean) => slopeWithin(mean, factor * Math.sqrt(mean.variance)));
  const size = Math.hypot(ahead.value, aside.value);
  const [aheadVariance, asideVariance] = means.map(({ variance }) => variance);
  /** Squared, in units of its own error. */
  const away = ahead.value ** 2 / aheadVariance + aside.value ** 2 / asideVariance;
  const sloping = away > 2 * fQuantileOfTwo(confidence, degrees);
  // Error along the fall and across it.
  const cosine = size > 0 ? ahead.value / size : 1;
  const sine = size > 0 ? aside.value / size : 0;
  const along = factor * Math.sqrt(cosine ** 2 * aheadVariance + sine ** 2 * asideVariance);
  const across = factor * Math.sqrt(sine ** 2 * aheadVariance + cosine ** 2 * asideVariance);
  const uphill = Math.atan2(aside.value, ahead.value);
  const turn = Math.asin(Math.min(1, across / size));
  return {
    slope: { value: size, low: sloping ? Math.max(0, size - along) : 0, high: size + along },
    uphill: sloping ? { value: uphill, low: uphill - turn, high: uphill + turn } : undefined,
    forwards: ahead,
    left: aside,
    pairs: forwards.length + left.length,
    scatter: Math.sqrt(dispersion),
  };
}

/** Quantile of the F distribution with 2 and n degrees: P(F > f) = (1 + 2 f/n)^(-n/2) (exact). */
const fQuantileOfTwo = (share: number, n: number): number => (n / 2) * ((1 - share) ** (-2 / n) - 1);
