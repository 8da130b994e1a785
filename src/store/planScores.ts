/**
 * Scores of a plan among the scores of drills: which record belongs to which item, both ways. Pure. Leaves out: writing (plans.ts).
 * The id of such a record is made from plan and item: a changed score takes the place of the one before, and never counts twice.
 */
import type { Plan } from './planSchema.ts';

/** Of the test, done again: no item has this id, because ids of items begin with their session's. */
export const AGAIN = 'again';

/** Every id of a score of this plan begins so. */
export const scorePrefix = (planId: string): string => `week.${planId}.`;
/** @param item id of an item, or AGAIN */
export const scoreId = (planId: string, item: string): string => `${scorePrefix(planId)}${item}`;
/** Whether a score of a drill was written down in a plan of a week. */
export const isOfPlan = (resultId: string): boolean => resultId.startsWith('week.');

/** The plan without a score whose record is taken away; undefined: it holds no such score. */
export const withoutScore = (plan: Plan, resultId: string): Plan | undefined => {
  const prefix = scorePrefix(plan.id);
  if (!resultId.startsWith(prefix)) return undefined;
  const item = resultId.slice(prefix.length);
  const revision = plan.revision + 1;
  if (item === AGAIN) {
    if (plan.test?.again === undefined) return undefined;
    const { again: _gone, ...test } = plan.test;
    return { ...plan, revision, test };
  }
  const isScored = plan.sessions.some(({ items }) =>
    items.some(({ id, score }) => id === item && score !== undefined),
  );
  if (!isScored) return undefined;
  const sessions = plan.sessions.map((session) => ({
    ...session,
    items: session.items.map((one) => {
      if (one.id !== item) return one;
      const { score: _gone, ...rest } = one;
      return rest;
    }),
  }));
  return { ...plan, revision, sessions };
};
