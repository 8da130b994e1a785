/**
 * How many of a set of putts drop when each has a chance of its own.
 *
 * Answers for: the exact distribution of the count (Poisson-binomial), of a mixture of such, and what is read off it. Leaves out:
 * whose chances they are. Putts count as independent.
 * Source: the recurrence over putts, P_i(k) = (1 - p_i) P_{i-1}(k) + p_i P_{i-1}(k - 1) (derived; only sums of products of
 * positive numbers, so nothing is lost to rounding).
 * A distribution is a Float64Array whose entry k is the chance of exactly k hits, k = 0 to the number of putts.
 */

/**
 * Distribution of the number of hits.
 * @param shares chance of each try, 0..1
 * @returns shares.length + 1 chances that sum to 1
 */
export function hitCounts(shares: readonly number[]): Float64Array {
  const chances = new Float64Array(shares.length + 1);
  chances[0] = 1;
  shares.forEach((share, tries) => {
    // From above, so that every entry is still the one of before when it is needed.
    for (let hits = tries + 1; hits > 0; hits--)
      chances[hits] = (1 - share) * chances[hits] + share * chances[hits - 1];
    chances[0] *= 1 - share;
  });
  return chances;
}

/**
 * Distribution for a player who is himself uncertain: first one of several players, then his tries.
 * @param sharesPerDraw for each player the chance of each try, all of one length
 * @param weights of the players, 0 or more, need not sum to 1; left out: all equal
 * @throws RangeError without players, with lists of different length, without any weight
 */
export function mixedHitCounts(
  sharesPerDraw: readonly (readonly number[])[],
  weights: readonly number[] = sharesPerDraw.map(() => 1),
): Float64Array {
  const tries = sharesPerDraw[0]?.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (
    tries === undefined ||
    sharesPerDraw.some(({ length }) => length !== tries) ||
    weights.length !== sharesPerDraw.length ||
    !(total > 0)
  )
    throw new RangeError(
      `Got ${sharesPerDraw.length} lists of shares, the first of ${tries ?? 0}, and ${weights.length} weights summing to ${total}; expected one weight per list, lists of one length and a weight above 0. Hand in each draw's share at every putt.`,
    );
  const mixed = new Float64Array(tries + 1);
  sharesPerDraw.forEach((shares, draw) => {
    hitCounts(shares).forEach((chance, hits) => {
      mixed[hits] += (weights[draw] / total) * chance;
    });
  });
  return mixed;
}

/** What is to be expected of a count. */
export interface ExpectedHits {
  readonly mean: number;
  /** Standard deviation. */
  readonly sd: number;
  /** Ends of the central range, both belong to it: at most half of what is outside lies beyond either. */
  readonly low: number;
  readonly high: number;
}

/** @param central share that the range holds at least, 0 < central < 1 */
export function summarizeHits(chances: Float64Array, central = 0.9): ExpectedHits {
  const mean = chances.reduce((sum, chance, hits) => sum + hits * chance, 0);
  const variance = chances.reduce((sum, chance, hits) => sum + (hits - mean) ** 2 * chance, 0);
  const tail = (1 - central) / 2;
  const most = chances.length - 1;
  let low = 0;
  while (low < most && chanceAtMost(chances, low) <= tail) low++;
  let high = most;
  while (high > low && chanceAtLeast(chances, high) <= tail) high--;
  return { mean, sd: Math.sqrt(variance), low, high };
}

const sumOf = (chances: Float64Array): number =>
  Math.min(
    1,
    chances.reduce((sum, chance) => sum + chance, 0),
  );

/** Chance of `hits` or fewer. */
export const chanceAtMost = (chances: Float64Array, hits: number): number =>
  sumOf(chances.subarray(0, Math.max(0, hits + 1)));

/** Chance of `hits` or more. */
export const chanceAtLeast = (chances: Float64Array, hits: number): number =>
  sumOf(chances.subarray(Math.max(0, hits)));

/** Chance of a count as far out as this, either way: twice the smaller tail, at most 1. */
export const twoSidedChance = (chances: Float64Array, hits: number): number =>
  Math.min(1, 2 * Math.min(chanceAtMost(chances, hits), chanceAtLeast(chances, hits)));
