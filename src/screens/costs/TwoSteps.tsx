/** Two steps held against each other: which saves more, and how sure that is. */
import type { Signal } from '@preact/signals';
import { STEPS, type StepId } from '../../../sim/index.ts';
import { compared, isClear } from '../../state/costs/answer.ts';
import { firstStep, secondStep } from '../../state/costs/question.ts';
import { costJob } from '../../state/costs/work.ts';
import { comparedWords, STEP_WORDS } from '../../text/costs.ts';

const StepField = ({ id, label, chosen }: { id: string; label: string; chosen: Signal<StepId> }) => (
  <div class="field">
    <label for={id}>{label}</label>
    <select
      id={id}
      value={chosen.value}
      onChange={(event) => {
        const found = STEPS.find((step) => step === event.currentTarget.value);
        if (found) chosen.value = found;
      }}
    >
      {STEPS.map((step) => (
        <option key={step} value={step}>
          {STEP_WORDS[step].name}
        </option>
      ))}
    </select>
  </div>
);

export const TwoSteps = () => {
  const found = compared.value;
  return (
    <section class={costJob.behind.value ? 'card stale' : 'card'} aria-labelledby="two-title">
      <h2 id="two-title">Would one save more than the other?</h2>
      <div class="costs-pair">
        <StepField id="first-step" label="Would this" chosen={firstStep} />
        <StepField id="second-step" label="save more than this?" chosen={secondStep} />
      </div>
      <p class="costs-answer" data-testid="compared" aria-live="polite">
        {found === undefined ? 'Not worked out yet.' : comparedWords(found, isClear(found))}
      </p>
    </section>
  );
};
