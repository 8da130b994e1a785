/** Sets of the other two questions summed up: what the chosen paces cost; sign and spread of the slopes. */
import type { SlopeErrors } from '../../../sim/index.ts';
import { answeredOf, type KeptSet } from '../../store/schema.ts';
import { formatLength, type Units } from '../../text/format.ts';
import { paceSummaryOf, slopeSummaryOf } from './headlines.ts';
import { paceMargin, paceSummarySentence } from './paceWords.ts';
import { pointsRange, pointsSize, slopePoints, slopeSummarySentence } from './slopeWords.ts';

export const PaceSummaryView = ({ set, units }: { set: KeptSet; units: Units }) => {
  const summary = paceSummaryOf(set);
  return (
    <>
      {summary && <p>{paceSummarySentence(summary)}</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
      <section class="scroll" tabIndex={0} aria-label="Your choices">
        <table class="read-kinds">
          <thead>
            <tr>
              <th scope="col">Putt</th>
              <th scope="col">You chose</th>
              <th scope="col">Than the other, putts</th>
            </tr>
          </thead>
          <tbody>
            {answeredOf(set, 'paces').map(({ number, question, chosen, putts }) => (
              <tr key={number}>
                <th scope="row">
                  {number}: {formatLength(question.length, units)}
                  {question.climb === 'level' ? ', level' : `, ${question.climb}hill`}
                </th>
                <td>{chosen}</td>
                <td>{putts === undefined ? 'not worked out' : paceMargin(chosen, putts)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="quiet">
        Plus: your pace takes more putts than the other one would have, with your errors from the deciding
        screen. Only that is given away; a choice between two that are nearly alike costs next to nothing.
      </p>
    </>
  );
};

const SlopeRow = ({ name, errors }: { name: string; errors: SlopeErrors }) => (
  <tr>
    <th scope="row">{name}</th>
    <td>{slopePoints(errors.bias.value)}</td>
    <td>{pointsRange(errors.bias, slopePoints)}</td>
    <td>{errors.spread === undefined ? 'none' : pointsSize(errors.spread.value)}</td>
    <td>{errors.spread === undefined ? 'no margin yet' : pointsRange(errors.spread, pointsSize)}</td>
  </tr>
);

export const SlopeSummaryView = ({ set }: { set: KeptSet }) => {
  const summary = slopeSummaryOf(set);
  return (
    <>
      {summary && (
        <>
          <p>{slopeSummarySentence(summary)}</p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
          <section class="scroll" tabIndex={0} aria-label="Errors of your slopes">
            <table class="read-kinds">
              <thead>
                <tr>
                  <th scope="col">Slope, points</th>
                  <th scope="col">Bias</th>
                  <th scope="col">95% interval</th>
                  <th scope="col">Spread</th>
                  <th scope="col">95% interval</th>
                </tr>
              </thead>
              <tbody>
                <SlopeRow name="Of the ground" errors={summary.total} />
                <SlopeRow name="Along the line" errors={summary.along} />
              </tbody>
            </table>
          </section>
        </>
      )}
      <p class="quiet">
        Bias is the mean error, plus for too steep or, along the line, too much uphill; spread is the standard
        deviation about it. A point is one percent of slope. One interval in twenty misses the truth by
        chance.
      </p>
    </>
  );
};
