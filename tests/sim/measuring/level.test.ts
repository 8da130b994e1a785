/** Slope by a level: closed forms, planes sampled with a board laid on them, coverage by simulation. */
import { describe, expect, it } from 'vitest';
import {
  degreesToRadians,
  fallByLevel,
  halfWidth,
  LEVEL_SPREAD,
  type LevelPair,
  planeSurface,
  sampleSurface,
  slopeByLevel,
} from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';
import { coverage } from './people.ts';

const pair = (angleDegrees: number, zeroDegrees = 0): LevelPair => ({
  facing: degreesToRadians(zeroDegrees + angleDegrees),
  turned: degreesToRadians(zeroDegrees - angleDegrees),
});

/** What a level shows on a board of this length that points along `bearing` on a plane: the drop of its ends. */
const onPlane = (slope: number, downhill: number, bearing: number): number => {
  const surface = planeSurface({ slope, downhill });
  const heightAt = (distance: number): number => {
    const out = { height: 0, gradientX: 0, gradientY: 0 };
    sampleSurface(surface, distance * Math.cos(bearing), distance * Math.sin(bearing), out);
    return out.height;
  };
  return Math.atan2(heightAt(0.6) - heightAt(0), 0.6);
};

describe('a level turned round', () => {
  it.each([
    // 100 tan(angle): tables of tangents. One degree is 1.75%, MODEL.md section 6.
    [1, 0.017455],
    [2, 0.034921],
    [-0.5, -0.0087269],
    [5, 0.087489],
  ])('reads %f degrees as a slope of %f, whatever its zero error', (degrees, slope) => {
    for (const zero of [0, 0.7, -1.3]) {
      const found = slopeByLevel([pair(degrees, zero)]);
      expect(found?.slope.value).toBeCloseTo(slope, 5);
      expect(found?.zeroError).toBeCloseTo(degreesToRadians(zero), 12);
    }
  });

  it('is nothing without readings', () => {
    expect(slopeByLevel([])).toBeUndefined();
    expect(fallByLevel({ forwards: [pair(1)], left: [] })).toBeUndefined();
  });

  it.each([1, 2, 6])('with %i pairs holds the truth 19 times in 20', (count) => {
    const normal = normals(`level ${count}`);
    const angle = Math.atan(0.02);
    const covered = coverage(2500, 0.02, () => {
      const zero = 0.01 * normal();
      const found = slopeByLevel(
        Array.from({ length: count }, () => ({
          facing: zero + angle + LEVEL_SPREAD * normal(),
          turned: zero - angle + LEVEL_SPREAD * normal(),
        })),
      );
      if (found === undefined) throw new Error('there were pairs');
      return found.slope;
    });
    // Counting error 0.4 points. With few pairs the scatter is not yet believed, and the interval errs to the wide side.
    expect(covered).toBeGreaterThan(0.935);
    expect(covered).toBeLessThan(count === 6 ? 0.97 : 0.995);
  });

  it('has a wider margin when repeats disagree', () => {
    const calm = slopeByLevel([pair(1), pair(1.05), pair(0.95)]);
    const wild = slopeByLevel([pair(1), pair(2), pair(0.2)]);
    if (calm === undefined || wild === undefined) throw new Error('there were pairs');
    expect(halfWidth(wild.slope)).toBeGreaterThan(3 * halfWidth(calm.slope));
  });
});

describe('the fall from two directions', () => {
  it.each([0, 40, 130, -75, 180])('lies %i degrees to the left of forwards when it does', (degrees) => {
    const uphill = degreesToRadians(degrees);
    const read = (bearing: number): LevelPair[] => {
      const angle = onPlane(0.025, uphill + Math.PI, bearing);
      return [
        { facing: 0.01 + angle, turned: 0.01 - angle },
        { facing: 0.01 + angle, turned: 0.01 - angle },
      ];
    };
    const found = fallByLevel({ forwards: read(0), left: read(Math.PI / 2) });
    expect(found?.slope.value).toBeCloseTo(0.025, 10);
    expect(Math.cos((found?.uphill?.value ?? Number.NaN) - uphill)).toBeCloseTo(1, 10);
  });

  it.each([0, 0.002, 0.005, 0.02])('on a slope of %f holds size and direction 19 times in 20', (slope) => {
    const normal = normals(`fall ${slope}`);
    const direction = 0.6;
    const pairs = (angle: number): LevelPair[] =>
      Array.from({ length: 2 }, () => ({
        facing: angle + LEVEL_SPREAD * normal(),
        turned: -angle + LEVEL_SPREAD * normal(),
      }));
    const runs = Array.from({ length: 2500 }, () => {
      const found = fallByLevel({
        forwards: pairs(Math.atan(slope * Math.cos(direction))),
        left: pairs(Math.atan(slope * Math.sin(direction))),
      });
      if (found === undefined) throw new Error('there were pairs');
      return found;
    });
    // Counting error 0.4 points; near level the interval errs to the wide side, since the size is never less than nothing.
    expect(coverage(runs.length, slope, (run) => runs[run].slope)).toBeGreaterThan(0.935);
    const sure = runs.flatMap(({ uphill }) => (uphill === undefined ? [] : [uphill]));
    if (slope === 0)
      // A direction on level ground: one time in twenty, and fewer while the prior holds the margin wide.
      expect(sure.length / runs.length).toBeLessThan(0.06);
    if (slope === 0.02) {
      expect(sure).toHaveLength(runs.length);
      const covered = coverage(sure.length, direction, (run) => sure[run]);
      expect(covered).toBeGreaterThan(0.935);
      expect(covered).toBeLessThan(0.985);
    }
  });
});
