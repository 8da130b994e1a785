/**
 * A player's errors from their record, in words: the answer, one sentence for each error, what the record cannot tell apart, what was
 * counted. Data in, words out. Leaves out: the fit itself (sim/evidence/fit), what errors cost (costs.ts).
 */
import type {
  ErrorName,
  ErrorPair,
  ErrorRange,
  FittedError,
  FittedReadBias,
  Tap,
  TapGain,
} from '../../sim/index.ts';
import { formatDay, formatPercent, formatShort, type Units } from './format.ts';
import { capital, plural } from './phrases.ts';
import {
  EXAMPLE_FAR,
  EXAMPLE_WORDS,
  errorNumber,
  errorWords,
  ERROR_IN_SENTENCE as IN_SENTENCE,
  sideOfError,
  slopeInBreak,
  speedInFeet,
} from './player.ts';

/** Fewer putts than this say little of most errors (ours). */
export const FEW_PUTTS = 20;

/** "1.09 to 1.35°", "2 to 13% too little", "4% too little to 6% too much": the smaller end first where both lie on one side. */
export const errorRangeWords = (name: ErrorName, { low, high }: ErrorRange): string => {
  const [first, last] = high <= 0 ? [high, low] : [low, high];
  const [one, other] = [sideOfError(name, first), sideOfError(name, last)];
  if (one !== other && one !== '') return `${errorWords(name, first)} to ${errorWords(name, last)}`;
  return `${errorNumber(name, first)} to ${errorWords(name, last)}`;
};

/** "97%", never "100%" or "0%". */
export const chanceWords = (chance: number): string => {
  if (chance > 0.995) return 'over 99%';
  return chance < 0.005 ? 'under 1%' : formatPercent(chance, 0);
};

export interface AnswerFacts {
  readonly readBias: FittedReadBias;
  readonly error: FittedError;
  /** Putts that count, practice putts too. */
  readonly putts: number;
  readonly invented: boolean;
}

/** The answer: too little break, too much, or that the record does not tell. */
export const errorsHeadline = ({ readBias, error, putts, invented }: AnswerFacts): string => {
  const who = invented ? 'The invented player reads' : 'You read';
  const { tooLittle, tooMuch, verdict } = readBias;
  const range = errorRangeWords('readBias', error.range90);
  if (putts < FEW_PUTTS)
    return `${capital(plural(putts, 'putt'))} cannot tell what ${invented ? 'their' : 'your'} errors are: most of what stands here was thought beforehand.`;
  if (verdict === 'cannotTell')
    return `This record does not tell whether ${invented ? 'the invented player reads' : 'you read'} too little break or too much: the chance of too little is ${chanceWords(tooLittle)}, and all slopes seen from ${range} are possible.`;
  const [side, chance] = verdict === 'tooLittle' ? ['little', tooLittle] : ['much', tooMuch];
  return `${who} too ${side} break: chance ${chanceWords(chance)}, about ${errorWords('readBias', error.median).replace(/ too .*/, '')} of the slope too ${side} (${range.replace(/ too \w+$/, '')}).`;
};

/** Under a first answer from a part of a long record. @param goesOn the whole is being looked at */
export const firstLookWords = (putts: number, all: number, goesOn: boolean): string =>
  `A first look, at ${putts} of ${all} putts all through the record: the ranges are as wide as so few leave them.${
    goesOn ? ' The answer from all of them is on its way.' : ''
  }`;

/** What would change the answer, and one thing to practise. */
export const errorsDetail = (
  { readBias, putts }: Pick<AnswerFacts, 'readBias' | 'putts'>,
  tap: TapGain | undefined,
): string => {
  const change =
    putts < FEW_PUTTS
      ? 'What would change it: some sixty putts, with break, side and leave tapped.'
      : `What would change it: more putts that break${tap ? `, and ${TAP_WORDS[tap.tap]} tapped on each` : ''}.`;
  const practise =
    readBias.verdict === 'cannotTell'
      ? 'To practise: reads at home (Read it yourself), which ask the eye alone, without the stroke.'
      : `To practise: reads at home (Read it yourself): name the break, see it, and play ${readBias.verdict === 'tooLittle' ? 'more' : 'less'} of it.`;
  return `${change} ${practise}`;
};

/** How much of what is thought is the record's: bounds are ours, on the share of the doubt it took away. */
export const toldWords = ({ told }: Pick<FittedError, 'told'>): string => {
  if (told < 0.15) return 'nothing yet';
  if (told < 0.5) return 'a little';
  return told < 0.8 ? 'a good part' : 'nearly all';
};
const TOLD: Readonly<Record<string, (what: string) => string>> = {
  'nothing yet': (what) => `The record says nothing yet of the ${what}.`,
  'a little': (what) => `The record says only a little of the ${what} so far.`,
  'a good part': () => 'A good part of that is from the record.',
  'nearly all': () => 'Nearly all of that is from the record.',
};

