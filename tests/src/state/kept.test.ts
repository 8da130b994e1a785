/** Values outside the records: kept, unreadable, refused, forbidden, written by another tab; and nobody else touches the browser's storage. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import * as z from 'zod';
import { forVisit, keptText, keptValue, type Place } from '../../../src/state/kept.ts';

const storageOf = (map: Map<string, string>): ReturnType<Place> => ({
  getItem: (key) => map.get(key) ?? null,
  setItem: (key, text) => void map.set(key, text),
  removeItem: (key) => void map.delete(key),
});
const KEY = 'borrow.of.the.test';
const valueIn = (place: Place) =>
  keptValue<number | undefined>({
    key: KEY,
    place,
    schema: z.number().min(0),
    otherwise: () => undefined,
  });
afterEach(() => vi.unstubAllGlobals());

describe('a value outside the records', () => {
  it('comes back as it was kept, under its key, and is gone when there is nothing to keep', () => {
    const map = new Map<string, string>();
    const kept = valueIn(() => storageOf(map));
    expect(kept.load()).toBeUndefined();
    expect(kept.save(3.2)).toBe(true);
    expect([...map]).toEqual([[KEY, '3.2']]);
    expect(kept.load()).toBe(3.2);
    expect(kept.save(undefined)).toBe(true);
    expect(map.size).toBe(0);
  });

  it.each(['', '{', 'null', '-1', '"3"', '[3]', 'NaN'])(
    'that reads %j counts as not there, and stays until it is written over',
    (text) => {
      const map = new Map([[KEY, text]]);
      const kept = valueIn(() => storageOf(map));
      expect(kept.load()).toBeUndefined();
      expect(map.get(KEY)).toBe(text);
    },
  );

  it('is a word as it stands where it is plain', () => {
    const map = new Map<string, string>();
    const place = () => storageOf(map);
    const options = { key: KEY, place, schema: z.enum(['own', 'demo']), plain: true };
    const kept = keptValue({ ...options, otherwise: () => 'own' });
    kept.save('demo');
    expect(map.get(KEY)).toBe('demo');
    expect(kept.load()).toBe('demo');
    map.set(KEY, '"demo"');
    expect(kept.load()).toBe('own');
  });

  it.each<[string, Place]>([
    [
      'forbidden',
      () => {
        throw new DOMException('denied', 'SecurityError');
      },
    ],
    ['missing', () => undefined],
  ])('is not there, and is said not to be kept, where storage is %s', (_what, place) => {
    const kept = valueIn(place);
    expect(kept.load()).toBeUndefined();
    expect(kept.save(3)).toBe(false);
    expect(kept.forget()).toBe(false);
  });

  it('stays as it was where storage is full, and the write says so', () => {
    const map = new Map([[KEY, '2']]);
    const kept = valueIn(() => ({
      ...(storageOf(map) as Storage),
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    }));
    expect(kept.save(3)).toBe(false);
    expect(kept.load()).toBe(2);
  });

  it('that is followed is told as another tab writes it, judged; other keys are none of its business', () => {
    const tab = new EventTarget();
    vi.stubGlobal('window', tab);
    const told: (number | undefined)[] = [];
    valueIn(() => undefined).follow((value) => told.push(value));
    const write = (key: string | null, newValue: string | null): void => {
      tab.dispatchEvent(Object.assign(new Event('storage'), { key, newValue }));
    };
    write(KEY, '4');
    write('another', '5');
    write(KEY, '-1');
    write(KEY, null);
    expect(told).toEqual([4, undefined, undefined]);
  });

  it('is of the device or of the visit', () => {
    const [device, visit] = [new Map<string, string>(), new Map<string, string>()];
    vi.stubGlobal('localStorage', storageOf(device));
    vi.stubGlobal('sessionStorage', storageOf(visit));
    keptText('one').save('1');
    keptText('two', forVisit).save('2');
    expect([...device, ...visit]).toEqual([
      ['one', '1'],
      ['two', '2'],
    ]);
  });
});

it('is the only way to the browser’s storage', () => {
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => ({ name, text: readFileSync(join('src', name), 'utf8') }));
  expect(files.length).toBeGreaterThan(300);
  const touching = files
    .filter(({ text }) => /\b(local|session)Storage\b|\b(get|set|remove)Item\b|'storage'/.test(text))
    .map(({ name }) => name);
  expect(touching).toEqual([join('state', 'kept.ts')]);
});
