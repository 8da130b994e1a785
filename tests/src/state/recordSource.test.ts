/** The invented player beside the own records, never among them. Node's stand-in for IndexedDB. */
import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import {
  demoLoaded,
  loadDemo,
  lookForDemo,
  recordSource,
  removeDemo,
  reviewRecords,
} from '../../../src/state/recordSource.ts';
import { ownRecords } from '../../../src/state/records.ts';
import { everythingIn } from '../../support/memoryRecords.ts';

const ROUND = {
  id: 'an-own-round',
  day: '2026-05-02',
  startedAt: 1,
  endedAt: 2,
  holes: 9,
  withoutPutt: [],
} as const;

it('is loaded, looked at and removed, and the own records never notice', async () => {
  const own = await ownRecords();
  await own.startRound(ROUND);
  expect(await lookForDemo()).toBe(false);
  recordSource.value = 'demo';
  // Not there: the own ones are shown, and said to be.
  expect((await reviewRecords()).source).toBe('own');

  await loadDemo();
  const shown = await reviewRecords();
  expect(shown.source).toBe('demo');
  expect((await everythingIn(shown.records)).rounds).toHaveLength(24);
  expect((await everythingIn(own)).rounds).toEqual([ROUND]);
  await loadDemo();
  expect((await everythingIn(shown.records)).rounds).toHaveLength(24);

  await removeDemo();
  expect(demoLoaded.value).toBe(false);
  expect(recordSource.value).toBe('own');
  const after = await reviewRecords();
  expect(after.source).toBe('own');
  expect((await everythingIn(after.records)).rounds).toEqual([ROUND]);
  expect((await indexedDB.databases()).map(({ name }) => name)).toEqual(['borrow']);
});
