/** Progress of reading in words: better, or easier questions? Always with the interval. */
import type { Margin, PeriodReading, ReadingChange } from '../../../sim/index.ts';
import { formatPercent, formatShort, type Units } from '../../text/format.ts';
import { formatPoints, signedRange } from '../../text/phrases.ts';

/** "days 31 to 60 ago" as a row is named. */
export const spanName = ({ from, to }: { readonly from: number; readonly to: number }): string =>
  to === 0 ? `last ${from} days` : `${to} to ${from} days`;

/** A share that no figure should look exact in: whole percents. */
export const wholePercent = (share: number): string => formatPercent(share, 0).replace('-', '−');

export const marginWords = (margin: Margin | undefined): string =>
  margin === undefined
    ? 'too few'
    : `${wholePercent(margin.value)} (${wholePercent(margin.low)} to ${wholePercent(margin.high)})`;

/** The part of a change that the questions made. */
const puttsWords = ({ fromPutts, plain }: ReadingChange): string => {
  const seen = `As the putts were, it changed by ${formatPoints(plain)} points`;
  if (Math.abs(fromPutts) < 0.005) return `${seen}; the questions were about as hard.`;
  return `${seen}, of which ${formatPoints(fromPutts)} come from ${fromPutts < 0 ? 'easier' : 'harder'} questions.`;
};

/** Is my reading better than last month, or did I get easier questions? */
export const progressHeadline = (change: ReadingChange | undefined): string => {
  if (change === undefined) return 'Better than last month? Too few reads in one of the two to tell.';
  const { value, low, high, verdict } = change;
  const size = `at one and the same mix of putts your typical error changed by ${formatPoints(value)} points of the break (${signedRange(low, high, formatPoints)})`;
  const answer = {
    better: 'Better than last month',
    worse: 'Worse than last month',
    cannotTell: 'Better than last month? The reads cannot tell',
  }[verdict];
  return `${answer}: ${size}.`;
};

export const progressDetail = (change: ReadingChange | undefined, fewest: number): string =>
  change === undefined
    ? `Each needs ${fewest} reads of putts that break at least an inch, and putts in common with the other.`
    : puttsWords(change);

export const progressRow = (
  name: string,
  { count, bias, spread, error, plainError, meanBreak }: PeriodReading,
  units: Units,
): string[] => [
  name,
  String(count),
  marginWords(error),
  marginWords(bias),
  marginWords(spread),
  plainError === undefined ? 'none' : wholePercent(plainError),
  meanBreak === undefined ? 'none' : formatShort(meanBreak, units),
];

export const PROGRESS_MEANING =
  'Typical error is the mean size of how far off you were, as a share of the break; bias is its mean with the sign over your putts as they were, minus for too little; spread is what is left. Error and spread are told for one putt, 10 ft breaking 8 in, however hard your questions were: what break, side, climb, length, green speed and pace make of an error is taken out. Ranges allow for good days and bad: more days narrow them, more reads on one day hardly do. Easier questions therefore do not look like progress.';
