/** Rounds written by hand for tests of the review: holes as the feet of each putt before it was struck. */
import { feetToMetres, type RecordedMiss, type RecordedPutt, type RecordedRound } from '../../sim/index.ts';

/** Feet before each putt; the last one drops. */
export type HoleInFeet = readonly number[];

export interface RoundByHand {
  readonly round: RecordedRound;
  readonly putts: readonly RecordedPutt[];
}

export interface RoundOptions {
  /** Eight characters or more, as the gate asks. */
  readonly id: string;
  readonly day: string;
  readonly course?: string;
  /** Of every miss; nothing of it is said when left out. */
  readonly miss?: Omit<RecordedMiss, 'leave'>;
  /** Of every putt. */
  readonly fields?: Partial<RecordedPutt>;
}

/** A round that has ended, nine holes or fewer as nine, more as eighteen. */
export const roundInFeet = (
  holes: readonly HoleInFeet[],
  { id, day, course, miss = {}, fields = {} }: RoundOptions,
): RoundByHand => {
  const startedAt = Date.parse(`${day}T10:00:00Z`);
  return {
    round: {
      id,
      day,
      startedAt,
      endedAt: startedAt + 1,
      holes: holes.length > 9 ? 18 : 9,
      ...(course !== undefined && { course }),
      withoutPutt: [],
    },
    putts: holes.flatMap((feet, hole) =>
      feet.map((distance, stroke): RecordedPutt => {
        const next = feet[stroke + 1];
        return {
          id: `${id}-${hole + 1}-${stroke + 1}`,
          roundId: id,
          hole: hole + 1,
          stroke: stroke + 1,
          kind: 'putt',
          distance: feetToMetres(distance),
          holed: next === undefined,
          ...(next !== undefined && { miss: { ...miss, leave: feetToMetres(next) } }),
          recordedAt: startedAt + hole * 1000 + stroke,
          ...fields,
        };
      }),
    ),
  };
};

/** Nine holes on which nothing longer than a tap-in dropped: far first putts, each down in two. */
export const NOTHING_DROPPED: readonly HoleInFeet[] = [42, 36, 51, 38, 47, 58, 34, 44, 40].map((first) => [
  first,
  2,
]);

/** Eighteen holes of which six first putts were from 12 to 20 ft, none holed. */
export const NONE_OF_SIX: readonly HoleInFeet[] = [
  [14, 1],
  [5],
  [27, 3, 1],
  [17, 2],
  [31, 2],
  [12, 1],
  [8],
  [3],
  [38, 4],
  [19, 2],
  [24, 1],
  [6],
  [15, 2],
  [4],
  [29, 2],
  [13, 1],
  [9, 1],
  [2],
];
