/**
 * Scores of putting drills on this device: kept, listed, taken back. Answers for: a score of a week's plan leaves the plan with its record.
 * Leaves out: the shape (recordSchema.ts), writing scores of a plan (plans.ts), opening (database.ts).
 */
import type { Database } from './database.ts';
import { mustPass, passAll } from './gate.ts';
import { type Listed, listed } from './lists.ts';
import { planSchema } from './planSchema.ts';
import { isOfPlan, withoutScore } from './planScores.ts';
import { drillResultSchema, type KeptResult } from './recordSchema.ts';

export interface DrillResults {
  /** Resolves once the store has it; rejects when the device refuses. The same id again changes nothing. */
  keep(result: KeptResult): Promise<void>;
  remove(id: string): Promise<void>;
  /** Newest first. */
  list(): Promise<Listed<KeptResult>>;
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
  list: () => listed(database, 'drillResults'),
});
