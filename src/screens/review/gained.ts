/** Strokes gained: per round, running, and by distance. Pure; strokes. Leaves out: words. */
import {
  type Benchmark,
  bandsOf,
  type ChosenPutts,
  type DistanceBand,
  type Estimate,
  feetToMetres,
  type GainedFromBand,
  type GainedInRound,
  gainedByBand,
  meanPer18,
  type PlayedHole,
  type PuttsTaken,
  puttsTaken,
  type RecordedRound,
  type StrokesGained,
  strokesGained,
} from '../../../sim/index.ts';
import type { Units } from '../../text/format.ts';

export interface GainedRow extends GainedInRound {
  readonly round: RecordedRound;
  /** From 1, oldest first. */
  readonly number: number;
}

/** The mean of all rounds up to one. */
export interface RunningMean {
  readonly number: number;
  readonly mean: Estimate;
}

export interface GainedView {
  readonly gained: StrokesGained;
  /** Newest first. */
  readonly rows: readonly GainedRow[];
  readonly running: readonly RunningMean[];
  readonly byDistance: readonly GainedFromBand[];
  /** The distance at which clearly most is lost; undefined: none is clear. */
  readonly worst: GainedFromBand | undefined;
}

/** Near, middling, far: where strokes can be lost by other faults. */
const DISTANCES: Readonly<Record<Units, readonly DistanceBand[]>> = {
  imperial: bandsOf([0, 6, 15, 30].map(feetToMetres)),
  metric: bandsOf([0, 2, 5, 9]),
};
/** Places at which the running mean is worked out: as many as a chart can show apart. */
const MOST_MEANS = 60;

const runningMeans = (rounds: readonly GainedInRound[]): RunningMean[] => {
  const step = Math.max(1, Math.ceil(rounds.length / MOST_MEANS));
  const numbers = rounds
    .map((_, i) => i + 1)
    .filter((number) => number % step === 0 || number === rounds.length);
  return numbers.flatMap((number) => {
    const mean = meanPer18(rounds.slice(0, number));
    return mean === undefined ? [] : [{ number, mean }];
  });
};

export const gainedView = (
  { holes }: ChosenPutts,
  roundOf: ReadonlyMap<string, RecordedRound>,
  benchmark: Benchmark,
  units: Units,
): GainedView => {
  const gained = strokesGained(benchmark, holes);
  const rows = gained.rounds.flatMap((one, i): GainedRow[] => {
    const round = roundOf.get(one.roundId);
    return round === undefined ? [] : [{ ...one, round, number: i + 1 }];
  });
  const byDistance = gainedByBand(benchmark, holes, DISTANCES[units]);
  const losing = byDistance.filter(({ verdict }) => verdict === 'loses');
  return {
    gained,
    rows: rows.reverse(),
    running: runningMeans(gained.rounds),
    byDistance,
    worst: losing.sort((a, b) => (a.per18?.value ?? 0) - (b.per18?.value ?? 0))[0],
  };
};

/** What the benchmark takes from the places of one round; undefined: no hole was putted out. */
export const takenOf = (holes: readonly PlayedHole[], benchmark: Benchmark): PuttsTaken | undefined =>
  puttsTaken(benchmark, holes);
