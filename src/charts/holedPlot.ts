/**
 * Share holed against distance: bands as points with their whiskers, the player's curve with its band, the benchmark's curve. Data to
 * marks only. Points are squares that span their band; curves are lines, the benchmark's dashed: no one needs the colours.
 */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { acrossAxis, chartFrame, finishChart, shareAxis, ticksFor } from './finish.ts';

export interface HoledPlotData {
  /** "distance (ft)" */
  readonly distanceLabel: string;
  /** End of the distance axis; all distances in its unit. */
  readonly far: number;
  readonly points: readonly {
    readonly from: number;
    /** At most `far`. */
    readonly to: number;
    readonly middle: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
    /** Putts, written above the whisker. */
    readonly count: string;
  }[];
  readonly curve: readonly {
    readonly distance: number;
    readonly mean: number;
    readonly low: number;
    readonly high: number;
  }[];
  readonly benchmark: readonly { readonly distance: number; readonly share: number }[];
}

export const holedPlot: Draw<HoledPlotData> = (data, size) => {
  const ink = 'var(--ink)';
  const chart = Plot.plot({
    ...chartFrame(size, 22),
    x: acrossAxis(data.distanceLabel, ticksFor(size.width, [6, 12]), [0, data.far]),
    y: shareAxis(1, 5),
    marks: [
      Plot.ruleY([0], { stroke: 'var(--edge)' }),
      Plot.areaY(data.curve, {
        x: 'distance',
        y1: 'low',
        y2: 'high',
        curve: 'monotone-x',
        fill: ink,
        fillOpacity: 0.13,
        clip: true,
      }),
      Plot.line(data.benchmark, {
        x: 'distance',
        y: 'share',
        curve: 'monotone-x',
        stroke: 'var(--putts)',
        strokeWidth: 2,
        strokeDasharray: '7 4',
        clip: true,
      }),
      Plot.line(data.curve, {
        x: 'distance',
        y: 'mean',
        curve: 'monotone-x',
        stroke: ink,
        strokeWidth: 2,
        clip: true,
      }),
      Plot.ruleY(data.points, { y: 'share', x1: 'from', x2: 'to', stroke: ink, strokeWidth: 1 }),
      Plot.ruleX(data.points, { x: 'middle', y1: 'low', y2: 'high', stroke: ink, strokeWidth: 1.5 }),
      Plot.dot(data.points, {
        x: 'middle',
        y: 'share',
        symbol: 'square',
        r: 4.5,
        fill: 'var(--card)',
        stroke: ink,
        strokeWidth: 2,
      }),
      Plot.text(data.points, {
        x: 'middle',
        y: 'high',
        text: 'count',
        dy: -8,
        fill: 'var(--soft)',
        stroke: 'var(--card)',
        strokeWidth: 3,
      }),
    ],
  });
  return finishChart(chart, size.title);
};
