/**
 * The ground as ink: contours by marching squares, hachures as tapered strokes down the slope.
 * Answers for: SVG path texts in pixels. Leaves out: colours, numbers. Source: Lorensen & Cline's squares in two dimensions
 * (memory); hachures thick at the top are the old map-makers' convention.
 */
import { type Surface, sampleSurface } from '../../../sim/index.ts';
import type { View } from './view.ts';

/** Cells of the contour grid along the longer side: a contour bends little within one. */
const CELLS = 56;
/** Distance of hachures, pixels, and slope at which a stroke fills it. */
const HACHURE_SPACING = 34;
const FULL_SLOPE = 0.05;
/** Width of a stroke at its upper end, pixels: gentle, and added at full slope. */
const THIN = 1.1;
const THICK = 2.6;
/** Every fifth contour is drawn stronger. */
const INDEX_EVERY = 5;

/** Height between contours, m, by the length of the putt: enough lines to read, not so many that they close up. */
export const contourStep = (length: number): number => (length < 2.5 ? 0.005 : length < 8 ? 0.01 : 0.02);

export interface Ink {
  readonly contours: string;
  readonly indexContours: string;
  readonly hachures: string;
}

const fixed = (value: number): string => value.toFixed(1);

const drawContours = (surface: Surface, view: View): { contours: string; indexContours: string } => {
  const cell = Math.max(view.width, view.height) / CELLS;
  const columns = Math.ceil(view.width / cell) + 1;
  const rows = Math.ceil(view.height / cell) + 1;
  const sample = { height: 0, gradientX: 0, gradientY: 0 };
  const heights = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const { across, along } = view.unplace(column * cell, row * cell);
      const { x, y } = view.toGround(across, along);
      heights[row * columns + column] = sampleSurface(surface, x, y, sample) ? sample.height : Number.NaN;
    }
  const step = contourStep(view.length);
  const found = { contours: '', indexContours: '' };
  for (let row = 0; row + 1 < rows; row += 1)
    for (let column = 0; column + 1 < columns; column += 1) {
      const at = row * columns + column;
      // Round the cell, so that neighbours in the list share a side.
      const corners = [heights[at], heights[at + 1], heights[at + columns + 1], heights[at + columns]];
      const low = Math.min(...corners);
      const high = Math.max(...corners);
      // Off the green: NaN, and no comparison holds.
      if (!(high > low)) continue;
      for (let level = Math.ceil(low / step); level * step < high; level += 1) {
        const crossings: string[] = [];
        for (let side = 0; side < 4; side += 1) {
          const one = corners[side];
          const two = corners[(side + 1) % 4];
          if (one < level * step === two < level * step) continue;
          const share = (level * step - one) / (two - one);
          const x = column + [share, 1, 1 - share, 0][side];
          const y = row + [0, share, 1, 1 - share][side];
          crossings.push(`${fixed(x * cell)} ${fixed(y * cell)}`);
        }
        const name = level % INDEX_EVERY === 0 ? 'indexContours' : 'contours';
        for (let i = 0; i + 1 < crossings.length; i += 2)
          found[name] += `M${crossings[i]}L${crossings[i + 1]}`;
      }
    }
  return found;
};

const drawHachures = (surface: Surface, view: View): string => {
  const sample = { height: 0, gradientX: 0, gradientY: 0 };
  let text = '';
  for (let row = 0; row * HACHURE_SPACING < view.height; row += 1)
    for (let column = 0; column * HACHURE_SPACING < view.width; column += 1) {
      const x = (column + (row % 2 ? 0.75 : 0.25)) * HACHURE_SPACING;
      const y = (row + 0.5) * HACHURE_SPACING;
      const { across, along } = view.unplace(x, y);
      const ground = view.toGround(across, along);
      if (!sampleSurface(surface, ground.x, ground.y, sample)) continue;
      const slope = Math.hypot(sample.gradientX, sample.gradientY);
      if (slope === 0) continue;
      // A millimetre down the slope, seen through the view: its direction on the page.
      const down = view.toPixels({
        x: ground.x - (0.001 * sample.gradientX) / slope,
        y: ground.y - (0.001 * sample.gradientY) / slope,
      });
      const size = Math.hypot(down.x - x, down.y - y);
      const unitX = (down.x - x) / size;
      const unitY = (down.y - y) / size;
      const steepness = Math.min(1, slope / FULL_SLOPE);
      const half = 4 + 0.42 * HACHURE_SPACING * steepness;
      const wide = (THIN + THICK * steepness) / 2;
      const top = { x: x - unitX * half, y: y - unitY * half };
      text += `M${fixed(top.x - unitY * wide)} ${fixed(top.y + unitX * wide)}L${fixed(x + unitX * half)} ${fixed(y + unitY * half)}L${fixed(top.x + unitY * wide)} ${fixed(top.y - unitX * wide)}Z`;
    }
  return text;
};

export const drawGround = (surface: Surface, view: View): Ink => ({
  ...drawContours(surface, view),
  hachures: drawHachures(surface, view),
});
