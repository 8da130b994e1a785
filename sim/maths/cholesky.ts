/**
 * Symmetric positive definite systems of a few unknowns. Answers for: factor, solution, inverse. Leaves out: large or badly
 * scaled systems. Source: Cholesky's method, as in Golub & Van Loan, Matrix Computations, 4.2 (memory).
 */

/** Square, row by row; only what is on and below the diagonal is looked at. */
export type Matrix = readonly (readonly number[])[];

/** L with L L' = matrix, lower triangle; undefined when the matrix is not positive definite. */
export function choleskyFactor(matrix: Matrix): Matrix | undefined {
  const factor: number[][] = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i][j];
      for (let k = 0; k < j; k++) sum -= factor[i][k] * factor[j][k];
      if (i > j) factor[i][j] = sum / factor[j][j];
      else if (sum > 0) factor[i][i] = Math.sqrt(sum);
      else return undefined;
    }
  return factor;
}

/** x with L x = right. */
export function solveLower(factor: Matrix, right: readonly number[]): number[] {
  const x = [...right];
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) x[i] -= factor[i][k] * x[k];
    x[i] /= factor[i][i];
  }
  return x;
}

/** x with L' x = right. */
export function solveUpper(factor: Matrix, right: readonly number[]): number[] {
  const x = [...right];
  for (let i = x.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < x.length; k++) x[i] -= factor[k][i] * x[k];
    x[i] /= factor[i][i];
  }
  return x;
}

/** x with L L' x = right. */
export const solveFactored = (factor: Matrix, right: readonly number[]): number[] =>
  solveUpper(factor, solveLower(factor, right));

/** The inverse of a positive definite matrix; undefined when it is none. */
export function inverseOf(matrix: Matrix): number[][] | undefined {
  const factor = choleskyFactor(matrix);
  if (factor === undefined) return undefined;
  const columns = matrix.map((_, i) =>
    solveLower(
      factor,
      matrix.map((_row, k) => (k === i ? 1 : 0)),
    ),
  );
  return matrix.map((_, i) =>
    matrix.map((_row, j) => columns[i].reduce((sum, value, k) => sum + value * columns[j][k], 0)),
  );
}
