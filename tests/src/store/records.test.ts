/** Rounds and putts on the device: whole or not at all, and never over another tab. Node's stand-in for IndexedDB. */
import { describe, expect, it } from 'vitest';
import type { RecordedPutt, RecordedRound } from '../../../sim/index.ts';
import { recordsOf } from '../../../src/store/records.ts';
import { everythingIn, memoryDatabase } from '../../support/memoryRecords.ts';

const ROUND: RecordedRound = {
  id: 'round-0001',
  day: '2026-05-02',
  startedAt: 1000,
  holes: 9,
  withoutPutt: [],
};
const MISSED: RecordedPutt = {
  id: 'putt-0001',
  roundId: ROUND.id,
  hole: 1,
  stroke: 1,
  kind: 'putt',
  distance: 4.2,
  climb: 'up',
  breaks: 'leftToRight',
  holed: false,
  miss: { side: 'low', reach: 'past', leave: 0.4 },
  recordedAt: 2000,
};
const HOLED: RecordedPutt = {
  id: 'putt-0002',
  roundId: ROUND.id,
  hole: 1,
  stroke: 2,
  kind: 'putt',
  distance: 0.4,
  holed: true,
  recordedAt: 3000,
};
const fresh = () => recordsOf(memoryDatabase());

describe('how much there is', () => {
  it('is counted by table, unreadable records too, which a fit of readable ones is not blamed for', async () => {
    const database = memoryDatabase();
    const records = recordsOf(database);
    expect(await records.sizes()).toEqual({ putts: 0, sets: 0 });
    await records.startRound(ROUND);
    await records.changeHole({ roundId: ROUND.id, hole: 1, before: [], after: [MISSED, HOLED] });
    expect(await records.sizes()).toEqual({ putts: 2, sets: 0 });
    await database.table('putts').add({ id: 'putt-0009', what: 'nothing this version knows' });
    expect(await records.sizes()).toEqual({ putts: 3, sets: 0 });
    expect((await everythingIn(records)).putts).toHaveLength(2);
  });
});

describe('the record of a round', () => {
  it('opens one round, keeps its putts in order of play, and ends it', async () => {
    const records = fresh();
    expect(await records.openRound()).toBeUndefined();
    expect(await records.startRound(ROUND)).toBe('written');
    await records.changeHole({ roundId: ROUND.id, hole: 1, before: [], after: [MISSED, HOLED] });
    const open = await records.openRound();
    expect(open).toEqual({ round: ROUND, putts: [MISSED, HOLED] });
    expect(await records.changeRound(ROUND, { ...ROUND, endedAt: 9000 })).toBe('written');
    expect(await records.openRound()).toBeUndefined();
    expect(await records.round(ROUND.id)).toEqual({
      round: { ...ROUND, endedAt: 9000 },
      putts: [MISSED, HOLED],
    });
  });

  it('does not begin a second round beside an open one', async () => {
    const records = fresh();
    await records.startRound(ROUND);
    expect(await records.startRound({ ...ROUND, id: 'round-0002' })).toBe('changedElsewhere');
    expect((await everythingIn(records)).rounds).toEqual([ROUND]);
  });

  it('writes nothing over a hole that another tab has changed meanwhile', async () => {
    const records = fresh();
    await records.startRound(ROUND);
    const change = { roundId: ROUND.id, hole: 1, before: [], after: [MISSED] };
    expect(await records.changeHole(change)).toBe('written');
    const late = { ...change, after: [{ ...MISSED, id: 'putt-late', distance: 9 }] };
    expect(await records.changeHole(late)).toBe('changedElsewhere');
    expect((await everythingIn(records)).putts).toEqual([MISSED]);
  });

  it('writes all of a hole or nothing: one bad putt refuses the others', async () => {
    const records = fresh();
    await records.startRound(ROUND);
    const bad = { ...HOLED, distance: Number.NaN };
    await expect(
      records.changeHole({ roundId: ROUND.id, hole: 1, before: [], after: [MISSED, bad] }),
    ).rejects.toThrow(/distance/);
    expect((await everythingIn(records)).putts).toEqual([]);
  });

  it('takes a putt back, numbers the strokes anew, and removes a round with its putts alone', async () => {
    const records = fresh();
    await records.startRound(ROUND);
    await records.changeHole({ roundId: ROUND.id, hole: 1, before: [], after: [MISSED, HOLED] });
    await records.changeHole({ roundId: ROUND.id, hole: 1, before: [MISSED, HOLED], after: [HOLED] });
    expect((await everythingIn(records)).putts).toEqual([{ ...HOLED, stroke: 1 }]);
    await records.changeRound(ROUND, { ...ROUND, endedAt: 1 });
    await records.startRound({ ...ROUND, id: 'round-0002' });
    const other = { ...MISSED, id: 'putt-0009', roundId: 'round-0002' };
    await records.changeHole({ roundId: 'round-0002', hole: 3, before: [], after: [other] });
    await records.removeRound(ROUND.id);
    const left = await everythingIn(records);
    expect(left.rounds.map(({ id }) => id)).toEqual(['round-0002']);
    expect(left.putts).toEqual([{ ...other, hole: 3 }]);
  });

  it('refuses a putt on a hole the round does not have', async () => {
    const records = fresh();
    await records.startRound(ROUND);
    expect(await records.changeHole({ roundId: ROUND.id, hole: 10, before: [], after: [MISSED] })).toBe(
      'changedElsewhere',
    );
  });

  it.each([
    ['a holed putt with a miss', { ...HOLED, miss: MISSED.miss }],
    ['a missed putt without one', { ...MISSED, miss: undefined }],
    ['a conceded putt that was holed', { ...HOLED, kind: 'conceded' }],
    ['high of a straight putt', { ...MISSED, breaks: 'straight', miss: { side: 'high', leave: 0.4 } }],
    ['left of a putt that breaks', { ...MISSED, miss: { side: 'left', leave: 0.4 } }],
    ['a leave of nothing', { ...MISSED, miss: { leave: 0 } }],
  ] as const)('refuses %s', async (_what, putt) => {
    const records = fresh();
    await records.startRound(ROUND);
    const after = [putt as RecordedPutt];
    await expect(records.changeHole({ roundId: ROUND.id, hole: 1, before: [], after })).rejects.toThrow(
      /cannot be kept/,
    );
  });
});
