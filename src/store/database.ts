/**
 * The database on this device: the tables of the registry (tables.ts), each from the version it begins with, and how it is opened. When the browser does not allow it, the same
 * tables in memory, for the visit.
 *
 * Answers for: opening, and saying in words what is wrong. Leaves out: what is kept (readSets.ts, records.ts, drillResults.ts,
 * measurements.ts, plans.ts), shapes (the files named *chema.ts), changes of shape (migrations.ts).
 * A record that does not pass the gate is left where it is and counted, never deleted: a later version may understand it.
 */
import { Dexie, type DexieOptions, type EntityTable, type Transaction } from 'dexie';
import { localDay } from './day.ts';
import { MIGRATIONS, type Migration, RECORDS_VERSION } from './migrations.ts';
import { type RecordOf, TABLE_NAMES, TABLES, type TableName } from './tables.ts';

/** Small facts about the records themselves. */
export interface Note {
  readonly name: 'lastBackup';
  /** ms since 1970. */
  readonly at: number;
}

/** One step of the migrations, on the tables of a database. */
const carryOver = async (transaction: Transaction, { records }: Migration): Promise<void> => {
  for (const [table, change] of Object.entries(records)) {
    const found = await transaction.table(table).toArray();
    await transaction.table(table).bulkPut(found.map((one) => change(one, { dayOf: localDay })));
  }
};

/** Notes are of no backup, and of no registry. */
const NOTES = { since: 2, indexes: 'name' };

/** What begins with a version, as Dexie takes it. */
const beginningWith = (version: number): Record<string, string> =>
  Object.fromEntries(
    [...TABLE_NAMES.map((name) => [name, TABLES[name]] as const), ['notes', NOTES] as const].flatMap(
      ([name, { since, indexes }]) => (since === version ? [[name, indexes]] : []),
    ),
  );

/** Dexie gives each table its property when it learns of the version. */
const WithTables = Dexie as unknown as new (
  name: string,
  options: DexieOptions,
) => Dexie & { readonly [Table in TableName]: EntityTable<RecordOf[Table], 'id'> } & {
  readonly notes: EntityTable<Note, 'name'>;
};

export class Database extends WithTables {
  constructor(name: string, options: DexieOptions = {}) {
    // On the disk itself before a write counts as done: the page says so of each answer and putt.
    super(name, { chromeTransactionDurability: 'strict', ...options });
    for (let version = 1; version <= RECORDS_VERSION; version += 1) {
      const opened = this.version(version).stores(beginningWith(version));
      const step = MIGRATIONS.find(({ to }) => to === version);
      if (step !== undefined) opened.upgrade((transaction) => carryOver(transaction, step));
    }
  }
}

/** The player's own records. */
export const OWN_RECORDS = 'borrow';
/** Those of the invented player: a database of their own, so that the two can never mix. */
export const DEMO_RECORDS = 'borrow-demo';

export interface OpenedDatabase {
  readonly database: Database;
  /** Whether records outlive the visit. */
  readonly lasting: boolean;
  /** A sentence for the person when they do not. */
  readonly problem: string | undefined;
}

/** How long a database may keep one waiting before it counts as blocked, ms. An old tab that holds it open never answers. */
const PATIENCE = 4000;

const FORBIDDEN =
  'This browser does not let the page keep records (a private window, full storage, or an older tab of this page in the way). What you enter lasts until you close the page: close other tabs or leave the private window, and load the page again, to keep it.';
const NEWER =
  'The records on this device were written by a newer version of this page, and this one leaves them untouched. What you enter lasts until you close the page: load the page again, with a network, to get the newer version.';

const patience = (milliseconds: number): Promise<never> =>
  new Promise((_resolve, reject) => {
    setTimeout(() => reject(new Error('no answer')), milliseconds);
  });

/** Dexie counts versions in tenths of the browser's. */
const NATIVE_VERSION = RECORDS_VERSION * 10;

/**
 * The version on the device as the browser counts it, 0 when there is no database. Looked up without Dexie, which opens a
 * later version as far as it knows its tables, and adds those it misses: both would change records it does not understand.
 */
const versionOnDevice = (name: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(name);
    request.onupgradeneeded = () => request.transaction?.abort();
    request.onsuccess = () => {
      const { version } = request.result;
      request.result.close();
      resolve(version);
    };
    // Aborted above because there was none, or refused.
    request.onerror = (event) => {
      event.preventDefault();
      if (request.error?.name === 'AbortError') resolve(0);
      else reject(request.error ?? new Error('no database'));
    };
  });

/** Whether it was opened; false when it belongs to a newer version of this program. */
const openOwn = async (database: Database): Promise<boolean> => {
  if ((await versionOnDevice(database.name)) > NATIVE_VERSION) return false;
  await database.open();
  return true;
};

/** The same tables in memory; the library that plays the browser's database is fetched only when it is needed. */
const openInMemory = async (name: string): Promise<Database> => {
  const { IDBFactory, IDBKeyRange } = await import('fake-indexeddb');
  const inMemory = { indexedDB: new IDBFactory(), IDBKeyRange };
  // Where the browser has no database at all, Dexie's live queries never run unless they are told of this one.
  if (!Dexie.dependencies.indexedDB) Object.assign(Dexie.dependencies, inMemory);
  const database = new Database(name, inMemory);
  await database.open();
  return database;
};

/** Opens the records; always resolves, in memory and with a sentence when the device's own cannot be had. */
export const openDatabase = async (name: string, patienceMs = PATIENCE): Promise<OpenedDatabase> => {
  const database = new Database(name);
  let problem = FORBIDDEN;
  try {
    const opened = await Promise.race([openOwn(database), patience(patienceMs)]);
    if (opened) return { database, lasting: true, problem: undefined };
    problem = NEWER;
  } catch {
    // Said below: the causes look alike from here.
  }
  database.close();
  return { database: await openInMemory(name), lasting: false, problem };
};
