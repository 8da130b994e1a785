/**
 * The two solvers of a program that always ends, against each other, against the theorem that bounds one of them, against
 * every policy of a small program counted out, and against a closed form. No golf.
 */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../sim/index.ts';
import {
  costOfAction,
  type Decisions,
  evaluatePolicy,
  policyIteration,
  valueIteration,
} from '../../../sim/maths/dynamic-program.ts';

type Row = { readonly cost: number; readonly steps: readonly (readonly [number, number])[] };

/** Places with their actions, written as rows of numbers. */
function decisionsOf(places: readonly (readonly Row[])[]): Decisions {
  const rows = places.flat();
  const steps = rows.flatMap((row) => row.steps);
  const running = (counts: readonly number[]): Int32Array => {
    const sums = new Int32Array(counts.length + 1);
    counts.forEach((count, i) => {
      sums[i + 1] = sums[i] + count;
    });
    return sums;
  };
  return {
    firstAction: running(places.map((some) => some.length)),
    cost: Float64Array.from(rows, ({ cost }) => cost),
    firstStep: running(rows.map((row) => row.steps.length)),
    to: Int32Array.from(steps, ([to]) => to),
    share: Float64Array.from(steps, ([, share]) => share),
  };
}

/** Any program: so many places and actions, of which at most `stay` goes on from place to place. */
function randomProgram(seed: string, places: number, actions: number, stay: number): Decisions {
  const random = seededRandom(seed);
  return decisionsOf(
    Array.from({ length: places }, () =>
      Array.from({ length: actions }, () => {
        const weights = Array.from({ length: places }, () => (random() < 0.3 ? random() : 0));
        const sum = weights.reduce((total, weight) => total + weight, 1e-9);
        const kept = stay * random();
        return {
          cost: 0.5 + random(),
          steps: weights.flatMap((weight, to) => (weight > 0 ? [[to, (kept * weight) / sum] as const] : [])),
        };
      }),
    ),
  );
}

const apart = (first: Float64Array, second: Float64Array): number =>
  first.reduce((most, value, i) => Math.max(most, Math.abs(value - second[i])), 0);

const PROGRAMS = [
  ['soon ended', 30, 4, 0.5],
  ['long', 40, 6, 0.98],
  ['one action', 25, 1, 0.9],
] as const;

describe('a program solved by policy and by value iteration', () => {
  // Rounding of sums of some dozen numbers of size up to a hundred.
  const ROUNDING = 1e-10;

  it.each(PROGRAMS)('comes to the same within the bound stated: %s', (name, places, actions, stay) => {
    const program = randomProgram(name, places, actions, stay);
    const exact = policyIteration(program);
    for (const tolerance of [1, 0.01, 1e-6]) {
      const near = valueIteration(program, tolerance);
      expect(near.bound).toBeLessThanOrEqual(tolerance);
      // The theorem: no value farther off than the bound, none above, and its policy costs at most twice the bound more.
      for (let i = 0; i < places; i++) {
        expect(near.values[i]).toBeLessThanOrEqual(exact.values[i] + ROUNDING);
        expect(near.values[i]).toBeGreaterThanOrEqual(exact.values[i] - near.bound - ROUNDING);
      }
      const kept = evaluatePolicy(program, near.policy);
      for (let i = 0; i < places; i++) {
        expect(kept[i]).toBeGreaterThanOrEqual(exact.values[i] - ROUNDING);
        expect(kept[i]).toBeLessThanOrEqual(exact.values[i] + 2 * near.bound + ROUNDING);
      }
    }
  });

  it.each(PROGRAMS)('leaves no place an action that is better (Bellman’s equation holds): %s', (...named) => {
    const [name, places, actions, stay] = named;
    const program = randomProgram(name, places, actions, stay);
    const { values, policy } = policyIteration(program);
    for (let i = 0; i < places; i++) {
      expect(Math.abs(costOfAction(program, policy[i], values) - values[i])).toBeLessThan(ROUNDING);
      for (let action = program.firstAction[i]; action < program.firstAction[i + 1]; action++)
        expect(costOfAction(program, action, values)).toBeGreaterThan(values[i] - ROUNDING);
    }
  });

  it('costs no more than any of the 3^6 policies of a small program', () => {
    const program = randomProgram('small', 6, 3, 0.95);
    const { values } = policyIteration(program);
    const least = new Float64Array(6).fill(Number.POSITIVE_INFINITY);
    for (let code = 0; code < 3 ** 6; code++) {
      const policy = Int32Array.from(
        { length: 6 },
        (_, i) => program.firstAction[i] + (Math.floor(code / 3 ** i) % 3),
      );
      // Costs of this policy by following it for so long that 0.95^2000 of a cost is left.
      let cost = new Float64Array(6);
      for (let turn = 0; turn < 2000; turn++)
        cost = Float64Array.from(policy, (action) => costOfAction(program, action, cost));
      for (let i = 0; i < 6; i++) least[i] = Math.min(least[i], cost[i]);
    }
    expect(apart(values, least)).toBeLessThan(ROUNDING);
  });

  it('gives 1/(1 - p) tries for a try that fails with chance p, and prefers the surer one', () => {
    // Mean of the geometric distribution.
    const program = decisionsOf([
      [
        { cost: 1, steps: [[0, 0.75]] },
        { cost: 1, steps: [[0, 0.2]] },
      ],
    ]);
    const { values, policy } = policyIteration(program);
    expect(Math.abs(values[0] - 1.25)).toBeLessThan(ROUNDING);
    expect(policy[0]).toBe(1);
    expect(Math.abs(evaluatePolicy(program, Int32Array.of(0))[0] - 4)).toBeLessThan(ROUNDING);
  });
});
