/**
 * Recorded putts and rounds in words, for every screen that shows them. Data in, words out. Leaves out: numbers (format.ts),
 * what records tell.
 */
import {
  type BreakWay,
  type Climb,
  feetToMetres,
  type MissReach,
  type MissSide,
  type PaceMeant,
  type PracticeSet,
  type RecordedPutt,
  type RecordedRound,
  type SlopeFelt,
} from '../../sim/index.ts';
import { formatDay, formatLength, formatShort, type Units } from './format.ts';

export const CLIMB_WORDS: Readonly<Record<Climb, string>> = {
  up: 'uphill',
  level: 'level',
  down: 'downhill',
};
export const BREAK_WORDS: Readonly<Record<BreakWay, string>> = {
  leftToRight: 'left to right',
  straight: 'straight',
  rightToLeft: 'right to left',
};
export const SLOPE_WORDS: Readonly<Record<SlopeFelt, string>> = {
  gentle: 'gentle',
  medium: 'medium',
  steep: 'steep',
};
export const PACE_WORDS: Readonly<Record<PaceMeant, string>> = {
  die: 'die it in',
  normal: 'normal',
  firm: 'firm',
};
export const SIDE_WORDS: Readonly<Record<MissSide, string>> = {
  high: 'high',
  low: 'low',
  left: 'left',
  right: 'right',
  online: 'on line',
};
export const REACH_WORDS: Readonly<Record<MissReach, string>> = { short: 'short', past: 'past' };

/** Inches up to two feet, centimetres up to a metre; feet and metres beyond, without empty decimals. */
export const formatTapped = (metres: number, units: Units): string =>
  metres < (units === 'imperial' ? feetToMetres(2) - 0.003 : 0.995)
    ? formatShort(metres, units)
    : formatLength(metres, units)
        .replace(/\.(\d)0 m$/, '.$1 m')
        .replace(/\.0 m$/, ' m');

/** "low, past": where it missed; empty when neither is known. */
export const missWords = (side: MissSide | undefined, reach: MissReach | undefined): string =>
  [side && SIDE_WORDS[side], reach && REACH_WORDS[reach]].filter(Boolean).join(', ');

export type WordedPutt = Pick<RecordedPutt, 'distance' | 'climb' | 'breaks' | 'kind' | 'holed' | 'miss'>;

/** "12 ft uphill, left to right": the putt before the stroke. */
export const placeOfPutt = ({ distance, climb, breaks }: WordedPutt, units: Units): string =>
  [`${formatTapped(distance, units)}${climb ? ` ${CLIMB_WORDS[climb]}` : ''}`, breaks && BREAK_WORDS[breaks]]
    .filter(Boolean)
    .join(', ');

/** "missed low, past, 2 ft left", "holed", "conceded": what became of it. */
export const fateOfPutt = ({ kind, holed, miss }: WordedPutt, units: Units): string => {
  if (kind === 'conceded') return 'conceded';
  const from = kind === 'offGreen' ? ' from off the green' : '';
  if (holed || miss === undefined) return `holed${from}`;
  const where = missWords(miss.side, miss.reach);
  return `missed${from}${where ? ` ${where}` : ''}, ${formatTapped(miss.leave, units)} left`;
};

export const puttWords = (putt: WordedPutt, units: Units): string =>
  `${placeOfPutt(putt, units)}: ${fateOfPutt(putt, units)}`;

/** "12 of 20 from 6 ft, grass": a practice set. */
export const practiceWords = ({ distance, attempts, holed, ground }: PracticeSet, units: Units): string =>
  `${holed} of ${attempts} from ${formatTapped(distance, units)}, ${ground}`;

/** "1 putt", "3 holes". */
export const countWords = (count: number, thing: string): string =>
  `${count} ${thing}${count === 1 ? '' : 's'}`;

/** Putts as a player counts them: from on the green, the conceded ones too. */
export const puttsCounted = (putts: readonly Pick<RecordedPutt, 'kind'>[]): number =>
  putts.filter(({ kind }) => kind !== 'offGreen').length;

/** Holes of a round with anything written down. */
export const holesWritten = (
  { withoutPutt }: Pick<RecordedRound, 'withoutPutt'>,
  putts: readonly Pick<RecordedPutt, 'hole'>[],
): number => new Set([...withoutPutt, ...putts.map(({ hole }) => hole)]).size;

/** "Old Links, 2 May 2026" or the day alone. */
export const roundName = ({ day, course }: Pick<RecordedRound, 'day' | 'course'>): string =>
  course === undefined ? formatDay(day) : `${course}, ${formatDay(day)}`;

/** What a player is told of strokes that do not count. */
export const APART_WORDS =
  'Conceded putts, putts from off the green and holes without a putt are written down, and stay out of what the review says of your putting.';

export const RULES_TITLE = 'Rules mode: a round is open';
export const RULES_WORDS =
  'During a round under the Rules of Golf you may record putts for later, but not ask for a line, a speed or a slope (Rule 4.3a). So while your round is open this page only records, in every tab, and shows no advice and no analysis. Check your competition’s Local Rules.';
