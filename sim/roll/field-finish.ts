/**
 * The last hand's breadth of a roll on smooth ground, in closed form.
 *
 * Answers for: from a low speed to rest as on a plane, because friction loses its direction at rest and an integrator
 * would crawl there. The plane's gradient is that of the ground halfway to the predicted rest: speed and turn both feel
 * the mean over the way, which the middle gives to second order, so the error falls as reach^3. Taking the gradient where
 * the finish begins was dropped: reach^2, ten times worse. Leaves out: when the way is short enough (the caller decides
 * by `tryFinish`), ground too steep to hold the ball (refused).
 */
import { GRAVITY, ROLLING_FACTOR } from '../constants.ts';
import { DIRECTION_X, DIRECTION_Y, type GradientAt, type Segment, SPEED, TIME, X, Y } from './field-step.ts';
import { type PlaneState, planeState } from './plane.ts';

/** Longest way the closed form may cover on level ground, m; also kept to one cell of the grid. 12 cm is 0.36 m/s at stimp
 *  10. On generated greens halving it moves no rest by 0.03 mm; 24 cm would move some by 0.13 mm (field-oracle.test.ts). */
export const FINISH_REACH = 0.12;
/** Below this speed, m/s, a ball on holding ground counts as stopped: it has less than a micrometre left to go. */
export const STANDSTILL = 1e-6;

export interface Finish extends Segment {
  /**
   * From x, y, vx, vy, ax, ay, t to rest.
   * @returns false when the way left is too long or the ground ahead does not hold the ball: keep stepping
   */
  tryFinish(state: Float64Array): boolean;
}

export function makeFinish(options: {
  readonly gradientAt: GradientAt;
  readonly friction: number;
  readonly reach: number;
}): Finish {
  const { gradientAt, friction, reach } = options;
  const pull = ROLLING_FACTOR * GRAVITY;
  const gradient = new Float64Array(2);
  const place = new Float64Array(2);
  const plane: PlaneState = { x: 0, y: 0, vx: 0, vy: 0, time: 0, length: 0 };
  // x, y, t, speed at the start; downhill unit vector, side, kappa, sin and cos of half the angle from downhill.
  const set = new Float64Array(10);

  /** Aim the plane: a gradient in units of friction, and the direction of travel. */
  const lay = (slopeX: number, slopeY: number, travelX: number, travelY: number): void => {
    const kappa = Math.sqrt(slopeX * slopeX + slopeY * slopeY);
    // On level ground any direction is downhill; the ball's own keeps the formulas exact.
    const downX = kappa > 1e-12 ? -slopeX / kappa : travelX;
    const downY = kappa > 1e-12 ? -slopeY / kappa : travelY;
    const cosine = Math.max(-1, Math.min(1, travelX * downX + travelY * downY));
    const across = downX * travelY - downY * travelX;
    set[4] = downX;
    set[5] = downY;
    set[6] = across < 0 ? -1 : 1;
    set[7] = kappa;
    // The larger half from the cosine, the smaller from the sine: no cancellation along the fall line.
    if (cosine >= 0) {
      set[9] = Math.sqrt((1 + cosine) / 2);
      set[8] = Math.abs(across) / (2 * set[9]);
    } else {
      set[8] = Math.sqrt((1 - cosine) / 2);
      set[9] = Math.abs(across) / (2 * set[8]);
    }
  };

  const restOf = (): void => {
    planeState(friction, set[7], set[3], set[8], set[9], Number.POSITIVE_INFINITY, plane);
  };
  const worldX = (): number => set[0] + plane.x * set[4] - set[6] * plane.y * set[5];
  const worldY = (): number => set[1] + plane.x * set[5] + set[6] * plane.y * set[4];

  const tryFinish = (state: Float64Array): boolean => {
    const vx = state[2];
    const vy = state[3];
    const speed = Math.sqrt(vx * vx + vy * vy);
    if (speed * speed > 2 * friction * reach) return false;
    const travelX = speed > 0 ? vx / speed : 1;
    const travelY = speed > 0 ? vy / speed : 0;
    // The stepper's acceleration holds the gradient here: a = -friction travel - pull gradient.
    const drag = speed > 0 ? 1 : 0;
    const slopeX = -state[4] / friction - drag * travelX;
    const slopeY = -state[5] / friction - drag * travelY;
    // Ground that barely holds the ball magnifies errors by 1 / (1 - kappa): allow a way shorter by that factor there.
    const hold = 1 - Math.sqrt(slopeX * slopeX + slopeY * slopeY);
    if (hold <= 0 || speed * speed > 2 * friction * reach * hold * hold) return false;
    set[0] = state[0];
    set[1] = state[1];
    set[2] = state[6];
    set[3] = speed;
    lay(slopeX, slopeY, travelX, travelY);
    if (speed < STANDSTILL) return true;
    restOf();
    place[0] = (set[0] + worldX()) / 2;
    place[1] = (set[1] + worldY()) / 2;
    gradientAt(place, gradient);
    const scale = pull / friction;
    const middleX = scale * gradient[0];
    const middleY = scale * gradient[1];
    const holdThere = 1 - Math.sqrt(middleX * middleX + middleY * middleY);
    if (holdThere <= 0 || speed * speed > 4 * friction * reach * holdThere * holdThere) return false;
    lay(middleX, middleY, travelX, travelY);
    return true;
  };

  const at = (fraction: number, out: Float64Array): void => {
    const kappa = set[7];
    const cosine = set[9] * set[9] - set[8] * set[8];
    // With q^m = 1 - fraction the way rolled is nearly proportional to the fraction (plane.ts does the same).
    const m = Math.max(0.05, 2 - 2 * kappa * cosine);
    // Where rounding ends: q^(2 - 2 kappa) = e^-38. The direction there stands for the last one.
    const last = 38 / (2 - 2 * kappa);
    const lambda = fraction >= 1 ? last : Math.min(last, -Math.log1p(-fraction) / m);
    planeState(friction, kappa, set[3], set[8], set[9], lambda, plane);
    const speed = Math.sqrt(plane.vx * plane.vx + plane.vy * plane.vy);
    const downhill = speed > 0 ? plane.vx / speed : 1;
    const across = speed > 0 ? (set[6] * plane.vy) / speed : 0;
    out[DIRECTION_X] = downhill * set[4] - across * set[5];
    out[DIRECTION_Y] = downhill * set[5] + across * set[4];
    out[SPEED] = fraction >= 1 ? 0 : speed;
    if (fraction >= 1) restOf();
    out[X] = worldX();
    out[Y] = worldY();
    out[TIME] = set[2] + plane.time;
  };

  return { tryFinish, at };
}
