/** Strokes gained: rounds as dots, their running mean as a line with its band. Data to marks only. */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { acrossAxis, chartFrame, finishChart, ticksFor, wholeTick } from './finish.ts';

export interface GainedPlotData {
  readonly rounds: readonly { readonly number: number; readonly gained: number }[];
  readonly running: readonly {
    readonly number: number;
    readonly value: number;
    readonly low: number;
    readonly high: number;
  }[];
  /** Ends of both axes. */
  readonly first: number;
  readonly last: number;
  readonly least: number;
  readonly most: number;
}

const signedTick = (strokes: number): string =>
  strokes > 0 ? `+${strokes}` : strokes < 0 ? `−${-strokes}` : '0';

export const gainedPlot: Draw<GainedPlotData> = (data, size) => {
  const ink = 'var(--ink)';
  const many = data.rounds.length > 80;
  const ticks = Math.min(data.last - data.first + 1, ticksFor(size.width, [5, 10]));
  const chart = Plot.plot({
    ...chartFrame(size, 14),
    x: {
      ...acrossAxis('round, oldest first', ticks, [data.first - 0.5, data.last + 0.5]),
      tickFormat: wholeTick,
    },
    y: { label: null, tickFormat: signedTick, ticks: 6, domain: [data.least, data.most] },
    marks: [
      Plot.ruleY([0], { stroke: 'var(--soft)' }),
      Plot.areaY(data.running, {
        x: 'number',
        y1: 'low',
        y2: 'high',
        fill: ink,
        fillOpacity: 0.13,
        clip: true,
      }),
      Plot.dot(data.rounds, {
        x: 'number',
        y: 'gained',
        r: many ? 1.8 : 3.5,
        fill: many ? 'var(--soft)' : 'var(--card)',
        stroke: 'var(--soft)',
        strokeWidth: many ? 0 : 1.5,
      }),
      Plot.line(data.running, { x: 'number', y: 'value', stroke: ink, strokeWidth: 2, clip: true }),
    ],
  });
  return finishChart(chart, size.title);
};
