/**
 * A backup: everything of the own database in one JSON file, and such a file taken apart again, of this version or an earlier one.
 * Answers for: the shape of the file (published as backup.schema.json, made from the schema here) and whether it is whole.
 * Leaves out: judging its records one by one (importPlan.ts), writing them (carryOut.ts).
 * `check` is the CRC-32 of the tables as JSON without blanks, in the order of the file: a digit that turned into another on the
 * way makes a record that is good and wrong, and nothing else would tell. A file made elsewhere may do without.
 */
import * as z from 'zod';
import { type Crc32, crc32 } from './crc32.ts';
import { type FoundRecord, type ReadFile, refuseFile } from './importFile.ts';
import { type MigrationContext, migrateTables, RECORDS_VERSION, type Tables } from './migrations.ts';
import { quoted } from './reasons.ts';
import { momentSchema } from './recordSchema.ts';
import type { RecordsNow } from './recordsNow.ts';
import { type AnyRecord, perTable, TABLE_NAMES, TABLES, type TableName } from './tables.ts';
import { each, type Work } from './work.ts';

const FORMAT = 'borrow-backup';

/** The whole file in this version's shapes. */
export const backupSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(RECORDS_VERSION),
  madeAt: momentSchema.describe('When it was made, milliseconds since 1970.'),
  check: z
    .string()
    .regex(/^[0-9a-f]{8}$/)
    .optional()
    .describe('CRC-32 of the value of "tables" as JSON text without blanks, as UTF-8. Optional.'),
  tables: z.strictObject(perTable((name) => z.array(TABLES[name].schema as z.ZodType<AnyRecord>))),
});

const isTables = (found: unknown): boolean =>
  typeof found === 'object' && found !== null && Object.values(found).every(Array.isArray);

/** The file's frame, its tables not yet looked into and as they are: a copy could lose a name such as __proto__. */
const frameSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.number().int().min(1),
  madeAt: momentSchema,
  check: z.string().optional(),
  tables: z.custom<Tables>(isTables, 'expected tables, each a list of records'),
});

/** What a file of a version has. */
const tablesOf = (version: number): readonly TableName[] =>
  TABLE_NAMES.filter((name) => TABLES[name].since <= version);

const MEND = 'Choose a file that this page made as a backup.';

/** JSON text of tables in pieces, summed as they are made. */
function* tablesText(tables: Tables, sum: Crc32): Work<string[]> {
  const pieces: string[] = [];
  const add = (piece: string): void => {
    sum.add(piece);
    pieces.push(piece);
  };
  const entries = Object.entries(tables);
  add('{');
  for (const [place, [table, records]] of entries.entries()) {
    add(`${place > 0 ? ',' : ''}${JSON.stringify(table)}:[`);
    let waiting: string[] = [];
    const flush = (): void => {
      add(waiting.join(''));
      waiting = [];
    };
    yield* each(
      records,
      (record, index) => {
        waiting.push(`${index > 0 ? ',' : ''}${JSON.stringify(record)}`);
        if (waiting.length === 500) flush();
      },
      [place / entries.length, (place + 1) / entries.length],
    );
    flush();
    add(']');
  }
  add('}');
  return pieces;
}

/** The text of a backup, in pieces for a Blob. @param madeAt ms since 1970 */
export function* makeBackup(now: RecordsNow, madeAt: number): Work<string[]> {
  const sum = crc32();
  const tables = perTable<unknown[]>((table) => [...now[table].values()]);
  const pieces = yield* tablesText(tables, sum);
  const head = { format: FORMAT, version: RECORDS_VERSION, madeAt, check: sum.digits() };
  return [`${JSON.stringify(head).slice(0, -1)},"tables":`, ...pieces, '}\n'];
}

const parseJson = (text: string): { readonly value: unknown } | undefined => {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return undefined;
  }
};

const versionOf = (found: unknown): unknown =>
  typeof found === 'object' && found !== null && 'version' in found ? found.version : undefined;

const sameNames = (tables: Tables, names: readonly TableName[]): boolean =>
  Object.keys(tables).length === names.length && names.every((name) => Object.hasOwn(tables, name));

/** A backup file taken apart, its records in the shapes of this version. */
export function* readBackup(text: string, context: MigrationContext): Work<ReadFile> {
  const parsed = parseJson(text);
  if (parsed === undefined)
    return refuseFile(
      `Got a file that is not whole JSON (${text.length.toLocaleString('en')} characters), expected a backup. It may have been cut short: make or fetch it again.`,
    );
  const version = versionOf(parsed.value);
  if (typeof version === 'number' && version > RECORDS_VERSION)
    return refuseFile(
      `Got a backup of version ${quoted(version)}, expected version ${RECORDS_VERSION} at most. It was made by a newer version of this page: load the page again, with a network, and open it then.`,
    );
  const frame = frameSchema.safeParse(parsed.value);
  if (!frame.success) {
    const [{ path, message }] = frame.error.issues;
    const place = path.length > 0 ? path.join('.') : 'the file';
    return refuseFile(
      `Got JSON of another kind (${place}: ${message}), expected a backup of this page. ${MEND}`,
    );
  }
  const { check, madeAt, tables } = frame.data;
  const names = tablesOf(frame.data.version);
  if (!sameNames(tables, names))
    return refuseFile(
      `Got the tables ${quoted(Object.keys(tables).join(', '))}, expected ${names.join(', ')}. ${MEND}`,
    );
  if (check !== undefined) {
    const sum = crc32();
    yield* tablesText(tables, sum);
    if (sum.digits() !== check)
      return refuseFile(
        `Got a backup whose records are not those it was made with (sum ${sum.digits()}, expected ${quoted(check)}). It was damaged on its way: fetch it again. If you changed it by hand, take the field “check” out.`,
      );
  }
  const now = migrateTables(tables, frame.data.version, context);
  const found = (table: TableName): FoundRecord[] =>
    (now[table] ?? []).map((one, index) => ({ place: `${table}, record ${index + 1}`, found: one }));
  return { ok: true, file: { kind: 'backup', madeAt, found: perTable(found), remarks: [] } };
}
