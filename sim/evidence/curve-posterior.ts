/**
 * What holed and missed putts tell of a player's curve, when putts of one day go together. Answers for: Bayes' rule, as normal
 * distributions of the ways of a family, one for each of several spreads of days. Leaves out: the family (curve-family.ts), what is
 * read off (holing-curve.ts).
 *
 * Model: on day r a putt from x misses with log odds h(x) + sum b_k w_k(x) + d_r; b_k standard normal; d_r normal with SD s, the same
 * on all days; s half-normal. For each s of a few the most likely b and d are found by Newton's method, and the curvature there is
 * taken for the precision (Laplace's approximation; Rasmussen & Williams 2006, 3.4, memory). Days enter only through their sums, so
 * that a record costs its number of putts.
 */
import { choleskyFactor, type Matrix, solveFactored } from '../maths/cholesky.ts';
import { byDay, type HoledTally } from '../record/tallies.ts';
import type { CurveFamily } from './curve-family.ts';

/** SD of a day that is thought likely before any putt, log odds: at a share of a half 7 points. Ours. */
const DAY_SCALE = 0.3;
/** SDs of a day that are looked at, log odds. */
const DAY_SDS = [0, 0.1, 0.2, 0.3, 0.4, 0.55, 0.75];
/** Ends Newton's method: a step this small moves no share by a hundredth of a point. */
const SMALL_STEP = 1e-4;
/** The likelihood has one peak and Newton's method finds it in five or so. */
const MOST_STEPS = 40;
/** A longer step is cut to this, SDs of a way: far off the curvature misleads. */
const LONGEST_STEP = 2;

/** The curve if days differ by so much. */
export interface CurvePart {
  /** Chance of this spread of days; all sum to 1. */
  readonly weight: number;
  /** SD of a day, log odds. */
  readonly daySd: number;
  /** Most likely ways. */
  readonly mean: readonly number[];
  /** Lower factor of their precision. */
  readonly factor: Matrix;
}

interface Term {
  readonly height: number;
  readonly ways: readonly number[];
  readonly tries: number;
  readonly misses: number;
}

interface Found {
  readonly logChance: number;
  readonly mean: number[];
  readonly factor: Matrix;
}

const dot = (one: readonly number[], other: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i] * other[i];
  return sum;
};

/** ln(1 + e^x) without overflow. */
const softPlus = (x: number): number => (x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x)));

/** The peak for one spread of days, from a guess. */
function peak(days: readonly (readonly Term[])[], daySd: number, guess: readonly number[]): Found {
  const size = guess.length;
  const mean = [...guess];
  const shifts = new Float64Array(days.length);
  const perDay = daySd > 0 ? 1 / daySd ** 2 : 0;
  for (let step = 0; ; step++) {
    const precision = mean.map((_, i) => mean.map((_other, j) => (i === j ? 1 : 0)));
    const slope = mean.map((value) => -value);
    const reduced = [...slope];
    let logChance = -dot(mean, mean) / 2;
    let dayLogs = 0;
    const sums = days.map((terms, day) => {
      let bend = perDay;
      let push = -perDay * shifts[day];
      const cross = new Array<number>(size).fill(0);
      if (perDay > 0) logChance -= (perDay * shifts[day] ** 2) / 2;
      for (const { height, ways, tries, misses } of terms) {
        const odds = height + dot(ways, mean) + shifts[day];
        const missed = 1 / (1 + Math.exp(-odds));
        const rest = misses - tries * missed;
        const weight = tries * missed * (1 - missed);
        logChance += misses * odds - tries * softPlus(odds);
        bend += weight;
        push += rest;
        for (let i = 0; i < size; i++) {
          reduced[i] += rest * ways[i];
          cross[i] += weight * ways[i];
          for (let j = 0; j <= i; j++) precision[i][j] += weight * ways[i] * ways[j];
        }
      }
      if (perDay === 0) return { bend: 1, push: 0, cross };
      dayLogs += Math.log(bend / perDay) / 2;
      for (let i = 0; i < size; i++) {
        reduced[i] -= (cross[i] * push) / bend;
        for (let j = 0; j <= i; j++) precision[i][j] -= (cross[i] * cross[j]) / bend;
      }
      return { bend, push, cross };
    });
    const factor = choleskyFactor(precision);
    if (factor === undefined)
      throw new Error('Got a precision that is none; expected the prior to see to it.');
    const logs = factor.reduce((sum, row, i) => sum + Math.log(row[i]), 0);
    let change = solveFactored(factor, reduced);
    const length = Math.max(...change.map(Math.abs));
    if (length < SMALL_STEP || step === MOST_STEPS)
      return { logChance: logChance - logs - dayLogs, mean, factor };
    if (length > LONGEST_STEP) change = change.map((value) => (value * LONGEST_STEP) / length);
    for (let i = 0; i < size; i++) mean[i] += change[i];
    if (perDay > 0)
      for (const [day, { bend, push, cross }] of sums.entries())
        shifts[day] += (push - dot(cross, change)) / bend;
  }
}

/** The curves that these putts leave, for each spread of days its chance. */
export function curvePosterior(tallies: readonly HoledTally[], family: CurveFamily): CurvePart[] {
  const days = byDay(tallies).map((day) =>
    day.map(
      ({ distance, tries, holed }): Term => ({
        height: family.heightAt(distance),
        ways: family.waysAt(distance),
        tries,
        misses: tries - holed,
      }),
    ),
  );
  let guess: readonly number[] = new Array<number>(family.ways).fill(0);
  const found = DAY_SDS.map((daySd) => {
    const one = peak(days, daySd, guess);
    guess = one.mean;
    return one;
  });
  // Each spread stands for what lies nearer to it than to its neighbours.
  const logs = found.map(({ logChance }, i) => {
    const low = i === 0 ? 0 : (DAY_SDS[i - 1] + DAY_SDS[i]) / 2;
    const high = i === DAY_SDS.length - 1 ? 1.5 * DAY_SDS[i] : (DAY_SDS[i] + DAY_SDS[i + 1]) / 2;
    return logChance + Math.log(high - low) - (DAY_SDS[i] / DAY_SCALE) ** 2 / 2;
  });
  const most = Math.max(...logs);
  const total = logs.reduce((sum, log) => sum + Math.exp(log - most), 0);
  return found.map(({ mean, factor }, i) => ({
    weight: Math.exp(logs[i] - most) / total,
    daySd: DAY_SDS[i],
    mean,
    factor,
  }));
}
