/**
 * The cheapest way to an end that every action may reach: E(i) = min over actions of cost + sum of share x E(next), solved
 * twice. Policy iteration (Howard 1960) solves each policy's linear system outright and is what the odds use; value
 * iteration (Bellman 1957) shares no step with it and bounds its own error: tests hold one against the other.
 *
 * The shares of an action sum to less than one; what is missing has ended. With w the cost of the worst policy, every
 * action leaves sum of share x w <= w - cost, so an update is a contraction in the norm max |E| / w, of modulus
 * 1 - least cost / largest w (Bertsekas & Tsitsiklis 1991, in the weighted norm of a problem that always ends; from memory).
 * Leaves out: golf. No place, no putt, no player is known here.
 */

/** All actions of all places, and where each leads: rows one after another. Plain data. */
export interface Decisions {
  /** Actions of place i are firstAction[i] up to firstAction[i + 1], the next place's first, left out. */
  readonly firstAction: Int32Array;
  /** Cost of each action, above 0. */
  readonly cost: Float64Array;
  /** Steps of action a are firstStep[a] up to firstStep[a + 1]: places `to`, each with its `share`. */
  readonly firstStep: Int32Array;
  readonly to: Int32Array;
  readonly share: Float64Array;
}

export interface Solution {
  /** Expected cost from each place. */
  readonly values: Float64Array;
  /** Best action of each place, an index into all actions. */
  readonly policy: Int32Array;
  readonly rounds: number;
}

/** A policy is left for one that is better by more than this: rounding of a sum of a few hundred terms. */
const WORTH_CHANGING = 1e-12;
const MOST_POLICIES = 50;
const MOST_SWEEPS = 10_000;

/** Expected cost of one action when all places after it cost `values`. */
export function costOfAction(decisions: Decisions, action: number, values: Float64Array): number {
  const { cost, firstStep, to, share } = decisions;
  let sum = cost[action];
  const end = firstStep[action + 1];
  for (let step = firstStep[action]; step < end; step++) sum += share[step] * values[to[step]];
  return sum;
}

/**
 * Expected cost of a policy from every place, by Gaussian elimination of (1 - shares) E = cost. Rows are diagonally
 * dominant, so no pivots are sought.
 * @param policy one action for each place
 */
export function evaluatePolicy(decisions: Decisions, policy: Int32Array): Float64Array {
  const { cost, firstStep, to, share } = decisions;
  const places = policy.length;
  const matrix = new Float64Array(places * places);
  const values = new Float64Array(places);
  for (let place = 0; place < places; place++) {
    const action = policy[place];
    matrix[place * places + place] = 1;
    for (let step = firstStep[action]; step < firstStep[action + 1]; step++)
      matrix[place * places + to[step]] -= share[step];
    values[place] = cost[action];
  }
  for (let pivot = 0; pivot < places; pivot++) {
    const base = pivot * places;
    for (let row = pivot + 1; row < places; row++) {
      const at = row * places;
      const times = matrix[at + pivot] / matrix[base + pivot];
      if (times === 0) continue;
      for (let column = pivot + 1; column < places; column++)
        matrix[at + column] -= times * matrix[base + column];
      values[row] -= times * values[pivot];
    }
  }
  for (let row = places - 1; row >= 0; row--) {
    let sum = values[row];
    for (let column = row + 1; column < places; column++)
      sum -= matrix[row * places + column] * values[column];
    values[row] = sum / matrix[row * places + row];
  }
  return values;
}

/** @param first the policy begun with; by default the first action of every place */
export function policyIteration(
  decisions: Decisions,
  first: Int32Array = decisions.firstAction.slice(0, -1),
): Solution {
  const policy = first.slice();
  for (let rounds = 1; ; rounds++) {
    const values = evaluatePolicy(decisions, policy);
    let changed = false;
    for (let place = 0; place < policy.length; place++) {
      let least = costOfAction(decisions, policy[place], values) - WORTH_CHANGING;
      for (let action = decisions.firstAction[place]; action < decisions.firstAction[place + 1]; action++) {
        const sum = costOfAction(decisions, action, values);
        if (sum >= least) continue;
        least = sum;
        policy[place] = action;
        changed = true;
      }
    }
    if (!changed || rounds === MOST_POLICIES) return { values, policy, rounds };
  }
}

export interface BoundedSolution extends Solution {
  /** No value is farther than this from the least expected cost; whoever keeps to `policy` pays at most twice this more. */
  readonly bound: number;
}

/**
 * From nothing upwards: every sweep adds what one more action can still cost, so values rise and never pass the least cost.
 * @param tolerance sweeps end when `bound` is at most this
 */
export function valueIteration(decisions: Decisions, tolerance: number): BoundedSolution {
  const places = decisions.firstAction.length - 1;
  const worst = worstCost(decisions);
  const most = worst.reduce((top, value) => Math.max(top, value), 0);
  const modulus = 1 - decisions.cost.reduce((least, value) => Math.min(least, value), most) / most;
  const policy = new Int32Array(places);
  let values = new Float64Array(places);
  for (let rounds = 1; ; rounds++) {
    const next = new Float64Array(places);
    let moved = 0;
    for (let place = 0; place < places; place++) {
      next[place] = Number.POSITIVE_INFINITY;
      for (let action = decisions.firstAction[place]; action < decisions.firstAction[place + 1]; action++) {
        const sum = costOfAction(decisions, action, values);
        if (sum >= next[place]) continue;
        next[place] = sum;
        policy[place] = action;
      }
      moved = Math.max(moved, Math.abs(next[place] - values[place]) / worst[place]);
    }
    values = next;
    const bound = (most * moved * modulus) / (1 - modulus);
    if (bound <= tolerance || rounds === MOST_SWEEPS) return { values, policy, rounds, bound };
  }
}

/** An upper bound on the cost of every policy: w with w >= cost + sum of share x w for all actions. */
function worstCost(decisions: Decisions): Float64Array {
  const places = decisions.firstAction.length - 1;
  const worst = new Float64Array(places);
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let moved = 0;
    for (let place = 0; place < places; place++)
      for (let action = decisions.firstAction[place]; action < decisions.firstAction[place + 1]; action++) {
        const sum = costOfAction(decisions, action, worst);
        if (sum <= worst[place]) continue;
        moved = Math.max(moved, sum - worst[place]);
        worst[place] = sum;
      }
    if (moved < 1e-9) break;
  }
  // Lifted a little, so that the inequality holds for good where the sweeps were still rising.
  return worst.map((value) => value * (1 + 1e-6));
}
