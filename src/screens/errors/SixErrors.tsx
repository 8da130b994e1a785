/** The six errors: chart of ranges after the record beside those before, table, one sentence for each. */
import { ERRORS } from '../../../sim/index.ts';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import { errorsHeight } from '../../charts/errorsData.ts';
import { units } from '../../state/settings.ts';
import {
  allToldWords,
  errorRangeWords,
  errorSentence,
  rolledPastWords,
  toldWords,
} from '../../text/errors.ts';
import { formatPercent } from '../../text/format.ts';
import { ERROR_NAMES, ERROR_SCALES, errorWords } from '../../text/player.ts';
import { type ErrorsView, view } from './view.ts';
import { behind } from './work.ts';

const load = () => import('../../charts/errorsPlot.ts').then(({ errorsPlot }) => errorsPlot);

const Key = () => (
  <ul class="keys errors-keys">
    <li>
      <svg viewBox="0 0 36 14" aria-hidden="true">
        <path class="before" d="M0 7h36" />
      </svg>
      before the record
    </li>
    <li>
      <svg viewBox="0 0 36 14" aria-hidden="true">
        <path class="after" d="M0 7h36" />
        <rect class="after" x="14" y="3" width="8" height="8" />
      </svg>
      after it, with the middle
    </li>
  </ul>
);

const Table = ({ answer }: Pick<ErrorsView, 'answer'>) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too
  <section class="scroll" tabIndex={0} aria-label="The six errors with their ranges">
    <table class="errors-table" data-testid="six-errors">
      <thead>
        <tr>
          <th scope="col">error</th>
          <th scope="col">middle</th>
          <th scope="col">range</th>
          <th scope="col">before</th>
          <th scope="col" class="errors-told">
            from the record
          </th>
        </tr>
      </thead>
      <tbody>
        {ERRORS.map((name) => {
          const error = answer.errors[name];
          if (name === 'paceBias' && !answer.pace.intentKnown)
            return (
              <tr key={name}>
                <th scope="row">{ERROR_NAMES[name]}</th>
                <td colSpan={3}>not known: see below</td>
                <td class="errors-told">nothing yet</td>
              </tr>
            );
          return (
            <tr key={name}>
              <th scope="row">{ERROR_NAMES[name]}</th>
              <td>{errorWords(name, error.median)}</td>
              <td>{errorRangeWords(name, error.range90)}</td>
              <td class="quiet">{errorRangeWords(name, error.before90)}</td>
              <td class="errors-told">{toldWords(error)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  </section>
);

const fixed = (value: number): string => String(Number(value.toFixed(2))).replace('-', '−');

export const SixErrors = () => {
  const found = view.value;
  if (found === undefined) return null;
  const { answer, drawn, rows, plot } = found;
  const allTold = allToldWords(answer.errors);
  return (
    <ChartFigure
      id="six-errors"
      heading={found.invented ? 'Their six errors' : 'Your six errors'}
      title={`Ranges of six errors after the record beside those before it. ${rows.map(({ name, note }) => `${name} ${note}`).join('; ')}.`}
      load={load}
      data={plot}
      height={errorsHeight(rows.length)}
      stale={behind.value}
      fileName="borrow-errors"
      table={{
        head: ['error', 'in', 'middle', 'from', 'to', 'before, from', 'before, to', 'from the record'],
        rows: rows.map(({ name, value, low, high, beforeLow, beforeHigh }, i) => [
          name,
          ERROR_SCALES[drawn[i]],
          ...[value, low, high, beforeLow, beforeHigh].map(fixed),
          formatPercent(answer.errors[drawn[i]].told, 0),
        ]),
      }}
      after={
        <>
          {allTold !== undefined && <p>{allTold}</p>}
          <ul class="errors-list" data-testid="error-sentences">
            {ERRORS.map((name) => (
              <li key={name}>
                <strong>{ERROR_NAMES[name]}.</strong>{' '}
                {name === 'paceBias' && !answer.pace.intentKnown
                  ? rolledPastWords(answer.pace.rolledPast, units.value)
                  : errorSentence(name, answer.errors, units.value)}
              </li>
            ))}
          </ul>
        </>
      }
    >
      <Table answer={answer} />
      <Key />
    </ChartFigure>
  );
};
