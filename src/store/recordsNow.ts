/** Everything of a database at one moment, by id, for backups and for plans of imports. */
import type { Database } from './database.ts';
import { pass } from './gate.ts';
import { perTable, type RecordOf, SCHEMA_OF, TABLE_NAMES, type TableName } from './tables.ts';
import { each, type Work } from './work.ts';

export type RawRecords = { readonly [Table in TableName]: readonly unknown[] };

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
    TABLE_NAMES.map((table) => database.table(table)),
    async () => ({
      rounds: await allOf(database, 'rounds'),
      putts: await allOf(database, 'putts'),
      practice: await allOf(database, 'practice'),
      readSets: await allOf(database, 'readSets'),
      drillResults: await allOf(database, 'drillResults'),
      measurements: await allOf(database, 'measurements'),
      plans: await allOf(database, 'plans'),
    }),
  );

function* judge<Table extends TableName>(
  table: Table,
  found: readonly unknown[],
  share: readonly [number, number],
): Work<{ readonly kept: Map<string, RecordOf[Table]>; readonly unreadable: unknown[] }> {
  const kept = new Map<string, RecordOf[Table]>();
  const unreadable: unknown[] = [];
  yield* each(
    found,
    (one) => {
      const judged = pass(SCHEMA_OF[table], one);
      if (judged.ok) kept.set(judged.kept.id, judged.kept);
      else unreadable.push(one);
    },
    share,
  );
  return { kept, unreadable };
}

/** Records as found, judged. */
export function* judgeRecords(raw: RawRecords): Work<RecordsNow> {
  // Putts are nearly all of the work.
  const rounds = yield* judge('rounds', raw.rounds, [0, 0.05]);
  const putts = yield* judge('putts', raw.putts, [0.05, 0.9]);
  const practice = yield* judge('practice', raw.practice, [0.9, 0.95]);
  const readSets = yield* judge('readSets', raw.readSets, [0.95, 0.99]);
  const drillResults = yield* judge('drillResults', raw.drillResults, [0.99, 0.995]);
  const measurements = yield* judge('measurements', raw.measurements, [0.995, 0.998]);
  const plans = yield* judge('plans', raw.plans, [0.998, 1]);
  return {
    rounds: rounds.kept,
    putts: putts.kept,
    practice: practice.kept,
    readSets: readSets.kept,
    drillResults: drillResults.kept,
    measurements: measurements.kept,
    plans: plans.kept,
    unreadable: {
      rounds: rounds.unreadable,
      putts: putts.unreadable,
      practice: practice.unreadable,
      readSets: readSets.unreadable,
      drillResults: drillResults.unreadable,
      measurements: measurements.unreadable,
      plans: plans.unreadable,
    },
  };
}

export const noRecords = (): RecordsNow => ({
  rounds: new Map(),
  putts: new Map(),
  practice: new Map(),
  readSets: new Map(),
  drillResults: new Map(),
  measurements: new Map(),
  plans: new Map(),
  unreadable: perTable(() => []),
});
