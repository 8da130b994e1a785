/** A practice set being entered: its counts always fit each other, so that the store takes it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  NO_PRACTICE,
  type PracticeDraft,
  setOf,
  withCount,
  withMiss,
} from '../../../src/screens/record/practice.ts';
import { practiceSchema } from '../../../src/store/recordSchema.ts';

const AT = { id: 'set-00001', day: '2026-05-02', recordedAt: 5 };

describe('a practice set', () => {
  it('needs a distance, and leaves out what was not said', () => {
    expect(setOf(NO_PRACTICE, AT)).toBeUndefined();
    expect(setOf({ ...NO_PRACTICE, distance: 2, holed: 7 }, AT)).toEqual({
      ...AT,
      distance: 2,
      attempts: 10,
      holed: 7,
      ground: 'grass',
    });
  });

  it('has no more misses of a pair than putts missed, when more are holed later too', () => {
    let draft: PracticeDraft = { ...NO_PRACTICE, distance: 2, holed: 6 };
    for (let press = 0; press < 9; press += 1) draft = withMiss(draft, 'high', 1);
    expect(draft.misses.high).toBe(4);
    expect(withMiss(draft, 'low', 1).misses.low).toBe(0);
    expect(withMiss(draft, 'short', 1).misses.short).toBe(1);
    expect(withCount(draft, 'holed', 3).misses.high).toBe(1);
  });

  it('is taken by the store after any steps whatever', () => {
    const step = fc.oneof(
      fc.record({
        of: fc.constantFrom('attempts' as const, 'holed' as const),
        by: fc.integer({ min: -30, max: 30 }),
      }),
      fc.record({
        of: fc.constantFrom('high' as const, 'low' as const, 'short' as const, 'past' as const),
        by: fc.constantFrom(-1, 1, 5),
      }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const end = steps.reduce<PracticeDraft>(
          (draft, { of, by }) =>
            of === 'attempts' || of === 'holed' ? withCount(draft, of, by) : withMiss(draft, of, by),
          { ...NO_PRACTICE, distance: 3 },
        );
        expect(practiceSchema.safeParse(setOf(end, AT)).error).toBeUndefined();
      }),
      { seed: 4, numRuns: 500 },
    );
  });
});
