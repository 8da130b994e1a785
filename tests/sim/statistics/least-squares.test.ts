/** Linear fits: a printed example, brute force by leaving out, coverage by simulation. */
import { describe, expect, it } from 'vitest';
import { choleskyFactor, solveFactored } from '../../../sim/maths/cholesky.ts';
import { seededRandom } from '../../../sim/random.ts';
import { linearFit } from '../../../sim/statistics/least-squares.ts';
import { meanInterval } from '../../../sim/statistics/mean-interval.ts';
import { normals } from '../../support/normals.ts';

/** Anscombe, Am. Stat. 27, 17 (1973), first data set (memory). */
const X = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
const Y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
const ones = X.map(() => 1);

describe('a linear fit', () => {
  it('is the printed line of Anscombe’s first data set: 3.00 + 0.500 x', () => {
    const [intercept, slope] = linearFit(Y, [ones, X]).coefficients;
    expect(intercept).toBeCloseTo(3.0, 3);
    expect(slope).toBeCloseTo(0.5001, 4);
  });

  it('leaves residuals that no column can make smaller', () => {
    const weights = X.map((x) => 1 + (x % 3));
    const squares = X.map((x) => x * x);
    const { residuals } = linearFit(Y, [ones, X, squares], weights);
    for (const column of [ones, X, squares])
      expect(residuals.reduce((sum, residual, i) => sum + weights[i] * residual * column[i], 0)).toBeCloseTo(
        0,
        8,
      );
  });

  it('has a slack that makes each residual the one of a fit without that observation', () => {
    const weights = X.map((x) => 1 + (x % 4));
    const fit = linearFit(Y, [ones, X], weights);
    for (let out = 0; out < X.length; out++) {
      const rest = <Item>(items: readonly Item[]): Item[] => items.filter((_item, index) => index !== out);
      const [intercept = 0, slope = 0] = linearFit(
        rest(Y),
        [rest(ones), rest(X)],
        rest(weights),
      ).coefficients;
      expect(fit.residuals[out] / fit.slack[out]).toBeCloseTo(Y[out] - intercept - slope * X[out], 9);
    }
  });

  it('leaves out a column that those before it make, and has no margin for what needs it', () => {
    const fit = linearFit(Y, [ones, X, X.map((x) => 2 * x - 3)]);
    expect(fit.coefficients[2]).toBeUndefined();
    expect(fit.estimate([1, 10, 0])?.value).toBeCloseTo(8.001, 2);
    expect(fit.estimate([0, 0, 1])).toBeUndefined();
    expect(fit.degrees).toBe(9);
  });

  it('has no margin without a degree of freedom, and nothing to fit without values', () => {
    expect(
      linearFit(
        [1, 2],
        [
          [1, 1],
          [0, 1],
        ],
      ).estimate([1, 0]),
    ).toBeUndefined();
    expect(linearFit([], [[], []]).estimate([1, 0])).toBeUndefined();
  });

  it('holds the truth in 95% of intervals though the spread grows with the column', () => {
    const random = seededRandom('columns');
    const normal = normals('least squares');
    let held = 0;
    const tries = 1500;
    for (let one = 0; one < tries; one++) {
      const x = Array.from({ length: 40 }, () => random());
      const y = x.map((value) => 1 + 2 * value + (0.2 + value) * normal());
      const interval = linearFit(y, [x.map(() => 1), x]).estimate([0, 1]);
      if (interval !== undefined && interval.low < 2 && interval.high > 2) held += 1;
    }
    // Standard error of the share: 0.56 points; HC3 is a little on the wide side.
    expect(held / tries).toBeGreaterThan(0.933);
    expect(held / tries).toBeLessThan(0.98);
  });
});

describe('values that go together', () => {
  it('make the margin of a mean Student’s interval of the means of their groups', () => {
    const days = [
      [0.1, 0.3, 0.2],
      [-0.2, 0, 0.1],
      [0.5, 0.3, 0.1],
      [0.2, -0.1, 0],
    ];
    const values = days.flat();
    const groups = days.flatMap((day, i) => day.map(() => `day ${i}`));
    const one = values.map(() => 1);
    const grouped = linearFit(values, [one], one, groups).estimate([1]);
    const student = meanInterval(days.map((day) => day.reduce((sum, value) => sum + value, 0) / day.length));
    if (grouped === undefined || student === undefined) throw new Error('four groups have a margin');
    expect(grouped.value).toBeCloseTo(student.value, 12);
    // Each residual is that of a fit without its own value: larger by n/(n - 1), twelve elevenths.
    expect(grouped.high - grouped.value).toBeCloseTo(((student.high - student.value) * 12) / 11, 9);
  });

  it('of one group have no margin', () => {
    expect(linearFit([1, 2, 3], [[1, 1, 1]], [1, 1, 1], ['a', 'a', 'a']).estimate([1])).toBeUndefined();
  });
});

describe('Cholesky’s method', () => {
  it('solves what it factors, and turns down what is not positive definite', () => {
    const matrix = [
      [4, 2, -1],
      [2, 5, 3],
      [-1, 3, 6],
    ];
    const x = [0.3, -2, 1.5];
    const right = matrix.map((row) => row.reduce((sum, value, i) => sum + value * x[i], 0));
    const factor = choleskyFactor(matrix);
    if (factor === undefined) throw new Error('no factor');
    solveFactored(factor, right).forEach((value, i) => {
      expect(value).toBeCloseTo(x[i], 12);
    });
    expect(
      choleskyFactor([
        [1, 2],
        [2, 1],
      ]),
    ).toBeUndefined();
  });
});
