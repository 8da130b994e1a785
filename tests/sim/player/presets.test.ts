/** The players to begin with hold what their sources say. */
import { describe, expect, it } from 'vitest';
import { inchesToMetres, PRESETS, radiansToDegrees } from '../../../sim/index.ts';

const presetOf = (id: string) => {
  const found = PRESETS.find((preset) => preset.id === id);
  if (found === undefined) throw new Error(`no preset ${id}`);
  return found.player;
};

describe('the presets', () => {
  it('take angle and distance of the tour fit from Gelman 2019: 1.02 degrees, 8.0%', () => {
    const whole = presetOf('tour-like-line-only');
    expect(radiansToDegrees(whole.lineSd)).toBeCloseTo(1.02, 9);
    expect(whole.paceSd).toBe(0.08);
    expect(whole.readSd).toBe(0);
  });

  it('split that angle so that both parts make it again where they say: a 10 ft putt that breaks 11 in', () => {
    const split = presetOf('tour-like');
    const breakAngle = Math.atan(inchesToMetres(11) / inchesToMetres(120));
    const together = Math.hypot(radiansToDegrees(split.lineSd), radiansToDegrees(breakAngle) * split.readSd);
    // Given to a hundredth of a degree.
    expect(Math.abs(together - 1.02)).toBeLessThan(0.01);
  });

  it('take the distance error of low handicaps from Karlsen & Nilsson 2008: 10.6%', () => {
    expect(presetOf('low-handicap').paceSd).toBe(0.106);
  });

  it('have ids of their own', () => {
    expect(new Set(PRESETS.map(({ id }) => id)).size).toBe(PRESETS.length);
  });
});
