/** Lengths one can tap. Feet and inches by their definition (0.3048 m, 0.0254 m), from memory. */
import { describe, expect, it } from 'vitest';
import { fineStep, sameLength, usualDistances, usualLeaves } from '../../../src/screens/record/distances.ts';
import { LONGEST_PUTT, SHORTEST_PUTT } from '../../../src/store/recordSchema.ts';

const feet = (value: number): number => value * 0.3048;

describe('usual lengths', () => {
  it.each(['imperial', 'metric'] as const)(
    'come in order, twenty putts and fifteen leaves, all of them kept by the store (%s)',
    (units) => {
      for (const [list, size] of [
        [usualDistances(units), 20],
        [usualLeaves(units), 15],
      ] as const) {
        expect(list).toHaveLength(size);
        expect([...list].sort((a, b) => a - b)).toEqual(list);
        expect(list[0]).toBeGreaterThanOrEqual(SHORTEST_PUTT);
        expect(list.at(-1)).toBeLessThanOrEqual(LONGEST_PUTT);
      }
    },
  );
});

describe('a fine step', () => {
  it.each([
    [10, 1, 11],
    [10, -1, 9.5],
    [9.5, 1, 10],
    [3, 1, 3.5],
    [3, -1, 2.75],
    [40, 1, 45],
    [60, 1, 65],
    [60, -1, 55],
  ] as const)('goes from %d ft (%d) to %d ft', (from, way, to) => {
    expect(fineStep(feet(from), way, 'imperial')).toBeCloseTo(feet(to), 9);
  });
  it.each([
    [3, 1, 3.1],
    [5, 1, 5.5],
    [1, -1, 0.95],
    [15, 1, 16],
  ] as const)('goes from %d m (%d) to %d m', (from, way, to) => {
    expect(fineStep(from, way, 'metric')).toBeCloseTo(to, 9);
  });
  it('goes from a length recorded in the other units to the nearest round one that way', () => {
    expect(fineStep(3.048, 1, 'metric')).toBeCloseTo(3.1, 9);
    expect(fineStep(3.048, -1, 'metric')).toBeCloseTo(3, 9);
  });
  it.each(['imperial', 'metric'] as const)(
    'reaches both ends of what is kept and stays there, never standing still before (%s)',
    (units) => {
      for (const [way, end] of [
        [1, LONGEST_PUTT],
        [-1, SHORTEST_PUTT],
      ] as const) {
        let at = 3;
        for (let step = 0; step < 200 && at !== end; step += 1) {
          const next = fineStep(at, way, units);
          expect(Math.sign(next - at)).toBe(way);
          at = next;
        }
        expect(fineStep(at, way, units)).toBe(end);
      }
    },
  );
});

describe('two lengths', () => {
  it('are the same to whoever taps when they differ by less than an eighth of an inch', () => {
    expect(sameLength(feet(3), 0.9144)).toBe(true);
    expect(sameLength(1, 1.0032)).toBe(false);
    expect(sameLength(undefined, undefined)).toBe(false);
  });
});
