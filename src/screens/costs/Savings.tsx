/** What each step saves: chart with intervals, the same by distance as a table. */
import { useComputed } from '@preact/signals';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import { type IntervalPlotData, intervalHeight } from '../../charts/intervalData.ts';
import { type CostView, view } from '../../state/costs/answer.ts';
import { costJob } from '../../state/costs/work.ts';
import { units } from '../../state/settings.ts';
import { costHeadline, honest, partWords, STEP_WORDS, savedWords } from '../../text/costs.ts';
import { bandName } from '../../text/phrases.ts';

const load = () => import('../../charts/intervalPlot.ts').then(({ intervalPlot }) => intervalPlot);

/** Room for the longest name, CSS pixels. */
const NAMES = 140;
const LEAST = 0.1;

const chartOf = ({ ranked }: CostView): IntervalPlotData => {
  const rows = ranked.map(({ step, saved }) => ({
    name: STEP_WORDS[step].name,
    ...honest(saved),
    note: saved.value.toFixed(2).replace('-', '−'),
  }));
  return {
    rows,
    from: Math.min(0, ...rows.map(({ low }) => low)),
    to: Math.max(LEAST, ...rows.map(({ high }) => high)),
    scale: 'strokes',
    label: 'strokes saved a round',
    nameWidth: NAMES,
  };
};

export const Savings = () => {
  const data = useComputed(() => view.value && chartOf(view.value));
  const found = view.value;
  if (found === undefined || data.value === undefined) return null;
  const now = units.value;
  return (
    <ChartFigure
      id="savings"
      heading="What each step saves"
      title={`Strokes a round saved by each step, with intervals. ${costHeadline(found.ranked, found.lead)}`}
      load={load}
      data={data.value}
      height={intervalHeight(data.value.rows.length)}
      stale={costJob.behind.value}
      fileName="borrow-what-it-costs"
      table={{
        head: [
          'step',
          'strokes saved a round',
          ...found.costs.bands.map(({ band }) => `first putts ${bandName(band, now)}`),
        ],
        rows: found.ranked.map(({ step, saved, byBand }) => [
          STEP_WORDS[step].name,
          savedWords(saved),
          ...byBand.map((part) => partWords(part)),
        ]),
      }}
    >
      <p class="quiet">
        One thing changed at a time, all else as it is. A tenth off is taken for about the same effort in
        each; that is our assumption, not a measurement.
      </p>
    </ChartFigure>
  );
};
