/** Reads by how long ago they were, for "better than last month?". Answers for: which reads belong to which period. */
import { type ReadingProgress, readingProgress } from '../../../sim/index.ts';
import { datedReads } from '../../store/datedReads.ts';
import type { KeptSet } from '../../store/schema.ts';

const DAY = 86_400_000;
/** A month of practice: fixed before anyone looks. */
export const PERIOD_DAYS = 30;
/** Periods looked back. */
const PERIODS = 6;

export interface DatedProgress {
  /** Days ago each period began and ended, oldest first. */
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  readonly progress: ReadingProgress;
  /** Reads of aims in all the time looked back. */
  readonly count: number;
}

/** @param now ms since 1970 */
export const progressOf = (sets: readonly KeptSet[], now: number): DatedProgress => {
  const reads = sets.flatMap(datedReads);
  const spans = Array.from({ length: PERIODS }, (_unused, index) => ({
    from: (PERIODS - index) * PERIOD_DAYS,
    to: (PERIODS - index - 1) * PERIOD_DAYS,
  }));
  const periods = spans.map(({ from, to }) =>
    reads.filter(({ answeredAt }) => {
      const ago = (now - answeredAt) / DAY;
      // A clock that was put back makes answers of the future: they are of today.
      return ago < from && (ago >= to || to === 0);
    }),
  );
  return { spans, progress: readingProgress(periods), count: periods.flat().length };
};
