/** Height, gradient and extent of any surface: the door that asks the right kind. Leaves out: making surfaces. */
import type { HeightSample, Point, Surface } from '../types.ts';
import { type Bounds, fieldBounds, sampleField } from './field.ts';
import { samplePlane } from './plane.ts';

/**
 * Height (m) and gradient (m per m) of the ground at x, y (m) into `out`.
 * @returns false, and `out` untouched, when the point is off the surface; a plane has no edge
 */
export function sampleSurface(surface: Surface, x: number, y: number, out: HeightSample): boolean {
  if (surface.kind === 'field') return sampleField(surface, x, y, out);
  if (!(Number.isFinite(x) && Number.isFinite(y))) return false;
  samplePlane(surface, x, y, out);
  return true;
}

/** Uphill gradient of the ground at a place, m per m; undefined off the surface. */
export function gradientAt(surface: Surface, { x, y }: Point): Point | undefined {
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  return sampleSurface(surface, x, y, ground) ? { x: ground.gradientX, y: ground.gradientY } : undefined;
}

/** The rectangle a surface covers, m; undefined: an endless plane. */
export const surfaceBounds = (surface: Surface): Bounds | undefined =>
  surface.kind === 'field' ? fieldBounds(surface) : undefined;
