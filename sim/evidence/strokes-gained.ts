/**
 * Strokes gained on the green: how many putts fewer than a benchmark player would have needed from the same places.
 *
 * Source: Broadie, Interfaces 42, 146 (2012): a putt gains E(before) - 1 - E(after), E being the putts the benchmark needs to
 * hole out, 0 in the hole. Over a hole the terms cancel: E(first putt) - putts taken. Answers for: putts, holes, rounds and their
 * mean. Leaves out: the benchmark (benchmarks/putting-benchmark.ts), which holes belong in (putt-filter.ts).
 * A putt whose end is not known (it rolled off the green, or the leave was not recorded) is left out. So a conceded hole counts
 * with the putts that were struck: E(first) - putts struck - E(where the conceded ball lay).
 */
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import type { PlayedHole, StruckPutt } from '../record/played-holes.ts';
import { type Estimate, meanInterval } from '../statistics/mean-interval.ts';

/** Rounds of 9 and of 18 are compared per so many holes. */
const HOLES_OF_A_ROUND = 18;

/** Putts still needed. @param distance m, 0 in the hole */
const toHoleOut = (benchmark: Benchmark, distance: number): number =>
  distance === 0 ? 0 : benchmark.expectedPuttsAt(distance);

/** @returns putts gained by this one; undefined when its end is not known */
export const gainedByPutt = (benchmark: Benchmark, { putt, rest }: StruckPutt): number | undefined =>
  rest === undefined ? undefined : toHoleOut(benchmark, putt.distance) - 1 - toHoleOut(benchmark, rest);

/** @returns putts gained on this hole by those of its putts whose end is known; undefined when that is none */
export function gainedOnHole(benchmark: Benchmark, hole: PlayedHole): number | undefined {
  let sum: number | undefined;
  for (const putt of hole.putts) {
    const gained = gainedByPutt(benchmark, putt);
    if (gained !== undefined) sum = (sum ?? 0) + gained;
  }
  return sum;
}

/** One round's part. */
export interface GainedInRound {
  readonly roundId: string;
  /** Putts gained, all holes together. */
  readonly gained: number;
  /** Holes that went in. */
  readonly holes: number;
  /** Putts that went in, and putts left out because their end is not known. */
  readonly putts: number;
  readonly leftOut: number;
  /** `gained` as it would be over 18 holes putted like these. */
  readonly per18: number;
  /** Putts gained from the first round up to this one. */
  readonly running: number;
}

export interface StrokesGained {
  readonly benchmarkId: string;
  /** In the order of the holes given. */
  readonly rounds: readonly GainedInRound[];
  readonly gained: number;
  readonly holes: number;
  /** Mean per 18 holes, rounds weighted by their holes, with its interval; undefined: no rounds. */
  readonly per18: Estimate | undefined;
}

/** Mean per 18 holes over these rounds, such as those of one month. */
export const meanPer18 = (rounds: readonly GainedInRound[], confidence = 0.95): Estimate | undefined =>
  meanInterval(
    rounds.map(({ per18 }) => per18),
    rounds.map(({ holes }) => holes),
    confidence,
  );

interface Sums {
  gained: number;
  holes: Set<number>;
  putts: number;
  leftOut: number;
}

/** Strokes gained over these holes; rounds with no putt of known end are left out. */
export function strokesGained(
  benchmark: Benchmark,
  holes: readonly PlayedHole[],
  confidence = 0.95,
): StrokesGained {
  const sums = new Map<string, Sums>();
  for (const hole of holes) {
    let round = sums.get(hole.roundId);
    if (round === undefined) {
      round = { gained: 0, holes: new Set(), putts: 0, leftOut: 0 };
      sums.set(hole.roundId, round);
    }
    for (const putt of hole.putts) {
      const gained = gainedByPutt(benchmark, putt);
      if (gained === undefined) {
        round.leftOut++;
        continue;
      }
      round.gained += gained;
      round.putts++;
      // Two turns on one green (the ball rolled off it between) are one hole.
      round.holes.add(hole.hole);
    }
  }
  let running = 0;
  let holesInAll = 0;
  const rounds: GainedInRound[] = [];
  for (const [roundId, { gained, holes: numbers, putts, leftOut }] of sums) {
    const count = numbers.size;
    if (count === 0) continue;
    running += gained;
    holesInAll += count;
    const per18 = (gained * HOLES_OF_A_ROUND) / count;
    rounds.push({ roundId, gained, holes: count, putts, leftOut, per18, running });
  }
  return {
    benchmarkId: benchmark.id,
    rounds,
    gained: running,
    holes: holesInAll,
    per18: meanPer18(rounds, confidence),
  };
}
