/** The review of this device: whose records, kept in step with them, and the benchmark last chosen. Leaves out: what is made of them. */
import { effect, signal } from '@preact/signals';
import { liveQuery, type Subscription } from 'dexie';
import { BENCHMARKS } from '../../../sim/index.ts';
import { type RecordSource, recordSource, reviewRecords } from '../../app/recordSource.ts';
import { units } from '../../app/settings.ts';
import { localDay } from '../../store/day.ts';
import type { AllRecords } from '../../store/records.ts';
import { createReview } from './review.ts';

const KEY = 'borrow.review.benchmark';

const remembered = (): string => {
  try {
    return globalThis.localStorage?.getItem(KEY) ?? BENCHMARKS[0].id;
  } catch {
    return BENCHMARKS[0].id;
  }
};

/** An id that is not known counts as the first one. */
export const benchmarkId = signal(remembered());
effect(() => {
  try {
    globalThis.localStorage?.setItem(KEY, benchmarkId.value);
  } catch {
    // The choice lasts for the visit, then.
  }
});

const records = signal<AllRecords | undefined>(undefined);
/** Whose the records on the page are. */
export const shownSource = signal<RecordSource>('own');
/** A sentence when they cannot be read. */
export const readingProblem = signal<string | undefined>(undefined);

export const review = createReview({ records, units, benchmarkId, today: () => localDay(Date.now()) });

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
          records.value = all;
        },
        error() {
          readingProblem.value = UNREAD;
        },
      });
    };
    if (asked !== shownSource.peek()) records.value = undefined;
    start().catch(() => {
      readingProblem.value = UNREAD;
    });
    return () => {
      over = true;
      subscription?.unsubscribe();
    };
  });
