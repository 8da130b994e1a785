/** Pace errors: closed forms with jstat's quantiles, the engine's own player rolled to targets, coverage by simulation. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { type PaceRoll, paceControl } from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';
import { coverage, type GroundUnderTest, rollOnGround } from './people.ts';

const found = (rolls: readonly PaceRoll[]) => {
  const control = paceControl(rolls);
  if (control === undefined) throw new Error('there were enough rolls');
  return control;
};

describe('balls rolled to a target', () => {
  it('give mean and spread of their errors with the textbook intervals', () => {
    // Errors of 6, -3, 12, 0, -9% of ten metres: their mean is 1.2%.
    const errors = [0.06, -0.03, 0.12, 0, -0.09];
    const { pace } = found(errors.map((error) => ({ target: 10, past: 10 * error })));
    const squares = errors.reduce((sum, error) => sum + (error - 0.012) ** 2, 0);
    const s = Math.sqrt(squares / 4);
    expect(pace.bias.value).toBeCloseTo(0.012, 12);
    expect(pace.sd.value).toBeCloseTo(s, 12);
    // jstat's quantiles are good to about 1e-6.
    expect(pace.sd.low).toBeCloseTo(Math.sqrt(squares / jStat.chisquare.inv(0.975, 4)), 6);
    expect(pace.sd.high).toBeCloseTo(Math.sqrt(squares / jStat.chisquare.inv(0.025, 4)), 6);
    expect(pace.bias.high).toBeCloseTo(0.012 + (jStat.studentt.inv(0.975, 4) * s) / Math.sqrt(5), 6);
    expect(pace.bias.low + pace.bias.high).toBeCloseTo(0.024, 12);
  });

  it('say nothing from one ball, and nothing of direction without sides', () => {
    expect(paceControl([])).toBeUndefined();
    expect(paceControl([{ target: 6, past: 0.3 }])).toBeUndefined();
    expect(
      found([
        { target: 6, past: 0.3, left: 0.1 },
        { target: 6, past: 0.1 },
      ]).direction,
    ).toBeUndefined();
  });

  it('know the same targets from different ones', () => {
    const to = (targets: readonly number[]): boolean =>
      found(targets.map((target, i) => ({ target, past: i * 0.1 }))).oneTarget;
    expect(to([6, 6, 6.1])).toBe(true);
    expect(to([4, 6, 9])).toBe(false);
  });

  it('find the errors of a player whose balls the engine rolled', () => {
    const normal = normals('rolled');
    const ground: GroundUnderTest = { greenSpeed: 3.048, slope: 0, turn: 0 };
    const rolls = Array.from({ length: 600 }, (_, i): PaceRoll => {
      const target = [5, 8, 12][i % 3];
      // Launch speed of the engine's player: sqrt(1 + bias + spread z) times the right one, v^2 = v_s^2 target/S.
      const speed = 1.83 * Math.sqrt((target / 3.048) * (1 - 0.04 + 0.09 * normal()));
      return { target, past: rollOnGround(ground, { speed }).distance - target };
    });
    const { pace } = found(rolls);
    // Standard errors of 600: 0.0026 of the spread, 0.0037 of the bias; four of them.
    expect(Math.abs(pace.sd.value - 0.09)).toBeLessThan(0.0105);
    expect(Math.abs(pace.bias.value + 0.04)).toBeLessThan(0.015);
  });

  it.each([2, 10, 30])('hold the truth 19 times in 20 with %i balls to any mix of targets', (count) => {
    const normal = normals(`pace ${count}`);
    const sets = Array.from({ length: 3000 }, () =>
      found(
        Array.from({ length: count }, (_, i): PaceRoll => {
          const target = 3 + (i % 4) * 3;
          const rolled = target * (1 + 0.03 + 0.1 * normal());
          return { target, past: rolled - target, left: rolled * Math.tan(0.005 + 0.02 * normal()) };
        }),
      ),
    );
    // Exact intervals: only the counting error of 3000, 0.4 points, four times.
    const exact = (covered: number): void => {
      expect(covered).toBeGreaterThan(0.934);
      expect(covered).toBeLessThan(0.966);
    };
    exact(coverage(3000, 0.1, (run) => sets[run].pace.sd));
    exact(coverage(3000, 0.03, (run) => sets[run].pace.bias));
    const direction = (run: number) => {
      const { direction: spread } = sets[run];
      if (spread === undefined) throw new Error('every ball had a side');
      return spread;
    };
    exact(coverage(3000, 0.02, (run) => direction(run).sd));
    exact(coverage(3000, 0.005, (run) => direction(run).bias));
  });
});
