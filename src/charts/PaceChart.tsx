/** The chart of chances against pace, drawn lazily, with the same figures as a table behind it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { formatPercent, formatShort, type Units } from '../text/format.ts';
import { type PaceChartInput, paceChartData } from './paceData.ts';

type Draw = typeof import('./pacePlot.ts')['pacePlot'];

export interface PaceChartProps extends PaceChartInput {
  readonly stale: boolean;
}

/** Time without a change before the chart is drawn again, ms: it takes some 5 ms, a third of a frame. */
const CHART_PAUSE = 40;

const titleOf = (input: PaceChartInput): string => {
  const best =
    input.best === undefined ? '' : ` Fewest putts at ${formatShort(input.best, input.units)} past.`;
  return `Holed and three-putt share against pace; die at ${formatShort(input.die, input.units)}, firm at ${formatShort(input.firm, input.units)} past the hole.${best}`;
};

const PaceFigures = ({ input, units }: { input: PaceChartInput; units: Units }) => (
  <details>
    <summary>The chart as a table</summary>
    {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that may scroll must be reachable by keyboard */}
    <section class="scroll" tabIndex={0} aria-label="Table of the chart">
      <table>
        <thead>
          <tr>
            <th scope="col">past the hole</th>
            <th scope="col">holed</th>
            <th scope="col">three putts</th>
          </tr>
        </thead>
        <tbody>
          {paceChartData(input).points.map(({ metres, holed, threePutt }) => (
            <tr key={metres}>
              <th scope="row">{formatShort(metres, units)}</th>
              <td>{formatPercent(holed, 1)}</td>
              <td>{formatPercent(threePutt, 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  </details>
);

export const PaceChart = ({ stale, ...input }: PaceChartProps) => {
  const host = useRef<HTMLDivElement>(null);
  const [draw, setDraw] = useState<{ readonly pacePlot: Draw } | undefined>(undefined);
  const [lost, setLost] = useState(false);
  const [width, setWidth] = useState(0);
  const title = titleOf(input);

  useEffect(() => {
    let here = true;
    import('./pacePlot.ts').then(
      (module) => here && setDraw({ pacePlot: module.pacePlot }),
      () => here && setLost(true),
    );
    return () => {
      here = false;
    };
  }, []);

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const watch = new ResizeObserver(([entry]) => setWidth(Math.floor(entry.contentRect.width)));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);

  useEffect(() => {
    if (draw === undefined || host.current === null || width < 60) return;
    const paint = (): void =>
      host.current?.replaceChildren(
        draw.pacePlot(paceChartData(input), {
          width,
          height: 230,
          title,
          xLabel: `past the hole (${input.units === 'imperial' ? 'in' : 'cm'})`,
        }),
      );
    // The map and the figures come first while one drags; the first drawing has nothing to wait for.
    if (host.current.childElementCount === 0) {
      paint();
      return;
    }
    const timer = setTimeout(paint, CHART_PAUSE);
    return () => clearTimeout(timer);
  }, [draw, width, title, input.comparison, input.units]);

  return (
    <section class="card" aria-labelledby="chart-title">
      <h2 id="chart-title">Pace</h2>
      <div ref={host} class={stale ? 'chart stale' : 'chart'} />
      {lost && <p class="quiet">The chart could not be loaded; the table below has the same figures.</p>}
      <PaceFigures input={input} units={input.units} />
    </section>
  );
};
