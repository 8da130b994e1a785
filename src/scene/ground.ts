/**
 * The ground as a paper map: shade by height and light, contours, hachures, the edge of the green.
 * Answers for: everything that depends on surface, view, theme and units alone; it is drawn once and kept while ball and
 * hole move. Leaves out: the putt (putt.ts), scale and legend (margin.ts).
 * Hachures are the old map-makers' convention: strokes down the slope, longer and heavier where it is steeper, here with
 * the thick end uphill, so that no arrowhead is needed.
 */
import { type Point, type Surface, surfaceBounds } from '../../sim/index.ts';
import type { Size } from './camera.ts';
import { labelContours } from './contour-labels.ts';
import { type ContourSteps, chooseSteps, findContours, INDEX_EVERY } from './contours.ts';
import type { Camera, ContourStep, Units } from './model.ts';
import type { Palette } from './palette.ts';
import { type MeasureText, type Picture, type Primitive, plainFace, type Raster } from './primitives.ts';
import { type GroundSamples, sampleGround } from './samples.ts';

/** Least range of heights over which the shade runs from low to high, m: level ground must not look like hills. */
const LEAST_SHADED_RANGE = 0.12;
/** Most that light may brighten or darken a place, share of white. */
const MOST_LIGHT = 0.07;
/** Hachures: distance apart (pixels), how far one strays from the grid, and slope at which a stroke is longest. */
const HACHURE_APART = 27;
const HACHURE_STRAY = 3;
const STEEP = 0.05;
/** Stroke length and width at its upper end, pixels, on gentle and on steep ground. */
const SHORT_STROKE = 4;
const LONG_STROKE = 25;
const FINE_STROKE = 0.9;
const HEAVY_STROKE = 3;
/** Gentler than this a place shows no stroke, rise over run. */
const LEVEL = 0.0015;
/** Size of heights on contours, pixels. */
const HEIGHT_SIZE = 11;

export interface GroundRequest {
  readonly surface: Surface;
  readonly camera: Camera;
  readonly size: Size;
  readonly palette: Palette;
  readonly units: Units;
  readonly showContours: boolean;
  readonly showHeights: boolean;
  readonly contourStep?: ContourStep | undefined;
  readonly measure: MeasureText;
}

export interface Ground {
  readonly picture: Picture;
  /** undefined: no contours in view. */
  readonly steps: ContourSteps | undefined;
  /** Nothing runs anywhere: no strokes to explain either. */
  readonly level: boolean;
}

/** Draws the ground of a view. */
export function drawGround(request: GroundRequest): Ground {
  const { surface, camera, size, palette, units, showContours, showHeights, contourStep, measure } = request;
  const samples = sampleGround(surface, camera, size);
  const picture: Primitive[] = [shade(samples, palette)];
  const face = plainFace(HEIGHT_SIZE);
  let labels: ReturnType<typeof labelContours>['labels'] = [];
  let steps: ContourSteps | undefined;
  if (showContours && samples.highest - samples.lowest > 0) {
    const suited = chooseSteps(samples.highest - samples.lowest, steepestOf(samples), camera.scale, units);
    const chosen = contourStep
      ? { ...suited, step: contourStep.step, words: contourStep.words ?? '' }
      : suited;
    const contours = findContours(samples, chosen.step);
    if (contours.length > 0) steps = chosen;
    picture.push({
      kind: 'lines',
      lines: contours.filter(({ index }) => !index).map(({ places }) => places),
      width: 0.8,
      colour: palette.contour,
      alpha: palette.contourAlpha,
    });
    const index = contours.filter((contour) => contour.index);
    const thick = INDEX_EVERY * chosen.step;
    // Heights count from the lowest thick contour in view: a sum of metres from nowhere tells nobody anything.
    const zero = Math.ceil(samples.lowest / thick - 1e-9) * thick;
    const labelled = showHeights
      ? labelContours({
          contours: index,
          size,
          format: (level) => chosen.format(level - zero),
          widthOf: (text) => measure(text, face),
        })
      : { labels: [], lines: index.map(({ places }) => places) };
    labels = labelled.labels;
    picture.push({
      kind: 'lines',
      lines: labelled.lines,
      width: 1.4,
      colour: palette.indexContour,
      alpha: 0.85,
    });
  }
  picture.push(hachures(samples, palette, labels));
  for (const { text, x, y, turn } of labels)
    picture.push({ kind: 'text', text, x, y, turn, face, colour: palette.softInk, align: 'centre' });
  picture.push(...beyondTheEdge(surface, camera, size, palette));
  return { picture, steps, level: steepestOf(samples) < LEVEL };
}

const steepestOf = ({ slopesRight, slopesDown }: GroundSamples): number => {
  let steepest = 0;
  for (let at = 0; at < slopesRight.length; at++)
    steepest = Math.max(steepest, Math.hypot(slopesRight[at], slopesDown[at]));
  return steepest;
};

