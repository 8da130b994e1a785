/**
 * One chart as every screen shows it: drawn when its library has come, the same figures as a table behind it, and both to take
 * away. Answers for: when to draw, the table, the two files. Leaves out: marks (a draw function), statistics, words.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { Pages, usePage } from '../controls/Pages.tsx';
import { type FigureTable, saveTable } from './saveTable.ts';

export interface DrawSize {
  readonly width: number;
  readonly height: number;
  /** The whole picture in one sentence, for those who do not see it. */
  readonly title: string;
}

/** Data to an SVG element; brings the chart library with it. */
export type Draw<Data> = (data: Data, size: DrawSize) => Element;

export interface ChartFigureProps<Data> {
  /** Unique on the page; begins the ids. */
  readonly id: string;
  readonly heading: string;
  readonly title: string;
  /** Loads the drawing; one and the same function every time. */
  readonly load: () => Promise<Draw<Data>>;
  /** Compared by identity: hand over the same object while nothing changed. */
  readonly data: Data;
  readonly table: FigureTable;
  /** Begins the names of the files taken away. */
  readonly fileName: string;
  /** CSS pixels. */
  readonly height?: number;
  readonly stale?: boolean;
  /** Between heading and chart: the answer in a sentence. */
  readonly children?: ComponentChildren;
  /** Below the chart and its files. */
  readonly after?: ComponentChildren;
}

/** Time without a change before a chart is drawn again, ms: it takes some 5 ms, a third of a frame. */
const CHART_PAUSE = 40;
/** Narrower than this there is no room for a chart, CSS pixels. */
const NARROWEST = 60;

/** Rows of a table shown at once. */
const ROWS_SHOWN = 60;

const HiddenTable = ({ heading, table }: { heading: string; table: FigureTable }) => {
  const page = usePage(table.rows.length, ROWS_SHOWN);
  return (
    <details>
      <summary>The chart as a table</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that may scroll must be reachable by keyboard */}
      <section class="scroll" tabIndex={0} aria-label={`Table of the chart: ${heading}`}>
        <table>
          <thead>
            <tr>
              {table.head.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.slice(page.from, page.to).map(([name, ...cells]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map((cell, column) => (
                  <td key={table.head[column + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Pages what="Rows" page={page} count={table.rows.length} number={page.number} onTurn={page.turn} />
    </details>
  );
};

export const ChartFigure = <Data,>(props: ChartFigureProps<Data>) => {
  const {
    id,
    heading,
    title,
    load,
    data,
    table,
    fileName,
    height = 230,
    stale = false,
    children,
    after,
  } = props;
  const host = useRef<HTMLDivElement>(null);
  const [draw, setDraw] = useState<{ readonly now: Draw<Data> } | undefined>(undefined);
  const [drawn, setDrawn] = useState(false);
  const [lost, setLost] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [width, setWidth] = useState(0);

  useEffect(() => {
    let here = true;
    load().then(
      (now) => here && setDraw({ now }),
      () => here && setLost(true),
    );
    return () => {
      here = false;
    };
  }, [load]);

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const watch = new ResizeObserver(([entry]) => setWidth(Math.floor(entry.contentRect.width)));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);

  useEffect(() => {
    if (draw === undefined || host.current === null || width < NARROWEST) return;
    const paint = (): void => {
      host.current?.replaceChildren(draw.now(data, { width, height, title }));
      setDrawn(true);
    };
    // The map and the figures come first while one drags; the first drawing has nothing to wait for.
    if (host.current.childElementCount === 0) {
      paint();
      return;
    }
    const timer = setTimeout(paint, CHART_PAUSE);
    return () => clearTimeout(timer);
  }, [draw, width, height, title, data]);

  const take = async (save: () => Promise<void>): Promise<void> => {
    try {
      await save();
      setProblem(undefined);
    } catch (cause) {
      setProblem(
        `The file could not be made here (${cause instanceof Error ? cause.message : String(cause)}); the table above has the same figures.`,
      );
    }
  };
  const takePicture = async (): Promise<void> => {
    const drawing = host.current?.querySelector('svg');
    if (!drawing) throw new Error('the chart is not drawn yet');
    const { savePicture } = await import('./savePicture.ts');
    await savePicture(drawing, { heading, title, fileName });
  };

  return (
    <section class="card" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{heading}</h2>
      {children}
      <div ref={host} class={stale ? 'chart stale' : 'chart'} style={{ minHeight: `${height}px` }} />
      {lost && <p class="quiet">The chart could not be loaded; the table below has the same figures.</p>}
      <HiddenTable heading={heading} table={table} />
      <p class="take-away">
        <button type="button" class="plain" disabled={!drawn} onClick={() => void take(takePicture)}>
          Save as a picture
        </button>
        <button type="button" class="plain" onClick={() => void take(() => saveTable(table, fileName))}>
          Save as a table (CSV)
        </button>
      </p>
      <p class="problem" role="alert">
        {problem}
      </p>
      {after}
    </section>
  );
};
