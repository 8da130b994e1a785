/** Three-putts by the distance of the first putt: sentence, chart, table. */
import { useComputed } from '@preact/signals';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import { type IntervalPlotData, intervalHeight } from '../../charts/intervalData.ts';
import { units } from '../../state/settings.ts';
import { formatPercent, formatPutts, type Units } from '../../text/format.ts';
import { bandName, rangeWords } from '../../text/phrases.ts';
import { besideWords } from './holedWords.ts';
import { threePuttHeadline, threePuttTitle, turningWords } from './missesWords.ts';
import { review } from './state.ts';
import type { ThreePuttView } from './threePutts.ts';

const load = () => import('../../charts/intervalPlot.ts').then(({ intervalPlot }) => intervalPlot);

const chartOf = ({ rows }: ThreePuttView, now: Units): IntervalPlotData => ({
  rows: rows.flatMap(({ band, threePutts: { value, low, high, hits, tries }, expectedShare }) =>
    value === undefined
      ? []
      : [
          {
            name: bandName(band, now),
            value,
            low,
            high,
            against: expectedShare,
            note: `${hits} of ${tries}`,
          },
        ],
  ),
  from: 0,
  to: Math.max(
    0.1,
    ...rows.filter(({ threePutts }) => threePutts.tries > 0).map(({ threePutts }) => threePutts.high),
  ),
  scale: 'share',
  label: 'three putts or more, of holes first putted from there',
});

export const ThreePuttSection = () => {
  const data = useComputed(() => chartOf(review.threePutts.value, units.value));
  const view = review.threePutts.value;
  const { name } = review.benchmark.value;
  const now = units.value;
  return (
    <ChartFigure
      id="three-putts"
      heading="Three-putts"
      title={threePuttTitle(view, name, now)}
      load={load}
      data={data.value}
      height={intervalHeight(data.value.rows.length)}
      fileName="borrow-three-putts"
      table={{
        head: [
          'first putt from',
          'holes',
          'three-putts',
          'share',
          '95% interval',
          name,
          'says',
          'one-putts',
          'mean putts',
        ],
        rows: view.rows.map(({ band, threePutts, onePutts, meanPutts, expectedShare, verdict }) => [
          bandName(band, now),
          String(threePutts.tries),
          String(threePutts.hits),
          threePutts.value === undefined ? 'none' : formatPercent(threePutts.value),
          threePutts.value === undefined ? 'none' : rangeWords(threePutts.low, threePutts.high),
          expectedShare === undefined ? 'none' : formatPercent(expectedShare),
          besideWords({ verdict }),
          `${onePutts.hits} of ${onePutts.tries}`,
          meanPutts === undefined ? 'none' : formatPutts(meanPutts.value),
        ]),
      }}
    >
      <p class="review-answer" data-testid="three-putt-answer">
        {threePuttHeadline(view, name)}
      </p>
      <p data-testid="turning">{turningWords(view, name, now)}</p>
    </ChartFigure>
  );
};
