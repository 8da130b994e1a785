/** The test to repeat: when, what to expect, what one repetition can tell, and its two scores. */

import { drillOf } from '../../state/plans/names.ts';
import { scoreAgain, testedIn } from '../../state/plans/plan.ts';
import { localDay } from '../../store/day.ts';
import type { Plan } from '../../store/planSchema.ts';
import { changePlan } from './kept.ts';
import { ScoreField } from './SessionCard.tsx';
import { testTells, testWords } from './words.ts';

export const TestCard = ({ plan }: { plan: Plan }) => {
  const words = testWords(plan);
  const tested = testedIn(plan);
  const drill = tested && drillOf(tested.item);
  if (words === undefined || tested === undefined) return null;
  const { score, expected } = tested.item;
  return (
    <section class="card" aria-labelledby="test-title" data-testid="week-test">
      <h2 id="test-title">The test to repeat</h2>
      <p class="week-words">{words}</p>
      <p>{testTells(expected)}</p>
      <p class="quiet">
        {score === undefined
          ? 'The first score goes in beside the drill, in its session.'
          : `The first score was ${score}.`}
      </p>
      {drill && (
        <ScoreField
          id="score-again"
          label="Score of the repetition"
          drill={drill}
          score={plan.test?.again?.score}
          onScore={(again) =>
            void changePlan((now) =>
              scoreAgain(now, again === undefined ? undefined : { day: localDay(Date.now()), score: again }),
            )
          }
        />
      )}
    </section>
  );
};
