/** Step length: division, and coverage by simulation of somebody who counts whole steps. */
import { describe, expect, it } from 'vitest';
import { halfWidth, seededRandom, stepLength, type Walk } from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';
import { coverage } from './people.ts';

const found = (walks: readonly Walk[]) => {
  const length = stepLength(walks);
  if (length === undefined) throw new Error('there were walks');
  return length.step;
};

describe('a step', () => {
  it('is the length over the count, with a margin that falls as the walk grows', () => {
    const short = found([{ length: 7.6, steps: 10 }]);
    const long = found([{ length: 38, steps: 50 }]);
    expect(short.value).toBeCloseTo(0.76, 12);
    expect(long.value).toBeCloseTo(0.76, 12);
    // Half a step of ten against half a step of fifty, and the 1% by which strides differ.
    expect(halfWidth(long)).toBeLessThan(halfWidth(short) / 2);
    expect(stepLength([])).toBeUndefined();
  });

  it.each([1, 3])('lies within its margin 19 times in 20 with %i walks counted in whole steps', (walks) => {
    const random = seededRandom(`walks ${walks}`);
    const normal = normals(`stride ${walks}`);
    const covered = coverage(2500, 0.75, () =>
      found(
        Array.from({ length: walks }, () => {
          const length = 15 + 15 * random();
          // Legs waver a little too: 1% a walk.
          return { length, steps: Math.round(length / (0.75 * (1 + 0.01 * normal()))) };
        }),
      ),
    );
    // Rounding is not normal, so one walk is covered nearly always; three nearer to 95%.
    expect(covered).toBeGreaterThan(0.935);
  });
});
