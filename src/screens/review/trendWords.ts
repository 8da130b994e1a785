/** Changes between two periods in words: always with their interval, and what such a record could have shown. */
import type { TrendVerdict } from '../../../sim/index.ts';
import { formatPercent, type Units } from '../../text/format.ts';
import {
  bandWords,
  benchmarkWords,
  capital,
  formatPoints,
  formatSigned,
  signedRange,
} from '../../text/phrases.ts';
import type { BandTrend, TrendView } from './trend.ts';

export const trendVerdictWords = (verdict: TrendVerdict): string =>
  ({ better: 'better', worse: 'worse', cannotTell: 'cannot tell' })[verdict];

const smallest = (change: number, write: (value: number) => string): string =>
  Number.isFinite(change)
    ? `The smallest change such a record would most likely show is ${write(change).replace('+', '')}.`
    : 'So few rounds could not show any change.';

const strokesChange = (value: number): string => `${formatSigned(value)} strokes`;

/** The answer: strokes gained first. */
export const trendHeadline = ({ gained }: TrendView, name: string): string => {
  if (gained === undefined) return 'One of the two periods has no round: nothing to compare.';
  const { value, low, high, verdict } = gained;
  const change = `${formatSigned(value)} strokes per 18 holes against ${benchmarkWords(name)} (${signedRange(low, high, formatSigned)})`;
  if (verdict === 'cannotTell') return `Better or worse? Your record cannot tell: ${change}.`;
  return `${capital(verdict)}: ${change}.`;
};

export const trendDetail = ({ gained }: TrendView): string =>
  gained === undefined
    ? ''
    : smallest(gained.smallestChange, (value) => `${strokesChange(value)} per 18 holes`);

/** One band: putts holed above the benchmark, so that nearer putts do not look like better putting. */
export const bandTrendWords = ({ band, adjusted }: BandTrend, units: Units): string => {
  if (adjusted === undefined)
    return `${capital(bandWords(band, units))}: one of the periods has no such putts.`;
  const { value, low, high, verdict, smallestChange } = adjusted;
  return `${capital(bandWords(band, units))}: ${formatPoints(value)} points (${signedRange(low, high, formatPoints)}), ${trendVerdictWords(verdict)}. ${smallest(smallestChange, (change) => `${formatPoints(change)} points`)}`;
};

interface Change {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export const changeWords = (change: Change | undefined, write: (value: number) => string): string =>
  change === undefined
    ? 'nothing to compare'
    : `${write(change.value)} (${signedRange(change.low, change.high, write)})`;

export const shareOfPeriod = ({ hits, tries }: { readonly hits: number; readonly tries: number }): string =>
  tries === 0 ? 'none' : `${formatPercent(hits / tries)} of ${tries}`;

export const trendTitle = ({ bands }: TrendView, units: Units): string =>
  `Change of putts holed above the benchmark, in points, later less earlier: ${bands
    .filter(({ adjusted }) => adjusted !== undefined)
    .map(({ band, adjusted }) => `${bandWords(band, units)} ${changeWords(adjusted, formatPoints)}`)
    .join('; ')}. Bars are 95% intervals.`;

export const TREND_MEANING =
  'Putts from nearer look like better putting: the adjusted change compares each putt with the benchmark’s chance from its own place. “Better” or “worse” is said only where it holds with all bands looked at. Periods chosen after a look at the record find changes that are not there.';
