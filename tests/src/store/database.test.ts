/** Records on the device: kept, merged, gated, and a blocked database said so. Node's stand-in for IndexedDB. */
import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memoryStore, openReadStore } from '../../../src/store/database.ts';
import { mergeSets, passSet } from '../../../src/store/gate.ts';
import { isFinished, type KeptAnswer, type KeptSet } from '../../../src/store/schema.ts';
import { sampleQuestion } from '../../support/sampleQuestion.ts';

const answer = (number: number, aim = 0.2): KeptAnswer => ({ number, aim, answeredAt: 1000 + number });
const set = (changes: Partial<KeptSet> = {}): KeptSet => ({
  id: 'set-0001',
  drillId: 'long-lag',
  drillName: 'Long lag',
  seed: 'abc',
  startedAt: 1000,
  questions: [1, 2, 3].map((number) => sampleQuestion({ number })),
  answers: [],
  ...changes,
});
let serial = 0;
const freshName = (): string => `test-${++serial}`;

describe('the records', () => {
  it('are still there when the database is opened again', async () => {
    const name = freshName();
    const first = await openReadStore(name);
    expect(first.problem).toBeUndefined();
    await first.store.keep(set({ answers: [answer(1)] }));
    first.store.close();
    const second = await openReadStore(name);
    expect((await second.store.list()).sets).toEqual([set({ answers: [answer(1)] })]);
    second.store.close();
  });

  it('come newest first', async () => {
    const { store } = await openReadStore(freshName());
    for (const [id, startedAt] of [
      ['set-aaaa', 5],
      ['set-bbbb', 9],
      ['set-cccc', 7],
    ] as const)
      await store.keep(set({ id, startedAt }));
    expect((await store.list()).sets.map(({ id }) => id)).toEqual(['set-bbbb', 'set-cccc', 'set-aaaa']);
    store.close();
  });

  it('lose no answer when two tabs write the same set', async () => {
    const name = freshName();
    const one = await openReadStore(name);
    const two = await openReadStore(name);
    await Promise.all([
      one.store.keep(set({ answers: [answer(1)] })),
      two.store.keep(set({ answers: [answer(2)] })),
    ]);
    expect((await one.store.list()).sets[0].answers.map(({ number }) => number)).toEqual([1, 2]);
    one.store.close();
    two.store.close();
  });

  it('leave a record they cannot read in place and count it', async () => {
    const name = freshName();
    const { store } = await openReadStore(name);
    await store.keep(set());
    store.close();
    const raw = await new Dexie(name).open();
    await raw.table('readSets').put({ ...set({ id: 'set-from-later' }), wind: 3 });
    raw.close();
    const again = await openReadStore(name);
    expect(await again.store.list()).toMatchObject({ unreadable: 1, sets: [{ id: 'set-0001' }] });
    again.store.close();
    const after = await new Dexie(name).open();
    expect(await after.table('readSets').count()).toBe(2);
    after.close();
  });

  it('refuse to keep what does not pass the gate', async () => {
    const { store } = await openReadStore(freshName());
    const bad = set({ answers: [{ ...answer(1), aim: Number.NaN }] });
    await expect(store.keep(bad)).rejects.toThrow(/answers\.0\.aim/);
    expect((await store.list()).sets).toEqual([]);
    store.close();
  });

  it('last for the visit, with a sentence, when the database cannot be opened', async () => {
    const original = indexedDB.open;
    indexedDB.open = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    try {
      const { store, problem } = await openReadStore(freshName(), 200);
      expect(problem).toMatch(/Your answers last until you close the page/);
      await store.keep(set({ answers: [answer(1)] }));
      expect((await store.list()).sets).toHaveLength(1);
    } finally {
      indexedDB.open = original;
    }
  });

  it('behave alike in memory', async () => {
    const store = memoryStore();
    await store.keep(set({ answers: [answer(1)] }));
    const kept = await store.keep(set({ answers: [answer(2)] }));
    expect(kept.answers).toHaveLength(2);
  });
});

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
