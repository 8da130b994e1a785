/** Chances of each number holed: the player's as bars, the benchmark's as open dots, the actual number marked. Data to marks only. */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { countAxis, finishChart, percentTick, shareFrame } from './finish.ts';

export interface CountsPlotData {
  readonly counts: readonly {
    readonly holed: number;
    readonly player: number;
    readonly benchmark: number;
  }[];
  readonly actual: number;
  /** Beside the mark: "you: 2". */
  readonly actualWords: string;
}

export const countsPlot: Draw<CountsPlotData> = (data, size) => {
  const first = data.counts[0]?.holed ?? 0;
  const last = data.counts.at(-1)?.holed ?? 1;
  const mark = [{ holed: data.actual, words: data.actualWords }];
  const top = 1.1 * Math.max(0.05, ...data.counts.flatMap(({ player, benchmark }) => [player, benchmark]));
  const right = data.actual > (first + last) / 2;
  const chart = Plot.plot({
    ...shareFrame(size),
    x: countAxis('putts holed', [first, last], size.width),
    y: { label: null, tickFormat: percentTick, ticks: 4, domain: [0, top] },
    marks: [
      Plot.rectY(data.counts, {
        x1: ({ holed }: { holed: number }) => holed - 0.36,
        x2: ({ holed }: { holed: number }) => holed + 0.36,
        y: 'player',
        fill: 'var(--ink)',
        fillOpacity: ({ holed }: { holed: number }) => (holed === data.actual ? 0.62 : 0.3),
      }),
      Plot.ruleY([0], { stroke: 'var(--soft)' }),
      Plot.dot(data.counts, {
        x: 'holed',
        y: 'benchmark',
        r: 4,
        stroke: 'var(--putts)',
        strokeWidth: 2,
        fill: 'var(--card)',
      }),
      Plot.ruleX(mark, { x: 'holed', stroke: 'var(--ink)', strokeWidth: 1.5, strokeDasharray: '2 3' }),
      Plot.text(mark, {
        x: 'holed',
        text: 'words',
        frameAnchor: 'top',
        dy: -16,
        dx: right ? 4 : -4,
        textAnchor: right ? 'end' : 'start',
        fontSize: 13,
        fontStyle: 'italic',
        fill: 'var(--ink)',
      }),
    ],
  });
  return finishChart(chart, size.title);
};
