/**
 * Chances of whole numbers as bars, one number ruled and named: what the charts of a round and of a drill have in common. Data to
 * marks only.
 */
import * as Plot from '@observablehq/plot';
import type { DrawSize } from './ChartFigure.tsx';
import { acrossAxis, chartFrame, shareAxis, ticksFor, wholeTick } from './finish.ts';

/** Half the width of a bar; bars stand 1 apart. */
const HALF_BAR = 0.36;
/** Room at both ends of the axis. */
const ROOM = 0.6;
/** However small the chances, the axis reaches this share. */
const LEAST_TOP = 0.05;

export interface CountBar {
  readonly count: number;
  readonly chance: number;
  readonly dark: boolean;
}

export interface RuledCount {
  readonly count: number;
  readonly words: string;
}

/** Frame and axes. @param chances all that are drawn: the highest fits in */
export const countFrame = (
  size: DrawSize,
  label: string,
  [first, last]: readonly [number, number],
  chances: readonly number[],
) => ({
  ...chartFrame(size),
  x: {
    ...acrossAxis(label, Math.min(last - first + 1, ticksFor(size.width, [8, 16])), [
      first - ROOM,
      last + ROOM,
    ]),
    tickFormat: wholeTick,
  },
  y: shareAxis(1.1 * Math.max(LEAST_TOP, ...chances)),
});

export const countBars = (bars: readonly CountBar[]) => [
  Plot.rectY(bars, {
    x1: ({ count }: CountBar) => count - HALF_BAR,
    x2: ({ count }: CountBar) => count + HALF_BAR,
    y: 'chance',
    fill: 'var(--ink)',
    fillOpacity: ({ dark }: CountBar) => (dark ? 0.62 : 0.3),
  }),
  Plot.ruleY([0], { stroke: 'var(--soft)' }),
];

/** The ruled number, its words on the side where there is more room. */
export const ruledCount = (ruled: RuledCount, [first, last]: readonly [number, number]) => {
  const right = ruled.count > (first + last) / 2;
  return [
    Plot.ruleX([ruled], { x: 'count', stroke: 'var(--ink)', strokeWidth: 1.5, strokeDasharray: '2 3' }),
    Plot.text([ruled], {
      x: 'count',
      text: 'words',
      frameAnchor: 'top',
      dy: -16,
      dx: right ? 4 : -4,
      textAnchor: right ? 'end' : 'start',
      fontSize: 13,
      fontStyle: 'italic',
      fill: 'var(--ink)',
    }),
  ];
};
