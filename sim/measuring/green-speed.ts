/**
 * Green speed, and the slope along the line, from rolls one way or both ways along it.
 *
 * Answers for: both with their intervals, what more rolls would bring, what a tilt would do to rolls one way only.
 * Leaves out: where slowings come from (rolls.ts); a line across the fall: it should run so that the balls roll straight.
 * Source (MODEL.md section 6, derived): a_there = a_f + a_g and a_back = a_f - a_g, so that half their sum is a_f = v_s^2/(2 S),
 * which is Brede's mean of the two readings, and half their difference a_g = (5/7) g slope.
 */
import { GRAVITY, ROLLING_FACTOR, STIMP_SPEED } from '../constants.ts';
import { CONFIDENCE, type ErrorParts, halfWidth, type Measured, marginOf } from './measured.ts';
import { poolReadings } from './readings.ts';
import type { RollWay, SlowedRoll } from './rolls.ts';

const PULL = ROLLING_FACTOR * GRAVITY;
const ENERGY = STIMP_SPEED ** 2 / 2;
/** "Two more": one each way. */
const MORE = 2;

/** Stimpmeter reading, m, of ground that slows a ball so, m/s^2; what rolls one way along a slope read. */
export const readingOf = (slowing: number): number => ENERGY / slowing;

export interface MeasuredSpeed {
  /** m. One way only: what the device would read that way, slope included. */
  readonly greenSpeed: Measured;
  /** Along the line, share, positive where "there" climbs; undefined with rolls one way only. */
  readonly slope: Measured | undefined;
  /** Mean reading of each way, m. */
  readonly readings: Readonly<Partial<Record<RollWay, number>>>;
  readonly rolls: number;
  /** Scatter of the rolls over what was expected of them (1: as expected); standard deviations. */
  readonly scatter: number;
  /** Half the interval of the green speed with two rolls more that scatter alike, m. */
  readonly marginWithTwoMore: number;
  /** Half the interval with rolls without end, m: what the common error leaves. */
  readonly marginAtBest: number;
}

/** Mean slowing of one way with its two variances, (m/s^2)^2. */
interface WayMean {
  readonly slowing: number;
  readonly own: number;
  /** Signed, m/s^2: the common error moves both ways together. */
  readonly shared: number;
}

/**
 * Means are of logarithms, because slowings cannot fall below 0 and their errors are shares; the green speed's interval is taken
 * in its logarithm for the same reason (delta method).
 * @param rolls slowings above 0
 * @returns undefined without rolls
 */
export function measureGreenSpeed(
  rolls: readonly SlowedRoll[],
  confidence = CONFIDENCE,
): MeasuredSpeed | undefined {
  const ways = (['there', 'back'] as const).filter((way) => rolls.some((roll) => roll.way === way));
  if (ways.length === 0) return undefined;
  const groups = ways.map((way) => rolls.filter((roll) => roll.way === way));
  const pooled = poolReadings(
    groups.map((group) => group.map(({ slowing, own }) => ({ value: Math.log(slowing), sd: own }))),
  );
  const { degrees, dispersion } = pooled;
  const means: WayMean[] = pooled.means.map(({ value, variance }, i) => {
    const slowing = Math.exp(value);
    // Weighted as the mean is.
    let weight = 0;
    let shared = 0;
    for (const roll of groups[i]) {
      weight += roll.own ** -2;
      shared += roll.shared * roll.own ** -2;
    }
    return { slowing, own: slowing ** 2 * variance, shared: (slowing * shared) / weight };
  });

  const friction = means.reduce((sum, { slowing }) => sum + slowing, 0) / means.length;
  const own = means.reduce((sum, mean) => sum + mean.own, 0) / means.length ** 2;
  const shared = (means.reduce((sum, mean) => sum + mean.shared, 0) / means.length) ** 2;
  const value = readingOf(friction);
  /** Interval of the green speed for these errors of the friction. */
  const speedFor = (parts: ErrorParts): Measured => {
    const share = marginOf(parts, confidence) / friction;
    return { value, low: value * Math.exp(-share), high: value * Math.exp(share) };
  };
  const { length } = rolls;
  const more = { own: (own * length) / (length + MORE), degrees: degrees + MORE, shared };
  const [there, back] = means;
  return {
    greenSpeed: speedFor({ own, degrees, shared }),
    slope:
      back === undefined
        ? undefined
        : slopeBetween(there, back, (variances) => marginOf({ ...variances, degrees }, confidence)),
    readings: Object.fromEntries(ways.map((way, i) => [way, readingOf(means[i].slowing)])),
    rolls: length,
    scatter: Math.sqrt(dispersion),
    marginWithTwoMore: halfWidth(speedFor(more)),
    marginAtBest: halfWidth(speedFor({ own: 0, degrees, shared })),
  };
}

function slopeBetween(
  there: WayMean,
  back: WayMean,
  margin: (variances: Pick<ErrorParts, 'own' | 'shared'>) => number,
): Measured {
  const value = (there.slowing - back.slowing) / (2 * PULL);
  const half =
    margin({ own: (there.own + back.own) / 4, shared: ((there.shared - back.shared) / 2) ** 2 }) / PULL;
  return { value, low: value - half, high: value + half };
}

/**
 * What the green speed is if rolls one way only were made on a tilt.
 * @param reading what they read, m
 * @param slope along the line, share; positive: they climbed
 * @returns m; infinite where the slope alone would have slowed them as much
 */
export const speedBehind = (reading: number, slope: number): number => {
  const friction = ENERGY / reading - PULL * slope;
  return friction > 0 ? ENERGY / friction : Number.POSITIVE_INFINITY;
};
