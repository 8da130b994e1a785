/** What follows from a table of costs for the person's own mix of first putts; worked out again when either changes. */
import { computed } from '@preact/signals';
import {
  COST_BANDS,
  type ComparedSteps,
  compareSteps,
  ENGINE_ERROR,
  MAIN_STEPS,
  METRE_COST_BANDS,
  type RoundCosts,
  roundCosts,
  type StepCost,
} from '../../../sim/index.ts';
import type { Lead } from '../../text/costs.ts';
import { units } from '../settings.ts';
import { benchmark, firstStep, mix, secondStep } from './question.ts';
import { costJob } from './work.ts';

/** Sure enough to say which of two costs more. */
const SURE = 0.95;

export interface CostView {
  readonly costs: RoundCosts;
  /** The main steps, the one that saves most first. */
  readonly ranked: readonly StepCost[];
  /** The first beside the second; clear: it saves more beyond doubt and beyond what the engine can tell. */
  readonly lead: Lead;
}

/** Is one step's lead over another more than chance and the engine's own error? */
export const isClear = ({ more, chance }: ComparedSteps): boolean =>
  Math.abs(more.value) > ENGINE_ERROR && Math.max(chance, 1 - chance) >= SURE;

export const view = computed((): CostView | undefined => {
  const table = costJob.shown.value?.found;
  if (table === undefined) return undefined;
  const bands = units.value === 'imperial' ? COST_BANDS : METRE_COST_BANDS;
  const costs = roundCosts(table, { mix: mix.value, benchmark: benchmark.value, bands });
  const ranked = MAIN_STEPS.flatMap((step) => costs.steps.filter((one) => one.step === step)).sort(
    (a, b) => b.saved.value - a.saved.value,
  );
  const two = compareSteps(table, mix.value, [ranked[0].step, ranked[1].step]);
  const lead = { clear: isClear(two), chance: two.chance, players: two.players };
  return { costs, ranked, lead };
});

export const compared = computed((): ComparedSteps | undefined => {
  const table = costJob.shown.value?.found;
  return table && compareSteps(table, mix.value, [firstStep.value, secondStep.value]);
});
