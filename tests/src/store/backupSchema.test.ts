/**
 * The published schema of backups: the committed file is what the program's shapes give, and it says the right things of documents
 * written by hand. Judged by a small reader of JSON Schema (2020-12, the words the file uses), which knows nothing of the program.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { backupSchema } from '../../../src/store/backup.ts';
import { perTable } from '../../../src/store/tables.ts';
import { backupJsonSchema } from '../../support/backupJsonSchema.ts';
import { LITERAL_BACKUP, literalBackup } from '../../support/literalBackup.ts';

type Json = Record<string, unknown>;
const published = JSON.parse(readFileSync('src/store/backup.schema.json', 'utf8')) as Json;

const typeOf = (value: unknown): string =>
  value === null
    ? 'null'
    : Array.isArray(value)
      ? 'array'
      : typeof value === 'object'
        ? 'object'
        : typeof value;
const fitsType = (type: unknown, value: unknown): boolean =>
  type === undefined || (type === 'integer' ? Number.isInteger(value) : typeOf(value) === type);

const WORDS = new Set(
  '$schema title description type properties required additionalProperties items enum const anyOf oneOf minimum maximum minLength maxLength maxItems minItems pattern format'.split(
    ' ',
  ),
);

/** Whether a value fits; throws at a word it does not know, so that nothing passes unread. */
const fits = (schema: Json, value: unknown): boolean => {
  for (const word of Object.keys(schema)) if (!WORDS.has(word)) throw new Error(`unknown word ${word}`);
  const { type, properties = {}, required = [], items, enum: values, anyOf, oneOf } = schema;
  const { minimum = -Infinity, maximum = Infinity, minLength = 0, maxLength = Infinity } = schema;
  const { minItems = 0, maxItems = Infinity, pattern } = schema;
  const alternatives = (anyOf ?? oneOf) as Json[] | undefined;
  if (!fitsType(type, value)) return false;
  if ('const' in schema && schema.const !== value) return false;
  if (values !== undefined && !(values as unknown[]).includes(value)) return false;
  if (alternatives !== undefined && !alternatives.some((one) => fits(one, value))) return false;
  if (typeof value === 'number') return value >= Number(minimum) && value <= Number(maximum);
  if (typeof value === 'string')
    return (
      value.length >= Number(minLength) &&
      value.length <= Number(maxLength) &&
      (pattern === undefined || new RegExp(String(pattern)).test(value))
    );
  if (Array.isArray(value))
    return (
      value.length >= Number(minItems) &&
      value.length <= Number(maxItems) &&
      value.every((one) => items === undefined || fits(items as Json, one))
    );
  if (typeOf(value) !== 'object') return true;
  const object = value as Json;
  return (
    (required as string[]).every((name) => Object.hasOwn(object, name)) &&
    Object.entries(object).every(([name, one]) =>
      Object.hasOwn(properties as Json, name)
        ? fits((properties as Record<string, Json>)[name], one)
        : schema.additionalProperties !== false,
    )
  );
};

const spoilt = (spoil: (file: ReturnType<typeof literalBackup>) => void): unknown => {
  const file = literalBackup();
  spoil(file);
  return file;
};
// biome-ignore lint/suspicious/noExplicitAny: what is put there is wrong on purpose
const loose = (record: unknown): any => record;

