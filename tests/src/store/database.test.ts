/** Records on the device: kept, listed, and a blocked or newer database said so. Node's stand-in for IndexedDB. */
import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../../src/store/database.ts';
import { readStoreOf } from '../../../src/store/readSets.ts';
import { answer, set } from '../../support/sampleSet.ts';

let serial = 0;
const freshName = (): string => `test-${++serial}`;
const openSets = async (name: string, patience?: number) => {
  const { database, problem } = await openDatabase(name, patience);
  return { store: readStoreOf(database), problem, close: () => database.close() };
};

describe('the records', () => {
  it('are still there when the database is opened again', async () => {
    const name = freshName();
    const first = await openSets(name);
    expect(first.problem).toBeUndefined();
    await first.store.keep(set({ answers: [answer(1)] }));
    first.close();
    const second = await openSets(name);
    expect((await second.store.list()).records).toEqual([set({ answers: [answer(1)] })]);
    second.close();
  });

  it('come newest first', async () => {
    const { store, close } = await openSets(freshName());
    for (const [id, startedAt] of [
      ['set-aaaa', 5],
      ['set-bbbb', 9],
      ['set-cccc', 7],
    ] as const)
      await store.keep(set({ id, startedAt }));
    expect((await store.list()).records.map(({ id }) => id)).toEqual(['set-bbbb', 'set-cccc', 'set-aaaa']);
    close();
  });

  it('lose no answer when two tabs write the same set', async () => {
    const name = freshName();
    const one = await openSets(name);
    const two = await openSets(name);
    await Promise.all([
      one.store.keep(set({ answers: [answer(1)] })),
      two.store.keep(set({ answers: [answer(2)] })),
    ]);
    expect((await one.store.list()).records[0].answers.map(({ number }) => number)).toEqual([1, 2]);
    one.close();
    two.close();
  });

  it('leave a record they cannot read in place and count it', async () => {
    const name = freshName();
    const { store, close } = await openSets(name);
    await store.keep(set());
    close();
    const raw = await new Dexie(name).open();
    await raw.table('readSets').put({ ...set({ id: 'set-from-later' }), wind: 3 });
    raw.close();
    const again = await openSets(name);
    expect(await again.store.list()).toMatchObject({ unreadable: 1, records: [{ id: 'set-0001' }] });
    again.close();
    const after = await new Dexie(name).open();
    expect(await after.table('readSets').count()).toBe(2);
    after.close();
  });

  it('refuse to keep what does not pass the gate', async () => {
    const { store, close } = await openSets(freshName());
    const bad = set({ answers: [{ ...answer(1), aim: Number.NaN }] });
    await expect(store.keep(bad)).rejects.toThrow(/answers\.0\.aim/);
    expect((await store.list()).records).toEqual([]);
    close();
  });

  it('of a newer version are left as they are, down to tables this version misses, and the visit works', async () => {
    const name = freshName();
    const newer = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open(name, 900);
      request.onupgradeneeded = () => request.result.createObjectStore('later');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    newer.close();
    const { store, problem } = await openSets(name);
    expect(problem).toMatch(/newer version/);
    await store.keep(set());
    expect((await store.list()).records).toHaveLength(1);
    const after = (await indexedDB.databases()).find((one) => one.name === name);
    expect(after?.version).toBe(900);
    const again = await new Dexie(name).open();
    expect(again.tables.map((table) => table.name)).toEqual(['later']);
    again.close();
  });

  it('last for the visit, with a sentence, when the database cannot be opened', async () => {
    const original = indexedDB.open;
    indexedDB.open = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    try {
      const { store, problem } = await openSets(freshName(), 200);
      expect(problem).toMatch(/What you enter lasts until you close the page/);
      await store.keep(set({ answers: [answer(1)] }));
      expect((await store.list()).records).toHaveLength(1);
    } finally {
      indexedDB.open = original;
    }
  });
});
