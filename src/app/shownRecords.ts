/**
 * The records that review and costs look at, the player's own or the invented player's (recordSource.ts), kept in step with the
 * device. Leaves out: what is made of them.
 */
import { effect, signal } from '@preact/signals';
import { liveQuery, type Subscription } from 'dexie';
import type { AllRecords } from '../store/records.ts';
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
    let subscription: Subscription | undefined;
    let over = false;
    const start = async (): Promise<void> => {
      const found = await reviewRecords();
      if (over) return;
      subscription = liveQuery(() => found.records.everything()).subscribe({
        next(all) {
          shownSource.value = found.source;
          readingProblem.value = undefined;
          shownRecords.value = all;
        },
        error() {
          readingProblem.value = UNREAD;
        },
      });
    };
    if (asked !== shownSource.peek()) shownRecords.value = undefined;
    start().catch(() => {
      readingProblem.value = UNREAD;
    });
    return () => {
      over = true;
      subscription?.unsubscribe();
    };
  });
