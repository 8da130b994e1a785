/**
 * The ground as the page needs it: heights and slopes at the nodes of a grid of pixels.
 * Answers for: one pass over the surface per view, which contours, shade and hachures then share. Leaves out: what lies
 * off the surface is given the value of the nearest place on it; the picture covers it (ground.ts).
 */
import {
  type HeightSample,
  type Point,
  type Surface,
  sampleSurface,
  surfaceBounds,
} from '../../sim/index.ts';
import type { Size } from './camera.ts';
import type { Camera } from './model.ts';

/** Distance of nodes, pixels: a contour bends little within one, and a page of 760 by 620 costs 13 thousand samples. */
const CELL = 6;
/** Kept inside the edge of a field, share of its size: a place on the very edge may round to outside. */
const INSIDE = 1e-9;

export interface GroundSamples {
  /** Pixels between nodes; node (column, row) is at column * cell, row * cell. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Metres. */
  readonly heights: Float64Array;
  /** Rise over run to the right and downwards on the page. */
  readonly slopesRight: Float64Array;
  readonly slopesDown: Float64Array;
  readonly lowest: number;
  readonly highest: number;
}

/** A place on the surface nearest to this one: itself, unless it lies beyond the edge. */
export function nearestOn(surface: Surface): (place: Point) => Point {
  const bounds = surfaceBounds(surface);
  if (bounds === undefined) return (place) => place;
  const inX = (bounds.maxX - bounds.minX) * INSIDE;
  const inY = (bounds.maxY - bounds.minY) * INSIDE;
  const clamp = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));
  return ({ x, y }) => ({
    x: clamp(x, bounds.minX + inX, bounds.maxX - inX),
    y: clamp(y, bounds.minY + inY, bounds.maxY - inY),
  });
}

/** Samples a surface at every node of the page. */
export function sampleGround(surface: Surface, camera: Camera, size: Size): GroundSamples {
  const columns = Math.ceil(size.width / CELL) + 1;
  const rows = Math.ceil(size.height / CELL) + 1;
  const heights = new Float64Array(columns * rows);
  const slopesRight = new Float64Array(columns * rows);
  const slopesDown = new Float64Array(columns * rows);
  const nearest = nearestOn(surface);
  const origin = camera.toWorld({ x: 0, y: 0 });
  const oneRight = camera.toWorld({ x: camera.scale, y: 0 });
  const right = { x: oneRight.x - origin.x, y: oneRight.y - origin.y };
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const place = nearest(camera.toWorld({ x: column * CELL, y: row * CELL }));
      sampleSurface(surface, place.x, place.y, sample);
      const at = row * columns + column;
      heights[at] = sample.height;
      slopesRight[at] = sample.gradientX * right.x + sample.gradientY * right.y;
      // Down the page is a quarter turn clockwise from right.
      slopesDown[at] = sample.gradientX * right.y - sample.gradientY * right.x;
      if (sample.height < lowest) lowest = sample.height;
      if (sample.height > highest) highest = sample.height;
    }
  return { cell: CELL, columns, rows, heights, slopesRight, slopesDown, lowest, highest };
}
