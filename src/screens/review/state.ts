/** The review of this device: the records shown (app/shownRecords.ts) and the benchmark last chosen. Leaves out: what is made of them. */
import { effect, signal } from '@preact/signals';
import { BENCHMARKS } from '../../../sim/index.ts';
import { units } from '../../app/settings.ts';
import { shownRecords } from '../../app/shownRecords.ts';
import { localDay } from '../../store/day.ts';
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

export const review = createReview({
  records: shownRecords,
  units,
  benchmarkId,
  today: () => localDay(Date.now()),
});
