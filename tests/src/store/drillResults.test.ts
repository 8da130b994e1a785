/** Scores of drills on the device: kept, listed, taken back. Node's stand-in for IndexedDB. */
import { describe, expect, it } from 'vitest';
import { drillResultsOf } from '../../../src/store/drillResults.ts';
import type { KeptResult } from '../../../src/store/recordSchema.ts';
import { memoryDatabase } from '../../support/memoryRecords.ts';

const RESULT: KeptResult = {
  id: 'result-0001',
  day: '2026-05-02',
  recordedAt: 1000,
  drillId: 'start-gate',
  version: 1,
  ground: 'grass',
  greenSpeed: 3.05,
  score: 14,
};

describe('scores of drills', () => {
  it('are listed with the newest first, by day and then by moment, whatever order they came in', async () => {
    const results = drillResultsOf(memoryDatabase());
    const early = { ...RESULT, id: 'result-early', day: '2026-04-30', recordedAt: 9000 };
    const late = { ...RESULT, id: 'result-late', recordedAt: 2000 };
    for (const one of [late, early, RESULT]) await results.keep(one);
    expect(await results.list()).toEqual({ records: [late, RESULT, early], unreadable: 0 });
  });

  it('are written once, however often the same one is kept, and can be taken back', async () => {
    const results = drillResultsOf(memoryDatabase());
    await results.keep(RESULT);
    await results.keep(RESULT);
    expect((await results.list()).records).toEqual([RESULT]);
    await results.remove(RESULT.id);
    expect((await results.list()).records).toEqual([]);
  });

  it.each([
    ['half a point', { score: 13.5 }],
    ['less than nothing', { score: -1 }],
    ['a ground nobody putts on', { ground: 'sand' }],
    ['a day that is none', { day: '2026-02-30' }],
    ['a field nobody knows', { wind: 3 }],
  ])('with %s are not written', async (_what, change) => {
    const results = drillResultsOf(memoryDatabase());
    await expect(results.keep({ ...RESULT, ...change } as KeptResult)).rejects.toThrow(/cannot be kept/);
    expect((await results.list()).records).toEqual([]);
  });

  it('that this version cannot read stay on the device and are counted', async () => {
    const database = memoryDatabase();
    await database.table('drillResults').put({ ...RESULT, id: 'result-later', holes: 3 });
    await drillResultsOf(database).keep(RESULT);
    expect(await drillResultsOf(database).list()).toEqual({ records: [RESULT], unreadable: 1 });
    expect(await database.drillResults.count()).toBe(2);
  });

  it('reject when the device refuses, and leave nothing behind', async () => {
    const database = memoryDatabase();
    database.drillResults.hook('creating', () => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await expect(drillResultsOf(database).keep(RESULT)).rejects.toThrow();
    expect(await database.drillResults.count()).toBe(0);
  });
});
