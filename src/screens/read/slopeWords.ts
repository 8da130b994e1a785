/** Slopes and their errors in words. Numbers are written by text/format.ts. */
import type { SlopeErrors, SlopeSummary, Slopes } from '../../../sim/index.ts';
import { formatSlope } from '../../text/format.ts';

/** "1.2% uphill", "0.4% downhill", "level". */
export const alongWords = (along: number): string => {
  const size = formatSlope(Math.abs(along));
  return size === '0%' ? 'level' : `${size} ${along > 0 ? 'uphill' : 'downhill'}`;
};

/** Size of an error in points of slope, one decimal: "0.4". */
export const pointsSize = (error: number): string => (Math.abs(error) * 100).toFixed(1);

/** Points of slope with their sign: "+0.4", "−1.2", "0.0". */
export const slopePoints = (error: number): string => {
  const size = pointsSize(error);
  return Number(size) === 0 ? size : `${error > 0 ? '+' : '−'}${size}`;
};

/** Nearer than this is right, rise over run: what a level on the ground tells. */
const RIGHT_WITHIN = 0.0025;

const points = (error: number): string => `${pointsSize(error)} points`;

export const slopeHeadline = (truth: Slopes, guess: Slopes): string => {
  const error = guess.total - truth.total;
  if (Math.abs(error) <= RIGHT_WITHIN) return `Right: the ground falls ${formatSlope(truth.total)}`;
  return `Too ${error < 0 ? 'flat' : 'steep'} by ${points(error)}: it falls ${formatSlope(truth.total)}`;
};

export const alongSentence = (truth: Slopes, guess: Slopes): string => {
  const error = guess.along - truth.along;
  const is = `Along your line it is ${alongWords(truth.along)}`;
  if (Math.abs(error) <= RIGHT_WITHIN) return `${is}: right.`;
  if (truth.along * guess.along < 0 && Math.abs(truth.along) > RIGHT_WITHIN)
    return `${is}: you had it ${guess.along > 0 ? 'uphill' : 'downhill'}, off by ${points(error)}.`;
  return `${is}: you said ${alongWords(guess.along)}, off by ${points(error)}.`;
};

/** "−0.6 to +0.2", or that there is no margin. */
export const pointsRange = (
  { low, high }: { readonly low: number; readonly high: number },
  write: (value: number) => string,
): string =>
  Number.isFinite(low) && Number.isFinite(high) ? `${write(low)} to ${write(high)}` : 'no margin yet';

/** An interval wholly within this of 0 is called about right, rise over run. */
const ABOUT_RIGHT = 0.005;

export const slopeSummaryHeadline = ({ total, count }: SlopeSummary): string => {
  const { value, low, high } = total.bias;
  const size = `${slopePoints(value)} points on average (${pointsRange(total.bias, slopePoints)})`;
  if (high < 0) return `You see the ground too flat: ${size}.`;
  if (low > 0) return `You see the ground too steep: ${size}.`;
  if (low > -ABOUT_RIGHT && high < ABOUT_RIGHT) return `You see the ground about right: ${size}.`;
  return `Too flat or too steep? ${count} ${count === 1 ? 'answer' : 'answers'} cannot tell: ${size}.`;
};

const spreadWords = ({ spread }: SlopeErrors): string =>
  spread === undefined ? '' : `, with a spread of ${pointsSize(spread.value)}`;

export const slopeSummarySentence = ({ total, along }: SlopeSummary): string =>
  `The ground was ${pointsSize(total.meanSize)} points off on average${spreadWords(total)}; along the line ${pointsSize(along.meanSize)}${spreadWords(along)}, and ${slopePoints(along.bias.value)} towards uphill.`;
