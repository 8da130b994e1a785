/**
 * Where a function that is positive inside turns negative: the two root finders of drop-region.ts. Both stop at a value
 * smaller than EDGE_TOLERANCE.
 */

/** Edges are solved to this clearance, m: a five-thousandth of the hole's radius, so of holed %. */
const EDGE_TOLERANCE = 1e-5;
const MOST_STEPS = 40;

/**
 * Edge on one side of a point inside: bracketed from a guess, then a secant kept in its bracket (Illinois).
 * @param inside where f > 0
 * @param guess where the edge may be; says on which side it is sought
 */
export function edgeBeyond(f: (at: number) => number, inside: number, guess: number): number {
  const side = guess < inside ? -1 : 1;
  let near = inside;
  let nearGap = Number.NaN;
  let far = guess;
  let farGap = f(far);
  let step = Math.max(Math.abs(far - near) / 20, 1e-6);
  while (farGap > 0) {
    near = far;
    nearGap = farGap;
    far += side * step;
    step *= 2;
    farGap = f(far);
    if (step > 1e6) return near;
  }
  while (Number.isNaN(nearGap) && Math.abs(far - near) > step) {
    const back = far - side * step;
    const gap = f(back);
    step *= 2;
    if (gap > 0) {
      near = back;
      nearGap = gap;
    } else {
      far = back;
      farGap = gap;
    }
  }
  if (Number.isNaN(nearGap)) nearGap = f(near);
  let stuck = 0;
  for (let i = 0; i < MOST_STEPS; i++) {
    let at = (near * farGap - far * nearGap) / (farGap - nearGap);
    // A jump of the clearance outside the rim can pin the secant to an end: then halve.
    if (!(side * (at - near) > 0 && side * (far - at) > 0) || i % 8 === 7) at = (near + far) / 2;
    const gap = f(at);
    if (Math.abs(gap) < EDGE_TOLERANCE || Math.abs(far - near) < 1e-12) return at;
    if (gap > 0) {
      near = at;
      nearGap = gap;
      if (stuck > 0) farGap /= 2;
      stuck = 1;
    } else {
      far = at;
      farGap = gap;
      if (stuck < 0) nearGap /= 2;
      stuck = -1;
    }
  }
  return near;
}

/**
 * Edge close to a good guess: a secant that begins with the slope met at the edge before. Gives up (undefined) as soon as
 * it is not plainly converging.
 * @param sign 1 where f rises through the edge, -1 where it falls
 * @param slopes slopes[slot] is the slope to begin with, and is kept up to date; 0: none known
 */
export function edgeNear(
  f: (at: number) => number,
  guess: number,
  sign: 1 | -1,
  slopes: Float64Array,
  slot: number,
): number | undefined {
  let slope = slopes[slot];
  if (!(slope * sign > 0)) slope = 0;
  let at = guess;
  let gap = f(at);
  for (let i = 0; i < 5; i++) {
    if (Math.abs(gap) < EDGE_TOLERANCE) return at;
    if (slope === 0) {
      const aside = at * (1 + 1e-5);
      slope = (f(aside) - gap) / (aside - at);
      if (!(slope * sign > 0)) return undefined;
    }
    const next = at - gap / slope;
    const nextGap = f(next);
    if (!(Math.abs(nextGap) < Math.abs(gap) / 2)) return undefined;
    slope = (nextGap - gap) / (next - at);
    if (!(slope * sign > 0)) return undefined;
    slopes[slot] = slope;
    at = next;
    gap = nextGap;
  }
  return undefined;
}