describe('the published schema of backups', () => {
  it('is the committed file', () => {
    expect(published).toEqual(JSON.parse(JSON.stringify(backupJsonSchema())));
  });

  it('lets a backup written by hand pass, as the gate does', () => {
    expect(fits(published, LITERAL_BACKUP)).toBe(true);
    expect(backupSchema.safeParse(LITERAL_BACKUP).success).toBe(true);
    const empty = {
      ...LITERAL_BACKUP,
      check: '0a1b2c3d',
      tables: perTable(() => []),
    };
    expect(fits(published, empty)).toBe(true);
    expect(backupSchema.safeParse(empty).success).toBe(true);
  });

  it.each([
    ['another format', { ...LITERAL_BACKUP, format: 'another' }],
    ['another version', { ...LITERAL_BACKUP, version: 2 }],
    ['a version as text', { ...LITERAL_BACKUP, version: '4' }],
    ['no moment', { ...LITERAL_BACKUP, madeAt: undefined }],
    ['a moment with a fraction', { ...LITERAL_BACKUP, madeAt: 1.5 }],
    ['a field nobody knows', { ...LITERAL_BACKUP, wind: 3 }],
    ['a table nobody knows', { ...LITERAL_BACKUP, tables: { ...LITERAL_BACKUP.tables, clubs: [] } }],
    ['a table too few', { ...LITERAL_BACKUP, tables: { ...LITERAL_BACKUP.tables, practice: undefined } }],
    ['a check that is none', { ...LITERAL_BACKUP, check: 'XYZ' }],
    [
      'a putt farther than 61 m',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).distance = 61.1;
      }),
    ],
    [
      'a putt from nowhere',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).distance = 0;
      }),
    ],
    [
      'a distance as text',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).distance = '4.8';
      }),
    ],
    [
      'a putt with a field nobody knows',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).wind = 1;
      }),
    ],
    [
      'a putt without its round',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).roundId = undefined;
      }),
    ],
    [
      'hole 19',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).hole = 19;
      }),
    ],
    [
      'a kind nobody knows',
      spoilt(({ tables }) => {
        loose(tables.putts[0]).kind = 'gimme';
      }),
    ],
    [
      'a leave beyond the green',
      spoilt(({ tables }) => {
        loose(tables.putts[0].miss).leave = 99;
      }),
    ],
    [
      'a round of ten holes',
      spoilt(({ tables }) => {
        loose(tables.rounds[0]).holes = 10;
      }),
    ],
    [
      'a day that is none',
      spoilt(({ tables }) => {
        loose(tables.rounds[0]).day = '2025-02-30';
      }),
    ],
    [
      'a day written otherwise',
      spoilt(({ tables }) => {
        loose(tables.rounds[0]).day = '22.11.2025';
      }),
    ],
    [
      'a name too long',
      spoilt(({ tables }) => {
        loose(tables.rounds[0]).course = 'x'.repeat(81);
      }),
    ],
    [
      'an id too short',
      spoilt(({ tables }) => {
        loose(tables.rounds[0]).id = 'x';
      }),
    ],
    [
      'a practice set without tries',
      spoilt(({ tables }) => {
        loose(tables.practice[0]).attempts = 0;
      }),
    ],
    [
      'a reading set without a day',
      spoilt(({ tables }) => {
        loose(tables.readSets[0]).day = undefined;
      }),
    ],
    [
      'a reading set of a kind nobody knows',
      spoilt(({ tables }) => {
        loose(tables.readSets[0]).kind = 'putter';
      }),
    ],
    [
      'an answer of no kind',
      spoilt(({ tables }) => {
        loose(tables.readSets[0].answers[0]).kind = undefined;
      }),
    ],
    [
      'a reading set without a size',
      spoilt(({ tables }) => {
        loose(tables.readSets[0]).size = undefined;
      }),
    ],
    [
      'a score of a drill with a name nobody writes',
      spoilt(({ tables }) => {
        loose(tables.drillResults[0]).drillId = 'Start gate';
      }),
    ],
    [
      'half a point',
      spoilt(({ tables }) => {
        loose(tables.drillResults[0]).score = 13.5;
      }),
    ],
    [
      'a drill done on sand',
      spoilt(({ tables }) => {
        loose(tables.drillResults[0]).ground = 'sand';
      }),
    ],
    [
      'a drill of no version',
      spoilt(({ tables }) => {
        loose(tables.drillResults[0]).version = undefined;
      }),
    ],
    [
      'a measurement by nobody knows what',
      spoilt(({ tables }) => {
        loose(tables.measurements[0]).by = 'guess';
      }),
    ],
    [
      'an interval without its value',
      spoilt(({ tables }) => {
        loose(tables.measurements[0].result).greenSpeed = { low: 2, high: 3 };
      }),
    ],
    [
      'a measurement of one kind with the entries of another',
      spoilt(({ tables }) => {
        loose(tables.measurements[1]).by = 'walks';
      }),
    ],
    [
      'a plan without the moment it was made',
      spoilt(({ tables }) => {
        loose(tables.plans[0]).madeAt = undefined;
      }),
    ],
    [
      'a plan of four sessions',
      spoilt(({ tables }) => {
        const [session] = tables.plans[0].sessions;
        tables.plans[0].sessions = [session, session, session, session];
      }),
    ],
    [
      'a plan for an error nobody makes',
      spoilt(({ tables }) => {
        loose(tables.plans[0].costs[0]).error = 'wind';
      }),
    ],
  ])('refuses %s, as the gate does', (_what, file) => {
    const asJson = JSON.parse(JSON.stringify(file)) as unknown;
    expect(fits(published, asJson)).toBe(false);
    expect(backupSchema.safeParse(asJson).success).toBe(false);
  });
});
