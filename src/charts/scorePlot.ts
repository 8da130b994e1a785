/** Chances of each score of a drill as bars, those that pass dark, the pass mark ruled. Data to marks only. */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { countAxis, finishChart, percentTick, shareFrame } from './finish.ts';

export interface ScorePlotData {
  readonly scores: readonly { readonly score: number; readonly chance: number; readonly passes: boolean }[];
  /** The least score the drill can give. */
  readonly least: number;
  readonly mark: number;
}

/** Scores rarer than this are left out at the ends: bars too low to be seen. */
const SEEN = 0.001;

export const scorePlot: Draw<ScorePlotData> = ({ scores, least, mark }, size) => {
  const seen = scores.filter(({ score, chance }) => score >= least && chance >= SEEN);
  const first = Math.min(mark, seen[0]?.score ?? least);
  const last = Math.max(mark, seen.at(-1)?.score ?? least);
  const rule = [{ score: mark, words: `pass mark ${mark}` }];
  const right = mark > (first + last) / 2;
  const chart = Plot.plot({
    ...shareFrame(size),
    x: countAxis('score', [first, last], size.width),
    y: {
      label: null,
      tickFormat: percentTick,
      ticks: 4,
      domain: [0, 1.1 * Math.max(0.05, ...seen.map(({ chance }) => chance))],
    },
    marks: [
      Plot.rectY(seen, {
        x1: ({ score }: { score: number }) => score - 0.36,
        x2: ({ score }: { score: number }) => score + 0.36,
        y: 'chance',
        fill: 'var(--ink)',
        fillOpacity: ({ passes }: { passes: boolean }) => (passes ? 0.62 : 0.3),
      }),
      Plot.ruleY([0], { stroke: 'var(--soft)' }),
      Plot.text(rule, {
        x: 'score',
        text: 'words',
        frameAnchor: 'top',
        dy: -16,
        textAnchor: right ? 'end' : 'start',
        fontSize: 13,
        fontStyle: 'italic',
        fill: 'var(--ink)',
      }),
      Plot.ruleX(rule, { x: 'score', stroke: 'var(--ink)', strokeWidth: 1.5, strokeDasharray: '2 3' }),
    ],
  });
  return finishChart(chart, size.title);
};
