/**
 * What an import would do, record by record, before anything is written: add, change, leave as it is, refuse with a reason. Pure.
 * Answers for: judging each record, and comparing it with the one of the same id that is here. Leaves out: what records ask of
 * one another (importChecks.ts), formats (backup.ts, csv.ts), writing (carryOut.ts).
 * Two rules of merging. Read sets are merged answer by answer, as two tabs would. An import never opens a round, because an open
 * round switches advice off: a round open in the file is taken as ended, by its last putt or as it ended here.
 */
import type { RecordedRound } from '../../sim/index.ts';
import { pass } from './gate.ts';
import { checkTogether } from './importChecks.ts';
import { type Draft, isWritten, refuse, type Verdict } from './importDraft.ts';
import type { FoundRecord, ImportFile } from './importFile.ts';
import { reasonOf } from './reasons.ts';
import type { RecordsNow } from './recordsNow.ts';
import { same } from './same.ts';
import { type AnyRecord, perTable, type RecordOf, TABLE_NAMES, type TableName, tableOf } from './tables.ts';
import { each, shared, type Work } from './work.ts';

/** One record of the file and what becomes of it. */
export interface PlanLine {
  readonly place: string;
  readonly table: TableName;
  readonly verdict: Verdict;
  /** As the file has it. */
  readonly found: unknown;
  /** As it is to be here; undefined when it was refused before a record came of it. */
  readonly record: AnyRecord | undefined;
  /** The one of the same id here now. */
  readonly here: AnyRecord | undefined;
  /** Why it is refused; otherwise what is worth saying. */
  readonly reason: string | undefined;
}

export interface ImportPlan {
  readonly kind: ImportFile['kind'];
  readonly madeAt: number | undefined;
  readonly remarks: readonly string[];
  readonly lines: readonly PlanLine[];
  readonly counts: { readonly [Kind in Verdict]: number };
  /** The records it was made from. */
  readonly now: RecordsNow;
}

export interface PlanOptions {
  /** A record that differs from the one here: take it, or keep the one here. Read sets are merged either way. Default: take. */
  readonly differing?: 'take' | 'keep';
}

/** How far the work has come with each step, as a share; what rounds and putts ask of one another is the rest (importChecks.ts). */
const JUDGED = [0, 0.7] as const;
const DOUBLED = [0.7, 0.72] as const;
const COMPARED = [0.72, 0.8] as const;

const draftOf = <Table extends TableName>(
  table: Table,
  { place, found, problem }: FoundRecord,
): Draft<Table> => {
  const draft: Draft<Table> = {
    table,
    place,
    found,
    verdict: 'add',
    record: undefined,
    here: undefined,
    reason: undefined,
  };
  if (problem !== undefined) {
    refuse(draft, problem);
    return draft;
  }
  const { schema } = tableOf(table);
  const judged = pass(schema, found);
  if (judged.ok) draft.record = judged.kept;
  else refuse(draft, reasonOf(schema, found) ?? judged.problem);
  return draft;
};

/** An id twice in one file: equal copies count once; of different ones nobody can tell which is right. */
function* refuseDoubled(drafts: readonly Draft[], share: readonly [number, number]): Work<void> {
  const byId = new Map<string, Draft[]>();
  yield* each(
    drafts,
    (draft) => {
      if (draft.record === undefined) return;
      const group = byId.get(draft.record.id);
      if (group === undefined) byId.set(draft.record.id, [draft]);
      else group.push(draft);
    },
    share,
  );
  for (const [first, ...others] of byId.values()) {
    if (others.length === 0) continue;
    if (others.every(({ record }) => same(record, first.record)))
      for (const other of others) {
        other.verdict = 'same';
        other.reason = `The same as ${first.place}.`;
      }
    else
      for (const one of [first, ...others])
        refuse(
          one,
          `Got the id of this record on ${others.length + 1} different records of the file (${first.place}, ${others[0].place}), expected it once. Take the wrong ones out.`,
        );
  }
}

/** What a record becomes beside the one here. */
const compare = <Table extends TableName>(
  draft: Draft<Table>,
  now: RecordsNow,
  differing: 'take' | 'keep',
): void => {
  if (draft.verdict !== 'add' || draft.record === undefined) return;
  const { id } = draft.record;
  const here = (now[draft.table] as ReadonlyMap<string, RecordOf[Table]>).get(id);
  if (here === undefined) return;
  draft.here = here;
  const { schema, merge } = tableOf(draft.table);
  if (merge === undefined) {
    if (same(here, draft.record)) draft.verdict = 'same';
    else draft.verdict = differing === 'take' ? 'change' : 'keep';
    return;
  }
  const merged = merge(here, draft.record);
  if (!merged.ok) {
    refuse(draft, merged.problem);
    return;
  }
  draft.record = merged.kept;
  draft.verdict = same(merged.kept, here) ? 'same' : 'change';
  const reason = reasonOf(schema, merged.kept);
  if (reason !== undefined) refuse(draft, reason);
};

