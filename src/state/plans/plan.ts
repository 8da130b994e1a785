/**
 * A plan and what a person may change in it. Pure: a plan in, a plan out. Answers for: calendar days, ids, what stays when a session
 * changes. Leaves out: which drills fill a session (sim/training/week-plan.ts), keeping (kept.ts), words (screens/week/words.ts).
 */
import { READ_DRILLS } from '../../../drills/index.ts';
import { PUTTING_DRILLS } from '../../../drills/putting-drills.ts';
import {
  drillsInstead,
  type ErrorCost,
  type GroundKind,
  planWeek,
  type ReadingSet,
  TEST_AGAIN,
  type WeekPlan,
  type WeekSession,
} from '../../../sim/index.ts';
import { addDays, daysBetween } from '../../store/day.ts';
import type { Plan, PlanItem, PlanSession } from '../../store/planSchema.ts';
import { ADAPTIVE_SET, PACE_SET, SLOPE_SET } from '../readOffers.ts';

type NamedSet = ReadingSet & { readonly name: string };

/** Those a week is filled with. Minutes for ten questions with a look at each answer: common practice, no source. */
const PLANNED_SETS: readonly NamedSet[] = [
  { id: ADAPTIVE_SET.id, name: ADAPTIVE_SET.name, trains: 'read', minutes: 6 },
  { id: SLOPE_SET.id, name: SLOPE_SET.name, trains: 'read', minutes: 5 },
  { id: PACE_SET.id, name: PACE_SET.name, trains: 'choice', minutes: 5 },
];
/**
 * Those and every read drill, which a person may put in the place of one. A week is not filled with read drills by itself: the adaptive
 * set asks more of what this person reads worst, whichever kind that is.
 */
export const READING_SETS: readonly NamedSet[] = [
  ...PLANNED_SETS,
  ...READ_DRILLS.map(({ id, name }): NamedSet => ({ id, name, trains: 'read', minutes: 6 })),
];

/** A session as it is asked for. */
export interface AskedSession {
  readonly day: string;
  readonly minutes: number;
  readonly ground: GroundKind;
}

/** Days of so many sessions, spread over the week that begins on `start`. */
export const spreadDays = (start: string, count: number): string[] =>
  Array.from({ length: count }, (_, i) => addDays(start, Math.floor((i * 7) / count)));

export interface PlanStart
  extends Pick<
    Plan,
    'id' | 'madeAt' | 'madeOn' | 'start' | 'choosePace' | 'source' | 'holes' | 'own' | 'grass' | 'carpet'
  > {
  readonly costs: readonly ErrorCost[];
  readonly sessions: readonly AskedSession[];
}

const inWeek = ({ day, minutes, ground }: AskedSession, start: string): WeekSession => ({
  day: daysBetween(start, day),
  minutes,
  ground,
});

const byDay = <Dated extends { readonly day: string }>(sessions: readonly Dated[]): Dated[] =>
  [...sessions].sort((one, other) => (one.day < other.day ? -1 : one.day > other.day ? 1 : 0));

/** Sessions of the week as they are kept. @param mark tells ids of one filling from those of another */
const itemsOf = (week: WeekPlan, session: number, mark: string): PlanItem[] =>
  week.sessions[session].items.map((item, i) => ({ id: `${mark}-${i + 1}`, ...item }));

export function newPlan({ sessions: asked, costs, ...rest }: PlanStart): Plan {
  const days = byDay(asked);
  const week = planWeek({
    costs,
    sessions: days.map((session) => inWeek(session, rest.start)),
    drills: PUTTING_DRILLS,
    reading: PLANNED_SETS,
    choosePace: rest.choosePace,
    seed: rest.id,
  });
  const sessions = days.map((session, i) => ({
    id: `s${i + 1}`,
    ...session,
    items: itemsOf(week, i, `s${i + 1}`),
  }));
  return {
    ...rest,
    revision: 0,
    costs: costs.map(({ error, step, saved }) => ({ error, step, saved: { ...saved } })),
    sessions,
    ...testOf(week, sessions, rest.start),
  };
}

/** The test of a filled week, by the names it is kept under. */
const testOf = (
  { test, sessions: filled }: WeekPlan,
  sessions: readonly PlanSession[],
  start: string,
): Pick<Plan, 'test'> => {
  if (test === undefined) return {};
  const { activity } = filled[test.session].items[test.item];
  const session = sessions[test.session];
  const item = session.items.find((one) => one.activity === activity);
  return item === undefined
    ? {}
    : { test: { session: session.id, item: item.id, againOn: addDays(start, test.againOn) } };
};

const changed = (plan: Plan, change: Partial<Plan>): Plan => ({
  ...plan,
  ...change,
  revision: plan.revision + 1,
});

const withSession = (plan: Plan, id: string, to: (session: PlanSession) => PlanSession): Plan =>
  changed(plan, { sessions: plan.sessions.map((session) => (session.id === id ? to(session) : session)) });

