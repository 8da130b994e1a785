/**
 * "Die or firm" for everybody the person may be, in words: one sentence for all of them, or what it turns on and what would tell. Data
 * in, words out.
 */
import type { DieOrFirm, Parted, PlayerOrigin, TellingTest } from '../../sim/index.ts';
import { formatPercent, formatPutts } from './format.ts';
import { plural } from './phrases.ts';

/** "0.03 to 0.08", "up to 0.08", "0.05": gains over the other pace, nothing where they do not reach a hundredth. */
const gainWords = (low: number, high: number): string => {
  const [from, to] = [formatPutts(Math.max(0, low)), formatPutts(Math.max(0.01, high))];
  if (Number(from) === 0) return `up to ${to}`;
  return from === to ? to : `${from} to ${to}`;
};

/** Who they are whom the first choice suits, and the second. */
export const partWords = ({ by, more }: Parted): readonly [first: string, second: string] => {
  const [much, little] =
    by === 'reading'
      ? (['you misread more than you mis-strike', 'you mis-strike more than you misread'] as const)
      : (['your start line is worse than your pace', 'your pace is worse than your start line'] as const);
  return more === 'second' ? [little, much] : [much, little];
};

/** Whom each pace suits, as two halves of a sentence. */
export const turnWords = (on: Parted, other = 'die it in'): string => {
  const [die, firm] = partWords(on);
  return `firm if ${firm}, ${other} if ${die}`;
};

interface Test {
  readonly words: string;
  /** The screen that does exactly that. */
  readonly link: string;
  readonly linkWords: string;
}

export const TEST_WORDS: Readonly<Record<TellingTest, Test>> = {
  gate: {
    words: 'twenty balls through a gate would tell',
    link: '/measure/startLine',
    linkWords: 'Measure your start line through a gate',
  },
  ladder: {
    words: 'twenty balls to targets near and far on ground you know would tell',
    link: '/measure/pace',
    linkWords: 'Measure your pace to targets',
  },
  readingSet: {
    words: 'a set of ten slopes to name would tell',
    link: '/read/what-slope',
    linkWords: 'Name ten slopes',
  },
};

/** The answer for all of them; undefined: nobody can play both paces. */
export const familyHeadline = ({ verdict, difference }: DieOrFirm): string | undefined => {
  if (difference === undefined) return undefined;
  const { low, high } = difference;
  switch (verdict.kind) {
    case 'die':
      return `Die it in here, whoever of these you are: ${gainWords(low, high)} putts better than firm.`;
    case 'firm':
      return `Firm it in here, whoever of these you are: ${gainWords(-high, -low)} putts better than dying it in.`;
    case 'close':
      return 'Die or firm: no difference worth having here, whoever of these you are.';
    case 'turns':
      return `It turns on your errors: ${turnWords(verdict.on)}; ${TEST_WORDS[verdict.on.test].words}.`;
    case 'noLine':
      return undefined;
  }
};

/** Who "these" are. @param preset the preset's name */
export const whoWords = (origin: PlayerOrigin, of: number, preset: string | undefined): string =>
  origin.kind === 'fit'
    ? `${plural(of, 'player')} who would have written ${origin.source === 'own' ? 'your record' : 'the invented player’s record'} as likely as one another`
    : `${plural(of, 'player')} who hole about as much as ${preset ?? 'the one chosen'}, from mostly stroke to mostly reading${
        origin.kind === 'preset' && origin.narrowedBy !== undefined ? ', weighed by what you measured' : ''
      }`;

/** Below the sentence: who they are, how many are asked, how far they lie apart. */
export const familyDetail = (
  { asked, of, all, difference, verdict }: DieOrFirm,
  origin: PlayerOrigin,
  preset: string | undefined,
): string => {
  const those = of < all ? `the ${of} of them that span the others` : 'all';
  const far = asked < of ? `${asked} of ${of < all ? those : of} asked so far` : `${those} asked`;
  const split =
    verdict.kind === 'turns'
      ? `; firm suits ${formatPercent(verdict.firm, 0)} of those whom it concerns`
      : '';
  const range =
    difference === undefined || signed(difference.low) === signed(difference.high)
      ? ''
      : `; die over firm ${signed(difference.low)} to ${signed(difference.high)} putts`;
  return `These: ${whoWords(origin, all, preset)} (${far}${range}${split}).`;
};

/** On a green, before the others have been asked, or when they were not. */
export const middleOnlyWords = (members: number, stopped: boolean): string =>
  `${stopped ? 'Of' : 'So far of'} the middle one of ${plural(members, 'likely player')} alone${stopped ? ': the others were not asked.' : '; the others are asked next.'}`;

const signed = (putts: number): string =>
  `${putts >= 0.005 ? '+' : ''}${formatPutts(Math.abs(putts) < 0.005 ? 0 : putts).replace('-', '−')}`;
