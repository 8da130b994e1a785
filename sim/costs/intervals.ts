/**
 * A number over the likely players: its mean and where 95% of them lie. Leaves out: where the players come from.
 * With one player there is no spread: both ends are the value.
 */

export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const TAIL = 0.025;

/** @param values one for each player @param weights likewise, 0 or more, not all 0 */
export function intervalOf(values: Float64Array, weights: Float64Array): Interval {
  const order = Array.from(values.keys()).sort((a, b) => values[a] - values[b]);
  let all = 0;
  let sum = 0;
  for (const i of order) {
    all += weights[i];
    sum += weights[i] * values[i];
  }
  const quantile = (part: number): number => {
    let passed = 0;
    for (const i of order) {
      passed += weights[i];
      if (passed >= part * all) return values[i];
    }
    return values[order[order.length - 1]];
  };
  return { value: sum / all, low: quantile(TAIL), high: quantile(1 - TAIL) };
}

/** Share of the players for whom it is above 0; players for whom it is 0 count half. */
export function chanceAbove(values: Float64Array, weights: Float64Array): number {
  let above = 0;
  let all = 0;
  values.forEach((value, i) => {
    all += weights[i];
    above += value > 0 ? weights[i] : value === 0 ? weights[i] / 2 : 0;
  });
  return above / all;
}
