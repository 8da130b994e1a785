/**
 * Records on this device, in IndexedDB; in memory for the visit when the browser does not allow it.
 *
 * Answers for: keeping a set as it grows, listing sets, saying what is wrong. Leaves out: shapes (schema.ts), merging and
 * checking (gate.ts). A record that does not pass the gate is left where it is and counted, never deleted: a later
 * version may understand it.
 * Migrations: a change of shape adds version(2).stores().upgrade() below version(1), which stays as it is for ever.
 */
import { Dexie, type EntityTable } from 'dexie';
import { mergeSets, passSet } from './gate.ts';
import type { KeptSet } from './schema.ts';

export interface SetList {
  /** Newest first. */
  readonly sets: readonly KeptSet[];
  /** Records found that could not be read; they stay on the device. */
  readonly unreadable: number;
}

export interface ReadStore {
  /** Keeps a set as it is now, merged with what is there; answers what is kept. Rejects when the device refuses. */
  keep(set: KeptSet): Promise<KeptSet>;
  list(): Promise<SetList>;
  /** Ends the connection. */
  close(): void;
}

export interface OpenedStore {
  readonly store: ReadStore;
  /** A sentence for the person when records will not outlive the visit. */
  readonly problem: string | undefined;
}

const NAME = 'borrow';
/** How long a database may keep one waiting before it counts as blocked, ms. An old tab that holds it open never answers. */
const PATIENCE = 4000;

class Database extends Dexie {
  readSets!: EntityTable<KeptSet, 'id'>;
  constructor(name: string) {
    // On the disk itself before a write counts as done: the page says so of each answer and putt.
    super(name, { chromeTransactionDurability: 'strict' });
    this.version(1).stores({ readSets: 'id, startedAt' });
  }
}

const passed = (found: unknown): KeptSet => {
  const result = passSet(found);
  if (!result.ok)
    throw new Error(`Got a set that cannot be kept (${result.problem}), expected one made by this program.`);
  return result.set;
};

const newestFirst = (sets: readonly KeptSet[]): KeptSet[] =>
  [...sets].sort((a, b) => b.startedAt - a.startedAt);

/** A store that lasts as long as the page. */
export const memoryStore = (): ReadStore => {
  const sets = new Map<string, KeptSet>();
  return {
    async keep(set) {
      const good = passed(set);
      const before = sets.get(good.id);
      const merged = before === undefined ? good : mergeSets(before, good);
      sets.set(good.id, merged);
      return merged;
    },
    list: async () => ({ sets: newestFirst([...sets.values()]), unreadable: 0 }),
    close() {},
  };
};

const databaseStore = (database: Database): ReadStore => ({
  async keep(set) {
    const good = passed(set);
    // One transaction: another tab cannot write between our look and our write.
    return database.transaction('rw', database.readSets, async () => {
      const found = passSet(await database.readSets.get(good.id));
      const merged = passed(found.ok ? mergeSets(found.set, good) : good);
      await database.readSets.put(merged);
      return merged;
    });
  },
  async list() {
    const found = (await database.readSets.toArray()).map(passSet);
    const sets = found.flatMap((one) => (one.ok ? [one.set] : []));
    return { sets: newestFirst(sets), unreadable: found.length - sets.length };
  },
  close: () => database.close(),
});

const patience = (milliseconds: number): Promise<never> =>
  new Promise((_resolve, reject) => {
    setTimeout(() => reject(new Error('no answer')), milliseconds);
  });

/** Opens the records; always resolves, with a store in memory and a sentence when the device's own cannot be had. */
export const openReadStore = async (name = NAME, patienceMs = PATIENCE): Promise<OpenedStore> => {
  const database = new Database(name);
  try {
    await Promise.race([database.open(), patience(patienceMs)]);
    return { store: databaseStore(database), problem: undefined };
  } catch {
    database.close();
    return {
      store: memoryStore(),
      problem:
        'This browser does not let the page keep records (a private window, full storage, or an older tab of this page in the way). Your answers last until you close the page: close other tabs or leave the private window, and load the page again, to keep them.',
    };
  }
};
