/** A plan of a week as the screen would make it, from costs given by hand. */
import type { ErrorCost } from '../../sim/index.ts';
import { newPlan, type PlanStart } from '../../src/state/plans/plan.ts';
import type { Plan } from '../../src/store/planSchema.ts';

const cost = (error: ErrorCost['error'], step: ErrorCost['step'], value: number): ErrorCost => ({
  error,
  step,
  saved: { value, low: value, high: value },
});

export const START = '2026-11-26';

export const samplePlan = (change: Partial<PlanStart> = {}): Plan =>
  newPlan({
    id: '5f0c3f0e-1111-4222-8333-444455556666',
    madeAt: Date.UTC(2026, 10, 26, 8),
    madeOn: START,
    start: START,
    costs: [cost('read', 'readShare', 0.3), cost('pace', 'pacePoint', 0.2), cost('line', 'lineTenth', 0.1)],
    choosePace: false,
    source: 'own',
    holes: 0,
    own: 0,
    grass: { greenSpeed: 2.9, slope: 0.02 },
    carpet: { greenSpeed: 3.05 },
    sessions: [
      { day: '2026-11-26', minutes: 40, ground: 'grass' },
      { day: '2026-11-29', minutes: 25, ground: 'carpet' },
    ],
    ...change,
  });