const meaning = (name: ErrorName, { median, range90 }: FittedError, units: Units): string => {
  const far = EXAMPLE_FAR[units];
  const at = EXAMPLE_WORDS[units];
  const either = range90.low < 0 && range90.high > 0;
  switch (name) {
    case 'lineSd':
      return `Two putts in three start within ${errorWords(name, median)} of the aim, ${formatShort(far * Math.tan(median), units)} at ${at}.`;
    case 'paceSd':
      return `Two strokes in three roll within ${errorWords(name, median)} of the distance meant, ${formatShort(far * median, units)} on ${at}.`;
    case 'slopeSd':
      return `Two times in three the slope is seen within ${errorWords(name, median)} of what it is, ${slopeInBreak(median, units)}; that misleads straight putts too, and downhill ones most.`;
    case 'speedSd':
      return `Two times in three the green speed is taken within ${errorWords(name, median)} of what it is, ${speedInFeet(median)}.`;
    case 'paceBias':
      return either
        ? `Whether putts are hit short of what is meant or past it is open: ${errorRangeWords(name, range90)}.`
        : `Putts roll ${errorWords(name, median).replace(/ (short|long)$/, '')} ${median < 0 ? 'less' : 'more'} far than meant, ${formatShort(far * Math.abs(median), units)} on ${at}.`;
    case 'readBias':
      return either
        ? `Whether slopes are seen too gentle or too steep is open: ${errorRangeWords(name, range90)}.`
        : `Slopes are seen ${errorWords(name, median).replace(/ too .*/, '')} too ${median < 0 ? 'gentle' : 'steep'}: on a break of ${formatShort(far / 6, units)} about ${formatShort((far / 6) * Math.abs(median), units)} too ${median < 0 ? 'little' : 'much'} is played.`;
  }
};

/** In the place of a habit that cannot be told from the pace meant, as long as nobody has said that. */
export const rolledPastWords = ({ median, range90 }: FittedError, units: Units): string => {
  const of = (past: number): string =>
    `${formatShort(Math.abs(past), units)} ${past < 0 ? 'short of' : 'past'} the hole`;
  return `What pace was meant is not said, so no habit can be told from it: a middling ball from 10 ft on the level would roll ${of(median)} (${of(range90.low)} to ${of(range90.high)}). “Pace meant” tapped on half of the putts would part the two.`;
};

type Errors = Readonly<Record<ErrorName, FittedError>>;

/** One sentence for all where the record has told nearly all of each; undefined: each has its own. */
export const allToldWords = (errors: Errors): string | undefined =>
  Object.values(errors).every((error) => toldWords(error) === 'nearly all')
    ? 'Nearly all of each is from the record, next to nothing from beforehand.'
    : undefined;

/** What an error means on the green, and how much of it the record has told. */
export const errorSentence = (name: ErrorName, errors: Errors, units: Units): string => {
  const error = errors[name];
  const told = allToldWords(errors) === undefined ? ` ${TOLD[toldWords(error)](IN_SENTENCE[name])}` : '';
  return `${meaning(name, error, units)}${told}`;
};

export const ROUGH_WORDS =
  'The ends of these ranges are rough: this record bends what is thought too much for the few draws that count.';

/** As the recording form calls them, in a sentence. */
export const TAP_WORDS: Readonly<Record<Tap, string>> = {
  startedAsMeant: '“Started as meant?”',
  paceAsMeant: '“Pace as meant?”',
  slopeFelt: '“The slope”',
  climb: '“Up or down?”',
  breaks: 'which way it breaks',
  paceMeant: '“Pace meant”',
  side: 'the side on which a miss passed the hole',
};

/** Shares of a margin: "35%". */
const narrower = (left: number): string => formatPercent(Math.max(0, 1 - left), 0);

/** Two errors that explain one another away. */
export const pairWords = ({ errors: [one, other], correlation, tap, area }: ErrorPair): string => {
  const trade =
    correlation < 0
      ? `more ${IN_SENTENCE[one]} and less ${IN_SENTENCE[other]} would explain this record as well`
      : `${IN_SENTENCE[one]} and ${IN_SENTENCE[other]} go up and down together in what would explain this record as well`;
  const help =
    tap === undefined
      ? 'no tap of the form would narrow the two by a tenth, only more putts'
      : `${TAP_WORDS[tap]} on every putt would part them best, and leave ${narrower(area)} less open between the two`;
  return `${capital(trade)}: ${help}.`;
};
export const NO_PAIRS =
  'No two errors explain one another away here: none hang together by more than a half (a correlation of 0.5).';

/** Simulated (sim/MODEL.md, section 5): 200 balls beside 120 putts. */
export const GATES_WORDS =
  'Better than any tap: balls through a gate at home show the start line alone, balls rolled to a target on known ground the pace of the stroke; what is left is the read. In a simulated record of 120 putts, two hundred of them halved what was open about the read.';

