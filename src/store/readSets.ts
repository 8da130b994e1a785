/** Read sets on this device: kept as they grow, listed. Leaves out: shapes (schema.ts), opening (database.ts). */
import type { Database } from './database.ts';
import { mustPass, pass, passAll } from './gate.ts';
import { mergeSets } from './readSetMerge.ts';
import { type KeptSet, readSetSchema } from './schema.ts';

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
}

const newestFirst = (sets: readonly KeptSet[]): KeptSet[] =>
  [...sets].sort((a, b) => b.startedAt - a.startedAt);

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
  async list() {
    const { kept, unreadable } = passAll(readSetSchema, await database.readSets.toArray());
    return { sets: newestFirst(kept), unreadable };
  },
});
