/**
 * How a drill's score is distributed when every stroke's points are.
 *
 * Answers for: sums, the best of several, the longest run and the rung reached, all exact, for independent strokes. Leaves out: the
 * strokes (stroke-points.ts) and what the scores mean.
 * Sources: sums by convolution (only sums of products of positive numbers); runs and ladders as Markov chains whose states are
 * what the rule looks at (derived).
 * A distribution is a Float64Array whose entry k is the chance of exactly k points.
 */

/** Distribution of the sum of two independent scores. */
export function together(first: Float64Array, second: Float64Array): Float64Array {
  const sum = new Float64Array(first.length + second.length - 1);
  for (let i = 0; i < first.length; i++)
    for (let j = 0; j < second.length; j++) sum[i + j] += first[i] * second[j];
  return sum;
}

/** Certainly no points: the sum of nothing. */
const NOTHING = Float64Array.of(1);

/** Distribution of the sum of so many independent scores of one kind. */
export const times = (one: Float64Array, count: number): Float64Array =>
  Array.from({ length: count }).reduce<Float64Array>((sum) => together(sum, one), NOTHING);

export const sumOf = (scores: readonly Float64Array[]): Float64Array => scores.reduce(together, NOTHING);

/** Mean of a score. */
export const meanOf = (chances: Float64Array): number =>
  chances.reduce((sum, chance, score) => sum + score * chance, 0);

/**
 * The best of so many independent scores of one kind.
 * @param better lower: the least of them
 */
export function bestOf(one: Float64Array, sets: number, better: 'higher' | 'lower'): Float64Array {
  const best = new Float64Array(one.length);
  let below = 0;
  for (let score = 0; score < one.length; score++) {
    const upTo = Math.min(1, below + one[score]);
    best[score] =
      better === 'higher' ? upTo ** sets - below ** sets : (1 - below) ** sets - (1 - upTo) ** sets;
    below = upTo;
  }
  return best;
}

/**
 * Longest run of successes.
 * @param shares chance of success, stroke by stroke
 * @param length the run that ends it
 * @returns chances of a longest run of 0 to `length`
 */
export function longestRun(shares: readonly number[], length: number): Float64Array {
  // State: the run under way and the longest so far, which is at least that.
  const stateOf = (run: number, longest: number): number => longest * (length + 1) + run;
  let states = new Float64Array((length + 1) ** 2);
  states[0] = 1;
  for (const share of shares) {
    const next = new Float64Array(states.length);
    for (let longest = 0; longest <= length; longest++)
      for (let run = 0; run <= longest; run++) {
        const chance = states[stateOf(run, longest)];
        if (chance === 0) continue;
        if (longest === length) {
          next[stateOf(run, longest)] += chance;
          continue;
        }
        next[stateOf(run + 1, Math.max(longest, run + 1))] += chance * share;
        next[stateOf(0, longest)] += chance * (1 - share);
      }
    states = next;
  }
  return Float64Array.from({ length: length + 1 }, (_, longest) => {
    let chance = 0;
    for (let run = 0; run <= longest; run++) chance += states[stateOf(run, longest)];
    return chance;
  });
}

/**
 * Rungs climbed after so many strokes.
 * @param shares chance of success on each rung
 * @param back rungs lost by a failure, never below the first
 * @returns chances of 0 to shares.length rungs; past the last rung it ends
 */
export function rungReached(
  shares: readonly number[],
  { strokes, back }: { readonly strokes: number; readonly back: number },
): Float64Array {
  let rungs = new Float64Array(shares.length + 1);
  rungs[0] = 1;
  for (let stroke = 0; stroke < strokes; stroke++) {
    const next = new Float64Array(rungs.length);
    next[shares.length] = rungs[shares.length];
    shares.forEach((share, rung) => {
      next[rung + 1] += rungs[rung] * share;
      next[Math.max(0, rung - back)] += rungs[rung] * (1 - share);
    });
    rungs = next;
  }
  return rungs;
}
