/**
 * "I took 31 putts: good or bad, given where I started from?" How many putts a benchmark takes from the same first putts.
 *
 * Answers for: mean, spread and chances of the number of putts over holes. Leaves out: strokes gained, which also count holes that
 * were not finished (strokes-gained.ts).
 * From one place a benchmark takes one putt with the chance of holing, at least three with its chance of three-putting, and a
 * fourth where its later putts say so; holes count as independent and their counts are added up exactly (derived).
 */
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import type { PlayedHole } from '../record/played-holes.ts';
import { chanceAtLeast, chanceAtMost, summarizeHits } from '../statistics/hit-counts.ts';

export interface PuttsTaken {
  /** Holes putted out; the others are left out. */
  readonly holes: number;
  readonly putts: number;
  /** What the benchmark takes from there, its standard deviation, and where nine of ten such rounds lie, ends included. */
  readonly expected: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
  /** The benchmark's chance of so few or fewer, and so many or more. */
  readonly soFew: number;
  readonly soMany: number;
}

/** Chances of 1, 2, 3 and 4 putts from a place. */
function puttChances(benchmark: Benchmark, distance: number): readonly [number, number, number, number] {
  const one = benchmark.holedAt(distance);
  const threeOrMore = Math.min(benchmark.threePuttAt(distance), 1 - one);
  const later = benchmark.expectedPuttsAt(distance) - 1 - (1 - one) - threeOrMore;
  const four = Math.min(Math.max(0, later), threeOrMore);
  return [one, 1 - one - threeOrMore, threeOrMore - four, four];
}

/** @returns undefined when no hole was putted out */
export function puttsTaken(benchmark: Benchmark, holes: readonly PlayedHole[]): PuttsTaken | undefined {
  const finished = holes.filter(({ end }) => end === 'holed');
  if (finished.length === 0) return undefined;
  // Entry k: the chance of k putts more than one on each hole.
  let extra = Float64Array.of(1);
  for (const { first } of finished) {
    const chances = puttChances(benchmark, first.distance);
    const next = new Float64Array(extra.length + chances.length - 1);
    extra.forEach((chance, k) => {
      chances.forEach((step, more) => {
        next[k + more] += chance * step;
      });
    });
    extra = next;
  }
  const count = finished.length;
  const putts = finished.reduce((sum, hole) => sum + hole.putts.length, 0);
  const { mean, sd, low, high } = summarizeHits(extra);
  return {
    holes: count,
    putts,
    expected: count + mean,
    sd,
    low: count + low,
    high: count + high,
    soFew: chanceAtMost(extra, putts - count),
    soMany: chanceAtLeast(extra, putts - count),
  };
}
