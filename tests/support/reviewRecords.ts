/** Records for browser tests of the review: put into the database of a page, and many of them from a seed. */
import type { Page } from 'playwright';
import type { PracticeSet, RecordedPutt, RecordedRound } from '../../sim/index.ts';
import { madeRecord } from './recordedPutts.ts';

export interface ToPut {
  readonly rounds: readonly RecordedRound[];
  readonly putts: readonly RecordedPutt[];
  readonly practice: readonly PracticeSet[];
}

/** Records at a time: what one message to the page carries in good time. */
const AT_A_TIME = 20_000;

/** Adds records to the page's own database, which the app has made by then, and loads the page again. */
export const putRecords = async (on: Page, all: ToPut): Promise<void> => {
  for (const [store, records] of Object.entries(all))
    for (let from = 0; from < records.length; from += AT_A_TIME)
      await on.evaluate(
        async ({ store: name, text }) => {
          const database = await new Promise<IDBDatabase>((resolve, reject) => {
            const asked = indexedDB.open('borrow');
            asked.onsuccess = () => resolve(asked.result);
            asked.onerror = () => reject(asked.error);
          });
          await new Promise<void>((resolve, reject) => {
            const writing = database.transaction(name, 'readwrite', { durability: 'relaxed' });
            for (const record of JSON.parse(text)) writing.objectStore(name).put(record);
            writing.oncomplete = () => resolve();
            writing.onerror = () => reject(writing.error);
          });
          database.close();
        },
        // As one text: playwright takes apart every object it is handed.
        { store, text: JSON.stringify(records.slice(from, from + AT_A_TIME)) },
      );
  await on.reload();
};

/** Rounds of 18 holes as tests/support/recordedPutts.ts makes them, with ids and words the gate lets through. */
export const manyRecords = (rounds: number, seed: string): ToPut => {
  const made = madeRecord(rounds, seed);
  const longId = (id: string): string => `many-${id}`;
  return {
    rounds: made.rounds.map((round) => ({ ...round, id: longId(round.id), course: 'Middle Fen' })),
    putts: made.putts.map((putt) => ({
      ...putt,
      id: longId(putt.id),
      roundId: longId(putt.roundId),
      // The maker deals misses high and low to every putt, and straight putts have neither.
      breaks: putt.breaks === 'straight' ? 'leftToRight' : putt.breaks,
    })),
    practice: made.sets.map((set) => ({ ...set, id: longId(set.id) })),
  };
};
