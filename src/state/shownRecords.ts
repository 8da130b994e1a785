/**
 * The records that review and costs look at, the player's own or the invented player's (recordSource.ts), kept in step with the
 * device. Leaves out: what is made of them.
 */
import { effect, signal } from '@preact/signals';
import { type AllRecords, type FoundRecords, judgeFound } from '../store/records.ts';
import { inSlices } from '../store/work.ts';
import { follow } from './follow.ts';
import { type RecordSource, recordSource, reviewRecords } from './recordSource.ts';

/** undefined: not read yet. */
export const shownRecords = signal<AllRecords | undefined>(undefined);
/** Whose the records on the page are. */
export const shownSource = signal<RecordSource>('own');
/** A sentence when they cannot be read. */
export const readingProblem = signal<string | undefined>(undefined);

const UNREAD = 'The records could not be read. Load the page again; nothing on the device has been changed.';

/** Follows the records, in any tab, as long as the screen is there; returns the function that stops it. */
export const followRecords = (): (() => void) =>
  effect(() => {
    // Read here, so that the other choice starts anew.
    const asked = recordSource.value;
    if (asked !== shownSource.peek()) shownRecords.value = undefined;
    let judging = new AbortController();
    const failed = (): void => {
      if (!judging.signal.aborted) readingProblem.value = UNREAD;
    };
    const judge = async (source: RecordSource, found: FoundRecords): Promise<void> => {
      judging.abort();
      const mine = new AbortController();
      judging = mine;
      try {
        const all = await inSlices(judgeFound(found), { signal: mine.signal });
        if (mine.signal.aborted) return;
        shownSource.value = source;
        readingProblem.value = undefined;
        shownRecords.value = all;
      } catch {
        // A newer one takes its place, or nobody looks any more.
      }
    };
    const stop = follow({
      open: async () => {
        const { source, records } = await reviewRecords();
        return async () => ({ source, found: await records.found() });
      },
      next: ({ source, found }) => void judge(source, found),
      failed,
    });
    return () => {
      stop();
      judging.abort();
    };
  });
