/** Holed by distance in words: where the record clearly differs from the benchmark, or that it cannot tell yet. */

import { formatPercent, type Units } from '../../text/format.ts';
import { bandWords, benchmarkWords, capital, plural, rangeWords, shareWords } from '../../text/phrases.ts';
import type { HoledRow, HoledView } from './holed.ts';

const withCount = ({ holed }: HoledRow): string =>
  holed.value === undefined
    ? 'nothing'
    : `${formatPercent(holed.value)} (${rangeWords(holed.low, holed.high)}, ${plural(holed.tries, 'putt')})`;

const against = ({ expectedShare }: HoledRow, name: string): string =>
  expectedShare === undefined
    ? ''
    : `${formatPercent(expectedShare)} by ${benchmarkWords(name)}, from the same places`;

/** The answer. @param name of the benchmark */
export const holedHeadline = (view: HoledView, name: string, units: Units): string => {
  const { clearest, fullest } = view;
  if (view.tries === 0 || (clearest === undefined && fullest === undefined))
    return view.tries === 0
      ? 'No putts pass these filters.'
      : `Only ${plural(view.tries, 'tap-in')} so far: nothing to tell from them.`;
  if (clearest !== undefined)
    return `${capital(bandWords(clearest.band, units))} you hole ${withCount(clearest)}: clearly ${clearest.verdict === 'fewer' ? 'fewer' : 'more'} than the ${against(clearest, name)}.`;
  const row = fullest as HoledRow;
  return `${plural(view.tries, 'putt')} cannot tell you from ${benchmarkWords(name)}, in any band yet: ${bandWords(row.band, units)} you hole ${withCount(row)}, against ${against(row, name)}.`;
};

/** Other bands that differ, or what it would take. */
export const holedDetail = (view: HoledView, units: Units): string => {
  const { rows, clearest, fullest, more } = view;
  const others = (verdict: 'fewer' | 'more'): string[] =>
    rows
      .filter((row) => row.verdict === verdict && row !== clearest)
      .map(({ band }) => bandWords(band, units));
  const told = (['fewer', 'more'] as const).flatMap((verdict) => {
    const bands = others(verdict);
    return bands.length === 0 ? [] : [`Clearly ${verdict} also ${bands.join(', ')}.`];
  });
  if (clearest !== undefined)
    return [...told, 'In the other bands the record cannot tell.'].slice(0, 3).join(' ');
  if (fullest === undefined || more === undefined) return '';
  return more.more === 0
    ? `A third fewer or more would most likely have shown ${bandWords(fullest.band, units)} by now.`
    : `A third fewer or more ${bandWords(fullest.band, units)} would show in about ${plural(more.needed, 'such putt')}: ${plural(more.more, 'more', 'more')}.`;
};

/** How much of the fitted curve is the player's own. */
export const curveWords = ({ ownPart }: HoledView, name: string): string => {
  const { putts, leansOn } = ownPart;
  if (putts === 0) return `No putts: the curve is that of ${benchmarkWords(name)}, as wide as players are.`;
  if (leansOn === 'record')
    return `The curve is fitted to ${plural(putts, 'putt')} and is nearly all your own.`;
  const leaning = leansOn === 'both' ? 'still leans on' : 'leans mostly on';
  return `The curve ${leaning} ${benchmarkWords(name)}: ${plural(putts, 'putt')} of your own ${putts === 1 ? 'is' : 'are'} few for it.`;
};

export const besideWords = ({ verdict }: Pick<HoledRow, 'verdict'>): string =>
  ({ tooFew: 'too few', cannotTell: 'cannot tell', fewer: 'clearly fewer', more: 'clearly more' })[verdict];

/** The whole chart in a sentence. */
export const holedTitle = (view: HoledView, name: string, units: Units): string => {
  const bands = view.rows
    .filter(({ holed }) => holed.tries > 0)
    .map(({ band, holed }) => `${bandWords(band, units)} ${shareWords(holed)}`);
  return `Share holed by distance: ${bands.join('; ')}. Solid line: your fitted curve with its 95% band. Dashed line: ${benchmarkWords(name)}.`;
};
