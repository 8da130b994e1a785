/** A score being entered: what is kept of it, when the form is emptied, and what stays when the device refuses. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { puttingDrill } from '../../../drills/putting-drills.ts';
import type { DrillGround, PuttingDrill } from '../../../sim/index.ts';
import {
  changeEntry,
  type EntryWorld,
  entryOf,
  forgetWritten,
  saveEntry,
  stepScore,
} from '../../../src/screens/practice/entry.ts';
import { loadEntry, parseEntry } from '../../../src/screens/practice/keptEntry.ts';
import { drillResultSchema, type KeptResult } from '../../../src/store/recordSchema.ts';

const named = (id: string): PuttingDrill => {
  const drill = puttingDrill(id);
  if (drill === undefined) throw new Error(`no drill ${id}`);
  return drill;
};
const GRASS: DrillGround = { kind: 'grass', greenSpeed: 3.05, slope: 0.02 };

/** A store that refuses so many times first. */
const world = (
  refusals = 0,
): { readonly kept: KeptResult[]; readonly tried: string[]; readonly world: EntryWorld } => {
  const kept: KeptResult[] = [];
  const tried: string[] = [];
  return {
    kept,
    tried,
    world: {
      keep: (result) => {
        tried.push(result.id);
        if (tried.length <= refusals) return Promise.reject(new DOMException('full', 'QuotaExceededError'));
        kept.push(result);
        return Promise.resolve();
      },
      newId: () => `result-${tried.length + 1}-of-the-test`,
      now: () => Date.UTC(2026, 4, 2, 12),
      dayOf: () => '2026-05-02',
    },
  };
};

describe('a score being entered', () => {
  it('becomes a record the gate lets pass, with green speed and note only where they are given', async () => {
    const drill = named('start-gate');
    const { kept, world: here } = world();
    changeEntry(drill, { score: 12 });
    await saveEntry(drill, GRASS, here);
    changeEntry(drill, { score: 20, speedKnown: true, note: '  new gate ' });
    await saveEntry(drill, GRASS, here);
    expect(kept.map((one) => drillResultSchema.safeParse(one).error)).toEqual([undefined, undefined]);
    const both = { day: '2026-05-02', drillId: 'start-gate', version: 1, ground: 'grass' };
    expect(kept[0]).toEqual({ ...both, id: kept[0].id, recordedAt: Date.UTC(2026, 4, 2, 12), score: 12 });
    expect(kept[1]).toMatchObject({ ...both, score: 20, greenSpeed: 3.05, note: 'new gate' });
    expect(kept[0].id).not.toBe(kept[1].id);
  });

  it('leaves the form when the store has it, and not before', async () => {
    const drill = named('straight-string');
    let written = (): void => undefined;
    const { world: here } = world();
    const slow: EntryWorld = { ...here, keep: () => new Promise((resolve) => (written = resolve)) };
    changeEntry(drill, { score: 7 });
    const saving = saveEntry(drill, GRASS, slow);
    expect(entryOf(drill)).toMatchObject({ state: 'saving', score: 7 });
    // Nothing typed meanwhile can be lost with it.
    changeEntry(drill, { score: 8 });
    expect(entryOf(drill).score).toBe(7);
    written();
    await saving;
    expect(entryOf(drill)).toMatchObject({ state: 'saved', score: undefined });
  });

  it('stays when the device refuses, and a second try writes the same record', async () => {
    const drill = named('break-gate');
    const { kept, tried, world: here } = world(1);
    changeEntry(drill, { score: 9, note: 'wind' });
    await saveEntry(drill, GRASS, here);
    expect(entryOf(drill)).toMatchObject({ state: 'refused', score: 9, note: 'wind' });
    expect(kept).toEqual([]);
    await saveEntry(drill, GRASS, here);
    expect(kept).toMatchObject([{ score: 9, note: 'wind' }]);
    expect(tried[0]).toBe(tried[1]);
  });

  it('is one for each drill: another drill neither shows nor empties it', async () => {
    const [one, other] = [named('soft-and-firm'), named('three-by-three')];
    const { world: here } = world();
    changeEntry(one, { score: 4 });
    changeEntry(other, { score: 11 });
    await saveEntry(other, GRASS, here);
    expect(entryOf(one)).toMatchObject({ score: 4, state: 'entering' });
  });

  it('steps within what the drill can give: nine holes take nine putts at least and count 36 at most', () => {
    const drill = named('nine-holes-one-ball');
    const score = () => entryOf(drill).score;
    stepScore(drill, -1);
    expect(score()).toBe(9);
    stepScore(drill, -5);
    expect(score()).toBe(9);
    for (let times = 0; times < 9; times++) stepScore(drill, 5);
    expect(score()).toBe(36);
  });
});

describe('half a score', () => {
  const KEY = 'borrow.practice.entry.1.start-gate';
  const storage = new Map<string, string>();
  const stub = (): void => {
    storage.clear();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => storage.get(key) ?? null,
      setItem: (key: string, text: string) => storage.set(key, text),
      removeItem: (key: string) => storage.delete(key),
    });
  };
  afterEach(() => vi.unstubAllGlobals());

  it('is on the device with every change, under its drill, until the store has the score', async () => {
    stub();
    const drill = named('start-gate');
    const { world: here } = world(1);
    changeEntry(drill, { note: 'half a no', speedKnown: false });
    expect(loadEntry(drill)).toEqual({
      id: undefined,
      score: undefined,
      speedKnown: false,
      note: 'half a no',
    });
    changeEntry(drill, { score: 12, speedKnown: true });
    expect([...storage.keys()]).toEqual([KEY]);
    await saveEntry(drill, GRASS, here);
    // Refused: it stays, with the id it will have.
    expect(loadEntry(drill)).toMatchObject({ id: 'result-1-of-the-test', score: 12 });
    await saveEntry(drill, GRASS, here);
    expect(storage.size).toBe(0);
  });

  it('is on the device with its id before the store is asked, and forgotten once its record is found', async () => {
    stub();
    const drill = named('start-gate');
    let asked: string | undefined;
    const { world: here } = world();
    const dying: EntryWorld = {
      ...here,
      keep: (result) => {
        asked = loadEntry(drill)?.id;
        return Promise.reject(new Error(`the page dies while ${result.id} is written`));
      },
    };
    changeEntry(drill, { score: 12 });
    await saveEntry(drill, GRASS, dying);
    expect(asked).toBe('result-1-of-the-test');
    changeEntry(drill, { score: 12 });
    forgetWritten(new Set(['result-of-something-else']));
    expect(entryOf(drill).score).toBe(12);
    forgetWritten(new Set(['result-1-of-the-test']));
    expect(entryOf(drill).score).toBeUndefined();
    expect(storage.size).toBe(0);
  });

  it.each([
    ['no JSON', '{'],
    ['another thing', '[1]'],
    ['a field nobody knows', '{"score":3,"speedKnown":false,"note":"","wind":1}'],
    ['a score the drill cannot give', '{"score":21,"speedKnown":false,"note":""}'],
    ['half a point', '{"score":2.5,"speedKnown":false,"note":""}'],
    ['a note too long', JSON.stringify({ score: 3, speedKnown: false, note: 'x'.repeat(81) })],
  ])('is not read from %s', (_what, text) => {
    // A gate of 20 balls.
    expect(parseEntry(text, named('start-gate'))).toBeUndefined();
    expect(parseEntry('{"score":20,"speedKnown":false,"note":""}', named('start-gate'))?.score).toBe(20);
  });
});
