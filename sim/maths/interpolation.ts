/**
 * Curves through points. Answers for: cubics that do not overshoot through unequal steps, and the weights of a cubic through
 * equal steps. Source: Fritsch & Carlson 1980, SIAM J. Numer. Anal. 17, 238 (slopes), in the harmonic form of Fritsch &
 * Butland 1984; Lagrange's formula.
 */

/** @param xs rising, at least two @param ys values there @returns the curve; beyond the ends the end values */
export function monotoneCubic(xs: Float64Array, ys: Float64Array): (x: number) => number {
  const last = xs.length - 1;
  const rise = (i: number): number => (ys[i + 1] - ys[i]) / (xs[i + 1] - xs[i]);
  const slopes = new Float64Array(xs.length);
  slopes[0] = rise(0);
  slopes[last] = rise(last - 1);
  for (let i = 1; i < last; i++) {
    const before = rise(i - 1);
    const after = rise(i);
    if (before * after <= 0) continue;
    const left = xs[i] - xs[i - 1];
    const right = xs[i + 1] - xs[i];
    slopes[i] = (3 * (left + right)) / ((2 * right + left) / before + (right + 2 * left) / after);
  }
  return (x) => {
    if (x <= xs[0]) return ys[0];
    if (x >= xs[last]) return ys[last];
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (xs[middle] <= x) low = middle;
      else high = middle;
    }
    const h = xs[high] - xs[low];
    const u = (x - xs[low]) / h;
    const v = 1 - u;
    return (
      v * v * ((1 + 2 * u) * ys[low] + u * h * slopes[low]) +
      u * u * ((1 + 2 * v) * ys[high] - v * h * slopes[high])
    );
  };
}

/** Weights of the cubic through the four nodes about `at`, for nodes at 0, 1, 2 ... last; last >= 3. */
export function lagrange(at: number, last: number, out: { first: number; w: Float64Array }): void {
  const first = Math.max(0, Math.min(last - 3, Math.floor(at) - 1));
  const u = at - first;
  out.first = first;
  out.w[0] = (-(u - 1) * (u - 2) * (u - 3)) / 6;
  out.w[1] = (u * (u - 2) * (u - 3)) / 2;
  out.w[2] = (-u * (u - 1) * (u - 3)) / 2;
  out.w[3] = (u * (u - 1) * (u - 2)) / 6;
}
