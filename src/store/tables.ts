/** The tables that hold what a player made, and the shape of their records: what a backup carries. Notes are not among them. */
import type * as z from 'zod';
import type { PracticeSet, RecordedPutt, RecordedRound } from '../../sim/index.ts';
import { type KeptMeasurement, measurementSchema } from './measurementSchema.ts';
import { type Plan, planSchema } from './planSchema.ts';
import {
  drillResultSchema,
  type KeptResult,
  practiceSchema,
  puttSchema,
  roundSchema,
} from './recordSchema.ts';
import { type KeptSet, readSetSchema } from './schema.ts';

export interface RecordOf {
  readonly rounds: RecordedRound;
  readonly putts: RecordedPutt;
  readonly practice: PracticeSet;
  readonly readSets: KeptSet;
  readonly drillResults: KeptResult;
  readonly measurements: KeptMeasurement;
  readonly plans: Plan;
}
export type TableName = keyof RecordOf;
export type AnyRecord = RecordOf[TableName];

/** Rounds before their putts. */
export const TABLE_NAMES = [
  'rounds',
  'putts',
  'practice',
  'readSets',
  'drillResults',
  'measurements',
  'plans',
] as const satisfies readonly TableName[];

export const SCHEMA_OF: { readonly [Table in TableName]: z.ZodType<RecordOf[Table]> } = {
  rounds: roundSchema,
  putts: puttSchema,
  practice: practiceSchema,
  readSets: readSetSchema,
  drillResults: drillResultSchema,
  measurements: measurementSchema,
  plans: planSchema,
};

/** Something for each table. */
export type PerTable<Value> = { readonly [Table in TableName]: Value };
export const perTable = <Value>(of: (table: TableName) => Value): PerTable<Value> => ({
  rounds: of('rounds'),
  putts: of('putts'),
  practice: of('practice'),
  readSets: of('readSets'),
  drillResults: of('drillResults'),
  measurements: of('measurements'),
  plans: of('plans'),
});
