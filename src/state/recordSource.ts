/**
 * Whose records the review looks at: the player's own, or those of the invented player. Recording, backups and exports know the
 * own ones only. Answers for: the choice, kept for the visit; loading and removing the invented player. Leaves out: making them
 * (store/demo.ts).
 */
import { signal } from '@preact/signals';
import { Dexie } from 'dexie';
import * as z from 'zod';
import { DEMO_RECORDS, type OpenedDatabase, openDatabase } from '../store/database.ts';
import { localDay } from '../store/day.ts';
import { type ReadStore, readStoreOf } from '../store/readSets.ts';
import { type Records, recordsOf } from '../store/records.ts';
import { perTable, TABLE_NAMES } from '../store/tables.ts';
import { type FitSource, forgetFit } from './fittedPlayer.ts';
import { forVisit, keptValue } from './kept.ts';
import { ownDatabase } from './records.ts';

export type RecordSource = FitSource;

const kept = keptValue<RecordSource>({
  key: 'borrow.review.source',
  place: forVisit,
  schema: z.enum(['own', 'demo']),
  otherwise: () => 'own',
  plain: true,
});

/** Whose records the person wants to look at; see `reviewRecords` for whose they get. */
export const recordSource = signal<RecordSource>(kept.load());
/** Whether the invented player is on this device; undefined until looked up. */
export const demoLoaded = signal<boolean | undefined>(undefined);

recordSource.subscribe(kept.save);

let opening: Promise<OpenedDatabase> | undefined;
const demoDatabase = (): Promise<OpenedDatabase> => {
  opening ??= openDatabase(DEMO_RECORDS);
  return opening;
};

/** Looks up whether the invented player is there, without making a database for him. */
export const lookForDemo = async (): Promise<boolean> => {
  if (demoLoaded.peek() === undefined) {
    let there = false;
    try {
      there =
        (await Dexie.exists(DEMO_RECORDS)) && (await (await demoDatabase()).database.rounds.count()) > 0;
    } catch {
      // A browser without a database has no invented player in it.
    }
    demoLoaded.value ??= there;
  }
  return demoLoaded.peek() === true;
};

/** Puts the invented player on the device, his last round today, whole or not at all; rejects when the device refuses. */
export const loadDemo = async (): Promise<void> => {
  // Fetched when it is wanted: drills and engine come with it.
  const { makeDemo } = await import('../store/demo.ts');
  const demo = { ...perTable<readonly unknown[]>(() => []), ...makeDemo(localDay(Date.now())) };
  const { database } = await demoDatabase();
  await database.transaction(
    'rw',
    TABLE_NAMES.map((name) => database.table(name)),
    async () => {
      for (const name of TABLE_NAMES) {
        await database.table(name).clear();
        await database.table(name).bulkAdd([...demo[name]]);
      }
    },
  );
  demoLoaded.value = true;
};

/** Takes the invented player off the device, what was fitted to him too, and the review back to the own records. */
export const removeDemo = async (): Promise<void> => {
  recordSource.value = 'own';
  forgetFit('demo');
  const { database } = await demoDatabase();
  // The database itself goes, not only its records.
  await database.delete();
  opening = undefined;
  demoLoaded.value = false;
};

export interface ReviewRecords {
  /** Whose they are: the own ones too when the invented player was asked for and is not there. */
  readonly source: RecordSource;
  readonly records: Records;
}

/** The read sets to look at: of the same person as the records. */
export const reviewReads = async (): Promise<ReadStore> =>
  readStoreOf(
    (await (recordSource.peek() === 'demo' && (await lookForDemo()) ? demoDatabase() : ownDatabase()))
      .database,
  );

/** The records to look at. */
export const reviewRecords = async (): Promise<ReviewRecords> => {
  if (recordSource.peek() === 'demo' && (await lookForDemo()))
    return { source: 'demo', records: recordsOf((await demoDatabase()).database) };
  return { source: 'own', records: recordsOf((await ownDatabase()).database) };
};
