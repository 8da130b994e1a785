/** The sentence: what costs most, its margin, where it lies, what to practise; and how far the work is. */
import { useEffect } from 'preact/hooks';
import { Working } from '../../controls/CostsWorking.tsx';
import { spokenAtRest } from '../../controls/spoken.ts';
import { view } from '../../state/costs/answer.ts';
import { mix, question } from '../../state/costs/question.ts';
import { costJob } from '../../state/costs/work.ts';
import { units } from '../../state/settings.ts';
import { shownSource } from '../../state/shownRecords.ts';
import { costDetail, costHeadline, mixWords, olderCostWords, whoseWords } from '../../text/costs.ts';

const headline = (): string => {
  const found = view.value;
  return found === undefined ? 'Working out what your errors cost…' : costHeadline(found.ranked, found.lead);
};

/** Quiet time before it is read out, ms. */
const SPEAK_PAUSE = 900;
const spoken = spokenAtRest(
  () => (costJob.behind.value || view.value === undefined ? undefined : headline()),
  SPEAK_PAUSE,
);

export const CostAnswer = () => {
  useEffect(spoken.follow, []);
  const found = view.value;
  const asked = costJob.shown.value?.question;
  const dim = costJob.behind.value && found !== undefined ? 'stale' : undefined;
  return (
    <section class="card verdict" aria-label="The answer">
      <p class="question">Which of my errors costs most strokes, and what would a little less of it save?</p>
      <h1 data-testid="cost-answer" class={dim}>
        {headline()}
      </h1>
      <p class="unseen" role="status">
        {spoken.words.value}
      </p>
      {dim && (
        <p class="hint" data-testid="stale">
          {olderCostWords(asked === question.value ? asked.likely.length : undefined, costJob.stopped.value)}
        </p>
      )}
      {costJob.failure.value !== undefined && (
        <p class="problem" role="alert">
          {costJob.failure.value}
        </p>
      )}
      {found && <p class={dim}>{costDetail(found.ranked[0], found.costs, units.value)}</p>}
      <p class="hint" data-testid="mix">
        {mixWords(mix.value, shownSource.value === 'demo')}
      </p>
      {asked && (
        <p class="hint" data-testid="whose">
          {whoseWords(asked.fit, asked.likely.length)}
        </p>
      )}
      <div class="working quiet">
        <Working />
      </div>
    </section>
  );
};
