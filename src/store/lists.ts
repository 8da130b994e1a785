/** A table as a list, in its order (tables.ts). Leaves out: watching it (state/follow.ts), many putts (records.ts). */
import type { Database } from './database.ts';
import { passAll } from './gate.ts';
import { type RecordOf, type TableName, tableOf } from './tables.ts';

export interface Listed<Kept> {
  readonly records: readonly Kept[];
  /** Records found that could not be read; they stay on the device. */
  readonly unreadable: number;
}

export const listed = async <Table extends TableName>(
  database: Database,
  name: Table,
): Promise<Listed<RecordOf[Table]>> => {
  const { schema, inOrder } = tableOf(name);
  const { kept, unreadable } = passAll(schema, await database.table<unknown>(name).toArray());
  return { records: [...kept].sort(inOrder), unreadable };
};
