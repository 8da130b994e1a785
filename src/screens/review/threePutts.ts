/** Three-putts by the distance of the first putt, and where they overtake one-putts. Pure; shares 0..1, m. Leaves out: words. */
import {
  type Benchmark,
  type BesideBenchmark,
  besideBenchmark,
  type ChosenPutts,
  type DistanceBand,
  distanceBands,
  type Estimate,
  meanOverPutts,
  type OneOrThree,
  oneOrThree,
  type Proportion,
  proportionInterval,
  threeBeatsOne,
} from '../../../sim/index.ts';

export interface ThreePuttRow extends BesideBenchmark {
  readonly band: DistanceBand;
  /** Of the holes first putted from there of which it is known. */
  readonly threePutts: Proportion;
  readonly onePutts: Proportion;
  /** Of the holes putted out. */
  readonly meanPutts: Estimate | undefined;
}

export interface ThreePuttView {
  readonly rows: readonly ThreePuttRow[];
  readonly all: Proportion;
  /** The benchmark's share from the same places; undefined: no holes. */
  readonly expectedAll: number | undefined;
  readonly oneOrThree: readonly OneOrThree[];
  /** m from which on the benchmark three-putts more often than it one-putts; undefined: nowhere in its table. */
  readonly benchmarkTurns: number | undefined;
}

export const threePuttView = (
  chosen: ChosenPutts,
  benchmark: Benchmark,
  bands: readonly DistanceBand[],
): ThreePuttView => {
  const tallies = distanceBands(chosen, bands);
  const holes = chosen.holes.filter(({ threePutted }) => threePutted !== undefined);
  const known = {
    distances: Float64Array.from(holes, ({ first }) => first.distance),
    tries: new Float64Array(holes.length).fill(1),
  };
  const everywhere = [{ from: 0, to: Number.POSITIVE_INFINITY }];
  const counts = tallies.map(({ threePutts }) => threePutts);
  const beside = besideBenchmark(counts, meanOverPutts(known, bands, benchmark.threePuttAt));
  return {
    rows: tallies.map(({ band, threePutts, onePutts, meanPutts }, i) => ({
      ...beside[i],
      band,
      threePutts: proportionInterval(threePutts.hits, threePutts.tries),
      onePutts: proportionInterval(onePutts.hits, onePutts.tries),
      meanPutts,
    })),
    all: proportionInterval(
      counts.reduce((sum, { hits }) => sum + hits, 0),
      counts.reduce((sum, { tries }) => sum + tries, 0),
    ),
    expectedAll: meanOverPutts(known, everywhere, benchmark.threePuttAt)[0],
    oneOrThree: oneOrThree(tallies),
    benchmarkTurns: threeBeatsOne(benchmark),
  };
};
