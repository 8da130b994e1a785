/** Recording over the app's own store: nothing tapped is lost, nothing is saved twice. Node's stand-in for IndexedDB. */
import { describe, expect, it } from 'vitest';
import type { RecordedRound } from '../../../sim/index.ts';
import { type PuttDraft, padOf, type Tap } from '../../../src/screens/record/draft.ts';
import { parseDraft } from '../../../src/screens/record/keptDraft.ts';
import { createRecorder, type Recorder } from '../../../src/screens/record/recorder.ts';
import { type Records, recordsOf } from '../../../src/store/records.ts';
import { memoryDatabase } from '../../support/memoryRecords.ts';

const ROUND: RecordedRound = { id: 'round-0001', day: '2026-05-02', startedAt: 1, holes: 9, withoutPutt: [] };
const BEFORE: Tap[] = [
  { kind: 'distance', metres: 4 },
  { kind: 'climb', climb: 'up' },
  { kind: 'breaks', breaks: 'leftToRight' },
];
const HOLED: Tap[] = [...BEFORE, { kind: 'holed' }];
const MISSED: Tap[] = [
  ...BEFORE,
  { kind: 'missed', side: 'low', reach: 'past' },
  { kind: 'leave', metres: 0.5 },
];

/** A page over a store, and what it kept outside of it. */
const page = async (
  records: Records,
  kept: { text: string | null } = { text: null },
  changes: Partial<Records> = {},
) => {
  let serial = 0;
  const tab = Math.random().toString(36).slice(2, 10);
  // The clock runs backwards: order must not come from it.
  let now = 1_000_000;
  const recorder = createRecorder({
    records: async () => ({ ...records, ...changes }),
    now: () => {
      now -= 1000;
      return now;
    },
    newId: () => `putt-${tab}-${++serial}`,
    keepDraft: (draft) => {
      kept.text = draft === undefined ? null : JSON.stringify(draft);
    },
    loadDraft: () => parseDraft(kept.text),
  });
  recorder.follow(await records.openRound());
  return { recorder, kept, refresh: async () => recorder.follow(await records.openRound()) };
};
const begun = async (): Promise<Records> => {
  const records = recordsOf(memoryDatabase());
  await records.startRound(ROUND);
  return records;
};
const press = async (recorder: Recorder, taps: readonly Tap[]): Promise<void> => {
  for (const tap of taps) await recorder.tap(tap);
};
const onDevice = async (records: Records) =>
  ((await records.openRound())?.putts ?? []).map(({ hole, stroke, distance, holed }) => [
    hole,
    stroke,
    distance,
    holed,
  ]);
const draftNow = (recorder: Recorder): PuttDraft => {
  const now = recorder.draft.value;
  if (now === undefined) throw new Error('no draft');
  return now;
};

