/** The gate's quick answer beside zod's own: it never says yes where zod says no, nor where zod would hand on something else. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { passesQuickly } from '../../../src/store/quickGate.ts';
import { SCHEMA_OF, TABLE_NAMES } from '../../../src/store/tables.ts';
import { anyRecords } from '../../support/anyRecords.ts';

/** A yes must be zod's yes, and its record the same. */
const agrees = (schema: z.ZodType, found: unknown): void => {
  if (!passesQuickly(schema, found)) return;
  const judged = schema.safeParse(found);
  expect(judged.error).toBeUndefined();
  expect(judged.data).toStrictEqual(found);
};

/** Values that a field of another kind may hold, and every kind of value besides. */
const odd = fc.oneof(
  fc.constantFrom<unknown>(
    undefined,
    null,
    '',
    ' course ',
    '\ud800 is half',
    '2025-02-29',
    '2024-02-29',
    -0,
    0.5,
    1.5,
    62,
    2 ** 53,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    [],
    [1, 1],
    // biome-ignore lint/suspicious/noSparseArray: what an array leaves out
    [1, , 2],
    {},
    { leave: 1 },
    { leave: 1, wind: 2 },
    'x'.repeat(81),
  ),
  fc.anything(),
);

describe('the quick answer of the gate', () => {
  it('says yes to every record as the app writes them', () => {
    fc.assert(
      fc.property(anyRecords, (records) => {
        for (const table of TABLE_NAMES) {
          const schema: z.ZodType = SCHEMA_OF[table];
          for (const record of records[table].values()) {
            expect(passesQuickly(schema, record)).toBe(true);
            agrees(schema, record);
          }
        }
      }),
      { seed: 71 },
    );
  });

  it('says yes to no record that zod refuses, whatever one field of it holds', () => {
    fc.assert(
      fc.property(
        anyRecords,
        fc.nat(),
        fc.constantFrom('set', 'drop', 'add'),
        odd,
        (records, pick, how, value) => {
          for (const table of TABLE_NAMES) {
            const schema: z.ZodType = SCHEMA_OF[table];
            for (const record of records[table].values()) {
              const keys = Object.keys(schema instanceof z.ZodObject ? schema.shape : record);
              const key =
                how === 'add' ? ['wind', 'constructor', 'toString'][pick % 3] : keys[pick % keys.length];
              const { [key]: _gone, ...rest } = record as unknown as Record<string, unknown>;
              agrees(schema, how === 'drop' ? rest : { ...rest, [key]: value });
              agrees(schema, value);
            }
          }
        },
      ),
      { seed: 72, numRuns: 400 },
    );
  });

  it('leaves to zod what it changes: blanks at the ends, numbers out of text, unknown fields dropped', () => {
    expect(passesQuickly(z.string().trim(), 'fen')).toBe(true);
    expect(passesQuickly(z.string().trim(), ' fen')).toBe(false);
    for (const [schema, found] of [
      [z.coerce.number(), 1],
      [z.object({ a: z.number() }), { a: 1 }],
      [z.number().transform(String), 1],
      [z.string().default('x'), 'y'],
      [z.email(), 'fen@example.org'],
      [z.string().regex(/x/g), 'x'],
      [z.date(), new Date(0)],
    ] as const)
      expect(passesQuickly(schema as z.ZodType, found)).toBe(false);
  });
});
