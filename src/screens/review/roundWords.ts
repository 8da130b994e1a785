/**
 * The round check in words: what dropped beside what a player like this one drops, what is evidence and what is not. Data in, words
 * out. Never a diagnosis from one round.
 */
import {
  type BandCheck,
  FEWEST_TO_CONCLUDE,
  type GainWithoutHoling,
  type HoledBeside,
  LEAN_KINDS,
  type RoundCheck,
} from '../../../sim/index.ts';
import { formatDay, formatLength, formatPercent, type Units } from '../../text/format.ts';
import { bandWords, benchmarkWords, capital, formatSigned, plural } from '../../text/phrases.ts';
import { leanWords } from './missesWords.ts';
import type { RoundView } from './roundCheck.ts';

/** "Saturday's round" by day, holes and course. */
export const roundName = ({
  day,
  holes,
  course,
}: {
  readonly day: string;
  readonly holes: number;
  readonly course?: string;
}): string => `${formatDay(day)}, ${holes} holes${course === undefined ? '' : `, ${course}`}`;

/** "none", "2 or fewer", "5 or more": the side on which the actual number lies. */
const tailOf = (holed: number, { mean, soFew, soMany, none }: HoledBeside): [string, number] => {
  if (holed === 0) return ['none', none];
  return holed < mean ? [`${holed} or fewer`, soFew] : [`${holed} or more`, soMany];
};

/** "You holed 0 of 6 from 12 to 20 ft; a player like you holes none in such a set 31% of the time." */
export const bandSentence = ({ band, tries, holed, byPlayer }: BandCheck, units: Units): string => {
  if (tries === 0) return `No putts ${bandWords(band, units)}.`;
  const [what, chance] = tailOf(holed, byPlayer);
  return `You holed ${holed} of ${tries} ${bandWords(band, units)}; a player like you holes ${what} in such a set ${formatPercent(chance)} of the time.`;
};

export const verdictWords = ({ verdict, tries, correctedChance }: BandCheck): string => {
  if (tries === 0) return '';
  switch (verdict) {
    case 'nothingToConclude':
      return `${capital(plural(tries, 'putt'))}: fewer than ${FEWEST_TO_CONCLUDE}, nothing to conclude.`;
    case 'withinChance':
      return 'No more than chance makes. That does not say that all is well.';
    case 'unusuallyFew':
    case 'unusuallyMany':
      return `Unusually ${verdict === 'unusuallyFew' ? 'few' : 'many'}: by chance only ${formatPercent(correctedChance)} of the time, every round and band you look at counted.`;
  }
};

/** "1.1 (0 to 3)": expected number and the range of nine in ten. */
export const expectedWords = ({ mean, low, high }: HoledBeside): string =>
  `${mean.toFixed(1)} (${low === high ? low : `${low} to ${high}`})`;

export const moreWords = ({ morePutts, tries }: BandCheck): string => {
  if (tries === 0 || morePutts === undefined) return '';
  const { needed, more, rounds } = morePutts;
  if (more === 0) return `${plural(needed, 'such putt')} would tell, and your record has them.`;
  const time = rounds === undefined ? '' : `, some ${plural(rounds, 'round')}`;
  return `${plural(more, 'more such putt')}${time}.`;
};

const unusual = ({ bands }: RoundCheck): BandCheck | undefined =>
  bands.find(({ verdict }) => verdict === 'unusuallyFew' || verdict === 'unusuallyMany');

/** The answer of one round. @param name of the benchmark */
export const roundHeadline = ({ check, gained, tapIn }: RoundView, name: string, units: Units): string => {
  const [all] = check.bands;
  const odd = unusual(check);
  if (odd !== undefined)
    return `${bandSentence(odd, units)} That is more than luck: unusually ${odd.verdict === 'unusuallyFew' ? 'few' : 'many'}.`;
  if (check.explained !== undefined)
    return `Nothing longer than ${formatLength(tapIn, units)} dropped, and yet you gained ${gained.toFixed(1)} strokes against ${benchmarkWords(name)}.`;
  if (all.tries === 0) return `No putts ${bandWords(all.band, units)} in this round: nothing to check.`;
  if (all.verdict === 'nothingToConclude')
    return `${bandSentence(all, units)} ${capital(plural(all.tries, 'putt'))} are too few to conclude anything.`;
  return `${bandSentence(all, units)} Nothing here says that it was more than luck.`;
};

