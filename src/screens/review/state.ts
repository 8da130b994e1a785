/** The review of this device: the records shown (state/shownRecords.ts) and the benchmark last chosen. Leaves out: what is made of them. */
import { effect, signal } from '@preact/signals';
import * as z from 'zod';
import { BENCHMARKS } from '../../../sim/index.ts';
import { keptValue } from '../../state/kept.ts';
import { units } from '../../state/settings.ts';
import { shownRecords } from '../../state/shownRecords.ts';
import { localDay } from '../../store/day.ts';
import { createReview } from './review.ts';

const kept = keptValue<string>({
  key: 'borrow.review.benchmark',
  schema: z.string(),
  otherwise: () => BENCHMARKS[0].id,
  plain: true,
});

/** An id that is not known counts as the first one. */
export const benchmarkId = signal(kept.load());
effect(() => void kept.save(benchmarkId.value));

export const review = createReview({
  records: shownRecords,
  units,
  benchmarkId,
  today: () => localDay(Date.now()),
});