describe('recording a round', () => {
  it('saves each putt as it is complete, and goes on to the next hole by the holed one', async () => {
    const records = await begun();
    const { recorder } = await page(records);
    await press(recorder, MISSED);
    expect(await onDevice(records)).toEqual([[1, 1, 4, false]]);
    expect(draftNow(recorder)).toMatchObject({ hole: 1, distance: 0.5 });
    await press(recorder, [{ kind: 'holed' }]);
    expect(await onDevice(records)).toEqual([
      [1, 1, 4, false],
      [1, 2, 0.5, true],
    ]);
    expect(recorder.lastSaved.value).toMatchObject({ hole: 1, stroke: 2 });
    expect(draftNow(recorder).hole).toBe(2);
  });

  it('takes up a half-entered putt after a reload, and forgets one that was written just before', async () => {
    const records = await begun();
    const { recorder, kept } = await page(records);
    await press(recorder, BEFORE);
    const again = await page(records, kept);
    expect(draftNow(again.recorder)).toMatchObject({ hole: 1, distance: 4, climb: 'up' });
    expect(padOf(draftNow(again.recorder))).toBe('result');
    // The page dies between the write and the clearing of the draft.
    const before = { text: kept.text };
    await again.recorder.tap({ kind: 'holed' });
    const complete = { text: JSON.stringify({ ...JSON.parse(before.text ?? ''), result: 'holed' }) };
    const third = await page(records, complete);
    expect(draftNow(third.recorder)).toMatchObject({ hole: 2 });
    expect(await onDevice(records)).toEqual([[1, 1, 4, true]]);
  });

  it('keeps a putt the device refused, says why, and saves it at the next try', async () => {
    const records = await begun();
    let full = true;
    const { recorder, kept } = await page(records, undefined, {
      changeHole: (change) =>
        full ? Promise.reject(new DOMException('no room', 'QuotaExceededError')) : records.changeHole(change),
    });
    await press(recorder, HOLED);
    expect(recorder.refusal.value).toEqual({ why: 'full', of: 'putt' });
    expect(recorder.lastSaved.value).toBeUndefined();
    expect(padOf(draftNow(recorder))).toBe('check');
    expect(parseDraft(kept.text)).toMatchObject({ distance: 4, result: 'holed' });
    expect(await onDevice(records)).toEqual([]);
    full = false;
    await recorder.save();
    expect(recorder.refusal.value).toBeUndefined();
    expect(await onDevice(records)).toEqual([[1, 1, 4, true]]);
  });

  it('does not write over what another tab has put on the hole: the person chooses', async () => {
    const records = await begun();
    const one = await page(records);
    const two = await page(records);
    await press(one.recorder, BEFORE);
    await press(two.recorder, MISSED);
    await press(one.recorder, [{ kind: 'holed' }]);
    expect(one.recorder.refusal.value).toEqual({ why: 'elsewhere', of: 'putt' });
    // What the other wrote is shown, and mine is still there.
    expect(one.recorder.round.value?.putts).toHaveLength(1);
    expect(draftNow(one.recorder)).toMatchObject({ distance: 4, result: 'holed' });
    await one.recorder.save('after');
    expect(await onDevice(records)).toEqual([
      [1, 1, 4, false],
      [1, 2, 4, true],
    ]);
    await two.refresh();
    expect(draftNow(two.recorder).hole).toBe(1);
  });

  it('puts mine in the place of the other only when told so', async () => {
    const records = await begun();
    const one = await page(records);
    const two = await page(records);
    await press(one.recorder, MISSED.slice(0, 4));
    await press(two.recorder, HOLED);
    await press(one.recorder, MISSED.slice(4));
    expect(await onDevice(records)).toEqual([[1, 1, 4, true]]);
    await one.recorder.save('instead');
    expect(await onDevice(records)).toEqual([[1, 1, 4, false]]);
  });

  it('takes the last saved putt back into the form with all its values', async () => {
    const records = await begun();
    const { recorder } = await page(records);
    await press(recorder, HOLED);
    await recorder.undo();
    expect(await onDevice(records)).toEqual([]);
    expect(draftNow(recorder)).toMatchObject({
      hole: 1,
      distance: 4,
      climb: 'up',
      breaks: 'leftToRight',
      result: 'holed',
    });
    await press(recorder, [
      { kind: 'ask', pad: 'result' },
      { kind: 'missed', side: 'high', reach: 'short' },
      { kind: 'leave', metres: 1 },
    ]);
    expect(await onDevice(records)).toEqual([]);
    await recorder.save();
    expect(await onDevice(records)).toEqual([[1, 1, 4, false]]);
  });

  it('corrects a putt of an earlier hole in its place, and goes on where the round was', async () => {
    const records = await begun();
    const { recorder } = await page(records);
    await press(recorder, [...MISSED, { kind: 'holed' }, ...HOLED]);
    const first = recorder.round.value?.putts[0];
    if (first === undefined) throw new Error('no putt');
    recorder.correct(first);
    await press(recorder, [
      { kind: 'ask', pad: 'leave' },
      { kind: 'leave', metres: 1 },
    ]);
    await recorder.save();
    expect(await onDevice(records)).toEqual([
      [1, 1, 4, false],
      [1, 2, 1, true],
      [2, 1, 4, true],
    ]);
    expect((await records.openRound())?.putts[0]).toMatchObject({ id: first.id, miss: { leave: 1 } });
    expect(draftNow(recorder).hole).toBe(3);
  });

  it('asks before it leaves a putt that is not saved, and takes one out when told', async () => {
    const records = await begun();
    const { recorder } = await page(records);
    await press(recorder, [...HOLED, { kind: 'distance', metres: 7 }]);
    recorder.goTo(1);
    expect(draftNow(recorder)).toMatchObject({ hole: 2, distance: 7 });
    recorder.leaving.value?.();
    expect(draftNow(recorder).hole).toBe(1);
    const [first] = recorder.round.value?.putts ?? [];
    recorder.correct(first);
    // Looked at and not changed: nothing to ask.
    recorder.goTo(5);
    expect(draftNow(recorder).hole).toBe(5);
    recorder.correct(first);
    await recorder.remove();
    expect(await onDevice(records)).toEqual([]);
    expect(draftNow(recorder).hole).toBe(1);
  });

  it('writes a hole without a putt, goes on, and takes that back', async () => {
    const records = await begun();
    const { recorder } = await page(records);
    await recorder.setWithoutPutt(true);
    expect((await records.openRound())?.round.withoutPutt).toEqual([1]);
    expect(draftNow(recorder).hole).toBe(2);
    await recorder.undo();
    expect((await records.openRound())?.round.withoutPutt).toEqual([]);
    expect(draftNow(recorder).hole).toBe(1);
  });

  it('keeps a putt whose round was ended elsewhere, until it is opened again or dropped', async () => {
    const records = await begun();
    const { recorder, kept, refresh } = await page(records);
    await press(recorder, BEFORE);
    await records.changeRound(ROUND, { ...ROUND, endedAt: 9 });
    await refresh();
    await expect.poll(() => recorder.leftOver.value).toMatchObject({ distance: 4 });
    expect(parseDraft(kept.text)).toMatchObject({ distance: 4 });
    await records.changeRound({ ...ROUND, endedAt: 9 }, ROUND);
    await refresh();
    expect(recorder.leftOver.value).toBeUndefined();
    expect(draftNow(recorder)).toMatchObject({ distance: 4, climb: 'up' });
  });
});

describe('a kept draft', () => {
  it.each([null, '', '{', '7', '{"id":"x"}', '{"id":"putt-0001","roundId":"round-0001","hole":19}'])(
    'that is not one is no draft: %s',
    (text) => {
      expect(parseDraft(text)).toBeUndefined();
    },
  );
});