/** Tint by height, lit from the upper left. */
function shade(samples: GroundSamples, palette: Palette): Raster {
  const { columns, rows, cell, heights, slopesRight, slopesDown, lowest, highest } = samples;
  const range = Math.max(highest - lowest, LEAST_SHADED_RANGE);
  const base = (lowest + highest - range) / 2;
  const colours = new Uint8ClampedArray(columns * rows * 4);
  for (let at = 0; at < heights.length; at++) {
    const share = 2 * ((heights[at] - base) / range);
    const [from, to] = share < 1 ? [palette.low, palette.middle] : [palette.middle, palette.high];
    const part = share < 1 ? share : share - 1;
    // Ground that rises to the lower right faces the light.
    const facing = ((slopesRight[at] + slopesDown[at]) / Math.SQRT2) * palette.relief;
    const light = 255 * Math.max(-MOST_LIGHT, Math.min(MOST_LIGHT, facing));
    for (let band = 0; band < 3; band++)
      colours[4 * at + band] = from[band] + part * (to[band] - from[band]) + light;
    colours[4 * at + 3] = 255;
  }
  return {
    kind: 'raster',
    // A sample stands for the square round its node.
    x: -cell / 2,
    y: -cell / 2,
    width: columns * cell,
    height: rows * cell,
    columns,
    rows,
    colours,
  };
}

/** A number in [-1, 1) that depends on two whole numbers alone, so that the same place always strays the same way. */
function stray(column: number, row: number): number {
  let mixed = Math.imul(column, 0x27d4eb2d) ^ Math.imul(row, 0x165667b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
  return ((mixed ^ (mixed >>> 12)) >>> 0) / 2 ** 31 - 1;
}

function hachures(
  samples: GroundSamples,
  palette: Palette,
  labels: readonly { x: number; y: number; width: number }[],
): Primitive {
  const { cell, columns, rows, slopesRight, slopesDown } = samples;
  const polygons: number[][] = [];
  const width = (columns - 1) * cell;
  const height = (rows - 1) * cell;
  const lineApart = HACHURE_APART * 0.87;
  for (let row = 0; row * lineApart < height; row++)
    for (let column = 0; column * HACHURE_APART < width; column++) {
      const x = (column + (row % 2 ? 0.75 : 0.25)) * HACHURE_APART + HACHURE_STRAY * stray(column, row);
      const y = (row + 0.5) * lineApart + HACHURE_STRAY * stray(row, column + 7919);
      const at =
        Math.min(rows - 1, Math.round(y / cell)) * columns + Math.min(columns - 1, Math.round(x / cell));
      const slope = Math.hypot(slopesRight[at], slopesDown[at]);
      if (slope < LEVEL) continue;
      const steepness = Math.min(1, slope / STEEP);
      const half = (SHORT_STROKE + (LONG_STROKE - SHORT_STROKE) * steepness) / 2;
      if (labels.some((label) => Math.hypot(label.x - x, label.y - y) < label.width / 2 + half)) continue;
      const top = (FINE_STROKE + (HEAVY_STROKE - FINE_STROKE) * steepness) / 2;
      const foot = FINE_STROKE / 3;
      const downX = -slopesRight[at] / slope;
      const downY = -slopesDown[at] / slope;
      polygons.push([
        x - downX * half - downY * top,
        y - downY * half + downX * top,
        x + downX * half - downY * foot,
        y + downY * half + downX * foot,
        x + downX * half + downY * foot,
        y + downY * half - downX * foot,
        x - downX * half + downY * top,
        y - downY * half - downX * top,
      ]);
    }
  return { kind: 'polygons', polygons, colour: palette.hachure, alpha: palette.hachureAlpha };
}

/** Plain paper and an edge where a field ends. */
function beyondTheEdge(surface: Surface, camera: Camera, size: Size, palette: Palette): Primitive[] {
  const bounds = surfaceBounds(surface);
  if (bounds === undefined) return [];
  const { minX, minY, maxX, maxY } = bounds;
  const corner = (x: number, y: number): Point => camera.toPixel({ x, y });
  const inside = [corner(minX, minY), corner(maxX, minY), corner(maxX, maxY), corner(minX, maxY)];
  // Far enough to leave the page whichever way it is turned.
  const far =
    2 * (size.width + size.height) + Math.max(...inside.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  const polygons = inside.map((from, at) => {
    const to = inside[(at + 1) % inside.length];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const alongX = ((to.x - from.x) / length) * far;
    const alongY = ((to.y - from.y) / length) * far;
    // Page y runs down, so counter-clockwise in the world is clockwise here, and outwards is to the left of the way.
    return [
      from.x - alongX,
      from.y - alongY,
      to.x + alongX,
      to.y + alongY,
      to.x + alongX - alongY,
      to.y + alongY + alongX,
      from.x - alongX - alongY,
      from.y - alongY + alongX,
    ];
  });
  const edge = [...inside, inside[0]].flatMap(({ x, y }) => [x, y]);
  return [
    { kind: 'polygons', polygons, colour: palette.paper, alpha: 1 },
    { kind: 'lines', lines: [edge], width: 1.6, colour: palette.indexContour, alpha: 1 },
  ];
}
