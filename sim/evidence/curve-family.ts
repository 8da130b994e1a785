/**
 * The curves a player may have, before any putt: like a chosen benchmark, give or take. Answers for: a benchmark's curve and the few
 * ways in which players differ from it, each with how much. Leaves out: what putts make of it (curve-posterior.ts).
 *
 * On the scale of log odds of a miss a player's curve is the benchmark's plus a part of D, the difference between two engine players,
 * tour and averaging 90, at the same distance: level 1 is the whole way from one to the other. The part may differ between short and
 * long putts (tilt, bend, wave: Legendre polynomials), so that a player may putt like the tour from 3 ft
 * and like a golfer averaging 90 from 30.
 */
import { BENCHMARKS } from '../benchmarks/modelled.ts';
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import { feetToMetres } from '../units.ts';

/**
 * Share of putts missed by carelessness, from however near. The tour misses one of 3000 from 0.3 ft and one of 1500 from 1 ft (TOUR_HOLED),
 * where an engine player misses none; others are less careful (ours). Without it one tap-in missed in a hurry would outweigh thirty honest putts.
 */
const LAPSE = 0.001;

/**
 * SDs of level, tilt, bend and wave, in ways from tour to averaging 90, ours. Level: two thirds of all players are within 1.3 such
 * ways of the benchmark they chose. The others are as wide as intervals need to hold what people of published tables hole
 * (MODEL.md, section 5): an engine player averaging 90 holes 4 points fewer from 3 ft than the account of such golfers.
 */
const SPREADS = [1.3, 0.7, 0.5, 0.35];

/**
 * The polynomials run from -1 to 1 between these, m, evenly in one over the root of the distance: half of the way within 5 ft, where
 * curves differ most in shape. Nearer and farther they stay as they are there.
 */
const NEAR = feetToMetres(1.5);
const FAR = feetToMetres(60);

/** Nearer putts count as from here, m: a ball on the lip. */
const NEAREST = 0.05;

export interface CurveFamily {
  /** The benchmark's name, for the sentence. */
  readonly name: string;
  /** Ways in which players differ. */
  readonly ways: number;
  /** Log odds of a miss of the benchmark player. @param distance m */
  readonly heightAt: (distance: number) => number;
  /** What one SD of each way adds to that. @param distance m */
  readonly waysAt: (distance: number) => readonly number[];
}

const heightOf = (benchmark: Benchmark, distance: number): number => {
  const missed = LAPSE + (1 - LAPSE) * (1 - benchmark.holedAt(Math.max(NEAREST, distance)));
  return Math.log(missed / (1 - missed));
};

function engineBenchmark(id: string): Benchmark {
  const found = BENCHMARKS.find((benchmark) => benchmark.id === id);
  if (found === undefined) throw new Error(`Got no benchmark '${id}'; expected it in BENCHMARKS.`);
  return found;
}
const TOUR = engineBenchmark('tour-modelled');
const AVERAGING_90 = engineBenchmark('averaging-90-modelled');

const placeOf = (distance: number): number => -1 / Math.sqrt(Math.max(NEAR, Math.min(FAR, distance)));
const MIDDLE = (placeOf(NEAR) + placeOf(FAR)) / 2;
const HALF = (placeOf(FAR) - placeOf(NEAR)) / 2;

/** The curves about a benchmark. */
export const curveFamilyOf = (benchmark: Benchmark): CurveFamily => ({
  name: benchmark.name,
  ways: SPREADS.length,
  heightAt: (distance) => heightOf(benchmark, distance),
  waysAt: (distance) => {
    const t = (placeOf(distance) - MIDDLE) / HALF;
    const whole = heightOf(AVERAGING_90, distance) - heightOf(TOUR, distance);
    const legendre = [1, t, (3 * t ** 2 - 1) / 2, (5 * t ** 3 - 3 * t) / 2];
    return SPREADS.map((spread, i) => spread * legendre[i] * whole);
  },
});
