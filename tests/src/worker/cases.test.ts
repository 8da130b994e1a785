/** A foot of green speed and half a percent of slope either way. 1 ft = 0.3048 m by definition. */
import { describe, expect, it } from 'vitest';
import { fieldSurface, type Putt, planeSurface, sampleSurface } from '../../../sim/index.ts';
import { changedPutt } from '../../../src/worker/cases.ts';

const plane = (slope: number): Putt => ({
  surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
  greenSpeed: 3.048,
  ball: { x: 3, y: 0 },
  hole: { x: 0, y: 0 },
  capture: 'simple',
});
const gradientAt = ({ surface }: Putt, x: number, y: number): { x: number; y: number } => {
  const out = { height: 0, gradientX: 0, gradientY: 0 };
  expect(sampleSurface(surface, x, y, out)).toBe(true);
  return { x: out.gradientX, y: out.gradientY };
};

describe('a green that is not as thought', () => {
  it('is a foot slower or faster', () => {
    expect(changedPutt(plane(0.02), 'slower').greenSpeed).toBeCloseTo(9 * 0.3048, 12);
    expect(changedPutt(plane(0.02), 'faster').greenSpeed).toBeCloseTo(11 * 0.3048, 12);
  });
  it('is half a percent flatter or steeper along the fall line of a plane', () => {
    expect(gradientAt(changedPutt(plane(0.02), 'gentler'), 1, 1).y).toBeCloseTo(0.015, 12);
    expect(gradientAt(changedPutt(plane(0.02), 'steeper'), 1, 1).y).toBeCloseTo(0.025, 12);
  });
  it('falls the other way where it was flatter than half a percent', () => {
    expect(gradientAt(changedPutt(plane(0.002), 'gentler'), 1, 1).y).toBeCloseTo(-0.003, 12);
  });
  it('is tilted along the fall line at the hole on a field', () => {
    // Height 0.03 x - 0.04 y: a slope of 5% by 3-4-5; half a percent more is a tenth more of each.
    const heights = Float64Array.from({ length: 81 }, (_, at) => 0.03 * (at % 9) - 0.04 * Math.floor(at / 9));
    const surface = fieldSurface({ origin: { x: 0, y: 0 }, spacing: 1, columns: 9, rows: 9, heights });
    const putt: Putt = { ...plane(0), surface, ball: { x: 6, y: 4 }, hole: { x: 3, y: 4 } };
    const steeper = gradientAt(changedPutt(putt, 'steeper'), 4, 4);
    // 1e-9: a plane through a bicubic is exact but for rounding.
    expect(steeper.x).toBeCloseTo(0.033, 9);
    expect(steeper.y).toBeCloseTo(-0.044, 9);
  });
  it('is the same green when asked twice, so that the engine prepares it once', () => {
    const surface = fieldSurface({
      origin: { x: 0, y: 0 },
      spacing: 1,
      columns: 9,
      rows: 9,
      heights: new Float64Array(81),
    });
    const putt: Putt = { ...plane(0), surface, ball: { x: 6, y: 4 }, hole: { x: 3, y: 4 } };
    expect(changedPutt(putt, 'steeper').surface).toBe(changedPutt(putt, 'steeper').surface);
  });
});
