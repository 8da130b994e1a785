/**
 * Holed and three-putt share against pace, in the map's own ink. Loaded on demand: it brings the chart library.
 * Data to marks only; colours come from the page's css names so both themes work.
 */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { acrossAxis, chartFrame, finishChart, shareAxis } from './finish.ts';
import type { PaceChartData } from './paceData.ts';

export const pacePlot: Draw<PaceChartData> = (data, size) => {
  const ink = 'var(--ink)';
  const last = data.points[data.points.length - 1];
  const chart = Plot.plot({
    ...chartFrame(size),
    x: acrossAxis(data.paceLabel, 6, [0, last ? last.pace : 1]),
    y: shareAxis(data.top),
    marks: [
      Plot.ruleY([0], { stroke: 'var(--edge)' }),
      Plot.ruleX([data.die], { stroke: 'var(--die)', strokeWidth: 1.5, strokeDasharray: '5 3' }),
      Plot.ruleX([data.firm], { stroke: 'var(--firm)', strokeWidth: 1.5 }),
      ...(data.best === undefined
        ? []
        : [Plot.ruleX([data.best], { stroke: ink, strokeWidth: 1, strokeDasharray: '1 3' })]),
      Plot.line(data.points, { x: 'pace', y: 'holed', stroke: ink, strokeWidth: 2 }),
      Plot.line(data.points, {
        x: 'pace',
        y: 'threePutt',
        stroke: ink,
        strokeWidth: 2,
        strokeDasharray: '2 4',
      }),
      ...data.labels.map((label) =>
        Plot.text([label], {
          x: 'pace',
          y: 'share',
          text: 'words',
          dy: -13,
          fill: ink,
          stroke: 'var(--card)',
          strokeWidth: 4,
          textAnchor: label.anchor,
          fontSize: 13,
        }),
      ),
      Plot.text(data.marks, {
        x: 'pace',
        text: 'words',
        frameAnchor: 'top',
        dy: -14,
        fontSize: 13,
        fontStyle: 'italic',
        fill: (mark: { name: string }) => `var(--${mark.name === 'best' ? 'ink' : mark.name})`,
        textAnchor: 'middle',
      }),
    ],
  });
  return finishChart(chart, size.title);
};
