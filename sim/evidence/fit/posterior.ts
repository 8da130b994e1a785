/**
 * From a likelihood to draws of what is thought after it: Bayes' rule in normal scores (prior.ts). Answers for: the likeliest place,
 * its curvature, weighted draws and how many independent ones they are worth. Leaves out: what the scores mean.
 *
 * Draws come from a multivariate t about the likeliest place, as wide as the curvature says; a record that bends the posterior
 * makes that a poor guess, so that further rounds come from a t about the weighted draws themselves. No draw is lost: each carries the
 * weight posterior / mean of all the t's so far (adaptive multiple importance sampling: Cornuet, Marin, Mira & Robert 2012, memory).
 * The search begins from the prior's middle; a posterior with two hills would be climbed on one (none met: the wide t would show
 * it in the weights).
 */
import { drawNormal } from '../../odds/normal.ts';
import { seededRandom } from '../../random.ts';
import { choleskyFactor, inverseOf, type Matrix, solveLower } from '../cholesky.ts';
import { type Least, least } from './climb.ts';

/** Degrees of freedom of the t: tails heavier than any posterior's here, so that no weight runs away. */
const TAILS = 12;
/** The t is a little wider than the posterior: too narrow costs more than too wide. */
const WIDER = 1.06;
/** First step of the differences, scores: an ordinary posterior is 0.1 to 1 wide. From it follow steps that raise the misfit by about BEND_RISE. */
const FIRST_STEP = 0.15;
const BEND_RISE = 0.3;
/** Settled roughly, as climb.ts has it. */
const ROUGHLY = 0.1;
/** The search begins as if the posterior were a third as wide as the prior. */
const START_SPREAD = 0.1;
/** Draws of one round; rounds at most; draws worth so many are enough. */
const ROUND = 200;
const MOST_ROUNDS = 12;
const ENOUGH = 250;
/** Draws that a new middle and spread are taken from are worth so many at least. */
const NEEDED = 70;
/** Worth less than this many independent draws, the ends of intervals are too rough to show. */
export const FEWEST_WORTH = 100;

export interface Draws {
  /** Scores, draw by draw. */
  readonly scores: readonly (readonly number[])[];
  /** Sum to 1. */
  readonly weights: Float64Array;
  /** Independent draws they are worth: 1 / sum of squared weights (Kish 1965). */
  readonly worth: number;
  readonly likeliest: readonly number[];
  /** Times the likelihood was asked. */
  readonly asked: number;
}

export interface PosteriorSearch {
  /** Logarithm of the likelihood at scores. */
  readonly logLikelihood: (scores: readonly number[]) => number;
  readonly size: number;
  /** Where to begin to look; default the middle of the prior. */
  readonly about?: Pick<Least, 'at' | 'inverse'>;
  readonly seed: number | string;
  /** Asked now and then, with how far it is, 0 to 1; false ends the search. */
  readonly goesOn: (done: number) => boolean;
}

const squares = (scores: readonly number[]): number => scores.reduce((sum, z) => sum + z * z, 0);

type Misfit = (at: readonly number[]) => number;

/** The misfit with one score moved, or two. */
const movedFrom =
  (f: Misfit, at: readonly number[]) =>
  (i: number, by: number, j = -1, byToo = 0): number =>
    f(at.map((z, k) => z + (k === i ? by : 0) + (k === j ? byToo : 0)));

/** Steps, one for each score, that raise the misfit about evenly. */
function stepsAt(f: Misfit, at: readonly number[], lowest: number): number[] {
  const moved = movedFrom(f, at);
  return at.map((_, i) => {
    let step = FIRST_STEP;
    // The rise goes with the square of the step, or nearly so.
    for (let look = 0; look < 4; look++) {
      const rise = (moved(i, step) + moved(i, -step)) / 2 - lowest;
      if (rise < 4 * BEND_RISE) break;
      step *= Math.sqrt(BEND_RISE / rise);
    }
    return step;
  });
}

/** Second derivatives of a function at its least. */
function bendsOf(f: Misfit, at: readonly number[], lowest: number, steps: readonly number[]): number[][] {
  const moved = movedFrom(f, at);
  const ups = at.map((_, i) => moved(i, steps[i]));
  const downs = at.map((_, i) => moved(i, -steps[i]));
  const bends = at.map(() => at.map(() => 0));
  for (let i = 0; i < at.length; i++) {
    bends[i][i] = (ups[i] - 2 * lowest + downs[i]) / steps[i] ** 2;
    for (let j = 0; j < i; j++) {
      const both = moved(i, steps[i], j, steps[j]) + moved(i, -steps[i], j, -steps[j]);
      const mixed = (both - ups[i] - downs[i] - ups[j] - downs[j] + 2 * lowest) / (2 * steps[i] * steps[j]);
      bends[i][j] = mixed;
      bends[j][i] = mixed;
    }
  }
  return bends;
}

/** A diagonal of one number. */
const evenly = (size: number, value: number): number[][] =>
  Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_also, j) => (i === j ? value : 0)));

/** Spread about the likeliest place. Where the bends make none, so much of the prior's bend is added that they do. */
function spreadFrom(bends: Matrix): number[][] {
  for (let more = 0; more < MOST_BEND; more = 2 * more + 1) {
    const spread = inverseOf(bends.map((row, i) => row.map((bend, j) => bend + (i === j ? more : 0))));
    if (spread !== undefined) return spread;
  }
  return evenly(bends.length, 1);
}
/** Bends beyond it are not numbers. */
const MOST_BEND = 1e6;

