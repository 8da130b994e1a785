/**
 * Plans of weeks on this device, and their scores among the scores of drills, always written together. Answers for: which plan is in hand
 * (the one made last), and never writing over what another tab has changed: a change is made to the plan as it is on the device.
 * Leaves out: the shape (planSchema.ts), what changes a plan and which scores it has (screens/week), opening (database.ts).
 */
import type { Database } from './database.ts';
import { mustPass, pass, passAll } from './gate.ts';
import { type Listed, listed } from './lists.ts';
import { type Plan, planSchema } from './planSchema.ts';
import { scorePrefix } from './planScores.ts';
import { drillResultSchema, type KeptResult } from './recordSchema.ts';
import { same } from './same.ts';

/** The scores of drills a plan has. @param before those of it kept now, so that moments stay as they were */
export type ScoresOf = (plan: Plan, before: readonly KeptResult[]) => readonly KeptResult[];

export interface Plans {
  /** Keeps a new plan, or one whose last write was refused, and makes it the plan in hand; answers what is kept. */
  begin(plan: Plan): Promise<Plan>;
  /** Changes a plan as the device has it; undefined: it is not there. Rejects when the device refuses, with nothing written. */
  change(id: string, to: (plan: Plan) => Plan): Promise<Plan | undefined>;
  /** Takes over plans kept elsewhere, all or none: those that are new here, and those changed since. */
  takeOver(plans: readonly Plan[]): Promise<void>;
  /** Newest first: the first is the plan in hand. */
  list(): Promise<Listed<Plan>>;
}

export const plansOf = (database: Database, scoresOf: ScoresOf): Plans => {
  const { plans, drillResults } = database;
  const together = <Answer>(act: () => Promise<Answer>): Promise<Answer> =>
    database.transaction('rw', plans, drillResults, act);

  const write = async (plan: Plan): Promise<Plan> => {
    const good = mustPass(planSchema, plan);
    const found = await drillResults.where('id').startsWith(scorePrefix(good.id)).toArray();
    const { kept: before } = passAll(drillResultSchema, found);
    const wanted = scoresOf(good, before).map((score) => mustPass(drillResultSchema, score));
    const ids = new Set(wanted.map(({ id }) => id));
    await plans.put(good);
    await drillResults.bulkDelete(before.map(({ id }) => id).filter((id) => !ids.has(id)));
    await drillResults.bulkPut(
      wanted.filter((one) => !before.some((kept) => kept.id === one.id && same(kept, one))),
    );
    return good;
  };
  /** Damaged records count too: no new plan may come before one of them. */
  const latest = async (): Promise<number> => {
    const last = await plans.orderBy('madeAt').last();
    return typeof last?.madeAt === 'number' ? last.madeAt : -1;
  };

  return {
    begin: (plan) =>
      together(async () => {
        // Clocks get set: what is made last is in hand all the same.
        const here = await plans.get(plan.id);
        const madeAt = here === undefined ? Math.max(plan.madeAt, (await latest()) + 1) : here.madeAt;
        return write({ ...plan, madeAt });
      }),
    change: (id, to) =>
      together(async () => {
        const found = pass(planSchema, await plans.get(id));
        return found.ok ? write(to(found.kept)) : undefined;
      }),
    takeOver: (old) =>
      together(async () => {
        for (const plan of old) {
          const here = await plans.get(plan.id);
          if (here === undefined || here.revision < plan.revision) await write(plan);
        }
      }),
    list: () => listed(database, 'plans'),
  };
};
