/** Read sets on this device: kept as they grow, listed. Leaves out: shapes (schema.ts), opening (database.ts). */
import type { Database } from './database.ts';
import { mustPass, pass } from './gate.ts';
import { type Listed, listed } from './lists.ts';
import { mergeSets } from './readSetMerge.ts';
import { type KeptSet, readSetSchema } from './schema.ts';

export interface ReadStore {
  /** Keeps a set as it is now, merged with what is there; answers what is kept. Rejects when the device refuses. */
  keep(set: KeptSet): Promise<KeptSet>;
  /** Newest first. */
  list(): Promise<Listed<KeptSet>>;
}

export const readStoreOf = (database: Database): ReadStore => ({
  async keep(set) {
    const good = mustPass(readSetSchema, set);
    // One transaction: another tab cannot write between our look and our write.
    return database.transaction('rw', database.readSets, async () => {
      const found = pass(readSetSchema, await database.readSets.get(good.id));
      const merged = mustPass(readSetSchema, found.ok ? mergeSets(found.kept, good) : good);
      await database.readSets.put(merged);
      return merged;
    });
  },
  list: () => listed(database, 'readSets'),
});
