/**
 * The smallest value of a function that costs much to ask: a walk downhill in equal steps, then parabolas.
 * Leaves out: functions with more than one dip; the one begun in is found.
 */

export interface Search {
  readonly start: number;
  readonly step: number;
  /** Not looked outside these. */
  readonly low: number;
  readonly high: number;
  /** Steps walked beyond the first two neighbours. */
  readonly walks: number;
  /** Parabolas fitted at the end. */
  readonly parabolas: number;
}

/** Parabola through three points: where its lowest point lies; undefined when it opens downward. */
export function vertexOf(
  [x1, x2, x3]: readonly [number, number, number],
  [y1, y2, y3]: readonly [number, number, number],
): number | undefined {
  const before = (y2 - y1) / (x2 - x1);
  const after = (y3 - y2) / (x3 - x2);
  const bend = after - before;
  return bend > 0 ? (x1 + x2) / 2 - (before * (x3 - x1)) / (2 * bend) : undefined;
}

/** Points of a parabola closer than this share of the step are the same. */
const SAME = 0.02;

/**
 * @param f Infinity where there is no value
 * @returns the best of the points asked, which `f` has seen; undefined when none had a value
 */
export function minimize(
  f: (at: number) => number,
  { start, step, low, high, walks, parabolas }: Search,
): number | undefined {
  const points: { at: number; value: number }[] = [];
  const ask = (at: number): void => {
    const held = Math.max(low, Math.min(high, at));
    if (points.some((point) => Math.abs(point.at - held) < SAME * step)) return;
    const value = f(held);
    if (!Number.isFinite(value)) return;
    points.push({ at: held, value });
    points.sort((first, second) => first.at - second.at);
  };
  const best = (): number =>
    points.reduce((least, { value }, i) => (value < points[least].value ? i : least), 0);
  ask(start);
  ask(start + step);
  // Where the first step already goes down, the other side waits until it is needed.
  if (points.length < 2 || best() !== 1) ask(start - step);
  for (let walk = 0; walk < walks; walk++) {
    const i = best();
    if (i > 0 && i < points.length - 1) break;
    if (points.length > 0) ask(points[i].at + (i === 0 ? -step : step));
  }
  for (let round = 0; round < parabolas; round++) {
    const i = best();
    if (i === 0 || i >= points.length - 1) break;
    const [left, middle, right] = [points[i - 1], points[i], points[i + 1]];
    const vertex = vertexOf([left.at, middle.at, right.at], [left.value, middle.value, right.value]);
    if (vertex === undefined) break;
    ask(vertex);
  }
  return points.length > 0 ? points[best()].at : undefined;
}
