/** What came of a set in one sentence, by its kind of question. */
import { summarizePaces, summarizeReads, summarizeSlopes } from '../../../sim/index.ts';
import { datedReads } from '../../store/datedReads.ts';
import { answeredOf, isFinished, type KeptSet } from '../../store/schema.ts';
import { paceSummaryHeadline } from './paceWords.ts';
import { slopeSummaryHeadline } from './slopeWords.ts';
import { summaryHeadline } from './words.ts';

export const summaryOf = (set: KeptSet) => summarizeReads(datedReads(set));
export const paceSummaryOf = (set: KeptSet) => summarizePaces(answeredOf(set, 'paces'));
export const slopeSummaryOf = (set: KeptSet) => summarizeSlopes(answeredOf(set, 'slope'));

/** Whether what came of the set may be shown: not half way through one that tells at the end. */
export const isShown = (set: KeptSet): boolean => set.feedback === 'each' || isFinished(set);

export const headlineOf = (set: KeptSet): string => {
  if (!isShown(set)) return 'You chose to see the answers after the last putt.';
  if (set.kind === 'aim') return summaryHeadline(summaryOf(set)?.kinds[0]?.bias);
  if (set.kind === 'slope') {
    const summary = slopeSummaryOf(set);
    return summary === undefined ? 'Nothing answered yet.' : slopeSummaryHeadline(summary);
  }
  const summary = paceSummaryOf(set);
  return summary === undefined
    ? 'What your choices cost is not worked out yet.'
    : paceSummaryHeadline(summary);
};
