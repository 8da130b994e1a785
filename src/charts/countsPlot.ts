/** Chances of each number holed: the player's as bars, the benchmark's as open dots, the actual number marked. Data to marks only. */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { countBars, countFrame, ruledCount } from './countBars.ts';
import { finishChart } from './finish.ts';

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

export const countsPlot: Draw<CountsPlotData> = ({ counts, actual, actualWords }, size) => {
  const ends = [counts[0]?.holed ?? 0, counts.at(-1)?.holed ?? 1] as const;
  const chances = counts.flatMap(({ player, benchmark }) => [player, benchmark]);
  const chart = Plot.plot({
    ...countFrame(size, 'putts holed', ends, chances),
    marks: [
      ...countBars(
        counts.map(({ holed, player }) => ({ count: holed, chance: player, dark: holed === actual })),
      ),
      Plot.dot(counts, {
        x: 'holed',
        y: 'benchmark',
        r: 4,
        stroke: 'var(--putts)',
        strokeWidth: 2,
        fill: 'var(--card)',
      }),
      ...ruledCount({ count: actual, words: actualWords }, ends),
    ],
  });
  return finishChart(chart, size.title);
};
