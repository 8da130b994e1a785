/** What passes the gate, and how two versions of a read set become one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeSets, pass } from '../../../src/store/gate.ts';
import { isFinished, readSetSchema } from '../../../src/store/schema.ts';
import { answer, set } from '../../support/sampleSet.ts';

const passSet = (found: unknown) => pass(readSetSchema, found);

describe('the gate', () => {
  it('turns down unknown fields, strangers and doubled answers', () => {
    expect(passSet(set()).ok).toBe(true);
    expect(passSet({ ...set(), extra: 1 }).ok).toBe(false);
    expect(passSet(set({ answers: [answer(9)] })).ok).toBe(false);
    expect(passSet(set({ answers: [answer(1), answer(1)] })).ok).toBe(false);
    expect(passSet(undefined)).toMatchObject({ ok: false });
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.anything(), (found) => {
        expect(passSet(found).ok).toBe(false);
      }),
      { seed: 31, numRuns: 1000 },
    );
  });

  it('keeps the first answer to a question and adds its cost later', () => {
    const costed = { ...answer(1, 0.2), holedAtAim: 0.3, holedAtTrue: 0.4 };
    const kept = set({ answers: [answer(1, 0.2)] });
    expect(mergeSets(kept, set({ answers: [answer(1, 0.9)] })).answers).toEqual([answer(1, 0.2)]);
    expect(mergeSets(kept, set({ answers: [costed] })).answers).toEqual([costed]);
    expect(mergeSets(set({ answers: [costed] }), kept).answers).toEqual([costed]);
  });

  it('merges in either order to the same questions answered', () => {
    const some = fc.uniqueArray(fc.integer({ min: 1, max: 3 }));
    fc.assert(
      fc.property(some, some, (one, two) => {
        const a = set({ answers: one.map((number) => answer(number)) });
        const b = set({ answers: two.map((number) => answer(number)) });
        const numbers = mergeSets(a, b).answers.map(({ number }) => number);
        expect(numbers).toEqual([...new Set([...one, ...two])].sort());
        expect(mergeSets(b, a)).toEqual(mergeSets(a, b));
      }),
      { seed: 32 },
    );
  });

  it('knows when a set is finished', () => {
    expect(isFinished(set({ answers: [answer(1), answer(2)] }))).toBe(false);
    expect(isFinished(set({ answers: [answer(1), answer(2), answer(3)] }))).toBe(true);
  });
});
