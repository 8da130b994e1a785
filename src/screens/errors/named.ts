/** Break as it was named in read sets, of whom the records are: how far off on average. Leaves out: what was played (the fit), words (screens/errors/gapWords.ts). */
import { effect, signal } from '@preact/signals';
import { type ReadingBias, readingBias } from '../../../sim/index.ts';
import { follow } from '../../state/follow.ts';
import { reviewReads } from '../../state/recordSource.ts';
import { shownSource } from '../../state/shownRecords.ts';
import { datedReads } from '../../store/datedReads.ts';

/** As the ranges of the fit beside it. */
const CONFIDENCE = 0.9;

/** 'none': no read says anything, or too few for a margin; undefined: not looked up yet. */
export const named = signal<ReadingBias | 'none' | undefined>(undefined);

/** Follows the read sets of whoever is shown; returns the function that stops. Where they cannot be read the page says so elsewhere. */
export const followNamed = (): (() => void) =>
  effect(() => {
    void shownSource.value;
    named.value = undefined;
    return follow({
      open: async () => {
        const store = await reviewReads();
        return () => store.list();
      },
      next({ records }) {
        const found = readingBias(
          records
            .flatMap(datedReads)
            .map(({ question, aim, day }) => ({ trueAim: question.trueAim, aim, day })),
          CONFIDENCE,
        );
        named.value =
          found !== undefined && Number.isFinite(found.low) && Number.isFinite(found.high) ? found : 'none';
      },
    });
  });
