/** What every chart gets after the library has drawn it: one name for the whole picture, none for its groups. */

/** Chart type and sizes shared by all: the map's own ink and letters. */
export const CHART_STYLE = {
  background: 'none',
  color: 'var(--soft)',
  fontFamily: 'var(--text)',
  fontSize: '12px',
  overflow: 'visible',
} as const;

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