/** The likeliest scores alone, roughly: where to look closer. */
export const likeliestOf = (logLikelihood: PosteriorSearch['logLikelihood'], size: number): Least =>
  least(
    (scores) => squares(scores) / 2 - logLikelihood(scores),
    new Array<number>(size).fill(0),
    evenly(size, START_SPREAD),
    ROUGHLY,
  );

/** @returns undefined when it was not wanted to the end */
export function drawPosterior({
  logLikelihood,
  size,
  about,
  seed,
  goesOn,
}: PosteriorSearch): Draws | undefined {
  let asked = 0;
  let stopped = false;
  const misfit = (scores: readonly number[]): number => {
    // Asking costs more than a look: once in a while.
    if (asked++ % 32 === 0 && !stopped) stopped = !goesOn(Math.min(0.95, asked / (asked + 900)));
    return stopped ? Number.POSITIVE_INFINITY : squares(scores) / 2 - logLikelihood(scores);
  };
  const near = about ?? { at: new Array<number>(size).fill(0), inverse: evenly(size, START_SPREAD) };
  const { at, misfit: lowest } = least(misfit, near.at, near.inverse);
  if (stopped) return undefined;
  const steps = stepsAt(misfit, at, lowest);
  if (stopped) return undefined;
  const random = seededRandom(seed);
  const normal = (): number => drawNormal(random);
  const bends = bendsOf(misfit, at, lowest, steps);
  if (stopped) return undefined;
  const guesses: Guess[] = [guessAbout(at, spreadFrom(bends))];
  const scores: number[][] = [];
  const misfits: number[] = [];
  for (;;) {
    const guess = guesses[guesses.length - 1];
    for (let k = 0; k < ROUND; k++) {
      const draw = guess.draw(normal);
      scores.push(draw);
      misfits.push(misfit(draw));
    }
    if (stopped) return undefined;
    const weights = weightsOf(scores, misfits, guesses);
    const worth = worthOf(weights);
    const { middle, around } = momentsOf(scores, evened(weights));
    if (worth > ENOUGH || guesses.length === MOST_ROUNDS || choleskyFactor(around) === undefined)
      return { scores, weights, worth, likeliest: at, asked };
    guesses.push(guessAbout(middle, around));
  }
}

/** Independent draws that weighted ones are worth. */
const worthOf = (weights: Float64Array): number =>
  1 / weights.reduce((sum, weight) => sum + weight * weight, 0);

function momentsOf(
  scores: readonly (readonly number[])[],
  weights: Float64Array,
): { middle: number[]; around: number[][] } {
  const middle = scores[0].map((_, i) => scores.reduce((sum, draw, k) => sum + weights[k] * draw[i], 0));
  const around = middle.map((_, i) =>
    middle.map((_also, j) =>
      scores.reduce((sum, draw, k) => sum + weights[k] * (draw[i] - middle[i]) * (draw[j] - middle[j]), 0),
    ),
  );
  return { middle, around };
}

/** Weights to a power, 1 or less, that leaves as many draws worth as a covariance needs: few that carry all say little of the rest. */
function evened(weights: Float64Array): Float64Array {
  let even = weights;
  for (let power = 1; power > 0.01; power *= 0.7) {
    const raised = weights.map((weight) => weight ** power);
    const total = raised.reduce((sum, weight) => sum + weight, 0);
    even = raised.map((weight) => weight / total);
    if (worthOf(even) > NEEDED) break;
  }
  return even;
}

/** A multivariate t that draws come from. */
interface Guess {
  draw(normal: () => number): number[];
  /** Logarithm of its density, but for what is the same for all of one size. */
  logAt(scores: readonly number[]): number;
}

function guessAbout(middle: readonly number[], spread: Matrix): Guess {
  const lower = choleskyFactor(spread.map((row) => row.map((value) => value * WIDER ** 2))) ?? [];
  const logScale = lower.reduce((sum, row, i) => sum + Math.log(row[i]), 0);
  return {
    draw(normal) {
      const z = middle.map(() => normal());
      let chi = 0;
      for (let i = 0; i < TAILS; i++) chi += normal() ** 2;
      const stretch = Math.sqrt(TAILS / chi);
      return middle.map((value, i) => {
        let sum = value;
        for (let j = 0; j <= i; j++) sum += stretch * lower[i][j] * z[j];
        return sum;
      });
    },
    logAt(scores) {
      const away = squares(
        solveLower(
          lower,
          scores.map((value, i) => value - middle[i]),
        ),
      );
      return -logScale - ((TAILS + middle.length) / 2) * Math.log1p(away / TAILS);
    },
  };
}

/** Posterior beside the mean of all guesses, summing to 1. */
function weightsOf(
  scores: readonly (readonly number[])[],
  misfits: readonly number[],
  guesses: readonly Guess[],
): Float64Array {
  const logs = Float64Array.from(scores, (draw, k) => {
    const those = guesses.map((guess) => guess.logAt(draw));
    const most = Math.max(...those);
    return -misfits[k] - most - Math.log(those.reduce((sum, log) => sum + Math.exp(log - most), 0));
  });
  const most = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
