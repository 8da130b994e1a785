/** Where misses finish and which way they lean: sentence, chart of intervals, leaves by band, what the player said of the stroke. */
import { useComputed } from '@preact/signals';
import { LEAN_KINDS, type Proportion } from '../../../sim/index.ts';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import { type IntervalPlotData, intervalHeight } from '../../charts/intervalData.ts';
import { units } from '../../state/settings.ts';
import { formatLeave, formatPercent, formatSpan } from '../../text/format.ts';
import { bandName, rangeWords } from '../../text/phrases.ts';
import type { MissesView } from './misses.ts';
import {
  LEAN_MEANING,
  leanName,
  leanWords,
  MEANT_WORDS,
  missesHeadline,
  SHORT_MEANING,
} from './missesWords.ts';
import { review } from './state.ts';

const load = () => import('../../charts/intervalPlot.ts').then(({ intervalPlot }) => intervalPlot);

const chartOf = ({ leans }: MissesView): IntervalPlotData => ({
  rows: LEAN_KINDS.flatMap((kind) => {
    const { value, low, high, hits, tries } = leans[kind].share;
    const name = leanName(kind).replace(/, of .*/, '');
    return value === undefined ? [] : [{ name, value, low, high, against: 0.5, note: `${hits} of ${tries}` }];
  }),
  from: 0,
  to: 1,
  scale: 'share',
  label: 'share of misses; the rest low, right, past',
});

const ShareCell = ({ share: { value, low, high } }: { share: Proportion }) => (
  <td>
    {value === undefined ? 'none' : formatPercent(value, 0)}
    {value !== undefined && <small>{rangeWords(low, high)}</small>}
  </td>
);

const LeavesTable = ({ view }: { view: MissesView }) => {
  const now = units.value;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too
    <section class="scroll" tabIndex={0} aria-label="Leaves by distance of the putt">
      <table class="review-table">
        <thead>
          <tr>
            <th scope="col">putt from</th>
            <th scope="col">misses</th>
            <th scope="col">
              leave<small>middle half</small>
            </th>
            <th scope="col">short</th>
            <th scope="col">high</th>
          </tr>
        </thead>
        <tbody>
          {view.rows.map(({ band, leaves, short, high }) => (
            <tr key={band.from}>
              <th scope="row">{bandName(band, now)}</th>
              <td>{leaves.misses}</td>
              <td>
                {leaves.leave === undefined ? 'none' : formatLeave(leaves.leave.median, now)}
                {leaves.leave && <small>{formatSpan(leaves.leave.lower, leaves.leave.upper, now)}</small>}
              </td>
              <ShareCell share={short} />
              <ShareCell share={high} />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

const MeantTable = ({ view }: { view: MissesView }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too
  <section class="scroll" tabIndex={0} aria-label="Misses by what you said of the stroke">
    <table class="review-table">
      <thead>
        <tr>
          <th scope="col">you said</th>
          <th scope="col">misses</th>
          <th scope="col">high</th>
          <th scope="col">low</th>
          <th scope="col">short</th>
          <th scope="col">past</th>
        </tr>
      </thead>
      <tbody>
        {view.asMeant.map(({ kind, misses, high, low, short, past }) => (
          <tr key={kind}>
            <th scope="row">{MEANT_WORDS[kind]}</th>
            <td>{misses}</td>
            <td>{high}</td>
            <td>{low}</td>
            <td>{short}</td>
            <td>{past}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

export const MissesSection = () => {
  const data = useComputed(() => chartOf(review.misses.value));
  const view = review.misses.value;
  const leans = LEAN_KINDS.map((kind) => leanWords(kind, view.leans[kind]));
  return (
    <ChartFigure
      id="misses"
      heading="Leaves and leans"
      title={`${leans.join(' ')} Bars are 95% intervals; upright strokes: an even coin.`}
      load={load}
      data={data.value}
      height={intervalHeight(data.value.rows.length)}
      fileName="borrow-misses"
      table={{
        head: ['way', 'went so', 'of', 'share', '95% interval'],
        rows: LEAN_KINDS.map((kind) => {
          const { value, low, high, hits, tries } = view.leans[kind].share;
          return [
            leanName(kind),
            String(hits),
            String(tries),
            value === undefined ? 'none' : formatPercent(value),
            value === undefined ? 'none' : rangeWords(low, high),
          ];
        }),
      }}
      after={
        <>
          <LeavesTable view={view} />
          <p class="quiet">{SHORT_MEANING}</p>
          <p class="quiet">{LEAN_MEANING}</p>
          <MeantTable view={view} />
        </>
      }
    >
      <p class="review-answer" data-testid="misses-answer">
        {missesHeadline(view, units.value)}
      </p>
      <ul class="review-list">
        {leans.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </ChartFigure>
  );
};
