/**
 * A tilted plane: the surface most questions need.
 *
 * Answers for: making one, and its height and gradient. Leaves out: edges (it has none). Height is zero at the origin.
 */
import type { HeightSample, PlaneSurface } from '../types.ts';

/** Steepest plane accepted, rise over run: the small-slope model is off by more than 1% beyond it. */
const STEEPEST_PLANE = 0.15;

/**
 * A plane that falls `slope` (rise over run, 0.02 = 2%) towards `downhill` (radians from +x).
 * @throws RangeError when a value is not usable
 */
export function planeSurface(options: { readonly slope: number; readonly downhill: number }): PlaneSurface {
  const { slope, downhill } = options;
  if (!(slope >= 0 && slope <= STEEPEST_PLANE))
    throw new RangeError(
      `Got a slope of ${slope}, expected 0 to ${STEEPEST_PLANE} (0 to ${STEEPEST_PLANE * 100}%): give rise over run, and turn "downhill" round instead of a negative slope.`,
    );
  if (!Number.isFinite(downhill))
    throw new RangeError(
      `Got a downhill direction of ${downhill}, expected a finite angle in radians: give the direction a ball would run off.`,
    );
  return { kind: 'plane', slope, downhill };
}

/** Height (m) and gradient of a plane at x, y (m). */
export function samplePlane(surface: PlaneSurface, x: number, y: number, out: HeightSample): void {
  out.gradientX = -surface.slope * Math.cos(surface.downhill);
  out.gradientY = -surface.slope * Math.sin(surface.downhill);
  out.height = out.gradientX * x + out.gradientY * y;
}