export const isTouched = ({ items }: PlanSession): boolean =>
  items.some(({ doneOn, score }) => doneOn !== undefined || score !== undefined);

/** To another day of the week; the test is repeated as long after it as before. */
export function moveSession(plan: Plan, id: string, day: string): Plan {
  const moved = withSession(plan, id, (session) => ({ ...session, day }));
  const { test } = plan;
  return {
    ...moved,
    sessions: byDay(moved.sessions),
    ...(test?.session === id &&
      test.again === undefined && { test: { ...test, againOn: addDays(day, TEST_AGAIN) } }),
  };
}

/** Fills one session anew for other minutes or another ground; the others stay. */
export function refillSession(
  plan: Plan,
  id: string,
  change: Partial<Pick<AskedSession, 'minutes' | 'ground'>>,
): Plan {
  const at = plan.sessions.findIndex((session) => session.id === id);
  const before = plan.sessions[at];
  if (before === undefined || isTouched(before)) return plan;
  const asked = plan.sessions.map((session) => (session.id === id ? { ...session, ...change } : session));
  const revision = plan.revision + 1;
  const week = planWeek({
    costs: plan.costs,
    sessions: asked.map((session) => inWeek(session, plan.start)),
    drills: PUTTING_DRILLS,
    reading: PLANNED_SETS,
    choosePace: plan.choosePace,
    kept: new Map(plan.sessions.flatMap((session, i) => (i === at ? [] : [[i, session.items]]))),
    seed: `${plan.id} ${revision}`,
  });
  const sessions = asked.map((session, i) =>
    i === at ? { ...session, items: itemsOf(week, i, `${id}-${revision}`) } : session,
  );
  const { test, ...rest } = plan;
  return {
    ...rest,
    revision,
    sessions,
    ...(test !== undefined && test.session !== id ? { test } : testOf(week, sessions, plan.start)),
  };
}

/** One thing that may be done in the place of another. */
export interface Instead {
  readonly id: string;
  readonly name: string;
  readonly minutes: number;
}

export function insteadOf({ items, minutes, ground }: PlanSession, item: PlanItem): Instead[] {
  const free = minutes - items.reduce((sum, one) => sum + one.minutes, 0) + item.minutes;
  const others = items.filter((one) => one !== item).map(({ activity }) => activity);
  const { trains } = item;
  const all: readonly Instead[] =
    item.kind === 'reading'
      ? READING_SETS.filter((set) => set.trains === trains && set.minutes <= free)
      : trains === 'choice'
        ? []
        : drillsInstead(PUTTING_DRILLS, { trains, ground, minutes: free });
  return all
    .filter(({ id }) => !others.includes(id))
    .map(({ id, name, minutes: needed }) => ({ id, name, minutes: needed }));
}

const withItem = (plan: Plan, id: string, to: (item: PlanItem) => PlanItem): Plan =>
  changed(plan, {
    sessions: plan.sessions.map((session) => ({
      ...session,
      items: session.items.map((item) => (item.id === id ? to(item) : item)),
    })),
  });

/** Another drill or set in the place of this one; what was expected of the old one goes. */
export const swapItem = (plan: Plan, id: string, { id: activity, minutes }: Instead): Plan =>
  withItem(plan, id, ({ kind, trains, why }) => ({ id, kind, activity, trains, minutes, why }));

export const expectOf = (plan: Plan, id: string, expected: PlanItem['expected']): Plan => ({
  ...withItem(plan, id, (item) => ({ ...item, expected })),
  revision: plan.revision,
});

/** Ticked off, or no longer. @param day undefined: not done */
export const tickItem = (plan: Plan, id: string, day: string | undefined): Plan =>
  withItem(plan, id, ({ doneOn: _before, ...item }) => ({
    ...item,
    ...(day !== undefined && { doneOn: day }),
  }));

/** @param score undefined: taken away */
export const scoreItem = (plan: Plan, id: string, score: number | undefined): Plan =>
  withItem(plan, id, ({ score: _before, ...item }) => ({ ...item, ...(score !== undefined && { score }) }));

/** The test, done again. @param again undefined: taken away */
export const scoreAgain = (
  plan: Plan,
  again: { readonly day: string; readonly score: number } | undefined,
): Plan => {
  if (plan.test === undefined) return plan;
  const { again: _before, ...test } = plan.test;
  return changed(plan, { test: { ...test, ...(again && { again }) } });
};

export const itemOf = (plan: Plan, id: string): PlanItem | undefined =>
  plan.sessions.flatMap(({ items }) => items).find((item) => item.id === id);

/** The tested drill with the session it is in. */
export const testedIn = (
  plan: Plan,
): { readonly session: PlanSession; readonly item: PlanItem } | undefined => {
  const session = plan.sessions.find(({ id }) => id === plan.test?.session);
  const item = session?.items.find(({ id }) => id === plan.test?.item);
  return session && item && { session, item };
};
