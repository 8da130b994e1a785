/** Two periods beside each other: sentence, choice of periods, changes with their intervals. */
import { useComputed } from '@preact/signals';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import { type IntervalPlotData, intervalHeight } from '../../charts/intervalData.ts';
import { Choice } from '../../controls/Choice.tsx';
import { units } from '../../state/settings.ts';
import type { Units } from '../../text/format.ts';
import { bandName, formatPoints, periodWords, plural } from '../../text/phrases.ts';
import { DayField } from './Filters.tsx';
import { review } from './state.ts';
import type { Period, TrendView } from './trend.ts';
import {
  bandTrendWords,
  changeWords,
  shareOfPeriod,
  TREND_MEANING,
  trendDetail,
  trendHeadline,
  trendTitle,
  trendVerdictWords,
} from './trendWords.ts';

const load = () => import('../../charts/intervalPlot.ts').then(({ intervalPlot }) => intervalPlot);

/** Least half width of the axis, share: a change of ten points is seen for what it is. */
const LEAST = 0.1;

const chartOf = (view: TrendView | undefined, now: Units): IntervalPlotData => {
  const rows = (view?.bands ?? []).flatMap(({ band, adjusted, before, after }) =>
    adjusted === undefined || !Number.isFinite(adjusted.low)
      ? []
      : [
          {
            name: bandName(band, now),
            value: adjusted.value,
            low: adjusted.low,
            high: adjusted.high,
            note: `${before.tries}, ${after.tries}`,
          },
        ],
  );
  const reach = Math.max(LEAST, ...rows.flatMap(({ low, high }) => [-low, high]));
  return {
    rows,
    from: -reach,
    to: reach,
    scale: 'points',
    label: 'change in points, adjusted for distance',
  };
};

const PeriodChoice = () => {
  const own = review.ownPeriods.value;
  const suggested = review.suggestedPeriods.value;
  const nothing: Period = { from: '', to: '' };
  const set = (which: 'before' | 'after', change: Partial<Period>): void => {
    const now = review.ownPeriods.peek();
    if (now !== undefined) review.ownPeriods.value = { ...now, [which]: { ...now[which], ...change } };
  };
  return (
    <>
      <Choice
        legend="Compare"
        name="periods"
        showLegend
        value={own === undefined ? 'third' : 'own'}
        options={[
          { value: 'third', label: 'newest third with the rest' },
          { value: 'own', label: 'chosen days' },
        ]}
        onChange={(value) => {
          review.ownPeriods.value =
            value === 'third' ? undefined : (suggested ?? { before: nothing, after: nothing });
        }}
      />
      {own !== undefined && (
        <div class="review-days">
          {(['before', 'after'] as const).flatMap((which) =>
            (['from', 'to'] as const).map((end) => (
              <DayField
                key={`${which}-${end}`}
                id={`trend-${which}-${end}`}
                label={`${which === 'before' ? 'Earlier' : 'Later'}, ${end}`}
                value={own[which][end]}
                onDay={(day) => set(which, { [end]: day })}
              />
            )),
          )}
        </div>
      )}
    </>
  );
};

export const TrendSection = () => {
  const data = useComputed(() => chartOf(review.trend.value, units.value));
  const view = review.trend.value;
  const { name } = review.benchmark.value;
  const now = units.value;
  if (view === undefined)
    return (
      <section class="card" aria-labelledby="trend-title">
        <h2 id="trend-title">Better or worse?</h2>
        <p class="review-answer" data-testid="trend-answer">
          A change needs rounds of two days at least: your record has nothing to compare yet.
        </p>
        <PeriodChoice />
      </section>
    );
  const { periods, rounds, bands } = view;
  return (
    <ChartFigure
      id="trend"
      heading="Better or worse?"
      title={trendTitle(view, now)}
      load={load}
      data={data.value}
      height={intervalHeight(data.value.rows.length)}
      fileName="borrow-trend"
      table={{
        head: ['putts from', 'earlier', 'later', 'change, points', 'adjusted for distance', 'says'],
        rows: bands.map(({ band, before, after, plain, adjusted }) => [
          bandName(band, now),
          shareOfPeriod(before),
          shareOfPeriod(after),
          plain?.value === undefined ? 'none' : changeWords({ ...plain, value: plain.value }, formatPoints),
          changeWords(adjusted, formatPoints),
          adjusted === undefined ? 'nothing to compare' : trendVerdictWords(adjusted.verdict),
        ]),
      }}
      after={
        <>
          <ul class="review-list" data-testid="trend-bands">
            {bands.map((band) => (
              <li key={`${band.band.from} ${band.band.to}`}>{bandTrendWords(band, now)}</li>
            ))}
          </ul>
          <p class="quiet">{TREND_MEANING}</p>
        </>
      }
    >
      <p class="review-answer" data-testid="trend-answer">
        {trendHeadline(view, name)}
      </p>
      <p>
        {trendDetail(view)} Earlier: {periodWords(periods.before)}, {plural(rounds.before, 'round')}; later:{' '}
        {periodWords(periods.after)}, {plural(rounds.after, 'round')}.
      </p>
      <PeriodChoice />
      <p class="quiet">Better to the right; at the end of a line, how many putts earlier and later.</p>
    </ChartFigure>
  );
};
