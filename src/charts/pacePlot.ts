/**
 * Holed and three-putt share against pace, in the map's own ink. Loaded on demand: it brings the chart library.
 * Data to marks only; colours come from the page's css names so both themes work.
 */
import * as Plot from '@observablehq/plot';
import type { PaceChartData } from './paceData.ts';

export interface PacePlotOptions {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly xLabel: string;
}

export const pacePlot = (data: PaceChartData, { width, height, title, xLabel }: PacePlotOptions): Element => {
  const ink = 'var(--ink)';
  const last = data.points[data.points.length - 1];
  const chart = Plot.plot({
    width,
    height,
    marginLeft: 40,
    marginRight: 12,
    marginTop: 26,
    marginBottom: 38,
    style: {
      background: 'none',
      color: 'var(--soft)',
      fontFamily: 'var(--text)',
      fontSize: '12px',
      overflow: 'visible',
    },
    x: {
      label: xLabel,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: 6,
      domain: [0, last ? last.pace : 1],
    },
    y: {
      label: null,
      tickFormat: (share: number) => `${Math.round(share * 100)}%`,
      ticks: 4,
      domain: [0, data.top],
      grid: false,
    },
    ariaLabel: title,
    marks: [
      Plot.ruleY([0], { stroke: 'var(--edge)' }),
      Plot.ruleX([data.die], { stroke: 'var(--die)', strokeWidth: 1.5, strokeDasharray: '5 3' }),
      Plot.ruleX([data.firm], { stroke: 'var(--firm)', strokeWidth: 1.5 }),
      ...(data.best === undefined
        ? []
        : [Plot.ruleX([data.best], { stroke: ink, strokeWidth: 1, strokeDasharray: '1 3' })]),
      Plot.line(data.points, { x: 'pace', y: 'holed', stroke: ink, strokeWidth: 2 }),
      Plot.line(data.points, {
        x: 'pace',
        y: 'threePutt',
        stroke: ink,
        strokeWidth: 2,
        strokeDasharray: '2 4',
      }),
      ...data.labels.map((label) =>
        Plot.text([label], {
          x: 'pace',
          y: 'share',
          text: 'words',
          dy: -13,
          fill: ink,
          stroke: 'var(--card)',
          strokeWidth: 4,
          textAnchor: label.anchor,
          fontSize: 13,
        }),
      ),
      Plot.text(data.marks, {
        x: 'pace',
        text: 'words',
        frameAnchor: 'top',
        dy: -14,
        fontSize: 13,
        fontStyle: 'italic',
        fill: (mark: { name: string }) => `var(--${mark.name === 'best' ? 'ink' : mark.name})`,
        textAnchor: 'middle',
      }),
    ],
  });
  // Plot names its groups, but a group without a role must not carry a name: the picture as a whole has one.
  for (const group of chart.querySelectorAll('[aria-label]')) group.removeAttribute('aria-label');
  chart.setAttribute('role', 'img');
  const name = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  name.textContent = title;
  chart.prepend(name);
  return chart;
};
