/**
 * Time along a path: where a rolling ball is. Answers for: interpolation, the run of frames, the jump to the end where
 * less motion is asked for. Leaves out: drawing.
 */
import type { Point } from '../../sim/index.ts';
import type { AnimateOptions } from './model.ts';

/** Where the ball is `time` seconds after the start of x, y, t triples; before the first and after the last it waits. */
export function placeAt(path: Float64Array, time: number): Point {
  const corners = Math.floor(path.length / 3);
  // Bisection for the last corner not later than `time`.
  let low = 0;
  let high = corners - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (path[3 * middle + 2] <= time) low = middle;
    else high = middle - 1;
  }
  const at = 3 * low;
  if (low === corners - 1 || time <= path[at + 2]) return { x: path[at], y: path[at + 1] };
  const share = (time - path[at + 2]) / (path[at + 5] - path[at + 2]);
  return {
    x: path[at] + share * (path[at + 3] - path[at]),
    y: path[at + 1] + share * (path[at + 4] - path[at + 1]),
  };
}

/**
 * Runs a path in real time, scaled by the rate.
 * @param show called for every frame with the place and whether it is the last
 * @returns calls it off
 */
export function runPath(
  path: Float64Array,
  { rate = 1, onDone }: AnimateOptions,
  show: (place: Point, last: boolean) => void,
): () => void {
  let frame = 0;
  let over = false;
  const finish = (outcome: 'ended' | 'cancelled'): void => {
    if (over) return;
    over = true;
    cancelAnimationFrame(frame);
    onDone?.(outcome);
  };
  const end = path.length >= 3 ? path[path.length - 1] : 0;
  const still = !(rate > 0) || path.length < 6 || matchMedia('(prefers-reduced-motion: reduce)').matches;
  let began: number | undefined;
  const step = (now: number): void => {
    began ??= now;
    const time = still ? end : path[2] + ((now - began) / 1000) * rate;
    const last = time >= end;
    if (path.length >= 3) show(placeAt(path, time), last);
    if (last) finish('ended');
    else frame = requestAnimationFrame(step);
  };
  frame = requestAnimationFrame(step);
  return () => finish('cancelled');
}
