/**
 * Everything recorded, put in order once for all sections. Pure. Answers for: rounds oldest first, their putts and holes, what is
 * left out and why. Leaves out: which of it is looked at (filter.ts).
 */
import {
  type PlayedHole,
  type PracticeSet,
  type PuttRecord,
  playedHoles,
  type RecordedRound,
} from '../../sim/index.ts';
import type { AllRecords } from '../store/records.ts';

export interface ReviewRecord extends PuttRecord {
  /** Oldest first. */
  readonly rounds: readonly RecordedRound[];
  /** In the order of their rounds. */
  readonly holes: readonly PlayedHole[];
  /** On grass. */
  readonly sets: readonly PracticeSet[];
  readonly roundOf: ReadonlyMap<string, RecordedRound>;
  readonly holesOf: ReadonlyMap<string, readonly PlayedHole[]>;
  /** Putts that count: struck from on the green in rounds, and in practice on grass. */
  readonly puttCount: number;
  /** Practice putts on carpet: another ground, so they stay out. */
  readonly carpetPutts: number;
  /** Putts whose round cannot be read, and other records that cannot be. */
  readonly unreadable: number;
}

const oldestFirst = (a: RecordedRound, b: RecordedRound): number =>
  a.day === b.day ? a.startedAt - b.startedAt : a.day < b.day ? -1 : 1;

const byRound = (holes: readonly PlayedHole[]): Map<string, PlayedHole[]> => {
  const groups = new Map<string, PlayedHole[]>();
  let group: PlayedHole[] = [];
  for (const hole of holes) {
    // Holes of a round follow one another.
    if (group[0]?.roundId !== hole.roundId) {
      group = groups.get(hole.roundId) ?? [];
      groups.set(hole.roundId, group);
    }
    group.push(hole);
  }
  return groups;
};

const puttsIn = (sets: readonly PracticeSet[]): number =>
  sets.reduce((sum, { attempts }) => sum + attempts, 0);

export const reviewRecord = ({ rounds, putts, practice, unreadable }: AllRecords): ReviewRecord => {
  const inOrder = [...rounds].sort(oldestFirst);
  const roundOf = new Map(inOrder.map((round) => [round.id, round]));
  let last: string | undefined;
  const known = putts.filter(({ roundId }) => {
    // Putts of a round follow one another: most need no looking up.
    if (roundId === last) return true;
    if (!roundOf.has(roundId)) return false;
    last = roundId;
    return true;
  });
  const holesOf = byRound(playedHoles(known));
  const holes = inOrder.flatMap(({ id }) => holesOf.get(id) ?? []);
  const sets = practice.filter(({ ground }) => ground === 'grass');
  return {
    rounds: inOrder,
    holes,
    sets,
    roundOf,
    holesOf,
    puttCount: holes.reduce((sum, hole) => sum + hole.putts.length, 0) + puttsIn(sets),
    carpetPutts: puttsIn(practice) - puttsIn(sets),
    unreadable: unreadable + putts.length - known.length,
  };
};

export const isEmpty = ({ puttCount, carpetPutts }: ReviewRecord): boolean => puttCount + carpetPutts === 0;
