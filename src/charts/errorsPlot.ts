/**
 * Errors after a record beside what was thought before: a broad grey bar before, a line with a square in it after, each row over an axis of
 * its own. Data to marks only.
 */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import type { ErrorsPlotData } from './errorsData.ts';
import { CHART_STYLE, finishChart } from './finish.ts';

/** Narrower than this there is no room for values at the right end, CSS pixels. */
const NOTES_FROM = 430;
/** Where a row's axis lies below its bar, CSS pixels. */
const AXIS = 15;

export const errorsPlot: Draw<ErrorsPlotData> = ({ rows, ticks, zeros }, { width, height, title }) => {
  const ink = 'var(--ink)';
  const notes = width >= NOTES_FROM;
  const chart = Plot.plot({
    width,
    height,
    marginLeft: 132,
    marginRight: notes ? 96 : 16,
    marginTop: 2,
    marginBottom: 6,
    style: CHART_STYLE,
    x: { axis: null, domain: [0, 1] },
    y: { label: null, domain: rows.map(({ name }) => name), tickSize: 0, padding: 0 },
    ariaLabel: title,
    marks: [
      Plot.ruleY(rows, { y: 'name', x1: 0, x2: 1, stroke: 'var(--edge)', dy: AXIS }),
      Plot.tickX(ticks, {
        x: 'at',
        y: 'name',
        stroke: 'var(--soft)',
        dy: AXIS,
        insetTop: 26,
        insetBottom: 26,
      }),
      Plot.text(ticks, {
        x: 'at',
        y: 'name',
        text: 'label',
        fill: 'var(--soft)',
        fontSize: 10.5,
        dy: AXIS + 9,
      }),
      Plot.ruleY(rows, {
        y: 'name',
        x1: 'beforeLow',
        x2: 'beforeHigh',
        stroke: 'var(--soft)',
        strokeOpacity: 0.32,
        strokeWidth: 13,
      }),
      Plot.tickX(zeros, { x: 'at', y: 'name', stroke: 'var(--soft)', insetTop: 16, insetBottom: 16 }),
      Plot.ruleY(rows, { y: 'name', x1: 'low', x2: 'high', stroke: ink, strokeWidth: 2.5 }),
      Plot.dot(rows, {
        x: 'value',
        y: 'name',
        symbol: 'square',
        r: 4.5,
        fill: 'var(--card)',
        stroke: ink,
        strokeWidth: 2,
      }),
      ...(notes
        ? [
            Plot.text(rows, {
              y: 'name',
              frameAnchor: 'right',
              dx: 94,
              text: 'note',
              textAnchor: 'end',
              fill: 'var(--soft)',
            }),
          ]
        : []),
    ],
  });
  return finishChart(chart, title);
};
