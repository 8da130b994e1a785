/**
 * The scores of a plan as records of drills, one for each: what the week's ticks are among all scores. Pure. Answers for: day, ground, green
 * speed and version of each. Leaves out: ids (store/planScores.ts), writing (store/plans.ts).
 * A score is of the day its item was ticked on; without a tick, of the session's day, or of the day it was written down if that came sooner.
 * The green speed is what the plan reckons with for that ground.
 */
import type { PuttingDrill } from '../../../sim/index.ts';
import { daysBetween, localDay } from '../../store/day.ts';
import type { Plan, PlanSession } from '../../store/planSchema.ts';
import { AGAIN, scoreId } from '../../store/planScores.ts';
import type { KeptResult } from '../../store/recordSchema.ts';
import { drillOf } from './names.ts';
import { testedIn } from './plan.ts';

interface Scored {
  readonly item: string;
  readonly drill: PuttingDrill;
  readonly session: PlanSession;
  readonly score: number;
  /** Day it was done on, where the plan knows. */
  readonly doneOn: string | undefined;
}

/** Scores of drills that this version knows; others stay in the plan alone, because their version cannot be told. */
const scoredIn = (plan: Plan): Scored[] => {
  const items = plan.sessions.flatMap((session) =>
    session.items.flatMap((item): Scored[] => {
      const drill = drillOf(item);
      const { id, score, doneOn } = item;
      return drill === undefined || score === undefined ? [] : [{ item: id, drill, session, score, doneOn }];
    }),
  );
  const tested = testedIn(plan);
  const drill = tested && drillOf(tested.item);
  const again = plan.test?.again;
  return tested === undefined || drill === undefined || again === undefined
    ? items
    : [...items, { item: AGAIN, drill, session: tested.session, score: again.score, doneOn: again.day }];
};

/** @param before the plan's scores as they are kept @param now ms since 1970 */
export const resultsOf = (plan: Plan, before: readonly KeptResult[], now: number): KeptResult[] => {
  const today = localDay(now);
  return scoredIn(plan).map(({ item, drill, session, score, doneOn }) => {
    const id = scoreId(plan.id, item);
    const old = before.find((one) => one.id === id && one.drillId === drill.id);
    const planned = daysBetween(today, session.day) > 0 ? today : session.day;
    return {
      id,
      day: doneOn ?? old?.day ?? planned,
      recordedAt: old?.recordedAt ?? now,
      drillId: drill.id,
      version: old?.version ?? drill.version,
      ground: session.ground,
      greenSpeed: plan[session.ground].greenSpeed,
      score,
    };
  });
};
