/** Words that all sections of the review share: bands, shares with intervals, changes, counts. Data in, words out. */
import { type DistanceBand, type Estimate, metresToFeet, type Proportion } from '../../sim/index.ts';
import { formatDay, formatPercent, type Units } from './format.ts';

const endOf = (metres: number, units: Units): string =>
  String(Number((units === 'imperial' ? metresToFeet(metres) : metres).toFixed(1)));

/** "from 3 to 6 ft", "from 40 ft on", "under 3 ft", "from anywhere": never "at". */
export const bandWords = ({ from, to }: DistanceBand, units: Units): string => {
  const unit = units === 'imperial' ? 'ft' : 'm';
  if (from === 0 && to === Number.POSITIVE_INFINITY) return 'from anywhere';
  if (to === Number.POSITIVE_INFINITY) return `from ${endOf(from, units)} ${unit} on`;
  if (from === 0) return `under ${endOf(to, units)} ${unit}`;
  return `from ${endOf(from, units)} to ${endOf(to, units)} ${unit}`;
};

/** The same where a column says "from": "3 to 6 ft", "40 ft on". */
export const bandName = (band: DistanceBand, units: Units): string =>
  bandWords(band, units).replace(/^from /, '');

export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Many thousands read better apart: "12,480". */
export const formatCount = (count: number): string => count.toLocaleString('en-US');

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${formatCount(count)} ${count === 1 ? one : many}`;

/** "35 to 47%" */
export const rangeWords = (low: number, high: number): string =>
  `${formatPercent(low).replace('%', '').replace(/\.0$/, '')} to ${formatPercent(high).replace(/\.0%$/, '%')}`;

/** "41% (35 to 47%)"; without tries "nothing to count". */
export const shareWords = ({ value, low, high }: Proportion): string =>
  value === undefined ? 'nothing to count' : `${formatPercent(value)} (${rangeWords(low, high)})`;

/** "+0.42" or "−1.10": a gain or a change, always with its sign. */
export const formatSigned = (value: number, digits = 2): string => {
  const text = Math.abs(value).toFixed(digits);
  if (Number(text) === 0) return text;
  return `${value < 0 ? '−' : '+'}${text}`;
};

/** "+3.2 points" of a change of shares. */
export const formatPoints = (change: number): string => formatSigned(change * 100, 1);

/** "(−1.2 to +0.4)"; where there is no margin that is said. */
export const signedRange = (low: number, high: number, write: (value: number) => string): string =>
  Number.isFinite(low) && Number.isFinite(high)
    ? `${write(low)} to ${write(high)}`
    : 'no margin from so few rounds';

/** Strokes with their interval: "+0.42 (−0.10 to +0.94)". */
export const strokesWords = ({ value, low, high }: Estimate): string =>
  `${formatSigned(value)} (${signedRange(low, high, formatSigned)})`;

/** "2 May 2026 to 1 Jun 2026", "from …", "up to …", "all days". */
export const periodWords = ({ from, to }: { readonly from: string; readonly to: string }): string => {
  if (from === '' && to === '') return 'all days';
  if (to === '') return `from ${formatDay(from)} on`;
  if (from === '') return `up to ${formatDay(to)}`;
  return from === to ? formatDay(from) : `${formatDay(from)} to ${formatDay(to)}`;
};

export const ALL_INTERVALS =
  'Intervals hold the truth 95% of the time: one in twenty misses it, and there are many on this page.';

/** Whose numbers a benchmark has, for every place they are shown. */
export const benchmarkWords = (name: string): string => `the benchmark, ${name}`;

export const BENCHMARK_CAUTION =
  'A benchmark is a yardstick, not a target: percentages of tour players come from tour greens and tour hours of practice. Your own record wins once it has enough putts.';

/** How much of the record passed the filters. */
export const remainingWords = (count: number, all: number): string =>
  count === all
    ? `All ${plural(all, 'putt')} of your record.`
    : `${plural(count, 'putt')} of ${formatCount(all)} ${count === 1 ? 'passes' : 'pass'} these filters.`;

export interface LeftOut {
  readonly carpetPutts: number;
  readonly unreadable: number;
}

export const leftOutWords = ({ carpetPutts, unreadable }: LeftOut): string | undefined => {
  const parts = [
    ...(carpetPutts > 0
      ? [`${plural(carpetPutts, 'practice putt')} on carpet ${carpetPutts === 1 ? 'stays' : 'stay'} out`]
      : []),
    ...(unreadable > 0
      ? [
          `${plural(unreadable, 'record')} could not be read and ${unreadable === 1 ? 'stays' : 'stay'} as ${unreadable === 1 ? 'it is' : 'they are'}`,
        ]
      : []),
  ];
  return parts.length === 0 ? undefined : `${capital(parts.join('; '))}.`;
};
