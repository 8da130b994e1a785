/** The answer beside the map: what was right, how far off, what it cost, and the way on. Shown only after the commitment. */

import { isAdaptive } from '../../state/readOffers.ts';
import type { Units } from '../../text/format.ts';
import { Progress, useFocusOn } from './Asking.tsx';
import { type Asked, answerTo } from './asked.ts';
import { paceHeadline, paceSentence } from './paceWords.ts';
import type { Revealed } from './reveal.ts';
import { alongSentence, slopeHeadline } from './slopeWords.ts';
import { costSentence, hitSentence, rollSentence, scoreHeadline, shareSentence } from './words.ts';

export interface VerdictProps {
  readonly asked: Asked;
  readonly revealed: Revealed;
  readonly units: Units;
  readonly costProblem: boolean;
  readonly saved: boolean;
  readonly onNext: () => void;
  readonly onSummary: () => void;
  readonly onLeave: () => void;
}

interface Words {
  readonly headline: string;
  readonly more: string;
  /** What came of it in putts; undefined: the question is not about that. */
  readonly cost: string | undefined;
}

const WORKING = 'Working out what it cost…';

const wordsOf = ({ asked, revealed, units, costProblem }: VerdictProps): Words => {
  const { set, question } = asked;
  const answer = answerTo(set, question);
  if (revealed.kind === 'aim') {
    const { holedAtAim, holedAtTrue } = answer?.kind === 'aim' ? answer : {};
    const hit = isAdaptive({ id: set.drillId }) && revealed.hit !== undefined;
    return {
      headline: scoreHeadline(revealed.score, units),
      more: `${shareSentence(revealed.score)} ${rollSentence(revealed.roll, question, units)}${hit ? ` ${hitSentence(revealed.hit === true)}` : ''}`,
      cost:
        holedAtAim !== undefined && holedAtTrue !== undefined
          ? costSentence(holedAtAim, holedAtTrue)
          : costProblem
            ? 'What it cost in holed putts could not be worked out; your answer is kept.'
            : WORKING,
    };
  }
  if (revealed.kind === 'slope')
    return {
      headline: slopeHeadline(revealed.truth, revealed.guess),
      more: alongSentence(revealed.truth, revealed.guess),
      cost: undefined,
    };
  const putts = answer?.kind === 'paces' ? answer.putts : undefined;
  return {
    headline: putts === undefined ? `You chose ${revealed.chosen}` : paceHeadline(revealed.chosen, putts),
    more:
      putts !== undefined
        ? paceSentence(putts)
        : costProblem
          ? 'What the two paces take could not be worked out; your answer is kept.'
          : 'Working out what both paces take: seconds on a new green…',
    cost: undefined,
  };
};

/** The verdict and the way on. */
export const Verdict = (props: VerdictProps) => {
  const { asked, saved, onNext, onSummary, onLeave } = props;
  const { question, set } = asked;
  const heading = useFocusOn(`${set.id} ${question.number} answer`);
  const { headline, more, cost } = wordsOf(props);
  const afterwards = set.feedback === 'end';
  const last = afterwards ? question.number === set.size : set.answers.length === set.size;
  return (
    <section class="card read-head" aria-label="Answer" data-testid="answer">
      <Progress asked={asked} />
      <h1 ref={heading} tabIndex={-1}>
        {afterwards && `Putt ${question.number}: `}
        {headline.replace(/(\d) (in|cm)\b/, '$1\u00a0$2')}
      </h1>
      <p aria-live="polite">{more}</p>
      {cost !== undefined && (
        <p class="read-cost" aria-live="polite">
          {cost}
        </p>
      )}
      <p class="read-actions">
        <button type="button" class="read-main" onClick={onNext}>
          {last ? 'See the summary' : afterwards ? 'Next answer' : 'Next putt'}
        </button>
        {afterwards && !last && (
          <button type="button" onClick={onSummary}>
            Straight to the summary
          </button>
        )}
        <button type="button" class="plain" onClick={onLeave}>
          {last ? 'Back to the drills' : 'Leave the set'}
        </button>
        <span class="quiet" data-testid="saved">
          {saved ? 'Saved' : 'Saving…'}
        </span>
      </p>
    </section>
  );
};
