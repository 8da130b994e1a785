/**
 * The registry of the tables that hold what a player made: what a backup carries, an import judges and writes, the database opens. Answers
 * for: each table's shape, the version it begins with, what it is looked up by, the order of its lists. Everything that goes through
 * all tables goes through this list. Leaves out: changes of shape (migrations.ts), words (screens/data/tableWords.ts), CSV columns (csv*.ts).
 */
import type * as z from 'zod';
import type { PracticeSet, RecordedPutt, RecordedRound } from '../../sim/index.ts';
import type { Passed } from './gate.ts';
import { type KeptMeasurement, measurementSchema } from './measurementSchema.ts';
import { type Plan, planSchema } from './planSchema.ts';
import { mergeFound } from './readSetMerge.ts';
import {
  drillResultSchema,
  type KeptResult,
  practiceSchema,
  puttSchema,
  roundSchema,
} from './recordSchema.ts';
import { type KeptSet, readSetSchema } from './schema.ts';

interface RecordTable<Kept> {
  readonly schema: z.ZodType<Kept>;
  /** The version of the records (migrations.ts) it begins with. */
  readonly since: number;
  /** Its key and the fields it is looked up by, as Dexie takes them. */
  readonly indexes: string;
  /** The order of its lists; the first comes first. */
  readonly inOrder: (one: Kept, other: Kept) => number;
  /** One of a file and the one here made one; left out: the one of the file takes the place of the one here, or does not. */
  readonly merge?: (here: Kept, found: Kept) => Passed<Kept>;
}

const table = <Kept extends { readonly id: string }>(definition: RecordTable<Kept>): RecordTable<Kept> =>
  definition;

/** Newest first, by the calendar; within a day by the moment. */
const byDay =
  <Field extends string>(moment: Field) =>
  (
    one: { readonly day: string } & Readonly<Record<Field, number>>,
    other: { readonly day: string } & Readonly<Record<Field, number>>,
  ): number =>
    one.day === other.day ? other[moment] - one[moment] : one.day < other.day ? 1 : -1;

/** In the order of backups and previews, which is a promise: rounds before their putts, new tables at the end. */
export const TABLES = {
  rounds: table<RecordedRound>({
    schema: roundSchema,
    since: 2,
    indexes: 'id, day',
    inOrder: byDay('startedAt'),
  }),
  putts: table<RecordedPutt>({
    schema: puttSchema,
    since: 2,
    indexes: 'id, roundId',
    inOrder: (a, b) => a.hole - b.hole || a.stroke - b.stroke,
  }),
  practice: table<PracticeSet>({
    schema: practiceSchema,
    since: 2,
    indexes: 'id, day',
    inOrder: byDay('recordedAt'),
  }),
  readSets: table<KeptSet>({
    schema: readSetSchema,
    since: 1,
    indexes: 'id, startedAt',
    inOrder: (a, b) => b.startedAt - a.startedAt,
    merge: mergeFound,
  }),
  drillResults: table<KeptResult>({
    schema: drillResultSchema,
    since: 3,
    indexes: 'id, day',
    inOrder: byDay('recordedAt'),
  }),
  measurements: table<KeptMeasurement>({
    schema: measurementSchema,
    since: 4,
    indexes: 'id, day',
    inOrder: byDay('recordedAt'),
  }),
  plans: table<Plan>({
    schema: planSchema,
    since: 4,
    indexes: 'id, madeAt',
    inOrder: (a, b) => b.madeAt - a.madeAt,
  }),
};

export type TableName = keyof typeof TABLES;
export type RecordOf = {
  readonly [Table in TableName]: z.output<(typeof TABLES)[Table]['schema']>;
};
export type AnyRecord = RecordOf[TableName];

export const TABLE_NAMES = Object.keys(TABLES) as readonly TableName[];

/** What is known of one table. */
export const tableOf = <Table extends TableName>(name: Table): RecordTable<RecordOf[Table]> =>
  TABLES[name] as unknown as RecordTable<RecordOf[Table]>;

/** Something for each table. */
export type PerTable<Value> = { readonly [Table in TableName]: Value };
export const perTable = <Value>(of: (table: TableName) => Value): PerTable<Value> =>
  Object.fromEntries(TABLE_NAMES.map((name) => [name, of(name)])) as PerTable<Value>;
