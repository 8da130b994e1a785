/** What passes the gate, and how two versions of a read set become one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pass } from '../../../src/store/gate.ts';
import { isSameSet, mergeSets } from '../../../src/store/readSetMerge.ts';
import { isFinished, type KeptSet, readSetSchema } from '../../../src/store/schema.ts';
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

  it('turns down answers of another kind than the set, and a set with more questions than it has room for', () => {
    const slope = { kind: 'slope', number: 1, total: 0.02, along: 0.01, answeredAt: 5 } as const;
    expect(passSet(set({ answers: [slope] })).ok).toBe(false);
    expect(passSet(set({ kind: 'slope', answers: [slope] })).ok).toBe(true);
    expect(passSet(set({ size: 2 })).ok).toBe(false);
    // Die or firm needs a firm pace.
    expect(passSet(set({ kind: 'paces' })).ok).toBe(false);
  });

  it('adds what the paces take to a choice once it is known, and keeps the first choice', () => {
    const choice = { kind: 'paces', number: 1, chosen: 'die', answeredAt: 5 } as const;
    const known = { ...choice, putts: { die: 1.6, firm: 1.5 } };
    const paces = (one: KeptSet['answers'][number]): KeptSet => set({ kind: 'paces', answers: [one] });
    expect(mergeSets(paces(choice), paces(known)).answers).toEqual([known]);
    expect(mergeSets(paces(known), paces(choice)).answers).toEqual([known]);
    expect(mergeSets(paces(choice), paces({ ...known, chosen: 'firm' })).answers).toEqual([choice]);
  });

  it('lets an adaptive set grow, and keeps the first way when two tabs took different ones', () => {
    const [first, second, third] = set().questions;
    const short = set({ size: 10, questions: [first, second], answers: [answer(1)] });
    const long = set({ size: 10, questions: [first, second, third], answers: [answer(1), answer(2)] });
    expect(mergeSets(short, long)).toEqual(long);
    expect(mergeSets(long, short)).toEqual(long);
    const other = set({
      size: 10,
      questions: [first, { ...second, trueAim: 0.7 }],
      answers: [answer(1), answer(2, 0.9)],
    });
    expect(mergeSets(short, other)).toEqual(short);
    expect(isSameSet(short, long)).toBe(true);
    expect(isSameSet(short, other)).toBe(false);
    expect(isSameSet(short, { ...long, size: 9 })).toBe(false);
  });

  it('knows when a set is finished', () => {
    expect(isFinished(set({ answers: [answer(1), answer(2)] }))).toBe(false);
    expect(isFinished(set({ answers: [answer(1), answer(2), answer(3)] }))).toBe(true);
  });
});