/** When the last putt of each round was written down, ms since 1970. */
const lastPutts = (putts: readonly Draft<'putts'>[]): Map<string, number> => {
  const last = new Map<string, number>();
  for (const { record } of putts)
    if (record !== undefined)
      last.set(record.roundId, Math.max(record.recordedAt, last.get(record.roundId) ?? 0));
  return last;
};

/** An open round of the file as it would be here. */
const endRound = (
  draft: Draft<'rounds'>,
  here: RecordedRound | undefined,
  lastPutt: number | undefined,
): void => {
  const { record } = draft;
  if (record === undefined || record.endedAt !== undefined) return;
  if (here !== undefined && here.endedAt === undefined) return;
  draft.record = { ...record, endedAt: here?.endedAt ?? lastPutt ?? record.startedAt };
  draft.reason =
    here === undefined
      ? 'Open in the file: taken as ended with its last putt, because an import opens no round.'
      : 'Open in the file, ended here: it stays ended.';
};

/** Ids of records that are here but cannot be read: they must not be written over. */
const idsOf = (found: readonly unknown[]): Set<unknown> =>
  new Set(found.map((one) => (typeof one === 'object' && one !== null && 'id' in one ? one.id : undefined)));

const refuseUnreadable = (drafts: readonly Draft[], now: RecordsNow, table: TableName): void => {
  const ids = idsOf(now.unreadable[table]);
  if (ids.size === 0) return;
  for (const draft of drafts)
    if (draft.record !== undefined && isWritten(draft) && ids.has(draft.record.id))
      refuse(
        draft,
        'Got the id of a record on this device that this version of the page cannot read, expected another. That record stays untouched.',
      );
};

const countLines = (lines: readonly PlanLine[]): ImportPlan['counts'] => {
  const counts = { refuse: 0, change: 0, keep: 0, add: 0, same: 0 };
  for (const { verdict } of lines) counts[verdict] += 1;
  return counts;
};

/** The plan of an import into the records as they are now. */
export function* planImport(
  file: ImportFile,
  now: RecordsNow,
  { differing = 'take' }: PlanOptions = {},
): Work<ImportPlan> {
  const counts = TABLE_NAMES.map((table) => file.found[table].length);
  const drafts = perTable<Draft[]>(() => []) as unknown as { readonly [Table in TableName]: Draft<Table>[] };
  const step = function* (
    [from, to]: readonly [number, number],
    act: (table: TableName, share: readonly [number, number]) => Work<void>,
  ): Work<void> {
    const shares = shared(counts, [from, to]);
    for (const [place, table] of TABLE_NAMES.entries()) yield* act(table, shares[place]);
  };
  yield* step(JUDGED, (table, share) =>
    each(file.found[table], (one) => (drafts[table] as Draft[]).push(draftOf(table, one)), share),
  );
  yield* step(DOUBLED, (table, share) => refuseDoubled(drafts[table], share));
  const last = lastPutts(drafts.putts);
  for (const draft of drafts.rounds) {
    const id = draft.record?.id ?? '';
    endRound(draft, now.rounds.get(id), last.get(id));
  }
  yield* step(COMPARED, (table, share) =>
    each(drafts[table] as readonly Draft[], (draft) => compare(draft, now, differing), share),
  );
  for (const table of TABLE_NAMES) refuseUnreadable(drafts[table], now, table);
  yield* checkTogether(drafts.rounds, drafts.putts, now);
  const lines: PlanLine[] = TABLE_NAMES.flatMap<PlanLine>((table) => drafts[table]);
  return {
    kind: file.kind,
    madeAt: file.madeAt,
    remarks: file.remarks,
    lines,
    counts: countLines(lines),
    now,
  };
}

/** How many records the plan would write. */
export const writtenBy = ({ counts }: ImportPlan): number => counts.add + counts.change;

/** Each field of a changed record that differs: as it is here, and as it would be. */
export const changedFields = (
  here: AnyRecord,
  record: AnyRecord,
): { readonly field: string; readonly before: unknown; readonly after: unknown }[] => {
  const [before, after] = [new Map(Object.entries(here)), new Map(Object.entries(record))];
  return [...new Set([...before.keys(), ...after.keys()])]
    .filter((field) => !same(before.get(field), after.get(field)))
    .map((field) => ({ field, before: before.get(field), after: after.get(field) }));
};