const spread = (putts: number): string => putts.toFixed(1);

/** The nine on which nothing long dropped and strokes were gained all the same. */
export const explainedWords = (gain: GainWithoutHoling, name: string, units: Units): string[] => {
  const {
    holes,
    medianFirstPutt,
    longTries,
    benchmarkHoled,
    benchmarkHolesNone,
    threePutts,
    expectedThreePutts,
  } = gain;
  const gaining = gain.firstPutts.filter(({ gained }) => gained > 0);
  const longest = gaining.reduce<(typeof gaining)[number] | undefined>(
    (best, one) => (best === undefined || one.gained > best.gained ? one : best),
    undefined,
  );
  return [
    `Your first putts were long: half of the ${plural(holes, 'hole')} began beyond ${formatLength(medianFirstPutt, units)}.`,
    longTries === 0
      ? 'You had no putt longer than a tap-in.'
      : `Of your ${plural(longTries, 'putt')} longer than a tap-in ${benchmarkWords(name)}, would have holed ${spread(benchmarkHoled.mean)} (${benchmarkHoled.low} to ${benchmarkHoled.high}), and none of them ${formatPercent(benchmarkHolesNone)} of the time: holing nothing costs that much and no more.`,
    `From those places it takes three putts ${spread(expectedThreePutts)} times; you did ${threePutts === 0 ? 'not once' : plural(threePutts, 'time')}.`,
    ...(longest === undefined
      ? []
      : [
          `Most of the gain is from ${plural(longest.count, 'first putt')} ${bandWords(longest.band, units)}: ${formatSigned(longest.gained)} strokes. Two putts from there beat its average.`,
        ]),
  ];
};

/** What the round is evidence of, and of what it is not, line by line. */
export const evidenceWords = ({ check, otherRounds, curve }: RoundView, units: Units): string[] => {
  const odd = check.bands.filter(({ verdict }) => verdict === 'unusuallyFew' || verdict === 'unusuallyMany');
  const own = curve.effective;
  return [
    odd.length === 0
      ? 'What dropped is no evidence of a fault, nor of none: a player like you drops so many by luck alone, as far as so few putts can tell.'
      : `Evidence that ${odd.length === 1 ? 'one band was' : 'some bands were'} other than luck: ${odd.map(({ band }) => bandWords(band, units)).join(', ')}. Not evidence why: read, stroke, pace and the greens of the day look alike in a count.`,
    ...LEAN_KINDS.filter((kind) => check.leans[kind].share.tries > 0).map((kind) =>
      leanWords(kind, check.leans[kind]),
    ),
    otherRounds === 0
      ? 'This is your only round: "a player like you" is the benchmark player, as uncertain as players differ.'
      : `"A player like you" is your curve from your ${plural(otherRounds, 'other round')}, ${plural(own.putts, 'putt')}${own.leansOn === 'record' ? '' : ', leaning on the benchmark where they are few'}. The filters above do not change it.`,
  ];
};

export const countsTitle = (
  { band, tries, holed, byPlayer, byBenchmark }: BandCheck,
  name: string,
  units: Units,
): string =>
  tries === 0
    ? `No putts ${bandWords(band, units)}.`
    : `Chances of each number holed of ${plural(tries, 'putt')} ${bandWords(band, units)}. Bars: a player like you, expected ${expectedWords(byPlayer)}. Dots: ${benchmarkWords(name)}, expected ${expectedWords(byBenchmark)}. You holed ${holed}.`;
