/**
 * Plans kept outside the records by an earlier version, taken over once: through the gate, the old text gone only when the records have
 * all of it. The text is written out by hand, as that version wrote it.
 */
import { describe, expect, it } from 'vitest';
import { parseOldPlans, takeOverPlans, withMoments } from '../../../../src/state/plans/takeOver.ts';
import { planSchema } from '../../../../src/store/planSchema.ts';
import { plansOf } from '../../../../src/store/plans.ts';
import { LITERAL_BACKUP } from '../../../support/literalBackup.ts';
import { memoryDatabase } from '../../../support/memoryRecords.ts';

const KEY = 'borrow.week.1';
const [{ madeAt: _madeAt, ...CURRENT }] = LITERAL_BACKUP.tables.plans;
const EARLIER = { ...CURRENT, id: 'b4a1c7de-earlier', madeOn: '2025-11-10', start: '2025-11-10' };
const FIRST = { ...EARLIER, id: 'b4a1c7de-the-first' };
const OLD = { version: 1, current: CURRENT, earlier: [EARLIER, FIRST] };
const TEXT = JSON.stringify(OLD);
const NOW = Date.parse('2025-11-30T12:00:00Z');

/** The browser's storage as a map. */
const storageWith = (items: Record<string, string>): Storage => {
  const map = new Map(Object.entries(items));
  return {
    getItem: (key: string) => map.get(key) ?? null,
    setItem: (key: string, text: string) => void map.set(key, text),
    removeItem: (key: string) => void map.delete(key),
  } as unknown as Storage;
};
const listOf = async (database: ReturnType<typeof memoryDatabase>) => plansOf(database, () => []).list();

describe('plans of an earlier version', () => {
  it('are taken over once, the one in hand first, with their scores, and the old text goes', async () => {
    const database = memoryDatabase();
    const storage = storageWith({ [KEY]: TEXT });
    await takeOverPlans({ database, lasting: true }, () => storage, NOW);
    const { records: plans, unreadable } = await listOf(database);
    expect(unreadable).toBe(0);
    expect(plans.map(({ madeAt: _moment, ...plan }) => plan)).toEqual([CURRENT, EARLIER, FIRST]);
    expect(storage.getItem(KEY)).toBeNull();
    // Each plan has its one score of a drill.
    expect(await database.drillResults.toArray()).toMatchObject([
      {
        id: 'week.b4a1c7de-earlier.s1-1',
        day: '2025-11-25',
        drillId: 'carpet-gate',
        ground: 'carpet',
        score: 13,
      },
      { id: 'week.b4a1c7de-plan.s1-1', score: 13, greenSpeed: 3.4 },
      { id: 'week.b4a1c7de-the-first.s1-1', score: 13 },
    ]);
    await takeOverPlans({ database, lasting: true }, () => storage, NOW);
    expect((await listOf(database)).records).toEqual(plans);
  });

  it('stay where they are when the records refuse them, none of them half there', async () => {
    const database = memoryDatabase();
    database.plans.hook('creating', (id) => {
      if (id === CURRENT.id) throw new DOMException('full', 'QuotaExceededError');
    });
    const storage = storageWith({ [KEY]: TEXT });
    await expect(takeOverPlans({ database, lasting: true }, () => storage, NOW)).rejects.toThrow();
    expect(storage.getItem(KEY)).toBe(TEXT);
    expect(await database.plans.count()).toBe(0);
    expect(await database.drillResults.count()).toBe(0);
  });

  it('are shown for the visit, and stay where they are, when records do not outlive it', async () => {
    const database = memoryDatabase();
    const storage = storageWith({ [KEY]: TEXT });
    await takeOverPlans({ database, lasting: false }, () => storage, NOW);
    expect((await listOf(database)).records).toHaveLength(3);
    expect(storage.getItem(KEY)).toBe(TEXT);
  });

  it('do not take the place of the same plan changed here since, and bring what an older tab changed since', async () => {
    const database = memoryDatabase();
    await takeOverPlans({ database, lasting: true }, () => storageWith({ [KEY]: TEXT }), NOW);
    const ticked = { ...CURRENT, revision: CURRENT.revision + 2, choosePace: true };
    for (const [revision, choosePace] of [
      [CURRENT.revision - 1, false],
      [CURRENT.revision + 2, true],
    ] as const) {
      const text = JSON.stringify({ ...OLD, current: { ...ticked, revision } });
      await takeOverPlans({ database, lasting: true }, () => storageWith({ [KEY]: text }), NOW);
      const here = (await listOf(database)).records.find(({ id }) => id === CURRENT.id);
      expect(here?.choosePace).toBe(choosePace);
    }
  });

  it('are not read where anything in them is not as it was written, and the text is put aside whole', async () => {
    for (const wrong of [
      '',
      '[]',
      '{"version":2,"earlier":[]}',
      JSON.stringify({ ...OLD, more: 1 }),
      JSON.stringify({ ...OLD, current: { ...CURRENT, start: '2026-13-40' } }),
      JSON.stringify({
        ...OLD,
        current: { ...CURRENT, sessions: [{ ...CURRENT.sessions[0], minutes: 1e9 }] },
      }),
    ]) {
      expect(parseOldPlans(wrong)).toBeUndefined();
      const database = memoryDatabase();
      const storage = storageWith({ [KEY]: wrong });
      await takeOverPlans({ database, lasting: true }, () => storage, NOW);
      expect(storage.getItem(`${KEY}.unread`)).toBe(wrong);
      expect(storage.getItem(KEY)).toBeNull();
      expect(await database.plans.count()).toBe(0);
    }
  });

  it('get moments in their order, two of one day too, and pass the gate then', () => {
    const plans = withMoments(parseOldPlans(TEXT) ?? []);
    expect(plans.map(({ id }) => id)).toEqual([FIRST.id, EARLIER.id, CURRENT.id]);
    for (const [index, plan] of plans.entries()) {
      expect(planSchema.safeParse(plan).success).toBe(true);
      if (index > 0) expect(plan.madeAt).toBeGreaterThan(plans[index - 1].madeAt);
    }
    expect(new Date(plans[2].madeAt).toISOString().slice(0, 10)).toBe(CURRENT.madeOn);
  });
});
