/**
 * The least of a smooth function of ten numbers or so, each of order one: BFGS (Broyden, Fletcher, Goldfarb & Shanno 1970) with
 * gradients by differences and a step that is halved until it leads down (Armijo 1966). Answers for: a place and how far it got.
 * Leaves out: proof that no deeper valley lies elsewhere.
 */

/** Step of the differences. */
const STEP = 0.04;
/** Longest step in one number: a posterior is not trusted farther than this from where its bend was felt. */
const LONGEST = 1;
const MOST_ROUNDS = 60;
const HALVINGS = 12;
/** Share of the fall promised by the slope that a step must bring. */
const ENOUGH = 1e-3;
/** Settled when the fall still promised is below this, unless asked otherwise: log-likelihoods are asked for no better. */
const SETTLED = 5e-3;

type Misfit = (at: readonly number[]) => number;

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i], 0);

function gradientAt(f: Misfit, at: readonly number[]): number[] {
  return at.map((_, i) => {
    const moved = (by: number): number => f(at.map((z, k) => (k === i ? z + by : z)));
    return (moved(STEP) - moved(-STEP)) / (2 * STEP);
  });
}

/** Where a climb ended, how low, and the inverse of the bend that it felt. */
export interface Least {
  readonly at: number[];
  readonly misfit: number;
  readonly inverse: number[][];
}

/** @param spread the inverse of the bend, as far as known */
export function least(
  f: Misfit,
  start: readonly number[],
  spread: readonly (readonly number[])[],
  settled = SETTLED,
): Least {
  const size = start.length;
  let at = [...start];
  let misfit = f(at);
  let gradient = gradientAt(f, at);
  let inverse = spread.map((row) => [...row]);
  let fresh = true;
  for (let round = 0; round < MOST_ROUNDS && Number.isFinite(misfit); round++) {
    let way = inverse.map((row) => -dot(row, gradient));
    let fall = dot(way, gradient);
    const far = Math.max(...way.map(Math.abs));
    if (far > LONGEST) {
      way = way.map((value) => (value * LONGEST) / far);
      fall *= LONGEST / far;
    }
    if (-fall < settled) break;
    let share = 1;
    let next = at;
    let there = Number.POSITIVE_INFINITY;
    for (let halving = 0; halving < HALVINGS; halving++) {
      next = at.map((value, i) => value + share * way[i]);
      there = f(next);
      if (there < misfit + ENOUGH * share * fall) break;
      share /= 2;
    }
    if (!(there < misfit)) {
      if (fresh) break;
      // The bend felt so far leads nowhere: from the slope alone once more.
      inverse = spread.map((row) => [...row]);
      fresh = true;
      continue;
    }
    const slope = gradientAt(f, next);
    const step = next.map((value, i) => value - at[i]);
    const turn = slope.map((value, i) => value - gradient[i]);
    const bend = dot(step, turn);
    if (bend > 1e-10) {
      const through = inverse.map((row) => dot(row, turn));
      const more = (1 + dot(turn, through) / bend) / bend;
      for (let i = 0; i < size; i++)
        for (let j = 0; j < size; j++)
          inverse[i][j] += more * step[i] * step[j] - (through[i] * step[j] + step[i] * through[j]) / bend;
      fresh = false;
    }
    at = next;
    misfit = there;
    gradient = slope;
  }
  return { at, misfit, inverse };
}
