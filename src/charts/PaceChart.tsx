/** The chart of chances against pace. Leaves out: when it is drawn, its table and files (ChartFigure.tsx). */
import { useMemo } from 'preact/hooks';
import { formatPercent, formatShort } from '../text/format.ts';
import { ChartFigure } from './ChartFigure.tsx';
import { type PaceChartInput, paceChartData } from './paceData.ts';

export interface PaceChartProps extends PaceChartInput {
  readonly stale: boolean;
}

const titleOf = (input: PaceChartInput): string => {
  const best =
    input.best === undefined ? '' : ` Fewest putts at ${formatShort(input.best, input.units)} past.`;
  return `Holed and three-putt share against pace; die at ${formatShort(input.die, input.units)}, firm at ${formatShort(input.firm, input.units)} past the hole.${best}`;
};

const load = () => import('./pacePlot.ts').then(({ pacePlot }) => pacePlot);

export const PaceChart = ({ stale, ...input }: PaceChartProps) => {
  const { comparison, die, firm, best, units } = input;
  const data = useMemo(() => paceChartData(input), [comparison, die, firm, best, units]);
  return (
    <ChartFigure
      id="chart"
      heading="Pace"
      title={titleOf(input)}
      load={load}
      data={data}
      stale={stale}
      fileName="borrow-pace"
      table={{
        head: ['past the hole', 'holed', 'three putts'],
        rows: data.points.map(({ metres, holed, threePutt }) => [
          formatShort(metres, units),
          formatPercent(holed, 1),
          formatPercent(threePutt, 1),
        ]),
      }}
    />
  );
};
