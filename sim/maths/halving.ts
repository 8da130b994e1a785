/**
 * Where a condition that holds on the left of a bracket stops holding: quantiles of distributions that have no inverse in
 * closed form. Answers for: that one place. Leaves out: the bracket. Halving cannot fail, and speed does not matter here.
 */

/** Relative width of the bracket at which the place counts as found. */
const CLOSE_ENOUGH = 1e-12;

/**
 * @param holds true up to the place sought, false beyond it
 * @param low where it holds, 0 or more
 * @param high where it does not
 * @returns the place, to about 1e-12 of itself
 */
export function lastPlace(holds: (x: number) => boolean, low: number, high: number): number {
  let [left, right] = [low, high];
  while (right - left > CLOSE_ENOUGH * right) {
    const middle = (left + right) / 2;
    if (middle === left || middle === right) break;
    if (holds(middle)) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}
