/** Strokes gained in words. Data in, words out. */
import type { PuttsTaken } from '../../../sim/index.ts';
import { formatPercent, type Units } from '../../text/format.ts';
import { bandWords, benchmarkWords, capital, formatSigned, plural, signedRange } from '../../text/phrases.ts';
import type { GainedView } from './gained.ts';
import type { HoledView } from './holed.ts';

const gainWords = (value: number): string =>
  `${value < 0 ? 'lose' : 'gain'} ${Math.abs(value).toFixed(2)} strokes`;

/** The answer. @param name of the benchmark */
export const gainedHeadline = ({ gained, rows }: GainedView, name: string): string => {
  const { per18 } = gained;
  if (per18 === undefined) return 'No round passes these filters.';
  const against = `against ${benchmarkWords(name)}`;
  if (rows.length === 1)
    return `One round: you ${gainWords(per18.value)} per 18 holes ${against}. One round has no margin.`;
  const verdict = per18.low > 0 ? 'clearly better' : per18.high < 0 ? 'clearly worse' : 'no clear difference';
  const range = signedRange(per18.low, per18.high, formatSigned);
  return `You ${gainWords(per18.value)} per 18 holes ${against} (${range}, ${plural(rows.length, 'round')}): ${verdict}.`;
};

/** Where most is lost, or that the record cannot say. */
export const worstWords = ({ worst, byDistance }: GainedView, units: Units): string => {
  if (worst?.per18 === undefined)
    return byDistance.some(({ verdict }) => verdict === 'gains')
      ? 'No distance clearly loses strokes.'
      : 'Where strokes are lost, your record cannot tell yet.';
  const { value, low, high } = worst.per18;
  return `Most is lost ${bandWords(worst.band, units)}: ${formatSigned(value)} per 18 holes (${signedRange(low, high, formatSigned)}, ${worst.puttsPer18.toFixed(1)} such putts a round).`;
};

export interface TakenSentence {
  readonly taken: PuttsTaken | undefined;
  readonly gained: number;
  /** Putts left out because their end is not known. */
  readonly leftOut: number;
  readonly name: string;
}

/** "I took 31 putts: good or bad, given where I started from?" */
export const takenWords = ({ taken, gained, leftOut, name }: TakenSentence): string => {
  const missing = leftOut > 0 ? ` ${plural(leftOut, 'putt')} of unknown end left out.` : '';
  if (taken === undefined) return `No hole was putted out: ${formatSigned(gained)} strokes.${missing}`;
  const { putts, holes, expected, low, high, soFew, soMany } = taken;
  const word = soFew < 0.05 ? 'good' : soMany < 0.05 ? 'bad' : 'neither';
  const range = `nine in ten of its rounds take ${low} to ${high}`;
  const told = `${plural(putts, 'putt')} on ${plural(holes, 'hole')}`;
  const beside = `from those places ${benchmarkWords(name)}, takes ${expected.toFixed(1)}`;
  if (word === 'neither')
    return `${told}: neither good nor bad; ${beside}, and ${range}: yours is one of them.${missing}`;
  const chance = formatPercent(word === 'good' ? soFew : soMany);
  return `${told}: ${word}; ${beside}, and ${word === 'good' ? `so few only ${chance}` : `so many only ${chance}`} of the time.${missing}`;
};

export const gainedTitle = ({ rows, gained }: GainedView, name: string): string =>
  gained.per18 === undefined
    ? 'No rounds.'
    : `Strokes gained per 18 holes against ${benchmarkWords(name)}: ${plural(rows.length, 'round')} as dots, their running mean as a line with its 95% band, ending at ${formatSigned(gained.per18.value)} (${signedRange(gained.per18.low, gained.per18.high, formatSigned)}).`;

/** What to practise, only where the whole record carries it. */
export const practiseWords = (
  { worst, gained }: GainedView,
  { clearest }: HoledView,
  name: string,
  units: Units,
): string => {
  if (gained.per18 === undefined) return 'Nothing to practise can be named without rounds.';
  if (worst?.per18 === undefined && clearest?.verdict === 'fewer')
    return `${capital(bandWords(clearest.band, units))}: over the whole record you hole clearly fewer there than ${benchmarkWords(name)}, though what that costs in strokes is not clear yet. This round alone would not carry it.`;
  if (worst?.per18 === undefined)
    return 'The evidence does not carry a choice of what to practise: no distance loses strokes clearly enough. Practise what you like, and go on recording.';
  return `${capital(bandWords(worst.band, units))}: over all ${plural(gained.rounds.length, 'round')} the loss to ${benchmarkWords(name)}, is clear there, ${formatSigned(worst.per18.value)} per 18 holes (${signedRange(worst.per18.low, worst.per18.high, formatSigned)}). This round alone would not carry it.`;
};
