/**
 * Carries out the plan of an import: all of it in one transaction, or nothing. Answers for: looking once more, inside the
 * transaction, whether the records it was made from are still those on the device. Leaves out: the plan (importPlan.ts).
 */
import type { Database } from './database.ts';
import { pass } from './gate.ts';
import { isWritten } from './importDraft.ts';
import type { ImportPlan, PlanLine } from './importPlan.ts';
import { puttSchema } from './recordSchema.ts';
import type { RecordsNow } from './recordsNow.ts';
import { same } from './same.ts';
import { type AnyRecord, perTable, type RecordOf, TABLE_NAMES, type TableName } from './tables.ts';

/** refused: the plan has refusals, and it was not said that they are to be left out. */
export type CarriedOut = 'written' | 'changedElsewhere' | 'refused';

export interface CarryOutOptions {
  /** Whether to import the rest when records are refused. Default: no. */
  readonly leaveOutRefused?: boolean;
  /** Share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Aborted: nothing is written, and the call rejects with the signal's reason. */
  readonly signal?: AbortSignal;
}

/** Records handed to the database at a time: a tenth of a second or so. */
const BATCH = 2000;
/** Rounds whose putts are asked for at a time. */
const ASKED = 200;

type Writes = { readonly [Table in TableName]: readonly RecordOf[Table][] };

/** Records that passed the gate when the plan was made. */
const writesOf = (lines: readonly PlanLine[]): Writes => {
  const writes = perTable<AnyRecord[]>(() => []);
  for (const line of lines)
    if (line.record !== undefined && isWritten(line)) writes[line.table].push(line.record);
  return writes as unknown as Writes;
};

/** Thrown inside the transaction, so that it is taken back. */
class ChangedElsewhere extends Error {}

/** The rounds a plan touches, by themselves or by their putts, and their putts, are as they were. */
const checkRounds = async (
  database: Database,
  touched: readonly string[],
  now: RecordsNow,
): Promise<void> => {
  const rounds = await database.rounds.bulkGet([...touched]);
  if (!touched.every((id, index) => same(rounds[index], now.rounds.get(id)))) throw new ChangedElsewhere();
  const here = new Set(touched);
  let before = 0;
  for (const { roundId } of now.putts.values()) if (here.has(roundId)) before += 1;
  let found = 0;
  for (let from = 0; from < touched.length; from += ASKED) {
    const asked = touched.slice(from, from + ASKED);
    // Each round's putts in one answer: a walk along the index takes a message for every putt.
    const groups = await Promise.all(asked.map((id) => database.putts.where('roundId').equals(id).toArray()));
    for (const putt of groups.flat()) {
      const known = now.putts.get(putt.id);
      // One that cannot be read is no putt of the plan's records either.
      if (known === undefined && !pass(puttSchema, putt).ok) continue;
      if (!same(putt, known)) throw new ChangedElsewhere();
      found += 1;
    }
  }
  if (found !== before) throw new ChangedElsewhere();
};

/** Records about to be written are as they were, or still missing. */
const checkWrites = async (database: Database, writes: Writes, now: RecordsNow): Promise<void> => {
  for (const table of TABLE_NAMES) {
    const ids = writes[table].map(({ id }) => id);
    const known = ids.filter((id) => now[table].has(id));
    const found: readonly unknown[] = await database.table(table).bulkGet(known);
    if (!known.every((id, index) => same(found[index], now[table].get(id)))) throw new ChangedElsewhere();
    if (known.length === ids.length) continue;
    const keys = new Set<unknown>(await database.table(table).toCollection().primaryKeys());
    if (ids.some((id) => keys.has(id) && !now[table].has(id))) throw new ChangedElsewhere();
  }
};

/** @returns what became of it; rejects, with nothing written, when the device refuses or the signal aborts */
export const carryOut = async (
  database: Database,
  { lines, counts, now }: ImportPlan,
  { leaveOutRefused = false, onProgress, signal }: CarryOutOptions = {},
): Promise<CarriedOut> => {
  if (counts.refuse > 0 && !leaveOutRefused) return 'refused';
  const writes = writesOf(lines);
  const touched = new Set([
    ...writes.rounds.map(({ id }) => id),
    ...writes.putts.map(({ roundId }) => roundId),
  ]);
  const total = TABLE_NAMES.reduce((sum, table) => sum + writes[table].length, 0);
  try {
    const tables = TABLE_NAMES.map((table) => database.table(table));
    await database.transaction('rw', tables, async () => {
      await checkRounds(database, [...touched], now);
      await checkWrites(database, writes, now);
      let done = 0;
      for (const table of TABLE_NAMES)
        for (let from = 0; from < writes[table].length; from += BATCH) {
          signal?.throwIfAborted();
          const batch = writes[table].slice(from, from + BATCH);
          const isNew = ({ id }: AnyRecord): boolean => !now[table].has(id);
          // Adding takes a third of the time of putting, which looks for an old record each time.
          await database.table(table).bulkAdd(batch.filter(isNew));
          await database.table(table).bulkPut(batch.filter((record) => !isNew(record)));
          done += batch.length;
          onProgress?.(done / total);
        }
    });
  } catch (problem) {
    if (problem instanceof ChangedElsewhere) return 'changedElsewhere';
    throw problem;
  }
  return 'written';
};
