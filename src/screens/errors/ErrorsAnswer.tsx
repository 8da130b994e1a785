/** The sentence: too little break or too much, its chance and margin, what would change it; how far the work is; use everywhere. */
import { useEffect } from 'preact/hooks';
import { spokenAtRest } from '../../controls/spoken.ts';
import { WorkLine } from '../../controls/WorkLine.tsx';
import { chooseFit, fitInUse } from '../../state/settings.ts';
import { errorsDetail, errorsHeadline, firstLookWords, fittedWords, ROUGH_WORDS } from '../../text/errors.ts';
import { asked } from './question.ts';
import { view } from './view.ts';
import { behind, fits, isFirstLook, nothingCounts } from './work.ts';

const headline = (): string => {
  if (nothingCounts.value !== undefined)
    return 'None of these putts says anything of your errors: conceded, from off the green, or at the hole.';
  const found = view.value;
  if (found === undefined)
    return fits.stopped.value ? 'No answer yet.' : 'Looking for the errors that explain this record…';
  const { answer, putts, invented } = found;
  return errorsHeadline({ readBias: answer.readBias, error: answer.errors.readBias, putts, invented });
};

/** Quiet time before it is read out, ms. */
const SPEAK_PAUSE = 900;
const spoken = spokenAtRest(
  () => (behind.value && nothingCounts.value === undefined ? undefined : headline()),
  SPEAK_PAUSE,
);

const UseEverywhere = () => {
  const found = view.value;
  if (found === undefined) return null;
  const { fit, invented } = found;
  const inUse = fitInUse.value === fit;
  return (
    <p class="errors-use">
      <button
        type="button"
        class="main"
        aria-disabled={inUse}
        onClick={() => {
          chooseFit(fit.source);
        }}
      >
        Use this player everywhere
      </button>
      <span class="quiet" role="status">
        {inUse
          ? `In use on every screen; ${invented ? 'the invented player’s, not yours' : 'new fits are taken along'}.`
          : ''}
      </span>
    </p>
  );
};

export const ErrorsAnswer = () => {
  useEffect(spoken.follow, []);
  const found = view.value;
  const first = isFirstLook.value;
  const old = behind.value && found !== undefined && !first;
  const dim = old ? 'stale' : undefined;
  return (
    <section class="card verdict" aria-label="The answer">
      <p class="question">Do I play too little break or too much, and how large are my errors?</p>
      <h1 data-testid="errors-answer" class={dim}>
        {headline()}
      </h1>
      <p class="unseen" role="status">
        {spoken.words.value}
      </p>
      {old && (
        <p class="hint" data-testid="stale">
          Of the record as it was before
          {fits.work.value === undefined ? '.' : '; the new answer is on its way.'}
        </p>
      )}
      {first && found && (
        <p class="hint" data-testid="first-look">
          {firstLookWords(found.putts, asked.value?.record.putts.length ?? 0, fits.work.value !== undefined)}
        </p>
      )}
      {fits.failure.value !== undefined && (
        <p class="problem" role="alert">
          {fits.failure.value}
        </p>
      )}
      {found && (
        <>
          <p class={dim}>
            {errorsDetail({ readBias: found.answer.readBias, putts: found.putts }, found.tap)}
          </p>
          {found.answer.rough && <p class="hint">{ROUGH_WORDS}</p>}
          <p class="hint">
            {fittedWords(found.fit.day, found.putts)} Ranges hold nine chances in ten, by what is assumed
            below.
          </p>
          {!first && <UseEverywhere />}
        </>
      )}
      <div class="working quiet">
        <WorkLine
          stopped={fits.stopped.value}
          work={
            fits.work.value === undefined
              ? undefined
              : { words: 'Trying players on every putt', share: fits.work.value }
          }
          rest={behind.value && nothingCounts.value === undefined ? '' : 'All is worked out.'}
          onStop={fits.stop}
          onResume={fits.resume}
        />
      </div>
    </section>
  );
};
