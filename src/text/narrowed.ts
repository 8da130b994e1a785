/**
 * A preset's family narrowed by what was measured, in words: by what, how many are left, and where the family does not hold who measured so.
 * Data in, words out. Leaves out: Bayes' rule (sim/costs/narrowed.ts).
 */
import {
  effectiveMembers,
  type Measurement,
  type Member,
  type Outside,
  outsideFamily,
  type Player,
  type Sitting,
} from '../../sim/index.ts';
import { formatDay } from './format.ts';
import { plural } from './phrases.ts';
import { errorWords } from './player.ts';

const joined = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;

const KINDS = ['gate', 'ladder', 'readingSet'] as const satisfies readonly Measurement['kind'][];

/** "20 balls through a gate". */
const kindWords = (kind: Measurement['kind'], results: readonly Measurement[]): string => {
  const of = results.filter((one) => one.kind === kind);
  if (kind === 'gate') {
    const balls = of.reduce((sum, one) => sum + (one.kind === 'gate' ? one.tries : 0), 0);
    return `${plural(balls, 'ball')} through ${of.length === 1 ? 'a gate' : `${of.length} gates`}`;
  }
  if (kind === 'ladder') {
    const balls = of.reduce((sum, one) => sum + (one.kind === 'ladder' ? one.errors.length : 0), 0);
    return `${plural(balls, 'ball')} to targets`;
  }
  // Each putt is named along the line and, where that tells, across it.
  const putts = Math.max(...of.map((one) => (one.kind === 'readingSet' ? one.slopes.length : 0)));
  return `${plural(putts, 'slope')} named`;
};

/** "20 balls through a gate on Nov 12, 2026". */
export const sittingWords = ({ day, results }: Sitting): string => {
  const kinds = KINDS.filter((kind) => results.some((one) => one.kind === kind));
  return `${joined(kinds.map((kind) => kindWords(kind, results)))} on ${formatDay(day)}`;
};

/** Fewer than this are one as good as alone (ours): 82% of the weight and more is one member's. */
const AS_GOOD_AS_ONE = 1.5;

const IN: Readonly<Record<Outside['error'], string>> = {
  lineSd: 'start line',
  paceSd: 'pace',
  slopeSd: 'slope',
};

const outsideWords = (outside: readonly Outside[], preset: string): string =>
  outside.length === 0
    ? ''
    : ` But no player who holes like ${preset} errs ${joined(
        outside.map(
          ({ error, measured }) => `so ${measured === 'larger' ? 'much' : 'little'} in ${IN[error]}`,
        ),
      )} as was measured: another player to start from, or your own numbers, will fit better.`;

const MIDDLE = { lineSd: 'of start line', paceSd: 'of pace', slopeSd: 'of slope misread' } as const;

export interface NarrowedFacts {
  /** Its name. */
  readonly preset: string;
  readonly by: readonly Sitting[];
  /** Before, and after. */
  readonly members: readonly Member[];
  /** The middle one. */
  readonly player: Player;
}

/** The sentence for a player who says aloud whom they play as. */
export const narrowedWords = ({ preset, by, members, player }: NarrowedFacts): string => {
  const left = effectiveMembers(members);
  const middle = joined(
    (['lineSd', 'paceSd', 'slopeSd'] as const).map(
      (error) => `${errorWords(error, player[error])} ${MIDDLE[error]}`,
    ),
  );
  const who =
    left < AS_GOOD_AS_ONE
      ? `of its ${members.length} likely players one is left as good as alone, with ${middle}`
      : `of its ${members.length} likely players about ${left.toFixed(left < 9.5 ? 1 : 0).replace(/\.0$/, '')} are left, in the middle ${middle}`;
  const results = by.flatMap((one) => one.results);
  return `${preset}, narrowed by ${joined(by.map(sittingWords))}: ${who}.${outsideWords(outsideFamily(members, results), preset)}`;
};

/** On buttons. */
export const narrowLabel = (preset: string): string => `Narrow ${preset} by this`;
/** Of one that has narrowed. */
export const widenLabel = (preset: string): string => `Narrows ${preset}: leave it out`;
export const backLabel = (preset: string): string => `Back to ${preset} as it was`;

/** Why balls to one distance do not narrow (sim/measuring/results.ts). */
export const oneTargetWords = (preset: string): string =>
  `Balls all to one distance do not narrow ${preset}: that is done better than ever new distances. Putt to two or three.`;

/** Where slopes were named: what that is and what it is not. */
export const NAMED_IS_NOT_PLAYED =
  'A slope named on a map and a line played on a green can be two things: this takes the one for the other, so believe it less than balls through a gate.';
