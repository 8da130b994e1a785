/**
 * Works out what score to expect of every planned drill, one after another in a worker, and writes it into the plan. Starts again
 * where it was after a reload. Leaves out: the engine (sim/training/drill-score.ts), the words.
 */
import { effect, signal } from '@preact/signals';
import type { DrillExpectation, DrillGround, NoExpectation, PuttingDrill } from '../../../sim/index.ts';
import { drillOf } from '../../state/plans/names.ts';
import { expectOf, itemOf } from '../../state/plans/plan.ts';
import { capture, player } from '../../state/settings.ts';
import type { Expected, Plan, PlanItem, PlanSession } from '../../store/planSchema.ts';
import { createLane } from '../../worker/client.ts';
import { changePlan, currentPlan } from './kept.ts';

/** Drills whose score is still to come; 0: all are told. */
export const scoresToCome = signal(0);
export const scoresStopped = signal(false);

const lane = createLane();

const groundOf = ({ grass, carpet }: Plan, { ground }: PlanSession): DrillGround =>
  ground === 'grass' ? { kind: 'grass', ...grass } : { kind: 'carpet', ...carpet };

export const expectedOf = (found: DrillExpectation | NoExpectation): Expected => {
  if (found.status === 'cannot') return { cannot: found.reason };
  const { mean, sd, low, high, mark, repetitions } = found;
  return {
    mean,
    sd,
    low,
    high,
    mark: mark.score,
    chance: Math.min(1, Math.max(0, mark.chanceNow)),
    ...(Number.isFinite(repetitions.count) && { repetitions: repetitions.count }),
  };
};

interface Open {
  readonly session: PlanSession;
  readonly item: PlanItem;
}

const openOf = (plan: Plan): Open[] =>
  plan.sessions.flatMap((session) =>
    session.items
      .filter((item) => item.expected === undefined && drillOf(item) !== undefined)
      .map((item) => ({ session, item })),
  );

/** @returns undefined when cancelled */
const askFor = async (drill: PuttingDrill, ground: DrillGround): Promise<Expected | undefined> => {
  try {
    const answer: DrillExpectation | NoExpectation | undefined = await lane.latest(
      async (engine): Promise<DrillExpectation | NoExpectation> =>
        engine.drillScore({ drill, player: player.peek(), ground, capture: capture.peek() }),
    );
    return answer && expectedOf(answer);
  } catch (cause) {
    return {
      cannot: `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}`,
    };
  }
};

let running = false;

const run = async (): Promise<void> => {
  if (running) return;
  running = true;
  try {
    for (;;) {
      const plan = currentPlan.peek();
      const [next] = plan === undefined ? [] : openOf(plan);
      const drill = next && drillOf(next.item);
      if (plan === undefined || next === undefined || drill === undefined || scoresStopped.peek()) return;
      const { id, activity } = next.item;
      const found = await askFor(drill, groundOf(plan, next.session));
      // Cancelled: whoever cancelled starts it again.
      if (found === undefined) return;
      await changePlan((now) =>
        now.id === plan.id && itemOf(now, id)?.activity === activity ? expectOf(now, id, found) : now,
      );
    }
  } finally {
    running = false;
  }
};

export const stopScores = (): void => {
  scoresStopped.value = true;
  lane.cancel();
};
export const resumeScores = (): void => {
  scoresStopped.value = false;
};

/** Starts following the plan; returns the function that stops. */
export const followScores = (): (() => void) => {
  const stop = effect(() => {
    const plan = currentPlan.value;
    const stopped = scoresStopped.value;
    const count = plan === undefined ? 0 : openOf(plan).length;
    scoresToCome.value = count;
    // After this change has settled: what runs writes the plan itself.
    if (count > 0 && !stopped) setTimeout(() => void run(), 0);
  });
  return () => {
    stop();
    lane.cancel();
  };
};
