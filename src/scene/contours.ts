/**
 * Contour lines: marching squares over sampled heights, joined into long lines.
 * Answers for: places in pixels along each level, and the choice of levels. Leaves out: ink, labels.
 * Source: Lorensen & Cline's method in two dimensions (memory); saddles are settled by the cell's mean.
 */
import { inchesToMetres } from '../../sim/index.ts';
import type { Units } from './model.ts';

export interface HeightGrid {
  /** Pixels between nodes. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Row by row. */
  readonly heights: Float64Array;
}

export interface Contour {
  /** Metres. */
  readonly level: number;
  /** Whether it is one of the thicker ones. */
  readonly index: boolean;
  /** x, y pairs, pixels; a closed line ends where it began. */
  readonly places: number[];
}

export interface ContourSteps {
  /** Height between neighbours, m. */
  readonly step: number;
  /** The same in the person's units: "1 cm", "0.4 in"; empty where it is not told. */
  readonly words: string;
  /** A height in the person's units. */
  format(metres: number): string;
}

/** Every fifth contour is thicker and carries its height. */
export const INDEX_EVERY = 5;
/** Most contours over the range in view, and the nearest they may lie to each other: more close up to a grey. */
const MOST_CONTOURS = 20;
const NEAREST = 5;
/** Steps to choose from, centimetres and inches: five of each make a height one can read. */
const CENTIMETRES = [0.2, 0.5, 1, 2, 4, 10, 20, 40, 100];
const INCHES = [0.1, 0.2, 0.4, 0.8, 2, 4, 8, 20, 40];

/**
 * The height between contours that suits what is in view.
 * @param range highest minus lowest, m
 * @param steepest largest slope, rise over run
 * @param scale pixels per metre
 */
export function chooseSteps(range: number, steepest: number, scale: number, units: Units): ContourSteps {
  const sizes = units === 'imperial' ? INCHES : CENTIMETRES;
  const metres = (size: number) => (units === 'imperial' ? inchesToMetres(size) : size / 100);
  const needed = Math.max(range / MOST_CONTOURS, (steepest * NEAREST) / scale);
  const size = sizes.find((each) => metres(each) >= needed) ?? sizes[sizes.length - 1];
  const name = units === 'imperial' ? 'in' : 'cm';
  const unit = metres(1);
  return {
    step: metres(size),
    words: `${size} ${name}`,
    format: (height) => `${Number((height / unit).toFixed(1))} ${name}`,
  };
}

/** All contours of a grid at whole multiples of `step` (m). */
export function findContours(grid: HeightGrid, step: number): Contour[] {
  const segments = collectSegments(grid, step);
  const contours: Contour[] = [];
  for (const [multiple, pairs] of segments)
    for (const edges of joinEdges(pairs))
      contours.push({
        level: multiple * step,
        index: multiple % INDEX_EVERY === 0,
        places: edges.flatMap((edge) => placeOn(grid, edge, multiple * step)),
      });
  return contours;
}

/**
 * Which sides of cells each level crosses, as pairs of edges. An edge between nodes is numbered by its left or upper node:
 * 2 * node to the right neighbour, 2 * node + 1 to the one below.
 */
function collectSegments({ columns, rows, heights }: HeightGrid, step: number): Map<number, number[]> {
  const segments = new Map<number, number[]>();
  for (let row = 0; row + 1 < rows; row++)
    for (let column = 0; column + 1 < columns; column++) {
      const node = row * columns + column;
      const a = heights[node];
      const b = heights[node + 1];
      const c = heights[node + columns + 1];
      const d = heights[node + columns];
      const high = Math.max(a, b, c, d);
      const low = Math.min(a, b, c, d);
      for (let multiple = Math.floor(low / step) + 1; multiple * step <= high; multiple++) {
        const level = multiple * step;
        const edges: number[] = [];
        // A node exactly at the level counts as above: every line then passes it on one side.
        if (a >= level !== b >= level) edges.push(2 * node);
        if (b >= level !== c >= level) edges.push(2 * (node + 1) + 1);
        if (c >= level !== d >= level) edges.push(2 * (node + columns));
        if (d >= level !== a >= level) edges.push(2 * node + 1);
        if (edges.length === 0) continue;
        // Four crossings: the mean says which opposite corners are joined through the middle.
        if (edges.length === 4 && (a + b + c + d) / 4 >= level !== a >= level)
          edges.push(edges.shift() as number);
        const list = segments.get(multiple) ?? [];
        list.push(...edges);
        segments.set(multiple, list);
      }
    }
  return segments;
}

/** Joins pairs of edges end to end; a closed run repeats its first edge at the end. */
function joinEdges(pairs: readonly number[]): number[][] {
  const touching = new Map<number, number[]>();
  pairs.forEach((edge, at) => {
    const list = touching.get(edge);
    if (list) list.push(at >> 1);
    else touching.set(edge, [at >> 1]);
  });
  const used = new Uint8Array(pairs.length / 2);
  const follow = (start: number): number[] => {
    const run: number[] = [];
    let edge = start;
    for (;;) {
      const next = touching.get(edge)?.find((segment) => !used[segment]);
      if (next === undefined) return run;
      used[next] = 1;
      edge = pairs[2 * next] === edge ? pairs[2 * next + 1] : pairs[2 * next];
      run.push(edge);
    }
  };
  const runs: number[][] = [];
  for (let segment = 0; segment < used.length; segment++) {
    if (used[segment]) continue;
    const start = pairs[2 * segment];
    const forwards = follow(start);
    const backwards = follow(start);
    runs.push([...backwards.reverse(), start, ...forwards]);
  }
  return runs;
}

/** Where a level crosses an edge, by linear interpolation: exact on a plane. */
function placeOn({ columns, cell, heights }: HeightGrid, edge: number, level: number): [number, number] {
  const node = edge >> 1;
  const down = edge % 2;
  const one = heights[node];
  const share = (level - one) / (heights[down ? node + columns : node + 1] - one);
  const column = node % columns;
  const row = (node - column) / columns;
  return [(column + (down ? 0 : share)) * cell, (row + (down ? share : 0)) * cell];
}
