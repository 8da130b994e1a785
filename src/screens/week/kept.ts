/**
 * Plans kept on this device: one current, earlier ones behind it. In localStorage under a key of its own, through a strict gate.
 * Leaves out: what is in a plan (schema.ts). Plans are not in backups yet. What cannot be read is put aside, not overwritten.
 */
import { computed, signal } from '@preact/signals';
import { type KeptPlans, keptPlansSchema, MOST_EARLIER, type Plan } from './schema.ts';

const KEY = 'borrow.week.1';
/** Where a text goes that this version cannot read. */
const ASIDE = `${KEY}.unread`;

const NONE: KeptPlans = { version: 1, earlier: [] };

/** @returns undefined when the text is not what we would have written */
export const parsePlans = (text: string | null): KeptPlans | undefined => {
  if (text === null) return NONE;
  try {
    const found = keptPlansSchema.safeParse(JSON.parse(text));
    return found.success ? found.data : undefined;
  } catch {
    return undefined;
  }
};

/** Storage can be forbidden: plans last for the visit then. */
const readStorage = (): string | null => {
  try {
    return globalThis.localStorage?.getItem(KEY) ?? null;
  } catch {
    return null;
  }
};
const write = (key: string, text: string): boolean => {
  try {
    globalThis.localStorage?.setItem(key, text);
    return true;
  } catch {
    return false;
  }
};

const loadedText = readStorage();
const loaded = parsePlans(loadedText);
if (loaded === undefined && loadedText !== null) write(ASIDE, loadedText);

const plans = signal<KeptPlans>(loaded ?? NONE);

/** A sentence when something is wrong with what is kept. */
export const keepingProblem = signal<string | undefined>(
  loaded === undefined
    ? 'The plans on this device could not be read by this version; they are put aside, and nothing of them is lost. Plan a new week.'
    : undefined,
);
export const currentPlan = computed((): Plan | undefined => plans.value.current);
export const earlierPlans = computed((): readonly Plan[] => plans.value.earlier);

const keep = (next: KeptPlans): void => {
  plans.value = next;
  if (!write(KEY, JSON.stringify(next)))
    keepingProblem.value =
      'This device keeps nothing for this page: the plan is gone when you leave. Take it away as a calendar file or print it.';
};

/** The plan in hand becomes this one; the one before goes to the earlier ones. */
export const keepNewPlan = (plan: Plan): void => {
  const { current, earlier } = plans.peek();
  keep({
    version: 1,
    current: plan,
    earlier: [...(current ? [current] : []), ...earlier].slice(0, MOST_EARLIER),
  });
};

/** Changes the plan in hand. */
export const changePlan = (change: (plan: Plan) => Plan): void => {
  const { current, ...rest } = plans.peek();
  if (current !== undefined) keep({ ...rest, current: change(current) });
};

/** Takes over what another tab has written; returns the function that stops. */
export const followPlans = (): (() => void) => {
  const taken = ({ key, newValue }: StorageEvent): void => {
    if (key !== KEY) return;
    const found = parsePlans(newValue);
    if (found !== undefined) plans.value = found;
  };
  addEventListener('storage', taken);
  return () => removeEventListener('storage', taken);
};
