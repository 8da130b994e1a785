/**
 * Values with their intervals, one line for each, and what they are measured against as an upright stroke. Data to marks only. An
 * interval is drawn as wide as it is.
 */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { acrossAxis, chartFrame, finishChart, percentTick, ticksFor } from './finish.ts';
import type { IntervalPlotData } from './intervalData.ts';

const pointsTick = (change: number): string =>
  `${change > 0 ? '+' : change < 0 ? '−' : ''}${Math.abs(Math.round(change * 1000) / 10)}`;

const strokesTick = (strokes: number): string =>
  `${strokes < 0 ? '−' : ''}${Number(Math.abs(strokes).toFixed(2))}`;
const TICKS = { share: percentTick, points: pointsTick, strokes: strokesTick } as const;

export const intervalPlot: Draw<IntervalPlotData> = (data, size) => {
  const ink = 'var(--ink)';
  const marked = data.rows.filter(({ against }) => against !== undefined);
  const chart = Plot.plot({
    ...chartFrame(size, 6),
    marginLeft: data.nameWidth ?? 92,
    marginRight: 74,
    x: {
      ...acrossAxis(data.label, ticksFor(size.width, [4, 6]), [data.from, data.to]),
      tickFormat: TICKS[data.scale],
    },
    y: { label: null, domain: data.rows.map(({ name }) => name), tickSize: 0 },
    marks: [
      ...(data.from < 0 ? [Plot.ruleX([0], { stroke: 'var(--soft)' })] : []),
      Plot.ruleY(data.rows, { y: 'name', x1: 'low', x2: 'high', stroke: ink, strokeWidth: 2, clip: true }),
      Plot.tickX(marked, {
        x: 'against',
        y: 'name',
        stroke: 'var(--putts)',
        strokeWidth: 3,
        insetTop: 4,
        insetBottom: 4,
      }),
      Plot.dot(data.rows, {
        x: 'value',
        y: 'name',
        symbol: 'square',
        r: 4.5,
        fill: 'var(--card)',
        stroke: ink,
        strokeWidth: 2,
      }),
      Plot.text(data.rows, {
        y: 'name',
        frameAnchor: 'right',
        dx: 70,
        text: 'note',
        textAnchor: 'end',
        fill: 'var(--soft)',
      }),
    ],
  });
  return finishChart(chart, size.title);
};
