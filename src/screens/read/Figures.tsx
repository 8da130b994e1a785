/** The figures behind the verdict, by the kind of question. */
import { formatAim, formatShort, formatSlope, holeWordsShort, type Units } from '../../text/format.ts';
import { Given } from './Asking.tsx';
import { ownAimText } from './aimText.ts';
import { type Asked, answerTo } from './asked.ts';
import { paceMargin } from './paceWords.ts';
import type { Revealed, RevealedAim, RevealedPaces, RevealedSlope } from './reveal.ts';
import { alongWords, slopePoints } from './slopeWords.ts';
import { formatShare } from './words.ts';

const signed = (metres: number, units: Units): string => {
  const size = formatShort(Math.abs(metres), units);
  return Number.parseFloat(size) === 0 ? size : `${metres > 0 ? '+' : '−'}${size}`;
};

interface Of<Kind extends Revealed> {
  readonly asked: Asked;
  readonly revealed: Kind;
  readonly units: Units;
}

const AimFigures = ({ asked: { question }, revealed, units }: Of<RevealedAim>) => {
  const { error, share, verdict } = revealed.score;
  return (
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
  );
};

const PaceFigures = ({ asked: { set, question }, revealed, units }: Of<RevealedPaces>) => {
  const answer = answerTo(set, question);
  const putts = answer?.kind === 'paces' ? answer.putts : undefined;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Pace</th>
          <th scope="col">aim</th>
          <th scope="col">putts</th>
          <th scope="col">more than the other</th>
        </tr>
      </thead>
      <tbody>
        {(['die', 'firm'] as const).map((pace) => (
          <tr key={pace}>
            <th scope="row">
              {pace === 'die' ? 'Die' : 'Firm'}
              {pace === revealed.chosen && ' (yours)'}
            </th>
            <td>{formatAim(revealed[pace].aimOffset ?? 0, units)}</td>
            <td>{putts === undefined ? '…' : putts[pace].toFixed(3)}</td>
            <td>{putts === undefined ? '…' : paceMargin(pace, putts)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

const SlopeFigures = ({ revealed: { truth, guess } }: Of<RevealedSlope>) => (
  <table>
    <thead>
      <tr>
        <th scope="col">Slope</th>
        <th scope="col">of the ground</th>
        <th scope="col">along the line</th>
      </tr>
    </thead>
    <tbody>
      <tr>
        <th scope="row">Yours</th>
        <td>{formatSlope(guess.total)}</td>
        <td>{alongWords(guess.along)}</td>
      </tr>
      <tr>
        <th scope="row">True</th>
        <td>{formatSlope(truth.total)}</td>
        <td>{alongWords(truth.along)}</td>
      </tr>
      <tr>
        <th scope="row">Error, points</th>
        <td>{slopePoints(guess.total - truth.total)}</td>
        <td>{slopePoints(guess.along - truth.along)}</td>
      </tr>
    </tbody>
  </table>
);

const MEANING: Readonly<Record<Revealed['kind'], string>> = {
  aim: 'Break here is the aim offset: how far beside the hole centre the start line passes. Your line is rolled at the speed of the true one. The cost counts your start-line and pace errors from the deciding screen, without any error of reading. Left out: grain, wind, bumps, spin.',
  paces:
    'Putts are all you are expected to need, with your errors of line, pace and reading from the deciding screen, later putts played as well as you can. Left out: grain, wind, bumps, spin.',
  slope:
    'Slope is rise over run; a point is one percent. Along the line, plus in the error is too much uphill. The line drawn is the one for this pace.',
};

export interface FiguresProps {
  readonly asked: Asked;
  readonly revealed: Revealed;
  readonly units: Units;
}

export const Figures = ({ asked, revealed, units }: FiguresProps) => (
  <section class="card read-panel" aria-label="Figures" data-testid="figures">
    {revealed.kind === 'aim' ? (
      <AimFigures asked={asked} revealed={revealed} units={units} />
    ) : revealed.kind === 'paces' ? (
      <PaceFigures asked={asked} revealed={revealed} units={units} />
    ) : (
      <SlopeFigures asked={asked} revealed={revealed} units={units} />
    )}
    <Given asked={asked} units={units} all />
    <p class="hint">{MEANING[revealed.kind]}</p>
  </section>
);
