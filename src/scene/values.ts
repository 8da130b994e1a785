/**
 * A value told all over the ground, drawn over it: isolines, dashed so that nobody takes them for heights, and a light tint of
 * the same ink. Answers for: sampling the grid on the page, which lines carry their value. Leaves out: what the value is.
 */
import type { Point } from '../../sim/index.ts';
import type { Size } from './camera.ts';
import { labelContours } from './contour-labels.ts';
import { type Contour, findContours, type HeightGrid } from './contours.ts';
import type { Camera, SceneValues } from './model.ts';
import type { Palette } from './palette.ts';
import { dashed, type MeasureText, type Picture, type Primitive, plainFace } from './primitives.ts';

/** Distance of samples on the page, pixels. */
const CELL = 6;
/** Every second isoline is heavier, dashed and carries its value; those between are dotted. */
const HEAVY_EVERY = 2;
const HEAVY = { width: 1.9, pattern: [8, 5], alpha: 0.95 };
const LIGHT = { width: 1.2, pattern: [0.1, 4.4], alpha: 0.9 };
const LABEL_SIZE = 12;
/** Of an answer that no longer stands: seen, not trusted. */
const STALE = 0.45;
/** Tint at its strongest, share of full ink. */
const FULL_TINT = 0.18;

export interface ValuesRequest {
  readonly values: SceneValues;
  readonly camera: Camera;
  /** Of the map, without the margin. */
  readonly size: Size;
  readonly palette: Palette;
  readonly measure: MeasureText;
}

export function drawValues({ values, camera, size, palette, measure }: ValuesRequest): Picture {
  const samples = sampleValues(values, camera, size);
  const ink = palette.values;
  const strength = values.stale ? STALE : 1;
  const picture: Primitive[] = [tint(samples, values, ink.tint, strength)];
  const contours = findContours(samples, values.step);
  const heavy: Contour[] = [];
  const light: number[][] = [];
  for (const contour of contours) {
    // Where the value is at its least it is level, and a line through level ground is noise.
    if (contour.level <= values.tint[0] + values.step / 2) continue;
    if (Math.round(contour.level / values.step) % HEAVY_EVERY === 0) heavy.push(contour);
    else light.push(...dashed(contour.places, LIGHT.pattern));
  }
  picture.push({
    kind: 'lines',
    lines: light,
    width: LIGHT.width,
    colour: ink.line,
    alpha: LIGHT.alpha * strength,
  });
  const face = `600 ${plainFace(LABEL_SIZE)}`;
  const { labels, lines } = labelContours({
    contours: heavy,
    size,
    format: values.format,
    widthOf: (text) => measure(text, face),
  });
  picture.push({
    kind: 'lines',
    lines: lines.flatMap((line) => dashed(line, HEAVY.pattern)),
    width: HEAVY.width,
    colour: ink.line,
    alpha: HEAVY.alpha * strength,
  });
  for (const { text, x, y, turn } of labels)
    picture.push({
      kind: 'text',
      text,
      x,
      y,
      turn,
      face,
      colour: values.stale ? palette.softInk : ink.letters,
      align: 'centre',
      halo: palette.paper,
    });
  return picture;
}

/** The grid's values at the samples of the page; NaN off the grid or beside a node without a value. */
export function sampleValues(values: SceneValues, camera: Camera, size: Size): HeightGrid {
  const columns = Math.ceil(size.width / CELL) + 1;
  const rows = Math.ceil(size.height / CELL) + 1;
  const heights = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      heights[row * columns + column] = valueAt(values, camera.toWorld({ x: column * CELL, y: row * CELL }));
  return { cell: CELL, columns, rows, heights };
}

/** Weights of four neighbours for a place `t` of the way from the second to the third: a smooth cubic through them. */
function weigh(t: number, out: Float64Array): void {
  out[0] = ((2 - t) * t - 1) * t * 0.5;
  out[1] = (t * t * (3 * t - 5) + 2) * 0.5;
  out[2] = ((4 - 3 * t) * t + 1) * t * 0.5;
  out[3] = (t - 1) * t * t * 0.5;
}
const acrossWeights = new Float64Array(4);
const alongWeights = new Float64Array(4);

/** A count of nodes between 0 and `last`, `beyond` either end told as the end; NaN outside. */
const within = (nodes: number, last: number, beyond: number): number =>
  nodes < -beyond || nodes > last + beyond ? Number.NaN : Math.max(0, Math.min(last, nodes));

/** Between nodes: by smooth cubics (Catmull & Rom 1974, memory) where sixteen nodes have values, else along straight lines. */
function valueAt(
  { origin, spacingX, spacingY, columns, rows, values, beyond }: SceneValues,
  { x, y }: Point,
): number {
  const across = within((x - origin.x) / spacingX, columns - 1, beyond / spacingX);
  const along = within((y - origin.y) / spacingY, rows - 1, beyond / spacingY);
  if (Number.isNaN(across + along)) return Number.NaN;
  const column = Math.min(columns - 2, Math.floor(across));
  const row = Math.min(rows - 2, Math.floor(along));
  const partX = across - column;
  const partY = along - row;
  if (column > 0 && row > 0 && column < columns - 2 && row < rows - 2) {
    weigh(partX, acrossWeights);
    weigh(partY, alongWeights);
    let sum = 0;
    for (let j = 0; j < 4; j++) {
      const from = (row - 1 + j) * columns + column - 1;
      for (let i = 0; i < 4; i++) sum += alongWeights[j] * acrossWeights[i] * values[from + i];
    }
    if (!Number.isNaN(sum)) return sum;
  }
  const node = row * columns + column;
  let sum = 0;
  if (partX < 1 && partY < 1) sum += (1 - partX) * (1 - partY) * values[node];
  if (partX > 0 && partY < 1) sum += partX * (1 - partY) * values[node + 1];
  if (partX < 1 && partY > 0) sum += (1 - partX) * partY * values[node + columns];
  if (partX > 0 && partY > 0) sum += partX * partY * values[node + columns + 1];
  return sum;
}

function tint(
  { cell, columns, rows, heights }: HeightGrid,
  { tint: [none, full] }: SceneValues,
  [red, green, blue]: readonly [number, number, number],
  strength: number,
): Primitive {
  const colours = new Uint8ClampedArray(columns * rows * 4);
  for (let at = 0; at < heights.length; at++) {
    const share = Math.max(0, Math.min(1, (heights[at] - none) / (full - none)));
    colours[4 * at] = red;
    colours[4 * at + 1] = green;
    colours[4 * at + 2] = blue;
    colours[4 * at + 3] = Number.isNaN(heights[at]) ? 0 : 255 * FULL_TINT * strength * share;
  }
  return {
    kind: 'raster',
    x: -cell / 2,
    y: -cell / 2,
    width: columns * cell,
    height: rows * cell,
    columns,
    rows,
    colours,
  };
}
