/** Reading over the months: the answer in a sentence, then every period with its margin. */
import { useMemo } from 'preact/hooks';
import { FEWEST_READS } from '../../../sim/index.ts';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import { type IntervalPlotData, intervalHeight } from '../../charts/intervalData.ts';
import { units as ownUnits } from '../../state/settings.ts';
import type { KeptSet } from '../../store/schema.ts';
import { type DatedProgress, progressOf } from './periods.ts';
import {
  marginWords,
  PROGRESS_MEANING,
  progressDetail,
  progressHeadline,
  progressRow,
  spanName,
} from './progressWords.ts';

const load = () => import('../../charts/intervalPlot.ts').then(({ intervalPlot }) => intervalPlot);

/** The axis ends here at least, share: half the break off is much. */
const LEAST = 0.5;
/** And at most: wider intervals run off the edge. */
const MOST = 1.5;

const chartOf = ({ spans, progress }: DatedProgress): IntervalPlotData => {
  const rows = progress.periods
    .flatMap(({ error, plainError, count }, index) =>
      error === undefined
        ? []
        : [
            {
              name: spanName(spans[index]),
              ...error,
              ...(plainError === undefined ? {} : { against: plainError }),
              note: `${count} reads`,
            },
          ],
    )
    .reverse();
  return {
    rows,
    from: 0,
    to: Math.min(MOST, Math.max(LEAST, ...rows.map(({ high }) => high))),
    scale: 'share',
    label: 'typical error, share of the break; upright: as the putts were',
  };
};

export const ProgressCard = ({ sets, ready }: { sets: readonly KeptSet[]; ready: boolean }) => {
  const dated = useMemo(() => progressOf(sets, Date.now()), [sets]);
  const data = useMemo(() => chartOf(dated), [dated]);
  const units = ownUnits.value;
  const { spans, progress } = dated;
  if (!ready || data.rows.length === 0)
    return (
      <section class="card" aria-labelledby="progress-title" data-testid="progress">
        <h2 id="progress-title">Better, or easier questions?</h2>
        <p class="quiet">
          {ready
            ? `Progress shows from ${FEWEST_READS} reads in a month on, corrected for how hard the questions were.`
            : 'Looking up your records…'}
        </p>
      </section>
    );
  return (
    <div data-testid="progress">
      <ChartFigure
        id="progress"
        heading="Better, or easier questions?"
        title={`Typical error of the read by month, as a share of the break: ${progress.periods
          .flatMap(({ error }, index) =>
            error === undefined ? [] : [`${spanName(spans[index])} ${marginWords(error)}`],
          )
          .join('; ')}. Bars are 95% intervals.`}
        load={load}
        data={data}
        height={intervalHeight(data.rows.length)}
        fileName="borrow-reading"
        table={{
          head: ['period', 'reads', 'typical error', 'bias', 'spread', 'as the putts were', 'mean break'],
          rows: progress.periods
            .flatMap((period, index) =>
              period.count === 0 ? [] : [progressRow(spanName(spans[index]), period, units)],
            )
            .reverse(),
        }}
        after={<p class="quiet">{PROGRESS_MEANING}</p>}
      >
        <p class="review-answer" data-testid="progress-answer">
          {progressHeadline(progress.change)}
        </p>
        <p>{progressDetail(progress.change, FEWEST_READS)}</p>
      </ChartFigure>
    </div>
  );
};
