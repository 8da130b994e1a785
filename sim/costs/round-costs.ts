/**
 * Strokes per round: what a player needs from his own mix of first putts, and what each step saves him, distance by distance.
 *
 * Answers for: 18 holes, each putted once, at the lengths of the mix; intervals over the likely players. Leaves out: what a putt of each
 * length takes (cost-table.ts). Between the lengths of the table putts lie on cubics over the logarithm of length, through the four
 * about it; nearer than the first, putts fall evenly to one; farther than the last count as that far.
 */
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import { bandIndex, bandsOf, type DistanceBand } from '../record/bands.ts';
import { feetToMetres } from '../units.ts';
import type { CostTable } from './cost-table.ts';
import type { FirstPuttMix } from './first-putts.ts';
import { chanceAbove, type Interval, intervalOf } from './intervals.ts';
import { STEPS, type StepId } from './steps.ts';

const HOLES = 18;

/** Where strokes are lost: short ones, the middle, long ones and lags. */
export const COST_BANDS = bandsOf([0, 6, 15, 30].map(feetToMetres));
export const METRE_COST_BANDS = bandsOf([0, 2, 4.5, 9]);

/**
 * Strokes a round. What the engine itself may be off in a saving of the steps shown: slopes and directions that stand for all,
 * lengths in between, choices of later putts kept (measured: MODEL.md, section 5).
 */
export const ENGINE_ERROR = 0.02;

export interface BandCost {
  readonly band: DistanceBand;
  /** First putts from there in 18 holes. */
  readonly holes: number;
  /** Putts they take. */
  readonly putts: Interval;
  /** The same from a benchmark, from the very same lengths. */
  readonly benchmark: number;
}

export interface StepCost {
  readonly step: StepId;
  /** Strokes saved in 18 holes; below 0 it costs. */
  readonly saved: Interval;
  /** Band by band; they add up to the whole. */
  readonly byBand: readonly Interval[];
}

export interface RoundCosts {
  readonly mix: FirstPuttMix;
  /** Putts on 18 holes. */
  readonly putts: Interval;
  readonly bands: readonly BandCost[];
  /** In the order of STEPS. */
  readonly steps: readonly StepCost[];
}

export interface RoundQuestion {
  readonly mix: FirstPuttMix;
  readonly benchmark: Benchmark;
  readonly bands?: readonly DistanceBand[];
}

export function roundCosts(
  table: CostTable,
  { mix, benchmark, bands = COST_BANDS }: RoundQuestion,
): RoundCosts {
  const parts = bands.map(() => new Float64Array(table.lengths.length + 1));
  const holes = bands.map(() => 0);
  const taken = bands.map(() => 0);
  for (const { length, share } of mix.first) {
    const band = Math.max(0, bandIndex(bands, length));
    addWeights(table.lengths, length, HOLES * share, parts[band]);
    holes[band] += HOLES * share;
    taken[band] += HOLES * share * benchmark.expectedPuttsAt(length);
  }
  const whole = parts[0].map((_, i) => parts.reduce((sum, part) => sum + part[i], 0));
  const { weights, now, saved } = table;
  return {
    mix,
    putts: intervalOf(summed(table, now, whole, 1), weights),
    bands: bands.map((band, b) => ({
      band,
      holes: holes[b],
      putts: intervalOf(summed(table, now, parts[b], 1), weights),
      benchmark: taken[b],
    })),
    steps: STEPS.map((step) => ({
      step,
      saved: intervalOf(summed(table, saved[step], whole, 0), weights),
      byBand: parts.map((part) => intervalOf(summed(table, saved[step], part, 0), weights)),
    })),
  };
}

export interface ComparedSteps {
  readonly first: StepId;
  readonly second: StepId;
  /** Strokes a round that the first saves more than the second. */
  readonly more: Interval;
  /** That the first saves more, 0 to 1, among the likely players; with one player 0, 1 or, where they are equal, a half. */
  readonly chance: number;
  readonly players: number;
}

/** "Would 10% better pace save more than half a degree of line?" */
export function compareSteps(
  table: CostTable,
  mix: FirstPuttMix,
  [first, second]: readonly [StepId, StepId],
): ComparedSteps {
  const whole = new Float64Array(table.lengths.length + 1);
  for (const { length, share } of mix.first) addWeights(table.lengths, length, HOLES * share, whole);
  const ofFirst = summed(table, table.saved[first], whole, 0);
  const ofSecond = summed(table, table.saved[second], whole, 0);
  const differences = ofFirst.map((saved, i) => saved - ofSecond[i]);
  return {
    first,
    second,
    more: intervalOf(differences, table.weights),
    chance: chanceAbove(differences, table.weights),
    players: table.weights.length,
  };
}

/** Player by player: weights times his numbers; the last weight is that of a ball on the lip, whose number is `atLip`. */
function summed(table: CostTable, numbers: Float64Array, weights: Float64Array, atLip: number): Float64Array {
  const count = table.lengths.length;
  return Float64Array.from(table.weights, (_, player) => {
    let sum = weights[count] * atLip;
    for (let i = 0; i < count; i++) sum += weights[i] * numbers[player * count + i];
    return sum;
  });
}

/** Shares one length out among the lengths of the table, `times` in all, into `out`; its last entry is the lip of the hole. */
export function addWeights(
  lengths: readonly number[],
  length: number,
  times: number,
  out: Float64Array,
): void {
  const last = lengths.length - 1;
  if (length <= lengths[0]) {
    const near = Math.max(0, length) / lengths[0];
    out[0] += times * near;
    out[last + 1] += times * (1 - near);
    return;
  }
  const x = Math.log(Math.min(length, lengths[last]));
  let first = 0;
  while (first < last - 3 && Math.log(lengths[first + 2]) < x) first++;
  for (let i = first; i < first + 4; i++) {
    let weight = 1;
    for (let j = first; j < first + 4; j++)
      if (j !== i) weight *= (x - Math.log(lengths[j])) / (Math.log(lengths[i]) - Math.log(lengths[j]));
    out[i] += times * weight;
  }
}
