/**
 * Symmetric matrices of a handful of rows: what a fit needs of them. Answers for: Cholesky's factor, solving with it, the inverse.
 * Leaves out: everything larger. A matrix is a list of rows.
 */
export type Matrix = readonly (readonly number[])[];

/** Lower triangle L with L L^T = the matrix; undefined when it is not positive definite. */
export function choleskyOf(matrix: Matrix): number[][] | undefined {
  const size = matrix.length;
  const lower = matrix.map(() => new Array<number>(size).fill(0));
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i][j];
      for (let k = 0; k < j; k++) sum -= lower[i][k] * lower[j][k];
      if (i !== j) lower[i][j] = sum / lower[j][j];
      else if (sum > 0) lower[i][i] = Math.sqrt(sum);
      else return undefined;
    }
  return lower;
}

/** x with L x = right. */
export function solveLower(lower: Matrix, right: readonly number[]): number[] {
  const x: number[] = [];
  for (let i = 0; i < right.length; i++) {
    let sum = right[i];
    for (let k = 0; k < i; k++) sum -= lower[i][k] * x[k];
    x.push(sum / lower[i][i]);
  }
  return x;
}

/** The inverse of a positive definite matrix; undefined when it is none. */
export function inverseOf(matrix: Matrix): number[][] | undefined {
  const lower = choleskyOf(matrix);
  if (lower === undefined) return undefined;
  const columns = matrix.map((_, i) =>
    solveLower(
      lower,
      matrix.map((_row, k) => (k === i ? 1 : 0)),
    ),
  );
  return matrix.map((_, i) =>
    matrix.map((_row, j) => columns[i].reduce((sum, value, k) => sum + value * columns[j][k], 0)),
  );
}
