/**
 * Scores of putting drills on this device: kept, listed, taken back. Answers for: a score of a week's plan leaves the plan with its record.
 * Leaves out: the shape (recordSchema.ts), writing scores of a plan (plans.ts), opening (database.ts).
 */
import type { Database } from './database.ts';
import { mustPass, passAll } from './gate.ts';
import { planSchema } from './planSchema.ts';
import { isOfPlan, withoutScore } from './planScores.ts';
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

export const drillResultsOf = (database: Database): DrillResults => ({
  async keep(result) {
    await database.drillResults.put(mustPass(drillResultSchema, result));
  },
  remove: (id) =>
    database.transaction('rw', database.drillResults, database.plans, async () => {
      await database.drillResults.delete(id);
      if (!isOfPlan(id)) return;
      const { kept } = passAll(planSchema, await database.plans.toArray());
      const changed = kept.flatMap((plan) => withoutScore(plan, id) ?? []);
      await database.plans.bulkPut(changed);
    }),
  async list() {
    const { kept, unreadable } = passAll(drillResultSchema, await database.drillResults.toArray());
    const results = kept.sort((a, b) =>
      a.day === b.day ? b.recordedAt - a.recordedAt : a.day < b.day ? 1 : -1,
    );
    return { results, unreadable };
  },
});
