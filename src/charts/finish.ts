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

/** Size, room for words round the marks, and type of a chart with shares upwards. */
export const shareFrame = ({ width, height, title }: DrawSize) => ({
  width,
  height,
  marginLeft: 40,
  marginRight: 12,
  marginTop: 26,
  marginBottom: 38,
  style: CHART_STYLE,
  ariaLabel: title,
});

/** An axis of whole numbers, one bar each. */
export const countAxis = (label: string, [first, last]: readonly [number, number], width: number) => ({
  label,
  labelAnchor: 'center' as const,
  labelArrow: 'none' as const,
  ticks: Math.min(last - first + 1, width < 420 ? 8 : 16),
  tickFormat: (count: number) => (Number.isInteger(count) ? String(count) : ''),
  domain: [first - 0.6, last + 0.6],
});

export const percentTick = (share: number): string => `${Math.round(share * 100)}%`;

/** The library names its groups, but a group without a role must not carry a name: the picture as a whole has one. */
export const finishChart = (chart: Element, title: string): Element => {
  for (const group of chart.querySelectorAll('[aria-label]')) group.removeAttribute('aria-label');
  chart.setAttribute('role', 'img');
  const name = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  name.textContent = title;
  chart.prepend(name);
  return chart;
};
