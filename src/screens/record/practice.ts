/** A practice set being entered: what each step does to its counts, and the record it becomes. Pure. */
import type { BreakWay, Climb, MissCounts, PracticeSet } from '../../../sim/index.ts';

export interface PracticeDraft {
  /** m */
  readonly distance?: number;
  readonly attempts: number;
  readonly holed: number;
  readonly misses: MissCounts;
  readonly climb?: Climb;
  readonly breaks?: BreakWay;
  readonly ground: 'grass' | 'carpet';
}

export const NO_PRACTICE: PracticeDraft = { attempts: 10, holed: 0, misses: {}, ground: 'grass' };
/** More putts than a set of practice has. */
const MOST = 1000;
/** Counts of misses that exclude each other: no putt is both high and low, or both short and past. */
const PAIRS = [
  ['high', 'low'],
  ['short', 'past'],
] as const;

const within = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most);

/** Counts that fit each other again: no more holed than tried, no more misses of a pair than putts missed. */
const fitting = (draft: PracticeDraft): PracticeDraft => {
  const attempts = within(draft.attempts, 1, MOST);
  const holed = within(draft.holed, 0, attempts);
  const misses: Record<string, number> = { ...draft.misses };
  for (const [one, other] of PAIRS) {
    if (misses[one] !== undefined) misses[one] = within(misses[one], 0, attempts - holed);
    if (misses[other] !== undefined)
      misses[other] = within(misses[other], 0, attempts - holed - (misses[one] ?? 0));
  }
  return { ...draft, attempts, holed, misses };
};

export const withCount = (draft: PracticeDraft, which: 'attempts' | 'holed', by: number): PracticeDraft =>
  fitting({ ...draft, [which]: draft[which] + by });

/** One more or less of a kind of miss; as many as there is room for. */
export const withMiss = (draft: PracticeDraft, which: keyof MissCounts, by: number): PracticeDraft => {
  const pair = PAIRS.find((names) => (names as readonly string[]).includes(which)) ?? PAIRS[0];
  const other = pair[0] === which ? pair[1] : pair[0];
  const room = draft.attempts - draft.holed - (draft.misses[other] ?? 0);
  return { ...draft, misses: { ...draft.misses, [which]: within((draft.misses[which] ?? 0) + by, 0, room) } };
};

/** The record, once a distance was given. @param at id, day and moment (ms since 1970) */
export const setOf = (
  draft: PracticeDraft,
  at: Pick<PracticeSet, 'id' | 'day' | 'recordedAt'>,
): PracticeSet | undefined => {
  const { distance, attempts, holed, misses, climb, breaks, ground } = draft;
  if (distance === undefined) return undefined;
  return {
    ...at,
    distance,
    attempts,
    holed,
    ...(Object.keys(misses).length > 0 ? { misses } : {}),
    ...(climb ? { climb } : {}),
    ...(breaks ? { breaks } : {}),
    ground,
  };
};
