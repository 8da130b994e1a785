/** Break as it was named in read sets, of whom the records are: how far off on average. Leaves out: what was played (the fit), words (text/errorsGap.ts). */
import { effect, signal } from '@preact/signals';
import { liveQuery, type Subscription } from 'dexie';
import { type ReadingBias, readingBias } from '../../../sim/index.ts';
import { reviewReads } from '../../app/recordSource.ts';
import { shownSource } from '../../app/shownRecords.ts';
import { datedReads } from '../../store/datedReads.ts';

/** As the ranges of the fit beside it. */
const CONFIDENCE = 0.9;

/** 'none': no read says anything, or too few for a margin; undefined: not looked up yet. */
export const named = signal<ReadingBias | 'none' | undefined>(undefined);

/** Follows the read sets of whoever is shown; returns the function that stops. */
export const followNamed = (): (() => void) =>
  effect(() => {
    void shownSource.value;
    let subscription: Subscription | undefined;
    let over = false;
    const start = async (): Promise<void> => {
      const store = await reviewReads();
      if (over) return;
      subscription = liveQuery(() => store.list()).subscribe({
        next({ sets }) {
          const found = readingBias(
            sets
              .flatMap(datedReads)
              .map(({ question, aim, day }) => ({ trueAim: question.trueAim, aim, day })),
            CONFIDENCE,
          );
          named.value =
            found !== undefined && Number.isFinite(found.low) && Number.isFinite(found.high) ? found : 'none';
        },
        error() {},
      });
    };
    named.value = undefined;
    // Where they cannot be read the page says so elsewhere (shownRecords.ts).
    start().catch(() => undefined);
    return () => {
      over = true;
      subscription?.unsubscribe();
    };
  });
