/**
 * From what a person has (sessions, ground) and what errors cost to a plan. Answers for: what is asked, and making a plan once the
 * costs are there. Leaves out: the costs' work (state/costs/work.ts), the rule (sim/training/week-plan.ts).
 */
import { computed, effect, signal } from '@preact/signals';
import { ENGINE_ERROR, errorCosts } from '../../../sim/index.ts';
import { carpetSpeed } from '../../state/carpet.ts';
import { view } from '../../state/costs/answer.ts';
import { mix } from '../../state/costs/question.ts';
import { costJob } from '../../state/costs/work.ts';
import { type AskedSession, newPlan, spreadDays } from '../../state/plans/plan.ts';
import { shownRecords, shownSource } from '../../state/shownRecords.ts';
import { addDays, localDay } from '../../store/day.ts';
import { keepNewPlan } from './kept.ts';

/** Steepest a practice green is taken to be: common practice, no source. */
const SLOPE = 0.02;
/** Of the slider, ft. */
export const CARPET_SPEEDS = { min: 4, max: 16 } as const;

export const MINUTES = [10, 15, 20, 25, 30, 40, 45, 60, 75, 90, 120] as const;

const today = (): string => localDay(Date.now());

/** First day of the week planned. */
export const start = signal(today());
const askedFor = (first: string, count: number): AskedSession[] =>
  spreadDays(first, count).map((day, i) => ({
    day,
    minutes: i === 1 ? 25 : 40,
    ground: i === 1 ? 'carpet' : 'grass',
  }));
export const asked = signal<readonly AskedSession[]>(askedFor(start.peek(), 2));

export const setCount = (count: number): void => {
  const days = spreadDays(start.peek(), count);
  const fresh = askedFor(start.peek(), count);
  asked.value = days.map((day, i) => ({ ...(asked.peek()[i] ?? fresh[i]), day }));
};
export const setAsked = (at: number, change: Partial<AskedSession>): void => {
  asked.value = asked.peek().map((session, i) => (i === at ? { ...session, ...change } : session));
};
/** The week begins on the day it is planned, whenever the page was opened. */
export const renewStart = (): void => {
  if (start.peek() === today()) return;
  start.value = today();
  setCount(asked.peek().length);
};

export const daysOfWeek = (first: string): string[] => Array.from({ length: 7 }, (_, i) => addDays(first, i));

/** A plan is to be made as soon as the costs are there. */
export const pending = signal(false);
/** Costs and records are there. */
const ready = computed(
  () => !costJob.behind.value && view.value !== undefined && shownRecords.value !== undefined,
);

const make = (): void => {
  const found = view.peek();
  const table = costJob.shown.peek()?.found;
  if (found === undefined || table === undefined) return;
  const best = found.costs.steps.find(({ step }) => step === 'bestPace')?.saved;
  const { holes, own } = mix.peek();
  void keepNewPlan(
    newPlan({
      id: crypto.randomUUID(),
      madeAt: Date.now(),
      madeOn: today(),
      start: start.peek(),
      costs: errorCosts(found.costs.steps),
      choosePace: best !== undefined && Math.min(best.low, best.value - ENGINE_ERROR) > 0,
      source: shownSource.peek(),
      holes,
      own,
      grass: { greenSpeed: table.greenSpeed, slope: SLOPE },
      carpet: { greenSpeed: carpetSpeed.peek() },
      sessions: asked.peek(),
    }),
  );
};

/** Makes the plan that was asked for; returns the function that stops. @param done after it was made */
export const followMaking = (done: () => void): (() => void) => {
  const stop = effect(() => {
    if (!pending.value || !ready.value) return;
    pending.value = false;
    make();
    done();
  });
  return () => {
    stop();
    pending.value = false;
  };
};
