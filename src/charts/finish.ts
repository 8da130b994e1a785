/** What charts have in common: type and room before the library draws, one name for the whole picture after it has. */
import type { DrawSize } from './ChartFigure.tsx';

/** Chart type and sizes shared by all: the map's own ink and letters. */
export const CHART_STYLE = {
  background: 'none',
  color: 'var(--soft)',
  fontFamily: 'var(--text)',
  fontSize: '12px',
  overflow: 'visible',
} as const;

/** Size, room for words round the marks, and type. Default: room on top for one line of words. */
export const chartFrame = ({ width, height, title }: DrawSize, marginTop = 26) => ({
  width,
  height,
  marginLeft: 40,
  marginRight: 12,
  marginTop,
  marginBottom: 38,
  style: CHART_STYLE,
  ariaLabel: title,
});

/** Narrower than this a chart has room for fewer numbers, CSS pixels. */
const NARROW = 420;
/** How many ticks there is room for. */
export const ticksFor = (width: number, [narrow, wide]: readonly [number, number]): number =>
  width < NARROW ? narrow : wide;

/** What goes across: its name below the middle, and its ends. */
export const acrossAxis = (label: string, ticks: number, domain: readonly [number, number]) => ({
  label,
  labelAnchor: 'center' as const,
  labelArrow: 'none' as const,
  ticks,
  domain,
});

export const wholeTick = (count: number): string => (Number.isInteger(count) ? String(count) : '');
export const percentTick = (share: number): string => `${Math.round(share * 100)}%`;

/** Shares go upwards, without a name: the answer above the chart has it. */
export const shareAxis = (top: number, ticks = 4) => ({
  label: null,
  tickFormat: percentTick,
  ticks,
  domain: [0, top],
});

/** The library names its groups, but a group without a role must not carry a name: the picture as a whole has one. */
export const finishChart = (chart: Element, title: string): Element => {
  for (const group of chart.querySelectorAll('[aria-label]')) group.removeAttribute('aria-label');
  chart.setAttribute('role', 'img');
  const name = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  name.textContent = title;
  chart.prepend(name);
  return chart;
};
