/**
 * Plans that an earlier version of the page kept outside the records (state/kept.ts), taken over into them once, in their form of today. Answers for: losing none
 * of it: the old text goes only when the records have it, and a text that cannot be read is put aside. Leaves out: plans (kept.ts).
 */
import * as z from 'zod';
import type { OpenedDatabase } from '../../store/database.ts';
import { withReadShare } from '../../store/migrations.ts';
import { type OldPlan, oldPlanSchema, type Plan } from '../../store/planSchema.ts';
import { plansOf } from '../../store/plans.ts';
import { keptText, type Place } from '../kept.ts';
import { OLD_PLANS } from './oldPlans.ts';
import { resultsOf } from './planResults.ts';

/** Where a text goes that this version cannot read. */
export const ASIDE = `${OLD_PLANS}.unread`;

const oldPlansSchema = z.strictObject({
  version: z.literal(1),
  current: oldPlanSchema.optional(),
  /** Newest first. */
  earlier: z.array(oldPlanSchema).max(52),
});

/** @returns newest first; undefined when the text is not what the page would have written */
export const parseOldPlans = (text: string): readonly OldPlan[] | undefined => {
  try {
    const { current, earlier } = oldPlansSchema.parse(JSON.parse(text));
    const plans = current === undefined ? earlier : [current, ...earlier];
    return plans.map((plan) => ({ ...plan, costs: plan.costs.map(withReadShare) }));
  } catch {
    return undefined;
  }
};

/** With the moment each lacked: its day, and later than the one before it. @param plans newest first */
export const withMoments = (plans: readonly OldPlan[]): Plan[] => {
  let last = -1;
  return [...plans].reverse().map((plan) => {
    last = Math.max(Date.parse(`${plan.madeOn}T00:00:00Z`), last + 1);
    return { ...plan, madeAt: last };
  });
};

/** Does nothing where there are none; rejects when the records refuse them, and leaves the old text where it is. */
export const takeOverPlans = async (
  { database, lasting }: Pick<OpenedDatabase, 'database' | 'lasting'>,
  place: Place,
  now: number,
): Promise<void> => {
  const kept = keptText(OLD_PLANS, place);
  const text = kept.load();
  if (text === undefined) return;
  const old = parseOldPlans(text);
  if (old === undefined) {
    if (!keptText(ASIDE, place).save(text)) return;
  } else await plansOf(database, (plan, before) => resultsOf(plan, before, now)).takeOver(withMoments(old));
  // Records in memory are gone with the page: the text is all there is then.
  if ((lasting || old === undefined) && kept.load() === text) kept.forget();
};
