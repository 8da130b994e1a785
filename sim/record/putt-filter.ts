/**
 * Which of a player's putts are looked at. Answers for: one question about days, kind, circumstances and distance, asked of putts,
 * of holes and of practice sets. Leaves out: what is then told of them.
 * A hole goes in by its first putt; a putt by its own circumstances, so that a downhill second putt counts among downhill putts
 * whatever the first one was. What was not recorded passes no question about it.
 */
import type { BreakWay, Climb } from '../types.ts';
import { type DistanceBand, isInBand } from './bands.ts';
import type { PlayedHole, StruckPutt } from './played-holes.ts';
import type { PaceMeant, PracticeSet, RecordedPutt, RecordedRound } from './record.ts';

export interface PuttFilter {
  /** First and last day, both included, YYYY-MM-DD. */
  readonly from?: string;
  readonly to?: string;
  /** Left out: both. */
  readonly kind?: 'rounds' | 'practice' | 'both';
  readonly climb?: Climb;
  readonly breaks?: BreakWay;
  /** Practice sets say nothing of it and do not pass. */
  readonly paceMeant?: PaceMeant;
  readonly distance?: DistanceBand;
  /** Holes first played to from off the green with a putter; left out: they count. */
  readonly withoutOffGreen?: boolean;
  /** Practice on carpet; left out: it counts. */
  readonly withoutCarpet?: boolean;
}

/** What passed. */
export interface ChosenPutts {
  /** By their first putt; in the order given. */
  readonly holes: readonly PlayedHole[];
  /** By their own distance and circumstances. */
  readonly struck: readonly StruckPutt[];
  readonly sets: readonly PracticeSet[];
}

export interface PuttRecord {
  readonly rounds: readonly RecordedRound[];
  readonly holes: readonly PlayedHole[];
  readonly sets: readonly PracticeSet[];
}

type Circumstances = Pick<RecordedPutt, 'distance' | 'climb' | 'breaks'>;

/** One pass over everything. A hole whose round is not among `rounds` has no day and passes only when no day is asked for. */
export function choosePutts({ rounds, holes, sets }: PuttRecord, filter: PuttFilter): ChosenPutts {
  const { from, to, kind = 'both', climb, breaks, paceMeant, distance } = filter;
  const dayPasses = (day: string | undefined): boolean =>
    day === undefined
      ? from === undefined && to === undefined
      : (from === undefined || day >= from) && (to === undefined || day <= to);
  const fits = (putt: Circumstances): boolean =>
    (climb === undefined || putt.climb === climb) &&
    (breaks === undefined || putt.breaks === breaks) &&
    (distance === undefined || isInBand(distance, putt.distance));
  const puttFits = (putt: RecordedPutt): boolean =>
    (paceMeant === undefined || putt.paceMeant === paceMeant) && fits(putt);

  const chosenHoles: PlayedHole[] = [];
  const struck: StruckPutt[] = [];
  if (kind !== 'practice') {
    const passing = new Map(rounds.map(({ id, day }) => [id, dayPasses(day)]));
    const withoutDay = dayPasses(undefined);
    for (const hole of holes) {
      if (!(passing.get(hole.roundId) ?? withoutDay)) continue;
      if (filter.withoutOffGreen && hole.fromOffGreen) continue;
      if (puttFits(hole.first)) chosenHoles.push(hole);
      for (const putt of hole.putts) if (puttFits(putt.putt)) struck.push(putt);
    }
  }
  const chosenSets =
    kind === 'rounds' || paceMeant !== undefined
      ? []
      : sets.filter(
          (set) => dayPasses(set.day) && fits(set) && !(filter.withoutCarpet && set.ground === 'carpet'),
        );
  return { holes: chosenHoles, struck, sets: chosenSets };
}
