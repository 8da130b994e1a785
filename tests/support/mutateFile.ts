/** Files spoilt in ways that files are spoilt: on the way, by editors and spreadsheets, by hand, on purpose. The same for a seed. */
import { seededRandom } from '../../sim/index.ts';

type Random = () => number;
type Json = Record<string, unknown>;

const below = (random: Random, count: number): number => Math.floor(random() * count);
const oneOf = <Item>(items: readonly Item[], random: Random): Item => items[below(random, items.length)];

const MARKUP = '<img src=x onerror="window.ran=1"><script>window.ran=1</script>';
const WRONG_VALUES: readonly unknown[] = [
  null,
  true,
  '',
  'NaN',
  '12',
  -1,
  0,
  1e308,
  1.5,
  2 ** 53,
  [],
  {},
  [[[]]],
  MARKUP,
  '__proto__',
  'x'.repeat(100_000),
  '\ud800',
  '2025-02-30',
];
const NAMES = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'wind', MARKUP, ''];

/** Bytes that begin to be something else; some turn out the same. */
const flipBytes = (bytes: Uint8Array, random: Random): Uint8Array => {
  const copy = bytes.slice();
  for (let times = 1 + below(random, 4); times > 0; times -= 1)
    copy[below(random, copy.length)] ^= 1 << below(random, 8);
  return copy;
};
const cutShort = (bytes: Uint8Array, random: Random): Uint8Array =>
  bytes.slice(0, below(random, bytes.length));
const dropPiece = (bytes: Uint8Array, random: Random): Uint8Array => {
  const from = below(random, bytes.length);
  const to = Math.min(bytes.length, from + 1 + below(random, 200));
  return new Uint8Array([...bytes.slice(0, from), ...bytes.slice(to)]);
};
const doublePiece = (bytes: Uint8Array, random: Random): Uint8Array => {
  const from = below(random, bytes.length);
  const to = Math.min(bytes.length, from + 1 + below(random, 200));
  return new Uint8Array([...bytes.slice(0, to), ...bytes.slice(from)]);
};

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const recode = (bytes: Uint8Array, random: Random): Uint8Array => {
  const text = new TextDecoder().decode(bytes);
  const wide = Buffer.from(text, 'utf16le');
  return oneOf(
    [
      () => utf8(`\ufeff${text}`),
      () => utf8(`\ufeff\ufeff${text}`),
      () => new Uint8Array([0xff, 0xfe, ...wide]),
      () => new Uint8Array([0xfe, 0xff, ...wide.swap16()]),
      () => new Uint8Array(wide),
      () => new Uint8Array(Buffer.from(text, 'latin1')),
      () => utf8(text.replaceAll(/\r?\n/g, '\r')),
      () => utf8(text.replaceAll(',', ';')),
    ],
    random,
  )();
};

const BYTES = [flipBytes, cutShort, dropPiece, doublePiece, recode];

/** Every object and list within a value, with the way to it. */
const objectsIn = (value: unknown): (Json | unknown[])[] => {
  if (typeof value !== 'object' || value === null) return [];
  return [value as Json, ...Object.values(value).flatMap(objectsIn)];
};

/** Defines even where an assignment would change a prototype. */
const put = (target: object, name: string, value: unknown): void => {
  Object.defineProperty(target, name, { value, enumerable: true, configurable: true, writable: true });
};

const spoilJson = (file: Json, random: Random): void => {
  const target = oneOf(objectsIn(file), random);
  const names = Object.keys(target);
  const name = oneOf(names.length > 0 ? names : ['x'], random);
  const act = below(random, 7);
  if (Array.isArray(target)) {
    if (act < 2) target.push(structuredClone(target[0]));
    else if (act === 2) target.splice(0, 1);
    else if (act === 3 && typeof target[0] === 'object') target.push({ ...(target[0] as Json), distance: 1 });
    else if (act === 4) target.reverse();
    else target.push(oneOf(WRONG_VALUES, random));
    return;
  }
  if (act === 0) delete target[name];
  else if (act === 1) put(target, oneOf(NAMES, random), oneOf(WRONG_VALUES, random));
  else if (act === 2) put(target, name, target[oneOf(names, random)]);
  else put(target, name, oneOf(WRONG_VALUES, random));
};

/** Numbers JSON cannot write, and names twice: by text. */
const spoilJsonText = (text: string, random: Random): string => {
  const act = below(random, 4);
  const places = [...text.matchAll(/:\s*-?\d+(\.\d+)?/g)];
  const { index = 0, 0: match = '' } = oneOf(places, random);
  const value = oneOf(['NaN', 'Infinity', '1e999', '-1e999', '-0', '00', '0x10', '"5"', '- 3'], random);
  if (act < 2) return `${text.slice(0, index)}:${value}${text.slice(index + match.length)}`;
  if (act === 2)
    return text.replace(/"version":\d+/, `"version":${oneOf([0, 1, 3, 99, -1, 1.5, '"2"', 'null'], random)}`);
  return text.replace(/\{"id":/, `{"id":${JSON.stringify(oneOf(NAMES, random))},"id":`);
};

/** A backup, spoilt. */
export const mutateBackup = (text: string, seed: string): Uint8Array => {
  const random = seededRandom(seed);
  const kind = random();
  if (kind < 0.35) return oneOf(BYTES, random)(utf8(text), random);
  const file = JSON.parse(text) as Json;
  // Half of them without the sum, so that what lies behind it is tried too.
  if (random() < 0.8) delete file.check;
  if (kind < 0.45) return utf8(spoilJsonText(JSON.stringify(file), random));
  for (let times = 1 + below(random, 3); times > 0; times -= 1) spoilJson(file, random);
  return utf8(JSON.stringify(file));
};

const WRONG_CELLS = [
  '',
  'NaN',
  '1e999',
  '-3',
  '0',
  '1,5',
  '=1+1',
  "'=1+1",
  MARKUP,
  '__proto__',
  '"',
  '""',
  'x'.repeat(100_000),
  'yes',
  '2025-02-30',
  '7',
  '\t',
];

const spoilCsv = (rows: string[][], random: Random): void => {
  const row = below(random, rows.length);
  const cell = below(random, rows[row].length);
  const act = below(random, 8);
  if (act === 0) rows.splice(row, 1);
  else if (act === 1) rows.push([...rows[row]]);
  else if (act === 2) rows[row].splice(cell, 1);
  else if (act === 3) rows[row].splice(cell, 0, oneOf(WRONG_CELLS, random));
  else if (act === 4) for (const one of rows) one.splice(cell, 1);
  else rows[row][cell] = oneOf(WRONG_CELLS, random);
};

/** A CSV file of ours, spoilt; its cells have no line ends and no delimiters in them. */
export const mutateCsv = (text: string, seed: string): Uint8Array => {
  const random = seededRandom(seed);
  if (random() < 0.35) return oneOf(BYTES, random)(utf8(text), random);
  const rows = text.split('\r\n').map((line) => line.split(','));
  for (let times = 1 + below(random, 3); times > 0; times -= 1) if (rows.length > 0) spoilCsv(rows, random);
  return utf8(rows.map((row) => row.join(',')).join('\r\n'));
};
