/** Files put through the app's own import, for tests: read, planned and carried out at once. */
import type { Database } from '../../src/store/database.ts';
import { readImportFile } from '../../src/store/fileText.ts';
import type { ImportFile, ReadFile } from '../../src/store/importFile.ts';
import { type ImportPlan, type PlanOptions, planImport } from '../../src/store/importPlan.ts';
import { judgeRecords, type RawRecords, type RecordsNow, rawRecords } from '../../src/store/recordsNow.ts';
import { perTable, TABLE_NAMES } from '../../src/store/tables.ts';
import { atOnce } from '../../src/store/work.ts';

/** An empty device. */
export const noRecords = (): RecordsNow => ({
  ...(perTable(() => new Map()) as unknown as RecordsNow),
  unreadable: perTable(() => []),
});

export const inUtc = { dayOf: (moment: number): string => new Date(moment).toISOString().slice(0, 10) };

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const readText = (text: string): ReadFile => atOnce(readImportFile(bytesOf(text), inUtc));

/** A file that must be readable. */
export const fileOf = (text: string): ImportFile => {
  const read = readText(text);
  if (!read.ok) throw new Error(read.problem);
  return read.file;
};

export const planOf = (text: string, now: RecordsNow = noRecords(), options: PlanOptions = {}): ImportPlan =>
  atOnce(planImport(fileOf(text), now, options));

export const nowOf = async (database: Database): Promise<RecordsNow> =>
  atOnce(judgeRecords(await rawRecords(database)));

/** Tables by id, to compare whatever the order. */
export const contents = (raw: RawRecords): Record<string, unknown[]> =>
  Object.fromEntries(
    TABLE_NAMES.map((table) => [
      table,
      [...raw[table]].sort((a, b) => ((a as { id: string }).id < (b as { id: string }).id ? -1 : 1)),
    ]),
  );

export const contentsNow = (now: RecordsNow): Record<string, unknown[]> =>
  contents(perTable((table) => [...now[table].values()]));

/** Tables of a file as the records of a device, not judged. */
export const nowWith = (tables: {
  readonly [name: string]: readonly { readonly id: string }[];
}): RecordsNow => ({
  ...noRecords(),
  ...(Object.fromEntries(
    Object.entries(tables).map(([table, records]) => [table, new Map(records.map((one) => [one.id, one]))]),
  ) as unknown as Partial<RecordsNow>),
});

/** What would be here after the plan. */
export const afterPlan = ({ lines, now }: ImportPlan): Record<string, unknown[]> => {
  const after = new Map(
    TABLE_NAMES.map((table) => [table, new Map<string, unknown>(now[table] as ReadonlyMap<string, unknown>)]),
  );
  for (const { table, verdict, record } of lines)
    if (record !== undefined && (verdict === 'add' || verdict === 'change'))
      after.get(table)?.set(record.id, record);
  return contents(
    Object.fromEntries(
      [...after].map(([table, records]) => [table, [...records.values()]]),
    ) as unknown as RawRecords,
  );
};
