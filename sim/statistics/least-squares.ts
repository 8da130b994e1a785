/**
 * A weighted linear fit, and the margins of what is made of its coefficients when the observations do not spread alike.
 *
 * Answers for: coefficients, fitted values, and any weighted sum of coefficients with its variance. Leaves out: what the columns
 * are. Columns that the ones before them already make are left out; a sum that needs one has no margin, because such
 * observations cannot tell it.
 * The variance is HC3: each residual divided by 1 - its own pull on the fit, which makes it the residual of a fit without that
 * observation (MacKinnon & White, J. Econometrics 29, 305, 1985; Long & Ervin, Am. Stat. 54, 217, 2000; memory). Observations of one
 * group, such as a day, go together: what they pull at a sum is added before it is squared (Liang & Zeger, Biometrika 73, 13, 1986,
 * memory), groups count as many as their parts of the sum are even (Kish), and each level that the sum compares costs one of them.
 */
import { choleskyFactor, type Matrix, solveFactored } from '../maths/cholesky.ts';
import { tFactor } from '../maths/student-t.ts';
import type { Estimate } from './mean-interval.ts';

/** A column counts as made by the others when they leave less than this share of its square. */
const LEFT_OVER = 1e-9;
/** An observation that the fit goes through for certain has no residual to speak of: its pull is held below 1 by this. */
const MOST_PULL = 0.999;
/** With fewer groups to spare nothing is known of how they differ. */
const FEWEST_DEGREES = 1;

export interface LinearFit {
  /** One per column; undefined: the column was left out. */
  readonly coefficients: readonly (number | undefined)[];
  readonly residuals: readonly number[];
  /** 1 - pull of each observation on its own fitted value. */
  readonly slack: readonly number[];
  /** Observations less columns kept, 0 or more. */
  readonly degrees: number;
  /**
   * A sum of coefficients with its interval; undefined when it needs a column left out, or no degree of freedom is left.
   * @param levels that the sum compares, 1 unless it is a change: each costs a group
   */
  estimate(
    parts: readonly number[],
    confidence?: number,
    levels?: number,
  ): Pick<Estimate, 'value' | 'low' | 'high'> | undefined;
}

const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * other[i], 0);

/** Indices of columns that are not made by those kept before them (modified Gram-Schmidt). */
function ownColumns(columns: readonly (readonly number[])[]): number[] {
  const basis: number[][] = [];
  return columns.flatMap((column, index) => {
    const size = dot(column, column);
    const rest = [...column];
    for (const direction of basis) {
      const along = dot(rest, direction);
      for (let i = 0; i < rest.length; i++) rest[i] -= along * direction[i];
    }
    const left = dot(rest, rest);
    if (!(left > LEFT_OVER * size)) return [];
    const length = Math.sqrt(left);
    basis.push(rest.map((value) => value / length));
    return [index];
  });
}

/**
 * Fits values as a sum of columns.
 * @param columns one list per column, each as long as `values`
 * @param weights one per value, above 0; left out: all equal
 * @param groups one per value, the same for values that go together; left out: none do
 */
export function linearFit(
  values: readonly number[],
  columns: readonly (readonly number[])[],
  weights: readonly number[] = values.map(() => 1),
  groups: readonly string[] = values.map((_value, i) => String(i)),
): LinearFit {
  const roots = weights.map(Math.sqrt);
  const scaled = columns.map((column) => column.map((value, i) => value * roots[i]));
  const kept = ownColumns(scaled);
  const own = kept.map((index) => scaled[index]);
  const target = values.map((value, i) => value * roots[i]);
  const normal: Matrix = own.map((row) => own.map((column) => dot(row, column)));
  // Columns of their own make a positive definite matrix, to rounding: ownColumns leaves room for that.
  const factor = choleskyFactor(normal) ?? [];
  const solved = solveFactored(
    factor,
    own.map((column) => dot(column, target)),
  );
  const rows = values.map((_value, i) => own.map((column) => column[i]));
  const slack = rows.map((row) => 1 - Math.min(MOST_PULL, dot(row, solveFactored(factor, row))));
  const left = rows.map((row, i) => target[i] - dot(row, solved));
  const degrees = Math.max(0, values.length - kept.length);
  const grouped = new Set(groups).size < groups.length;
  /** Variance of a sum to which each observation adds this much of itself, and how many groups make it. */
  const pulls = (parts: readonly number[]): { variance: number; effective: number } => {
    const sums = new Map<string, { residual: number; size: number }>();
    for (const [i, part] of parts.entries()) {
      const sum = sums.get(groups[i]) ?? { residual: 0, size: 0 };
      sum.residual += (part * left[i]) / slack[i];
      sum.size += part ** 2;
      sums.set(groups[i], sum);
    }
    let [variance, size, squares] = [0, 0, 0];
    for (const sum of sums.values()) {
      variance += sum.residual ** 2;
      size += sum.size;
      squares += sum.size ** 2;
    }
    return { variance, effective: size ** 2 / squares };
  };
  const coefficients = columns.map((_column, index): number | undefined => solved[kept.indexOf(index)]);
  return {
    coefficients,
    residuals: left.map((residual, i) => residual / roots[i]),
    slack,
    degrees,
    estimate(parts, confidence = 0.95, levels = 1) {
      if (degrees === 0 || parts.some((part, index) => part !== 0 && !kept.includes(index))) return undefined;
      const wanted = kept.map((index) => parts[index]);
      const pulled = solveFactored(factor, wanted);
      const { variance, effective } = pulls(rows.map((row) => dot(row, pulled)));
      const value = dot(wanted, solved);
      if (!grouped) return margin(value, variance, degrees);
      const free = Math.min(degrees, effective - levels);
      return free < FEWEST_DEGREES ? undefined : margin(value, (variance * effective) / free, free);

      function margin(middle: number, square: number, freedom: number) {
        const half = tFactor(confidence, freedom) * Math.sqrt(square);
        return { value: middle, low: middle - half, high: middle + half };
      }
    },
  };
}
