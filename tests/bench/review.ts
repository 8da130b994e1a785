/**
 * How long the review of a hundred thousand putts takes, part by part, ms: `npx tsx tests/bench/review.ts`. Prints, asserts nothing.
 * Each part is timed once, the first time it is asked for, as a page does. Leaves out: reading records, drawing.
 */
import { signal } from '@preact/signals';
import { BENCHMARKS, type RecordedPutt } from '../../sim/index.ts';
import { createReview } from '../../src/screens/review/review.ts';
import type { AllRecords } from '../../src/store/records.ts';
import type { Units } from '../../src/text/format.ts';
import { madeRecord } from '../support/recordedPutts.ts';

/** Some 33 putts each. */
const ROUNDS = 3000;

const { rounds, putts, sets } = madeRecord(ROUNDS, 'bench');
const records = signal<AllRecords | undefined>(undefined);
const units = signal<Units>('imperial');
const review = createReview({
  records,
  units,
  benchmarkId: signal(BENCHMARKS[0].id),
  today: () => '2026-11-25',
});
records.value = { rounds, putts: putts as RecordedPutt[], practice: sets, measured: [], unreadable: 0 };
console.log(`${putts.length} putts of ${rounds.length} rounds, ${sets.length} practice sets`);

/** How busy the machine is: a million numbers sorted took 89 ms when it was not (26 November 2026; the review then 754 ms). */
const sortTime = (): string => {
  const numbers = Float64Array.from({ length: 1e6 }, (_, i) => (i * 7919) % 1_000_003);
  const begun = performance.now();
  numbers.sort();
  return `a million numbers sorted: ${(performance.now() - begun).toFixed(0)} ms`;
};

const PARTS = ['record', 'chosen', 'holed', 'threePutts', 'misses', 'gained', 'round', 'trend'] as const;
const measure = (what: string): void => {
  const times: Record<string, string> = {};
  let total = 0;
  for (const part of PARTS) {
    const begun = performance.now();
    void review[part].value;
    const time = performance.now() - begun;
    total += time;
    times[part] = time.toFixed(0);
  }
  console.log(`${what}; ${sortTime()}`);
  console.table([{ ...times, total: total.toFixed(0) }]);
};

measure('after loading');
review.filter.value = { ...review.filter.value, climb: 'down' };
measure('after a filter');
review.roundId.value = rounds[10].id;
measure('another round');
