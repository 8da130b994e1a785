/**
 * One round beside the player's other rounds and the benchmark. Pure. Answers for: handing the engine's check what it needs, out of
 * the whole record: the filters do not change whose curve it is. Leaves out: words.
 */
import {
  type BandRecord,
  type Benchmark,
  bandIndex,
  checkRound,
  curveWithout,
  type DistanceBand,
  FIRST_PUTT_BANDS,
  gainedOnHole,
  type HoleGain,
  type HolingCurve,
  hitCounts,
  isInBand,
  METRE_FIRST_PUTT_BANDS,
  METRE_ROUND_BANDS,
  METRE_TAP_IN,
  mixedHitCounts,
  type PlayedHole,
  type PuttsTaken,
  playerShares,
  puttsTaken,
  type RecordedPutt,
  type RecordedRound,
  ROUND_BANDS,
  type RoundCheck,
  TAP_IN,
} from '../../../sim/index.ts';
import type { ReviewRecord } from '../../state/reviewRecord.ts';
import type { Units } from '../../text/format.ts';

/** Chances of each number holed in a band. */
export interface BandCounts {
  readonly byPlayer: Float64Array;
  readonly byBenchmark: Float64Array;
}

export interface RoundView {
  readonly round: RecordedRound;
  readonly check: RoundCheck;
  /** One for each band of the check. */
  readonly counts: readonly BandCounts[];
  readonly gained: number;
  readonly taken: PuttsTaken | undefined;
  /** Holes whose end is not known, so that strokes gained leave them out or count them in part. */
  readonly unfinished: number;
  /** The player's curve without this round. */
  readonly otherRounds: number;
  readonly curve: HolingCurve;
  /** Longest tap-in in words of the person's units, m. */
  readonly tapIn: number;
}

const CHECKED: Readonly<
  Record<Units, { bands: readonly DistanceBand[]; first: readonly DistanceBand[]; tapIn: number }>
> = {
  imperial: { bands: ROUND_BANDS, first: FIRST_PUTT_BANDS, tapIn: TAP_IN },
  metric: { bands: METRE_ROUND_BANDS, first: METRE_FIRST_PUTT_BANDS, tapIn: METRE_TAP_IN },
};

/** What the whole record holds of each band: once for all rounds. */
export const bandRecordsOf = ({ holes, rounds }: ReviewRecord, units: Units): readonly BandRecord[] => {
  const { bands } = CHECKED[units];
  // The first band is all the others together, which touch.
  const parts = bands.slice(1);
  const counts = parts.map(() => 0);
  for (const { putts } of holes)
    for (const { putt } of putts) {
      const index = bandIndex(parts, putt.distance);
      if (index >= 0) counts[index]++;
    }
  const all = counts.reduce((sum, count) => sum + count, 0);
  return [all, ...counts].map((alreadyHad) => ({
    alreadyHad,
    perRound: alreadyHad / Math.max(1, rounds.length),
  }));
};

const holeGains = (holes: readonly PlayedHole[], benchmark: Benchmark): HoleGain[] =>
  holes.flatMap((hole) => {
    const gained = gainedOnHole(benchmark, hole);
    const { distance: firstPutt } = hole.first;
    return gained === undefined
      ? []
      : [
          {
            firstPutt,
            gained,
            threePutted: hole.threePutted,
            threePuttShare: benchmark.threePuttAt(firstPutt),
          },
        ];
  });

export interface RoundQuestion {
  readonly record: ReviewRecord;
  readonly roundId: string;
  /** Of all rounds, this one included. */
  readonly curve: HolingCurve;
  readonly bandRecords: readonly BandRecord[];
  readonly benchmark: Benchmark;
  readonly units: Units;
}

/** @returns undefined when there is no such round */
export const roundView = ({
  record,
  roundId,
  curve: whole,
  bandRecords,
  benchmark,
  units,
}: RoundQuestion): RoundView | undefined => {
  const round = record.roundOf.get(roundId);
  if (round === undefined) return undefined;
  const { bands, first, tapIn } = CHECKED[units];
  const holes = record.holesOf.get(roundId) ?? [];
  // Those that belong to a turn on the green: what follows a holed ball by a slip of the pen is no putt.
  const struck = holes.flatMap(({ putts }) => putts);
  const putts: readonly RecordedPutt[] = struck.map(({ putt }) => putt);
  const curve = curveWithout(whole, roundId);
  const distances = putts.map(({ distance }) => distance);
  const { shares, weights } = playerShares(curve, distances);
  const players = shares;
  const benchmarkShares = distances.map(benchmark.holedAt);
  const gains = holeGains(holes, benchmark);
  const check = checkRound({
    putts,
    playerShares: players,
    playerWeights: weights,
    benchmarkShares,
    roundsLookedAt: record.rounds.length,
    holes: gains,
    bands,
    bandRecords,
    tapIn,
    firstPuttBands: first,
  });
  const counts = bands.map((band): BandCounts => {
    const inside = distances.flatMap((distance, i) => (isInBand(band, distance) ? [i] : []));
    return {
      byPlayer: mixedHitCounts(
        players.map((list) => inside.map((i) => list[i])),
        weights,
      ),
      byBenchmark: hitCounts(inside.map((i) => benchmarkShares[i])),
    };
  });
  return {
    round,
    check,
    counts,
    gained: gains.reduce((sum, { gained }) => sum + gained, 0),
    taken: puttsTaken(benchmark, holes),
    unfinished: holes.filter(({ end }) => end !== 'holed').length,
    otherRounds: record.rounds.length - 1,
    curve,
    tapIn,
  };
};
