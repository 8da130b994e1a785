/**
 * What is thought of a player of whom nothing is written down: like a chosen benchmark, give or take. Answers for: the two errors
 * that come nearest to a benchmark's curve, and how loosely they are held. Leaves out: what putts make of it (curve-grid.ts).
 */
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import { holedByAngleAndDistance } from '../player/holing-models.ts';
import { findLeast } from '../player/nelder-mead.ts';
import { degreesToRadians, feetToMetres } from '../units.ts';
import type { CurvePrior } from './curve-grid.ts';

/**
 * SD of the logarithm of either error, ours: from the tour to a golfer averaging 90 the angle grows by a factor e^0.4 and the distance
 * error by e^0.35, so that one SD is the whole way between those two, and two thirds of all players lie within a third less and a half more
 * than the benchmark chosen. Some 20 putts of a round tell as much as this (MODEL.md, section 5).
 */
const LOG_SPREAD = 0.4;

/** Feet at which model and benchmark are laid together, evenly in their logarithm: about as putts of a round lie. */
const AT_FEET = [2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50];

/** @throws when no pair comes near, which no falling curve does */
export function curvePriorOf(benchmark: Benchmark): CurvePrior {
  const rows = AT_FEET.map((feet) => ({ feet, holed: benchmark.holedAt(feetToMetres(feet)) }));
  const { status, at } = findLeast({
    // Binomial likelihood of one putt in each place, holed and missed in the benchmark's shares.
    misfit: ([degrees, distanceSd]) =>
      degrees > 0 && distanceSd > 0
        ? rows.reduce((sum, { feet, holed }) => {
            const share = holedByAngleAndDistance(feet, degreesToRadians(degrees), distanceSd);
            return sum - holed * Math.log(share) - (1 - holed) * Math.log1p(-share);
          }, 0)
        : Number.POSITIVE_INFINITY,
    start: [1.3, 0.1],
    steps: [0.2, 0.02],
    tolerance: 1e-4,
    mostTries: 500,
  });
  if (status !== 'ok')
    throw new Error(`Got ${status} for ${benchmark.id}; expected two errors. Is its curve falling?`);
  return {
    name: benchmark.name,
    angleSd: degreesToRadians(at[0]),
    distanceSd: at[1],
    logAngleSpread: LOG_SPREAD,
    logDistanceSpread: LOG_SPREAD,
  };
}
