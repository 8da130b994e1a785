/** Chances of each score of a drill as bars, those that pass dark, the pass mark ruled. Data to marks only. */
import * as Plot from '@observablehq/plot';
import type { Draw } from './ChartFigure.tsx';
import { countBars, countFrame, ruledCount } from './countBars.ts';
import { finishChart } from './finish.ts';

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
  const ends = [first, last] as const;
  const bars = seen.map(({ score, chance, passes }) => ({ count: score, chance, dark: passes }));
  const chart = Plot.plot({
    ...countFrame(
      size,
      'score',
      ends,
      bars.map(({ chance }) => chance),
    ),
    marks: [...countBars(bars), ...ruledCount({ count: mark, words: `pass mark ${mark}` }, ends)],
  });
  return finishChart(chart, size.title);
};
