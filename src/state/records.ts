/**
 * The records of this device for every screen: opened once, and the round that is open, followed across tabs. Answers for: what
 * is open, whether records last. Leaves out: what is written (store/records.ts), what the Rules mode hides (Shell.tsx).
 * A round is known to be open only once the database has answered. Until then a mark outside the records (kept.ts), set before a round is
 * written and cleared after it ended, says whether one may be: so the first picture neither waits nor gives advice in a round.
 */
import { computed, type Signal, signal } from '@preact/signals';
import { liveQuery } from 'dexie';
import * as z from 'zod';
import { type Database, type OpenedDatabase, OWN_RECORDS, openDatabase } from '../store/database.ts';
import { type Records, type RoundInHand, recordsOf } from '../store/records.ts';
import { follow } from './follow.ts';
import { keptText, keptValue, onDevice } from './kept.ts';
import { OLD_PLANS } from './plans/oldPlans.ts';

const mark = keptValue<'1' | undefined>({
  key: 'borrow.round.open',
  schema: z.literal('1'),
  otherwise: () => undefined,
  plain: true,
});

/** The round that is open: not known yet, none, or it and its putts. */
export type OpenRound = 'unknown' | 'none' | RoundInHand;
export const openRound = signal<OpenRound>('unknown');
/** A sentence for the person when records do not outlive the visit. */
export const recordsProblem = signal<string | undefined>(undefined);
/** Whether records outlive the visit; true until found otherwise. */
export const recordsLast = signal(true);
const marked = signal(mark.load() !== undefined);
/** Advice may be shown: no round is open, as far as can be known by now. */
export const adviceAllowed = computed(
  () => !marked.value && (openRound.value === 'none' || openRound.value === 'unknown'),
);

const setMark = (open: boolean): void => {
  // Where it cannot be kept the database decides all the same, a moment later.
  mark.save(open ? '1' : undefined);
  marked.value = open;
};

/** Called before a round is written. */
export const markRoundOpen = (): void => setMark(true);
/** No round is open after all: it could not be written, or the person says so where records cannot be read. */
export const markNoRound = (): void => setMark(false);

// The mark another tab sets comes at once, a moment before the records themselves.
mark.follow((open) => {
  marked.value = open !== undefined;
});

/** Fetched only where there are any: drills come with it. What cannot be taken over now stays there, and is tried again next time. */
const takeOverOldPlans = async (opened: OpenedDatabase): Promise<void> => {
  try {
    if (keptText(OLD_PLANS).load() === undefined) return;
    const { takeOverPlans } = await import('./plans/takeOver.ts');
    await takeOverPlans(opened, onDevice, Date.now());
  } catch {
    // The week's screen says so (screens/week/kept.ts).
  }
};

let opening: Promise<OpenedDatabase> | undefined;

/** The player's own database, opened at the first call. */
export const ownDatabase = (): Promise<OpenedDatabase> => {
  opening ??= openDatabase(OWN_RECORDS).then(async (opened) => {
    recordsProblem.value = opened.problem;
    recordsLast.value = opened.lasting;
    followOpenRound(opened);
    // Before anyone looks: a backup made now has them too.
    await takeOverOldPlans(opened);
    return opened;
  });
  return opening;
};

export const ownRecords = async (): Promise<Records> => recordsOf((await ownDatabase()).database);

const followOpenRound = ({ database, lasting }: OpenedDatabase): void => {
  const records = recordsOf(database);
  // Records in memory say nothing of a round on the device: until one was begun there, its mark stands.
  let known = lasting;
  liveQuery(() => records.openRound()).subscribe({
    next(found) {
      known ||= found !== undefined;
      openRound.value = found ?? 'none';
      if (known) setMark(found !== undefined);
    },
    // A database that fails now gives no advice away: what the mark said stays in force.
    error() {},
  });
};

/** What a query of the player's own records answers, now and after every change; undefined until it has answered. */
export const followed = <Answer>(
  query: (database: Database) => Promise<Answer>,
): { readonly answer: Signal<Answer | undefined>; readonly stop: () => void } => {
  const answer = signal<Answer | undefined>(undefined);
  const stop = follow({
    open: async () => {
      const { database } = await ownDatabase();
      return () => query(database);
    },
    next(found) {
      answer.value = found;
    },
  });
  return { answer, stop };
};
