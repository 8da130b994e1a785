/** The answer beside the map: what was right, how far off, what it cost. Shown only after the commitment. */
import { formatAim, formatShort, holeWordsShort, type Units } from '../../text/format.ts';
import { Given, Progress, useFocusOn } from './Asking.tsx';
import { ownAimText } from './aimText.ts';
import { type Asked, answerTo, type Revealed } from './session.ts';
import { costSentence, formatShare, rollSentence, scoreHeadline, shareSentence } from './words.ts';

export interface VerdictProps {
  readonly asked: Asked;
  readonly revealed: Revealed;
  readonly units: Units;
  readonly costProblem: boolean;
  readonly saved: boolean;
  readonly onNext: () => void;
  readonly onLeave: () => void;
}

/** The verdict and the way on. */
export const Verdict = ({ asked, revealed, units, costProblem, saved, onNext, onLeave }: VerdictProps) => {
  const { question, set } = asked;
  const heading = useFocusOn(`${set.id} ${question.number} answer`);
  const answer = answerTo(set, question);
  const last = set.answers.length === set.questions.length;
  const { holedAtAim, holedAtTrue } = answer ?? {};
  return (
    <section class="card read-head" aria-label="Answer" data-testid="answer">
      <Progress asked={asked} />
      <h1 ref={heading} tabIndex={-1}>
        {scoreHeadline(revealed.score, units).replace(/(\d) (in|cm)\b/, '$1\u00a0$2')}
      </h1>
      <p>
        {shareSentence(revealed.score)} {rollSentence(revealed.roll, question, units)}
      </p>
      <p class="read-cost" aria-live="polite">
        {holedAtAim !== undefined && holedAtTrue !== undefined
          ? costSentence(holedAtAim, holedAtTrue)
          : costProblem
            ? 'What it cost in holed putts could not be worked out; your answer is kept.'
            : 'Working out what it cost…'}
      </p>
      <p class="read-actions">
        <button type="button" class="read-main" onClick={onNext}>
          {last ? 'See the summary' : 'Next putt'}
        </button>
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

export interface FiguresProps {
  readonly asked: Asked;
  readonly revealed: Revealed;
  readonly units: Units;
}

const signed = (metres: number, units: Units): string => {
  const size = formatShort(Math.abs(metres), units);
  return Number.parseFloat(size) === 0 ? size : `${metres > 0 ? '+' : '−'}${size}`;
};

/** The figures behind the verdict. */
export const Figures = ({ asked, revealed, units }: FiguresProps) => {
  const { question } = asked;
  const { error, share, verdict } = revealed.score;
  return (
    <section class="card read-panel" aria-label="Figures" data-testid="figures">
      <table>
        <thead>
          <tr>
            <th scope="col">Aim</th>
            <th scope="col">from the centre</th>
            <th scope="col">from the edge</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Yours</th>
            <td>{ownAimText(revealed.aim, units)}</td>
            <td>{holeWordsShort(revealed.aim)}</td>
          </tr>
          <tr>
            <th scope="row">True</th>
            <td>{formatAim(question.trueAim, units)}</td>
            <td>{holeWordsShort(question.trueAim)}</td>
          </tr>
          <tr>
            <th scope="row">Error</th>
            <td>{signed(error, units)}</td>
            <td>
              {share === undefined || verdict === 'wrongSide'
                ? 'no share'
                : `${formatShare(share)} of the break`}
            </td>
          </tr>
        </tbody>
      </table>
      <Given asked={asked} units={units} all />
      <p class="hint">
        Break here is the aim offset: how far beside the hole centre the start line passes. Your line is
        rolled at the speed of the true one. The cost counts your start-line and pace errors from the deciding
        screen, without any error of reading. Left out: grain, wind, bumps, spin.
      </p>
    </section>
  );
};
