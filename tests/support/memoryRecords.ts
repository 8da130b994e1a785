/** The app's own database over Node's stand-in for IndexedDB, one to itself each time. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { Database } from '../../src/store/database.ts';
import { type ReadStore, readStoreOf } from '../../src/store/readSets.ts';
import { type AllRecords, judgeFound, type Records } from '../../src/store/records.ts';
import { atOnce } from '../../src/store/work.ts';

let serial = 0;

export const memoryDatabase = (indexedDB = new IDBFactory(), name = `memory-${++serial}`): Database =>
  new Database(name, { indexedDB, IDBKeyRange });

export const memoryReadStore = (): ReadStore => readStoreOf(memoryDatabase());

/** All there is, judged at once. */
export const everythingIn = async (records: Pick<Records, 'found'>): Promise<AllRecords> =>
  atOnce(judgeFound(await records.found()));
