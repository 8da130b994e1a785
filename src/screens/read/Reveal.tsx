/** The answer beside the map: what was right, how far off, what it cost. Shown only after the commitment. */
import { formatAim, holeWords, type Units } from '../../text/format.ts';
import { Given, useFocusOn } from './Asking.tsx';
import { type Asked, answerTo, type Revealed } from './session.ts';
import { costSentence, rollSentence, scoreHeadline, shareSentence } from './words.ts';

export interface RevealProps {
  readonly asked: Asked;
  readonly revealed: Revealed;
  readonly units: Units;
  readonly costProblem: boolean;
  readonly onNext: () => void;
  readonly onLeave: () => void;
}

export const Reveal = ({ asked, revealed, units, costProblem, onNext, onLeave }: RevealProps) => {
  const { question, set } = asked;
  const heading = useFocusOn(`${set.id} ${question.number} answer`);
  const answer = answerTo(set, question);
  const last = set.answers.length === set.questions.length;
  const { holedAtAim, holedAtTrue } = answer ?? {};
  return (
    <section class="card read-panel" aria-label="Answer" data-testid="answer">
      <p class="quiet">
        {set.drillName}, putt {question.number} of {set.questions.length}
      </p>
      <h1 ref={heading} tabIndex={-1}>
        {scoreHeadline(revealed.score, units)}
      </h1>
      <p>
        {shareSentence(revealed.score)} {rollSentence(revealed.roll, question, units)}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Aim beside the hole centre</th>
            <th scope="col">In hole words</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Yours: {formatAim(revealed.aim, units)}</th>
            <td>{holeWords(revealed.aim)}</td>
          </tr>
          <tr>
            <th scope="row">True: {formatAim(question.trueAim, units)}</th>
            <td>{holeWords(question.trueAim)}</td>
          </tr>
        </tbody>
      </table>
      <p class="read-cost" aria-live="polite">
        {holedAtAim !== undefined && holedAtTrue !== undefined
          ? costSentence(holedAtAim, holedAtTrue)
          : costProblem
            ? 'What it cost in holed putts could not be worked out; your answer is kept.'
            : 'Working out what it cost…'}
      </p>
      <Given asked={asked} units={units} all />
      <p class="quiet">
        Your line is rolled at the speed of the true one. The cost uses your own start-line and pace errors
        from the deciding screen, without any error of reading.
      </p>
      <p class="read-actions">
        <button type="button" class="read-main" onClick={onNext}>
          {last ? 'See the summary' : 'Next putt'}
        </button>
        <button type="button" class="plain" onClick={onLeave}>
          {last ? 'Back to the drills' : 'Leave the set'}
        </button>
      </p>
    </section>
  );
};
