/** One line of an import while its plan is made, and the words of what can become of it. Leaves out: who decides. */
import type { RecordedPutt } from '../../sim/index.ts';
import type { RecordOf, TableName } from './tables.ts';

/** add: new here. change: takes the place of the one here. keep: differs, the one here stays. same: nothing to do. */
export const VERDICTS = ['refuse', 'change', 'keep', 'add', 'same'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** A line while the plan is made. */
export interface Draft<Table extends TableName = TableName> {
  readonly table: Table;
  readonly place: string;
  readonly found: unknown;
  verdict: Verdict;
  record: RecordOf[Table] | undefined;
  here: RecordOf[Table] | undefined;
  reason: string | undefined;
}

/** Whether it would be written. */
export const isWritten = ({ verdict }: { readonly verdict: Verdict }): boolean =>
  verdict === 'add' || verdict === 'change';

export const refuse = (draft: Draft, reason: string): void => {
  draft.verdict = 'refuse';
  draft.reason = reason;
};

/** A putt's hole of a round, as one key. */
export const holeKey = ({ roundId, hole }: Pick<RecordedPutt, 'roundId' | 'hole'>): string =>
  `${hole} ${roundId}`;
