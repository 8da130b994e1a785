/** A player's six errors from the record. Leaves out: the fit (sim/evidence/fit), words (text/errors.ts), what errors cost (costs). */
import { useEffect } from 'preact/hooks';
import { DemoBanner, DemoOffer, NoRecords } from '../../controls/RecordSource.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { meantPace } from '../../state/settings.ts';
import { followRecords, readingProblem, shownSource } from '../../state/shownRecords.ts';
import { Apart } from './Apart.tsx';
import { Counted } from './Counted.tsx';
import { ErrorsAnswer } from './ErrorsAnswer.tsx';
import { Gap } from './Gap.tsx';
import { followNamed } from './named.ts';
import { asked } from './question.ts';
import { SixErrors } from './SixErrors.tsx';
import { UsualPace } from './UsualPace.tsx';
import { fits } from './work.ts';
import '../../controls/answers.css';
import '../../controls/tables.css';
import './errors.css';

const TELLS =
  'Record where your putts start and finish on the course; at home this page finds the errors of stroke and reading that explain them, and how sure that is.';

const Shown = () => {
  const question = asked.value;
  if (question === undefined)
    return readingProblem.value === undefined ? (
      <p class="quiet" role="status">
        Reading your records…
      </p>
    ) : null;
  const demo = shownSource.value === 'demo';
  const { putts, sets } = question.sizes;
  if (putts + sets + question.strokes === 0) return demo ? <DemoBanner /> : <NoRecords tells={TELLS} />;
  return (
    <>
      {demo && <DemoBanner />}
      <div class="errors-parts">
        <div class="errors-main">
          <ErrorsAnswer />
          {!demo && meantPace.value === undefined && <UsualPace />}
          <Gap />
          <SixErrors />
        </div>
        <div class="errors-side">
          {!demo && meantPace.value !== undefined && <UsualPace />}
          <Apart />
          <Counted />
          <RulesCaution />
          {!demo && <DemoOffer />}
        </div>
      </div>
    </>
  );
};

export const ErrorsScreen = () => {
  useEffect(followRecords, []);
  useEffect(fits.follow, []);
  useEffect(followNamed, []);
  return (
    <div class="errors">
      {readingProblem.value !== undefined && (
        <p class="problem" role="alert">
          {readingProblem.value}
        </p>
      )}
      <Shown />
    </div>
  );
};
