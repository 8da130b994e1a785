/** The search for a least value: functions whose least is known, and honest endings. */
import { describe, expect, it } from 'vitest';
import { findLeast } from '../../../sim/index.ts';

const usual = { tolerance: 1e-7, mostTries: 2000 };

describe('the search for a least value', () => {
  it("finds the end of Rosenbrock's valley, (1, 1)", () => {
    const { status, at, misfit } = findLeast({
      ...usual,
      misfit: ([x, y]) => (1 - x) ** 2 + 100 * (y - x * x) ** 2,
      start: [-1.2, 1],
      steps: [0.5, 0.5],
    });
    expect(status).toBe('ok');
    // Its tolerance is a ten-millionth of a step of 0.5; the valley is flat, so some hundred times that.
    expect(Math.abs(at[0] - 1)).toBeLessThan(1e-5);
    expect(Math.abs(at[1] - 1)).toBeLessThan(2e-5);
    expect(misfit).toBeLessThan(1e-9);
  });

  it('finds the least of one number and of three', () => {
    const one = findLeast({ ...usual, misfit: ([x]) => Math.cosh(x - 2), start: [0], steps: [1] });
    expect(one.at[0]).toBeCloseTo(2, 5);
    const three = findLeast({
      ...usual,
      misfit: (at) => at.reduce((sum, x, i) => sum + (i + 1) * (x - i) ** 2, 0),
      start: [1, 1, 1],
      steps: [1, 1, 1],
    });
    for (const [i, x] of three.at.entries()) expect(x).toBeCloseTo(i, 5);
  });

  it('stays inside where the function is infinite or no number outside', () => {
    const { status, at } = findLeast({
      ...usual,
      misfit: ([x]) => (x > 0 ? x - Math.log(x) : Number.NaN),
      start: [0.1],
      steps: [0.5],
    });
    expect(status).toBe('ok');
    expect(at[0]).toBeCloseTo(1, 5);
  });

  it('says when the tries ran out, and keeps the best place met', () => {
    const search = { misfit: ([x]: readonly number[]) => (x - 50) ** 2, start: [0], steps: [1] };
    const { status, misfit, tries } = findLeast({ ...search, tolerance: 1e-9, mostTries: 10 });
    expect(status).toBe('notSettled');
    expect(misfit).toBeLessThan(2500);
    expect(tries).toBeLessThan(15);
  });

  it('says when it cannot begin', () => {
    const misfit = ([x]: readonly number[]): number => x;
    expect(findLeast({ ...usual, misfit, start: [Number.NaN], steps: [1] }).status).toBe('badStart');
    expect(findLeast({ ...usual, misfit, start: [1], steps: [0] }).status).toBe('badStart');
    expect(findLeast({ ...usual, misfit, start: [1], steps: [1, 1] }).status).toBe('badStart');
  });
});
