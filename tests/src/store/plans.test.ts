/** Plans of weeks on the device, with their scores: which is in hand, two tabs, refusals, scores taken back. Node's stand-in for IndexedDB. */
import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { scoreAgain, scoreItem, testedIn } from '../../../src/state/plans/plan.ts';
import { resultsOf } from '../../../src/state/plans/planResults.ts';
import type { Database } from '../../../src/store/database.ts';
import { drillResultsOf } from '../../../src/store/drillResults.ts';
import { type Plans, plansOf } from '../../../src/store/plans.ts';
import { memoryDatabase } from '../../support/memoryRecords.ts';
import { samplePlan } from '../../support/weekPlan.ts';

const NOW = Date.UTC(2026, 10, 26, 12);
const on = (database: Database): Plans => plansOf(database, (plan, before) => resultsOf(plan, before, NOW));
const plan = samplePlan();
const item = testedIn(plan)?.item.id ?? '';
const another = (id: string, madeAt = plan.madeAt) => samplePlan({ id, madeAt });
const idsIn = async (plans: Plans): Promise<string[]> => (await plans.list()).records.map(({ id }) => id);

describe('plans of weeks', () => {
  it('come back as they were written, the one made last first, whatever the clock said', async () => {
    const plans = on(memoryDatabase());
    expect(await plans.begin(plan)).toEqual(plan);
    expect((await plans.list()).records).toEqual([plan]);
    // A clock set back by a year.
    await plans.begin(another('made-after-a-clock-was-set', plan.madeAt - 3.2e10));
    await plans.begin(another('made-in-the-same-moment', plan.madeAt));
    expect(await idsIn(plans)).toEqual(['made-in-the-same-moment', 'made-after-a-clock-was-set', plan.id]);
  });

  it('stay in their place when one that was refused is kept again', async () => {
    const plans = on(memoryDatabase());
    await plans.begin(plan);
    await plans.begin(another('the-plan-in-hand'));
    await plans.begin({ ...plan, revision: 7 });
    expect(await idsIn(plans)).toEqual(['the-plan-in-hand', plan.id]);
  });

  it('take the changes of two tabs, neither over the other', async () => {
    const factory = new IDBFactory();
    const [one, two] = [on(memoryDatabase(factory, 'tabs')), on(memoryDatabase(factory, 'tabs'))];
    await one.begin(plan);
    const [first, second] = plan.sessions.map(({ items }) => items[items.length - 1].id);
    await Promise.all([
      one.change(plan.id, (now) => scoreItem(now, first, 3)),
      two.change(plan.id, (now) => scoreItem(now, second, 4)),
    ]);
    const [kept] = (await one.list()).records;
    const scores = kept.sessions.flatMap(({ items }) => items).flatMap(({ score }) => score ?? []);
    expect(scores.sort()).toEqual([3, 4]);
    expect(kept.revision).toBe(plan.revision + 2);
    expect(await one.change('not-here-at-all', (now) => now)).toBeUndefined();
  });

  it('have each score among the scores of drills once: changed in place, and gone when it is undone', async () => {
    const database = memoryDatabase();
    const [plans, results] = [on(database), drillResultsOf(database)];
    const practised = {
      id: 'typed-in-practise',
      day: '2026-11-26',
      recordedAt: 5,
      drillId: 'start-gate',
      version: 1,
      ground: 'grass',
      score: 14,
    } as const;
    await results.keep(practised);
    await plans.begin(plan);
    await plans.change(plan.id, (now) => scoreItem(now, item, 7));
    await plans.change(plan.id, (now) => scoreItem(now, item, 8));
    const scores = async (): Promise<number[]> =>
      (await results.list()).records.map(({ score }) => score).sort((a, b) => a - b);
    expect(await scores()).toEqual([8, 14]);
    await plans.change(plan.id, (now) => scoreAgain(now, { day: '2026-12-10', score: 9 }));
    expect(await scores()).toEqual([8, 9, 14]);
    await plans.change(plan.id, (now) => scoreItem(now, item, undefined));
    await plans.change(plan.id, (now) => scoreAgain(now, undefined));
    expect((await results.list()).records).toEqual([practised]);
  });

  it('lose a score that is taken back among the scores of drills, and only that', async () => {
    const database = memoryDatabase();
    const [plans, results] = [on(database), drillResultsOf(database)];
    const both = scoreAgain(scoreItem(plan, item, 7), { day: '2026-12-10', score: 9 });
    await plans.begin(both);
    await plans.begin(another('another-plan-of-a-week'));
    await plans.change('another-plan-of-a-week', (now) => scoreItem(now, item, 6));
    await results.remove(`week.${plan.id}.${item}`);
    const planNow = async () => (await plans.list()).records.find(({ id }) => id === plan.id);
    const expected = scoreAgain(plan, { day: '2026-12-10', score: 9 });
    expect(await planNow()).toEqual({ ...expected, revision: both.revision + 1 });
    await results.remove(`week.${plan.id}.again`);
    expect(await planNow()).toEqual({ ...plan, revision: both.revision + 2 });
    expect((await results.list()).records.map(({ score }) => score)).toEqual([6]);
  });

  it('are written with their scores or not at all', async () => {
    const database = memoryDatabase();
    const plans = on(database);
    await plans.begin(plan);
    database.drillResults.hook('creating', () => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await expect(plans.change(plan.id, (now) => scoreItem(now, item, 7))).rejects.toThrow();
    expect((await plans.list()).records).toEqual([plan]);
    expect(await database.drillResults.count()).toBe(0);
  });

  it('that this version cannot read stay on the device, are counted, and never come after a new one', async () => {
    const database = memoryDatabase();
    const later = { ...plan, id: 'a-plan-of-a-later-version', madeAt: plan.madeAt + 1000, weather: 'dry' };
    await database.table('plans').put(later);
    const plans = on(database);
    await plans.begin(plan);
    const { records: kept, unreadable } = await plans.list();
    expect(unreadable).toBe(1);
    expect(kept).toEqual([{ ...plan, madeAt: later.madeAt + 1 }]);
    expect(await plans.change(later.id, (now) => now)).toBeUndefined();
    expect(await database.table('plans').get(later.id)).toEqual(later);
  });
});
