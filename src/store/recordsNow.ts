/** Everything of a database at one moment, by id, for backups and for plans of imports. */
import type { Database } from './database.ts';
import { passEach } from './gate.ts';
import {
  type AnyRecord,
  type PerTable,
  perTable,
  type RecordOf,
  TABLE_NAMES,
  TABLES,
  type TableName,
} from './tables.ts';
import { shared, type Work } from './work.ts';

export type RawRecords = PerTable<readonly unknown[]>;

export type RecordsNow = {
  readonly [Table in TableName]: ReadonlyMap<string, RecordOf[Table]>;
} & {
  /** Those that do not pass the gate, as found; they stay on the device. */
  readonly unreadable: RawRecords;
};

/** Records fetched at a time: the page draws in between. */
const BATCH = 5000;

const allOf = async (database: Database, name: TableName): Promise<unknown[]> => {
  const found: unknown[] = [];
  const table = database.table<{ readonly id: string }, string>(name);
  for (let last: string | undefined; ; ) {
    const rest = last === undefined ? table.orderBy('id') : table.where('id').above(last);
    const batch = await rest.limit(BATCH).toArray();
    for (const one of batch) found.push(one);
    if (batch.length < BATCH) return found;
    last = batch[batch.length - 1].id;
  }
};

/** As found, in one transaction. */
export const rawRecords = (database: Database): Promise<RawRecords> =>
  database.transaction(
    'r',
    TABLE_NAMES.map((name) => database.table(name)),
    async () => {
      const found = new Map<TableName, unknown[]>();
      for (const name of TABLE_NAMES) found.set(name, await allOf(database, name));
      return perTable((name) => found.get(name) ?? []);
    },
  );

/** Records as found, judged. */
export function* judgeRecords(raw: RawRecords): Work<RecordsNow> {
  const kept = new Map<TableName, ReadonlyMap<string, AnyRecord>>();
  const unreadable = new Map<TableName, readonly unknown[]>();
  const shares = shared(TABLE_NAMES.map((name) => raw[name].length));
  for (const [place, name] of TABLE_NAMES.entries()) {
    const judged = yield* passEach<AnyRecord>(TABLES[name].schema, raw[name], shares[place]);
    kept.set(name, new Map(judged.kept.map((record) => [record.id, record])));
    unreadable.set(name, judged.unreadable);
  }
  return {
    ...(Object.fromEntries(kept) as unknown as RecordsNow),
    unreadable: perTable((name) => unreadable.get(name) ?? []),
  };
}