/** A tap that narrows no error by so much is not spoken of (ours). */
const NOTICED = 0.05;

/** The tap that narrows some error most; undefined: none by NOTICED. */
export const bestTap = (taps: readonly TapGain[]): TapGain | undefined => {
  const least = ({ spread }: TapGain): number => Math.min(...Object.values(spread));
  const [best] = [...taps].sort((one, other) => least(one) - least(other));
  return best !== undefined && least(best) <= 1 - NOTICED ? best : undefined;
};

/** "“Started as meant?” on the 478 putts without it would have made …". */
export const tapWords = (gain: TapGain | undefined): string => {
  if (gain === undefined) return 'No tap left out would have narrowed any of the six by a twentieth.';
  const named = Object.entries(gain.spread)
    .filter(([, left]) => left <= 1 - NOTICED)
    .sort(([, one], [, other]) => one - other)
    .map(([name, left]) => `the ${IN_SENTENCE[name as ErrorName]} by ${narrower(left)}`);
  return `${capital(TAP_WORDS[gain.tap])}, on the ${plural(gain.putts, 'putt')} without it, would have narrowed ${named.join(', ')}.`;
};

/** "+14%" narrower, or a dash. */
export const narrowedCell = (left: number): string => (left > 0.995 ? '–' : narrower(left));

export interface CountedFacts {
  readonly putts: number;
  readonly practicePutts: number;
  readonly sets: number;
  /** Balls rolled through gates and to targets. */
  readonly measuredStrokes: number;
  readonly conceded: number;
  readonly offGreen: number;
  readonly tooNearOrFar: number;
}

export const countedWords = ({ putts, practicePutts, sets, measuredStrokes }: CountedFacts): string => {
  const parts = [
    `${plural(putts, 'putt')} of rounds`,
    ...(practicePutts > 0 ? [`${plural(practicePutts, 'practice putt')} in ${plural(sets, 'set')}`] : []),
    ...(measuredStrokes > 0
      ? [`${plural(measuredStrokes, 'ball')} rolled through gates and to targets`]
      : []),
  ];
  return `Counted: ${parts.join(parts.length === 2 ? ' and ' : ', ')}.`;
};

export const passedOverWords = ({ conceded, offGreen, tooNearOrFar }: CountedFacts): string | undefined => {
  const parts = [
    ...(conceded > 0 ? [`${plural(conceded, 'conceded putt')}`] : []),
    ...(offGreen > 0 ? [`${offGreen} from off the green`] : []),
    ...(tooNearOrFar > 0 ? [`${tooNearOrFar} nearer than 15 cm (6 in) or farther than 30 m (98 ft)`] : []),
  ];
  return parts.length === 0 ? undefined : `Passed over: ${parts.join(', ')}.`;
};

/** What stands behind every number, in short. */
export const ASSUMED: readonly string[] = [
  'Beforehand, before the first putt: about a player of handicap 6, each spread nine times in ten between half of theirs and twice as much; habits to either side. The grey ranges are that.',
  'Ground that was not written down is averaged over: slopes of 0.5 to 3% from all round the hole, club greens. Practice on carpet counts as level.',
  'A side is where a miss passed the hole. Whoever taps the side on which it finished is taken for one who plays too little break.',
];

/** "Fitted on 26 Nov 2026 to 312 putts." */
export const fittedWords = (day: string, putts: number): string =>
  `Fitted on ${formatDay(day)} to ${plural(putts, 'putt')}.`;

/** What has come since a fit, if anything. @param more counts now less counts then */
export const grownWords = (more: { readonly putts: number; readonly sets: number }): string | undefined => {
  const { putts, sets } = more;
  if (putts === 0 && sets === 0) return undefined;
  if (putts < 0 || sets < 0) return 'The record has changed since: “Your errors” fits it again.';
  const what = [
    ...(putts > 0 ? [plural(putts, 'putt')] : []),
    ...(sets > 0 ? [plural(sets, 'practice set')] : []),
  ];
  return `Recorded since: ${what.join(' and ')}. “Your errors” fits them too.`;
};

/** What names of a fit need to know. */
export interface FitFacts {
  readonly source: 'own' | 'demo';
  readonly day: string;
  readonly answer: { readonly putts: number; readonly practicePutts: number };
}

/** In a list of players to start from. */
export const fitName = ({ source, day, answer: { putts, practicePutts } }: FitFacts): string =>
  source === 'demo'
    ? 'The invented player, from their record'
    : `You, from your record (${plural(putts + practicePutts, 'putt')}, ${formatDay(day)})`;

export const fitHint = ({ source, day, answer: { putts, practicePutts } }: FitFacts): string =>
  `${source === 'demo' ? 'An invented player’s errors, not yours. ' : ''}${fittedWords(day, putts + practicePutts)} The middle of what is thought; “Your errors” has the ranges.`;
