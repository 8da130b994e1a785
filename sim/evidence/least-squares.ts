/**
 * A weighted linear fit, and the margins of what is made of its coefficients when the observations do not spread alike.
 *
 * Answers for: coefficients, fitted values, and any weighted sum of coefficients with its variance. Leaves out: what the columns
 * are. Columns that the ones before them already make are left out; a sum that needs one has no margin, because such
 * observations cannot tell it.
 * The variance is HC3: each residual divided by 1 - its own pull on the fit, which makes it the residual of a fit without that
 * observation (MacKinnon & White, J. Econometrics 29, 305, 1985; Long & Ervin, Am. Stat. 54, 217, 2000; memory).
 */
import { choleskyFactor, type Matrix, solveFactored } from './cholesky.ts';
import type { Estimate } from './mean-interval.ts';
import { tFactor } from './student-t.ts';

/** A column counts as made by the others when they leave less than this share of its square. */
const LEFT_OVER = 1e-9;
/** An observation that the fit goes through for certain has no residual to speak of: its pull is held below 1 by this. */
const MOST_PULL = 0.999;

export interface LinearFit {
  /** One per column; undefined: the column was left out. */
  readonly coefficients: readonly (number | undefined)[];
  readonly residuals: readonly number[];
  /** 1 - pull of each observation on its own fitted value. */
  readonly slack: readonly number[];
  /** Observations less columns kept, 0 or more. */
  readonly degrees: number;
  /** A sum of coefficients with its interval; undefined when it needs a column left out, or no degree of freedom is left. */
  estimate(
    parts: readonly number[],
    confidence?: number,
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
 */
export function linearFit(
  values: readonly number[],
  columns: readonly (readonly number[])[],
  weights: readonly number[] = values.map(() => 1),
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
  const coefficients = columns.map((_column, index): number | undefined => solved[kept.indexOf(index)]);
  return {
    coefficients,
    residuals: left.map((residual, i) => residual / roots[i]),
    slack,
    degrees,
    estimate(parts, confidence = 0.95) {
      if (degrees === 0 || parts.some((part, index) => part !== 0 && !kept.includes(index))) return undefined;
      const wanted = kept.map((index) => parts[index]);
      const pulled = solveFactored(factor, wanted);
      const variance = rows.reduce((sum, row, i) => sum + ((dot(row, pulled) * left[i]) / slack[i]) ** 2, 0);
      const value = dot(wanted, solved);
      const half = tFactor(confidence, degrees) * Math.sqrt(variance);
      return { value, low: value - half, high: value + half };
    },
  };
}
