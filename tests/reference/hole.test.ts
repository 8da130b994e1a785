/** Sizes in the Rules and how fast a ball may arrive and still drop, tried with whole rolls on a level green. */
import { describe, expect, it } from 'vitest';
import {
  BALL_RADIUS,
  type CaptureName,
  HOLE_RADIUS,
  planeSurface,
  rollBall,
  STIMP_SPEED,
} from '../../sim/index.ts';

describe('the sizes in the Rules of Golf and the Equipment Rules (read second-hand, MODEL.md)', () => {
  it('are kept: a hole 4.25 in (107.95 mm) across, a ball at least 1.680 in (42.67 mm)', () => {
    expect(2 * HOLE_RADIUS).toBeCloseTo(0.10795, 9);
    // "42.67 mm" is given to 0.01 mm.
    expect(Math.abs(2 * BALL_RADIUS - 0.04267)).toBeLessThan(0.00001);
    expect(2 * BALL_RADIUS).toBeGreaterThan(1.679 * 0.0254);
  });
});

const GREEN_SPEED = 3;
const DISTANCE = 2;

/** One ball on a level green that crosses the rim at this speed (m/s), on a line this share of the radius off centre. */
const arrives = (capture: CaptureName, offsetShare: number, rimSpeed: number): boolean => {
  const offset = offsetShare * HOLE_RADIUS;
  const friction = STIMP_SPEED ** 2 / (2 * GREEN_SPEED);
  const toRim = Math.sqrt(DISTANCE ** 2 - offset ** 2) - Math.sqrt(HOLE_RADIUS ** 2 - offset ** 2);
  const roll = rollBall(
    {
      surface: planeSurface({ slope: 0, downhill: 0 }),
      greenSpeed: GREEN_SPEED,
      ball: { x: 0, y: 0 },
      hole: { x: DISTANCE, y: 0 },
      capture,
    },
    Math.asin(offset / DISTANCE),
    Math.sqrt(rimSpeed ** 2 + 2 * friction * toRim),
  );
  return roll.status === 'holed';
};

describe('a ball that may only fall freely into the hole', () => {
  // MODEL.md section 2 (derived): [sqrt(R^2-b^2) + sqrt((R-r)^2-b^2)] sqrt(g/2r), given to 0.001 m/s.
  it.each([
    [0, 1.313],
    [0.2, 1.269],
    [0.4, 1.121],
    [0.5, 0.987],
    [0.6, 0.716],
  ])('drops up to the bound: %d of the radius off centre, %d m/s', (share, bound) => {
    expect(arrives('freeFall', share, bound - 0.001)).toBe(true);
    expect(arrives('freeFall', share, bound + 0.001)).toBe(false);
  });
});

describe('a ball under the simple rule', () => {
  // Holmes 1991, Penner 2002 (memory, MODEL.md section 2): 1.63 (1 - (b/R)^2) m/s.
  it.each([
    [0, 1.63],
    [0.5, 1.2225],
    [0.8, 0.5868],
  ])('drops up to 1.63 (1 - (b/R)^2): %d of the radius off centre, %d m/s', (share, bound) => {
    expect(arrives('simple', share, bound - 0.001)).toBe(true);
    expect(arrives('simple', share, bound + 0.001)).toBe(false);
  });
  it('lets dead centre arrive as fast as the 1.6 m/s Hogan & Antali 2025 quote (read second-hand), not a tenth more', () => {
    expect(arrives('simple', 0, 1.6)).toBe(true);
    expect(arrives('simple', 0, 1.76)).toBe(false);
  });
  it('never catches less than free fall alone', () => {
    for (let share = 0; share <= 0.99; share += 0.03)
      for (let speed = 0.05; speed < 1.7; speed += 0.05)
        if (arrives('freeFall', share, speed)) expect(arrives('simple', share, speed)).toBe(true);
  });
});
