/**
 * How records of earlier versions become records of this one: one numbered step per version that changes any, each a pure function that
 * is never changed again, used alike by the database and by backup files. Tests hold each step to literal records, old and new.
 * Version 1: read sets. Version 2: read sets know their calendar day; rounds, putts and practice sets begin.
 * Version 3: read sets have a kind of question, a size and a choice of when the truth is shown; scores
 * of putting drills begin. Version 4: measurements and plans of weeks begin; no record changes. Version 5: in plans, what a step of
 * reading saves is told of a tenth of all misreading, not of 5 points of the break.
 */

/** The version in which this program writes. */
export const RECORDS_VERSION = 5;

/** Tables, as found in a database or a backup of some version; their records not yet judged. */
export type Tables = Readonly<Record<string, readonly unknown[]>>;

export interface MigrationContext {
  /** The calendar day of a moment (ms since 1970) as this device has it, YYYY-MM-DD. */
  readonly dayOf: (moment: number) => string;
}

export interface Migration {
  /** The version it leads to, from the one before. */
  readonly to: number;
  /** What becomes of one record of each table named; tables not named stay as they are. */
  readonly records: Readonly<Record<string, (found: unknown, context: MigrationContext) => unknown>>;
}

const hasMoment = (found: unknown): found is { startedAt: number } =>
  typeof found === 'object' && found !== null && 'startedAt' in found && Number.isFinite(found.startedAt);

const hasQuestions = (
  found: unknown,
): found is { questions: readonly unknown[]; answers: readonly unknown[] } =>
  typeof found === 'object' &&
  found !== null &&
  'questions' in found &&
  Array.isArray(found.questions) &&
  'answers' in found &&
  Array.isArray(found.answers);

/**
 * Before, a read was off by a share of the break, and the step was 5 points of that share: a tenth of what players near scratch and 90 had
 * (40 to 55%). Strokes it saves stand for a tenth of all misreading since.
 */
export const withReadShare = <Cost>(cost: Cost): Cost =>
  typeof cost === 'object' && cost !== null && 'step' in cost && cost.step === 'readPoints'
    ? { ...cost, step: 'readShare' }
    : cost;

const hasCosts = (found: unknown): found is { costs: readonly unknown[] } =>
  typeof found === 'object' && found !== null && 'costs' in found && Array.isArray(found.costs);

/** In order. A version in which no record of before changes has none: tables that begin with it say so themselves (tables.ts). */
export const MIGRATIONS: readonly Migration[] = [
  {
    to: 2,
    records: {
      // Before, a set kept its moment alone, and moved to another day with the time zone. Damaged ones stay as they are.
      readSets: (found, { dayOf }) => (hasMoment(found) ? { ...found, day: dayOf(found.startedAt) } : found),
    },
  },
  {
    to: 3,
    records: {
      // Before, every question was where to aim, all of them were drawn at the start, and each was answered at once.
      readSets: (found) =>
        hasQuestions(found)
          ? {
              ...found,
              kind: 'aim',
              feedback: 'each',
              size: found.questions.length,
              answers: found.answers.map((answer) =>
                typeof answer === 'object' && answer !== null ? { ...answer, kind: 'aim' } : answer,
              ),
            }
          : found,
    },
  },
  {
    to: 5,
    records: {
      plans: (found) => (hasCosts(found) ? { ...found, costs: found.costs.map(withReadShare) } : found),
    },
  },
];

/** Tables of an earlier version, in the shapes of this one. @param version 1 to RECORDS_VERSION */
export const migrateTables = (tables: Tables, version: number, context: MigrationContext): Tables =>
  MIGRATIONS.filter(({ to }) => to > version).reduce<Tables>(
    (now, { records }) =>
      Object.fromEntries(
        Object.entries(now).map(([table, found]) => {
          const change = records[table];
          return [table, change === undefined ? found : found.map((one) => change(one, context))];
        }),
      ),
    tables,
  );
