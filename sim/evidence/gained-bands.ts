/**
 * Where strokes are gained and lost: near, between, or from afar.
 *
 * Answers for: strokes gained per 18 holes by the distance of the putts, with intervals, and whether a loss is clear. The parts add
 * up to the whole. Leaves out: what a putt gains (strokes-gained.ts).
 * Each round is one observation: its gain from a band, per 18 holes, weighted by its holes, as in strokes-gained.ts; so that how
 * many such putts a round brings is part of the margin. Clear: 0 lies outside the interval of 1 - 0.05 / bands (Bonferroni).
 */
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import { bandIndex, bandsOf, type DistanceBand } from '../record/bands.ts';
import type { PlayedHole } from '../record/played-holes.ts';
import { type Estimate, meanInterval } from '../statistics/mean-interval.ts';
import { FEWEST_TO_CONCLUDE } from './caution.ts';
import { gainedByPutt } from './strokes-gained.ts';

const HOLES_OF_A_ROUND = 18;
const FALSE_FINDINGS = 0.05;

export interface GainedFromBand {
  readonly band: DistanceBand;
  /** Putts that went in. */
  readonly putts: number;
  /** Putts such as these per 18 holes. */
  readonly puttsPer18: number;
  /** Strokes gained per 18 holes, 95% interval; undefined: no rounds. */
  readonly per18: Estimate | undefined;
  /** Whether it is above or below 0 more clearly than chance makes one of these bands. */
  readonly verdict: 'gains' | 'loses' | 'cannotTell';
}

/** @param bands rising, touching; distances outside them are left out */
export function gainedByBand(
  benchmark: Benchmark,
  holes: readonly PlayedHole[],
  bands: readonly DistanceBand[] = bandsOf([0]),
): GainedFromBand[] {
  const rounds = new Map<string, { readonly gained: Float64Array; readonly numbers: Set<number> }>();
  const putts = bands.map(() => 0);
  for (const hole of holes) {
    let round = rounds.get(hole.roundId);
    if (round === undefined) {
      round = { gained: new Float64Array(bands.length), numbers: new Set() };
      rounds.set(hole.roundId, round);
    }
    for (const putt of hole.putts) {
      const gained = gainedByPutt(benchmark, putt);
      if (gained === undefined) continue;
      round.numbers.add(hole.hole);
      const index = bandIndex(bands, putt.putt.distance);
      if (index < 0) continue;
      round.gained[index] += gained;
      putts[index]++;
    }
  }
  const counted = [...rounds.values()].filter(({ numbers }) => numbers.size > 0);
  const weights = counted.map(({ numbers }) => numbers.size);
  const holeCount = weights.reduce((sum, count) => sum + count, 0);
  return bands.map((band, i) => {
    const each = counted.map(({ gained, numbers }) => (gained[i] * HOLES_OF_A_ROUND) / numbers.size);
    const strict = meanInterval(each, weights, 1 - FALSE_FINDINGS / bands.length);
    const clear = strict !== undefined && putts[i] >= FEWEST_TO_CONCLUDE;
    return {
      band,
      putts: putts[i],
      puttsPer18: holeCount === 0 ? 0 : (putts[i] * HOLES_OF_A_ROUND) / holeCount,
      per18: meanInterval(each, weights),
      verdict: clear && strict.high < 0 ? 'loses' : clear && strict.low > 0 ? 'gains' : 'cannotTell',
    };
  });
}
