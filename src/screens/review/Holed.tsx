/** Holed by distance: sentence, chart, table. */
import { useComputed } from '@preact/signals';
import { metresToFeet } from '../../../sim/index.ts';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import type { HoledPlotData } from '../../charts/holedPlot.ts';
import { units } from '../../state/settings.ts';
import { formatPercent, type Units } from '../../text/format.ts';
import { bandName, formatCount, rangeWords } from '../../text/phrases.ts';
import type { HoledView } from './holed.ts';
import { besideWords, curveWords, holedDetail, holedHeadline, holedTitle } from './holedWords.ts';
import { review } from './state.ts';

const load = () => import('../../charts/holedPlot.ts').then(({ holedPlot }) => holedPlot);

/** Where the chart ends, in its own unit: a little beyond the last band's beginning, or where the putts are. */
const FAR: Readonly<Record<Units, number>> = { imperial: 50, metric: 15 };

const chartOf = (view: HoledView, now: Units): HoledPlotData => {
  const shown = (metres: number): number => (now === 'imperial' ? metresToFeet(metres) : metres);
  const far = FAR[now];
  return {
    distanceLabel: `distance (${now === 'imperial' ? 'ft' : 'm'})`,
    far,
    points: view.rows.flatMap(({ band, holed, middle }) =>
      middle === undefined || holed.value === undefined
        ? []
        : [
            {
              from: shown(band.from),
              to: Math.min(far, shown(band.to)),
              middle: Math.min(far, shown(middle)),
              share: holed.value,
              low: holed.low,
              high: holed.high,
              count: formatCount(holed.tries),
            },
          ],
    ),
    curve: view.curve.map((one) => ({ ...one, distance: shown(one.distance) })),
    benchmark: view.benchmarkCurve.map(({ distance, share }) => ({ distance: shown(distance), share })),
  };
};

const percentOrNone = (share: number | undefined): string =>
  share === undefined ? 'none' : formatPercent(share);

export const HoledSection = () => {
  const data = useComputed(() => chartOf(review.holed.value, units.value));
  const view = review.holed.value;
  const { name } = review.benchmark.value;
  const now = units.value;
  return (
    <ChartFigure
      id="holed"
      heading="Holed by distance"
      title={holedTitle(view, name, now)}
      load={load}
      data={data.value}
      height={300}
      fileName="borrow-holed"
      table={{
        head: ['from', 'putts', 'holed', 'share', '95% interval', name, 'says'],
        rows: view.rows.map(({ band, holed, expectedShare, ...row }) => [
          bandName(band, now),
          String(holed.tries),
          String(holed.hits),
          percentOrNone(holed.value),
          holed.value === undefined ? 'none' : rangeWords(holed.low, holed.high),
          percentOrNone(expectedShare),
          besideWords(row),
        ]),
      }}
    >
      <p class="review-answer" data-testid="holed-answer">
        {holedHeadline(view, name, now)}
      </p>
      <p class="quiet">
        {holedDetail(view, now)} {curveWords(view, name)}
      </p>
      <ul class="keys review-keys">
        <li>
          <svg viewBox="0 0 28 14" aria-hidden="true">
            <path class="ink-line" d="M14 1v12M1 7h26" />
            <rect class="point" x="10" y="3" width="8" height="8" />
          </svg>
          your putts from each band, how many, 95%
        </li>
        <li>
          <svg viewBox="0 0 28 14" aria-hidden="true">
            <rect class="band" width="28" height="14" />
            <path class="ink-line thick" d="M0 7h28" />
          </svg>
          your curve and its 95%
        </li>
        <li>
          <svg viewBox="0 0 28 14" aria-hidden="true">
            <path class="benchmark-line" d="M0 7h28" />
          </svg>
          {name}
        </li>
      </ul>
    </ChartFigure>
  );
};
