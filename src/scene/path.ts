/** A rolled path as corners on the page. Leaves out: ink (putt.ts), time (animation.ts). */
import type { Point } from '../../sim/index.ts';
import type { Camera } from './model.ts';

/** Corners of a path nearer than this to the one before are left out, pixels: nobody sees them, each costs time. */
const LEAST_CORNER = 1.5;

/** Pixels of a path, and the number of the corner nearest the hole. */
export function pathInPixels(
  path: Float64Array,
  hole: Point,
  camera: Camera,
): { places: number[]; atHole: number } {
  let nearest = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let corner = 0; 3 * corner + 2 < path.length; corner++) {
    const distance = Math.hypot(path[3 * corner] - hole.x, path[3 * corner + 1] - hole.y);
    if (distance >= least) continue;
    least = distance;
    nearest = corner;
  }
  const places: number[] = [];
  let atHole = 0;
  for (let corner = 0; 3 * corner + 2 < path.length; corner++) {
    const { x, y } = camera.toPixel({ x: path[3 * corner], y: path[3 * corner + 1] });
    const end = places.length;
    const close =
      end > 0 && Math.hypot(x - places[end - 2], y - places[end - 1]) < LEAST_CORNER && corner !== nearest;
    if (!close || 3 * corner + 5 >= path.length) places.push(x, y);
    if (corner === nearest) atHole = places.length / 2 - 1;
  }
  return { places, atHole };
}
