/**
 * Plans of weeks on the page, in step with the records of this device in any tab. Answers for: the plan in hand and earlier ones, and
 * what is said when they cannot be kept: the plan stays on the page then, and the next change tries again. Leaves out: what is in a plan
 * (store/planSchema.ts), writing (store/plans.ts), plans of an earlier version (takeOver.ts).
 */
import { computed, signal } from '@preact/signals';
import { follow } from '../../state/follow.ts';
import { keptText } from '../../state/kept.ts';
import { OLD_PLANS } from '../../state/plans/oldPlans.ts';
import { resultsOf } from '../../state/plans/planResults.ts';
import { ASIDE } from '../../state/plans/takeOver.ts';
import { ownDatabase, recordsLast } from '../../state/records.ts';
import type { Plan } from '../../store/planSchema.ts';
import { type Plans, plansOf } from '../../store/plans.ts';
import { plural } from '../../text/phrases.ts';

const ASIDE_WORDS =
  'The plans on this device could not be read by this version; they are put aside, and nothing of them is lost. Plan a new week.';
const WAITING =
  'Plans of an earlier version of this page could not be taken over: the device refused to write (full or forbidden storage). They stay where they are; free some space and load the page again.';
const FORGETFUL =
  'This device keeps nothing for this page: the plan is gone when you leave. Take it away as a calendar file or print it.';
const REFUSED =
  'The device refused to write (full or forbidden storage): the plan is on this page only, and gone when you leave. Free some space; the next change tries again.';
const UNREAD = 'The plans could not be read. Load the page again; nothing on the device has been changed.';

/** Newest first; undefined: not read yet. */
const plans = signal<readonly Plan[] | undefined>(undefined);
const unreadable = signal(0);
/** The plan in hand as it is on the page alone: the device refused it. */
const unsaved = signal<Plan | undefined>(undefined);
const unread = signal(false);
/** What is still, or again, outside the records. */
const outside = signal<{ readonly waiting: boolean; readonly aside: boolean }>({
  waiting: false,
  aside: false,
});

/** Whether it is known which plans there are. */
export const plansKnown = computed(() => plans.value !== undefined || unsaved.value !== undefined);
export const currentPlan = computed((): Plan | undefined => unsaved.value ?? plans.value?.[0]);
export const earlierPlans = computed((): readonly Plan[] => {
  const now = currentPlan.value;
  return (plans.value ?? []).filter(({ id }) => id !== now?.id);
});

/** A sentence when something is wrong with what is kept. */
export const keepingProblem = computed((): string | undefined => {
  if (unsaved.value !== undefined) return REFUSED;
  if (unread.value) return UNREAD;
  if (outside.value.waiting) return WAITING;
  if (currentPlan.value !== undefined && !recordsLast.value) return FORGETFUL;
  if (currentPlan.value === undefined && outside.value.aside) return ASIDE_WORDS;
  return unreadable.value === 0
    ? undefined
    : `${plural(unreadable.value, 'plan')} on this device cannot be read by this version of the page; nothing of them is lost.`;
});

const store = async (): Promise<Plans> =>
  plansOf((await ownDatabase()).database, (plan, before) => resultsOf(plan, before, Date.now()));

/** At once, before the device's own word of it comes round. */
const show = (plan: Plan): void => {
  const others = (plans.peek() ?? []).filter(({ id }) => id !== plan.id);
  plans.value = [plan, ...others].sort((a, b) => b.madeAt - a.madeAt);
};

/** Keeps the whole plan; where the device refuses, on the page. */
const begin = async (plan: Plan): Promise<void> => {
  try {
    const kept = await (await store()).begin(plan);
    unsaved.value = undefined;
    show(kept);
  } catch {
    unsaved.value = plan;
  }
};

/** The plan in hand becomes this one; the one before goes to the earlier ones. */
export const keepNewPlan = (plan: Plan): Promise<void> => begin(plan);

/** Changes the plan in hand; settles when that is done. */
export const changePlan = async (to: (plan: Plan) => Plan): Promise<void> => {
  const plan = currentPlan.peek();
  if (plan === undefined) return;
  if (unsaved.peek() !== undefined) return begin(to(plan));
  try {
    const kept = await (await store()).change(plan.id, to);
    if (kept === undefined) await begin(to(plan));
    else show(kept);
  } catch {
    unsaved.value = to(currentPlan.peek() ?? plan);
  }
};

const storedOutside = (key: string): boolean => keptText(key).load() !== undefined;

/** Follows the plans, whichever tab writes them; returns the function that stops. */
export const followPlans = (): (() => void) =>
  follow({
    open: async () => {
      const { lasting } = await ownDatabase();
      const { list } = await store();
      outside.value = { waiting: lasting && storedOutside(OLD_PLANS), aside: storedOutside(ASIDE) };
      return list;
    },
    next(found) {
      unread.value = false;
      unreadable.value = found.unreadable;
      plans.value = found.records;
    },
    failed() {
      unread.value = true;
      plans.value ??= [];
    },
  });
