/** Scores of putting drills on this device: kept, listed, taken back. Leaves out: the shape (recordSchema.ts), opening (database.ts). */
import type { Database } from './database.ts';
import { mustPass, passAll } from './gate.ts';
import { drillResultSchema, type KeptResult } from './recordSchema.ts';

export interface ResultList {
  /** Newest first. */
  readonly results: readonly KeptResult[];
  /** Records found that could not be read; they stay on the device. */
  readonly unreadable: number;
}

export interface DrillResults {
  /** Resolves once the store has it; rejects when the device refuses. The same id again changes nothing. */
  keep(result: KeptResult): Promise<void>;
  remove(id: string): Promise<void>;
  list(): Promise<ResultList>;
}

export const drillResultsOf = ({ drillResults }: Database): DrillResults => ({
  async keep(result) {
    await drillResults.put(mustPass(drillResultSchema, result));
  },
  remove: (id) => drillResults.delete(id),
  async list() {
    const { kept, unreadable } = passAll(drillResultSchema, await drillResults.toArray());
    const results = kept.sort((a, b) =>
      a.day === b.day ? b.recordedAt - a.recordedAt : a.day < b.day ? 1 : -1,
    );
    return { results, unreadable };
  },
});
