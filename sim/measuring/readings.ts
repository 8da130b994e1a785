/**
 * Means of a few readings whose size of error is roughly known beforehand.
 *
 * Answers for: the weighted mean of each group of readings, the variance of each mean, and how much wider or narrower the
 * readings scatter than was expected, one figure for all groups. Leaves out: errors common to all readings (measured.ts).
 *
 * Two or three readings say little about their own scatter (Student's factor for two is 12.7), but how well a stopwatch or a
 * level can be read is known from elsewhere. Readings are therefore normal with variance dispersion x sd^2, sd as expected, and
 * the dispersion has the usual conjugate prior, a scaled inverse chi-square about 1 worth PRIOR_READINGS readings: the mean
 * then has a Student distribution with PRIOR_READINGS + n - groups degrees of freedom (Gelman et al., Bayesian Data Analysis,
 * section 3.2; memory). One reading thus has a margin; with many the prior is forgotten and the scatter alone decides.
 */

/**
 * Weight of what is expected of the scatter, in readings; ours. Four: the true scatter is held to be 0.6 to 2.9 times what was
 * expected (the central 95% of that prior). Larger: a set that scatters wildly would not widen its margin enough.
 */
export const PRIOR_READINGS = 4;

export interface Reading {
  readonly value: number;
  /** What one such reading is expected to be off by, one standard deviation, in its units; above 0. */
  readonly sd: number;
}

export interface PooledMean {
  readonly value: number;
  /** Of the mean. */
  readonly variance: number;
}

export interface PooledReadings {
  /** One per group, in their order. */
  readonly means: readonly PooledMean[];
  readonly degrees: number;
  /** Variance of the readings over what was expected. */
  readonly dispersion: number;
  readonly count: number;
}

/**
 * @param groups readings of the same quantity in each; no group may be empty
 */
export function poolReadings(groups: readonly (readonly Reading[])[]): PooledReadings {
  let count = 0;
  let squares = PRIOR_READINGS;
  const plain = groups.map((readings) => {
    let weight = 0;
    let sum = 0;
    for (const { value, sd } of readings) {
      weight += sd ** -2;
      sum += value * sd ** -2;
    }
    const mean = sum / weight;
    for (const { value, sd } of readings) squares += ((value - mean) / sd) ** 2;
    count += readings.length;
    return { mean, weight };
  });
  const degrees = PRIOR_READINGS + count - groups.length;
  const dispersion = squares / degrees;
  return {
    means: plain.map(({ mean, weight }) => ({ value: mean, variance: dispersion / weight })),
    degrees,
    dispersion,
    count,
  };
}
