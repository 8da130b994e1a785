/** The week: what to practise, in which session, what score to expect, when to test again; and what moved since. */
import { useEffect } from 'preact/hooks';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { followRecords, readingProblem } from '../../state/shownRecords.ts';
import type { Plan } from '../../store/planSchema.ts';
import { Drills, Sheet } from './Drills.tsx';
import { currentPlan, followPlans, keepingProblem, plansKnown } from './kept.ts';
import { Maker, planning } from './Maker.tsx';
import { MovedCard } from './MovedCard.tsx';
import { SessionCard } from './SessionCard.tsx';
import { Earlier, TakeAway } from './Side.tsx';
import { followScores, resumeScores, scoresStopped, scoresToCome, stopScores } from './scores.ts';
import { TestCard } from './TestCard.tsx';
import { basisWords, shareWords, weekHeadline } from './words.ts';
import './week.css';

const ScoresWorking = () => {
  const count = scoresToCome.value;
  if (count === 0) return null;
  return (
    <p class="working quiet" data-testid="scores-working">
      <span>
        {scoresStopped.value ? 'Stopped' : 'Working out expected scores'}: {count} to come.
      </span>
      <button type="button" class="plain" onClick={scoresStopped.value ? resumeScores : stopScores}>
        {scoresStopped.value ? 'Go on' : 'Stop'}
      </button>
    </p>
  );
};

const Answer = ({ plan }: { plan: Plan }) => (
  <section class="card verdict week-answer" aria-label="The answer">
    <p class="question">What do I practise this week?</p>
    <h1 data-testid="week-answer">{weekHeadline(plan)}</h1>
    <p>{shareWords(plan)}</p>
    <p class="hint" data-testid="week-basis">
      {basisWords(plan)}
    </p>
    <ScoresWorking />
  </section>
);

export const WeekScreen = () => {
  useEffect(followRecords, []);
  useEffect(followPlans, []);
  useEffect(followScores, []);
  const plan = currentPlan.value;
  return (
    <div class="week">
      <div class="week-main">
        {[keepingProblem.value, readingProblem.value].map(
          (problem) =>
            problem !== undefined && (
              <p key={problem} class="problem" role="alert">
                {problem}
              </p>
            ),
        )}
        {!plansKnown.value && <p class="quiet">Looking up your plan…</p>}
        {plansKnown.value && plan === undefined && (
          <section class="card verdict" aria-label="The answer">
            <p class="question">What do I practise this week?</p>
            <h1 data-testid="week-answer">
              No week is planned yet: say what time you have, and the errors that cost you most get most of
              it.
            </h1>
          </section>
        )}
        {plan && <Answer plan={plan} />}
        {plansKnown.value && (plan === undefined || planning.value) && <Maker />}
        {plan && (
          <>
            <Sheet plan={plan} />
            {plan.sessions.map((session) => (
              <SessionCard key={session.id} plan={plan} session={session} />
            ))}
            <TestCard plan={plan} />
            <MovedCard plan={plan} />
            <Drills plan={plan} />
          </>
        )}
      </div>
      <div class="week-side">
        {plan && <TakeAway plan={plan} />}
        <Earlier />
        <RulesCaution />
      </div>
    </div>
  );
};
