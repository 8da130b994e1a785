/**
 * Break named beside break played, in words. Two things that are never mixed: a read named on a map (read sets) and the line played on a
 * green (the fit to the record); golfers name far too little and make up for a good part of it unknowingly (Pelz 1994, abstract read).
 * Data in, words out.
 */
import type { ErrorRange } from '../../../sim/index.ts';
import { errorRangeWords, FEW_PUTTS } from '../../text/errors.ts';
import { errorNumber, sideOfError } from '../../text/player.ts';

/** A share of the break, below 0 too little, with its 90% range. */
export interface BreakShare {
  readonly value: number;
  readonly range: ErrorRange;
}

export interface GapFacts {
  /** undefined: no read sets, or too few reads. */
  readonly named: BreakShare | undefined;
  /** undefined: no fit yet. */
  readonly played: BreakShare | undefined;
  /** Putts of the fit. */
  readonly putts: number;
  readonly invented: boolean;
}

/** "8% too little break (2 to 14%)", "the right break on average (3% too little to 4% too much)". */
const shareWords = ({ value, range }: BreakShare, what: string): string => {
  const side = sideOfError('readBias', value);
  const ends = errorRangeWords('readBias', range);
  const within =
    side !== '' && ends.endsWith(side) && !ends.includes(`${side} to `) ? ends.slice(0, -side.length) : ends;
  return side === ''
    ? `the right ${what} on average (${within})`
    : `${errorNumber('readBias', value)}%${side} ${what} (${within})`;
};

/** Standard normal quantile of a 90% range's ends. */
const Z90 = 1.645;

/** What the two together say. */
const meaning = (named: BreakShare, played: BreakShare, invented: boolean): string => {
  const sdOf = ({ range: { low, high } }: BreakShare): number => (high - low) / (2 * Z90);
  const apart = Math.abs(played.value - named.value);
  const [you, your] = invented ? ['they', 'their'] : ['you', 'your'];
  if (!(apart > Z90 * Math.hypot(sdOf(named), sdOf(played))))
    return `whether ${your} name or ${your} line is farther off cannot be told yet`;
  return Math.abs(played.value) < Math.abs(named.value)
    ? `some of what ${you} name wrong ${you} make up for while aiming and stroking, without knowing it`
    : `${you} play farther off than ${you} name, so it is less the eye than what becomes of the read: aim where ${you} named, and see whether the ball starts there`;
};

export const NEVER_MIXED =
  'Ranges hold nine chances in ten. A read named on a map and a line played on a green are two things: neither number goes into the other.';

export interface GapWords {
  readonly words: string;
  /** What would give the number that is missing. */
  readonly missing: 'named' | 'played' | 'both' | undefined;
}

export const gapWords = ({ named, played: fitted, putts, invented }: GapFacts): GapWords => {
  const played = putts < FEW_PUTTS ? undefined : fitted;
  const You = invented ? 'The invented player names' : 'You name';
  const plays = invented ? 'plays' : 'play';
  if (named === undefined && played === undefined)
    return {
      words: `Neither what ${invented ? 'they name' : 'you name'} nor what ${invented ? 'they play' : 'you play'} is known yet.`,
      missing: 'both',
    };
  if (named === undefined && played !== undefined)
    return {
      words: `${invented ? 'The invented player plays' : 'You play'} ${shareWords(played, 'break')}; what ${invented ? 'they' : 'you'} name is not known yet.`,
      missing: 'named',
    };
  if (named !== undefined && played === undefined)
    return {
      words: `${You} ${shareWords(named, 'break')}; what ${invented ? 'they' : 'you'} play is not known yet.`,
      missing: 'played',
    };
  if (named === undefined || played === undefined) throw new Error('Both are known here.');
  return {
    words: `${You} ${shareWords(named, 'break')} and ${plays} ${shareWords(played, 'break')}: ${meaning(named, played, invented)}.`,
    missing: undefined,
  };
};
