/** What errors cost, in words. Data in, words out. */
import {
  type ComparedSteps,
  ENGINE_ERROR,
  type FirmerRow,
  type FirstPuttMix,
  HOLES_TO_STAND_ALONE,
  type Interval,
  type Player,
  type RoundCosts,
  type StepCost,
  type StepId,
  type TellingTest,
} from '../../sim/index.ts';
import { chanceWords, type FitFacts } from './errors.ts';
import { TEST_WORDS, turnWords } from './family.ts';
import { formatDay, formatLength, formatPercent, formatShort, formatSlope, type Units } from './format.ts';
import { bandName, capital, formatCount, plural } from './phrases.ts';

interface StepWords {
  /** In a chart and in a choice. */
  readonly name: string;
  /** What it is that costs: "your start line". */
  readonly cause: string;
  /** "a start-line spread 0.1° smaller" */
  readonly step: string;
  readonly practise: string;
}

const LINE = 'putts through a gate a foot ahead, and straight four-footers';
const PACE = 'one ball each to changing distances, scored by where it stops';
const READ = 'reads at home (Read it yourself): name the break, then see it';
const SLOPE =
  'the set “What slope is this?” (Read it yourself), and a level laid down beside your guess on the green';
const SPEED = 'three rolls both ways before you putt (Measure), your guess first';

export const STEP_WORDS: Readonly<Record<StepId, StepWords>> = {
  lineTenth: {
    name: 'Start line, 0.1° less',
    cause: 'your start line',
    step: 'a start line off by 0.1° less',
    practise: LINE,
  },
  lineHalf: {
    name: 'Start line, 0.5° less',
    cause: 'your start line',
    step: 'a start line off by half a degree less',
    practise: LINE,
  },
  lineShare: {
    name: 'Start line, 10% better',
    cause: 'your start line',
    step: 'a start line 10% better',
    practise: LINE,
  },
  lineReach: {
    name: 'Start line of a scratch player',
    cause: 'your start line',
    step: 'a scratch player’s start line',
    practise: LINE,
  },
  pacePoint: {
    name: 'Pace of the stroke, 1 point less',
    cause: 'your pace',
    step: 'a pace off by 1 point of the distance less',
    practise: PACE,
  },
  paceShare: { name: 'Pace, 10% better', cause: 'your pace', step: 'pace 10% better', practise: PACE },
  paceReach: {
    name: 'Pace of a scratch player',
    cause: 'your pace',
    step: 'a scratch player’s pace',
    practise: PACE,
  },
  readPoints: {
    name: 'Reading, 0.05% of slope and 0.5% of green speed less',
    cause: 'your reading',
    step: 'slope misread by 0.05% less and green speed by 0.5% less',
    practise: READ,
  },
  readShare: {
    name: 'Reading, 10% better',
    cause: 'your reading',
    step: 'slope and green speed misread 10% less',
    practise: READ,
  },
  slopeShare: {
    name: 'Slope misread 10% less',
    cause: 'your misreading of slope',
    step: 'slope misread 10% less',
    practise: SLOPE,
  },
  speedShare: {
    name: 'Green speed misread 10% less',
    cause: 'your misreading of green speed',
    step: 'green speed misread 10% less',
    practise: SPEED,
  },
  readReach: {
    name: 'Reading of a scratch player',
    cause: 'your reading',
    step: 'a scratch player’s reading',
    practise: READ,
  },
  readHabit: {
    name: 'Reading, no habit',
    cause: 'your habit of reading',
    step: 'reading without the habit',
    practise: READ,
  },
  paceHabit: {
    name: 'Pace, no habit',
    cause: 'your habit of pace',
    step: 'pace without the habit',
    practise: PACE,
  },
  bestPace: {
    name: 'Best pace each putt',
    cause: 'your usual pace',
    step: 'the best pace on every putt in the place of the usual one',
    practise: 'the pace the deciding screen names for a putt, before you hit it',
  },
};

const fixed = (strokes: number): string => {
  const text = Math.abs(strokes).toFixed(2);
  return `${strokes < 0 && Number(text) !== 0 ? '−' : ''}${text}`;
};

/** Ends of an interval, never nearer than what the engine itself may be off. @param share of that error, for a part of a round */
export const honest = ({ value, low, high }: Interval, share = 1): Interval => ({
  value,
  low: value === 0 && low === 0 && high === 0 ? 0 : Math.min(low, value - share * ENGINE_ERROR),
  high: value === 0 && low === 0 && high === 0 ? 0 : Math.max(high, value + share * ENGINE_ERROR),
});

/** "0.29 (0.27 to 0.31)" */
export const savedWords = (interval: Interval): string => {
  const { value, low, high } = honest(interval);
  return low === high ? fixed(value) : `${fixed(value)} (${fixed(low)} to ${fixed(high)})`;
};

/** "0.29 (0.24 to 0.33)" of a part of a round, or of one putt: the range of the players alone; without one, the value alone. */
export const partWords = (
  { value, low, high }: Interval,
  write: (value: number) => string = fixed,
): string =>
  write(low) === write(high) ? write(value) : `${write(value)} (${write(low)} to ${write(high)})`;

/** "0.24 to 0.33", for a line below the value; undefined: no range but the engine's. */
export const partRange = (
  { low, high }: Interval,
  write: (value: number) => string = fixed,
): string | undefined => (write(low) === write(high) ? undefined : `${write(low)} to ${write(high)}`);

/** "; 0.24 to 0.33" within brackets, where there is a range. */
const aside = (interval: Interval): string => {
  const range = partRange(interval);
  return range === undefined ? '' : `; ${range}`;
};

/** The cost of what saves: the same interval with its ends changed about. */
const costOf = ({ value, low, high }: Interval): Interval => ({ value: -value, low: -high, high: -low });

/** "0.29 strokes a round (0.27 to 0.31)" */
export const strokesWords = (interval: Interval): string => {
  const { value, low, high } = honest(interval);
  return `${fixed(value)} strokes a round (${fixed(low)} to ${fixed(high)})`;
};

/** One step beside the next. */
export interface Lead extends Pick<ComparedSteps, 'chance' | 'players'> {
  readonly clear: boolean;
}

/**
 * The answer.
 * @param ranked the step that saves most first
 * @param lead how it stands beside the second; clear: beyond doubt
 */
export const costHeadline = (ranked: readonly StepCost[], { clear, chance, players }: Lead): string => {
  const [first, second] = ranked;
  if (ranked.every(({ saved }) => honest(saved).low <= 0))
    return 'None of these steps clearly saves you a stroke.';
  const { cause, step } = STEP_WORDS[first.step];
  if (clear) return `${capital(cause)} costs you most: ${step} would save ${strokesWords(first.saved)}.`;
  const other = STEP_WORDS[second.step];
  // Players who differ: not alike, but not known which.
  if (players > 1)
    return `${capital(cause)} or ${other.cause} costs you most, ${cause} with a chance of ${chanceWords(chance)}: ${step} would save ${strokesWords(first.saved)}, ${other.step} ${strokesWords(second.saved)}.`;
  return `${capital(cause)} and ${other.cause} cost you about alike: ${step} would save ${strokesWords(first.saved)}, ${other.step} ${strokesWords(second.saved)}.`;
};

/** Where the first step's strokes lie, and what to practise. */
export const costDetail = (first: StepCost, { bands }: RoundCosts, units: Units): string => {
  const shares = first.byBand.map(({ value }) => value);
  const most = shares.indexOf(Math.max(...shares));
  const what = STEP_WORDS[first.step].cause.replace('your ', '');
  return `What ${what} costs lies mostly, ${partWords(first.byBand[most])} of the ${fixed(first.saved.value)}, on first putts ${mostWords(bands[most].band, units)}. To practise: ${STEP_WORDS[first.step].practise}.`;
};

const mostWords = (band: RoundCosts['bands'][number]['band'], units: Units): string => {
  const name = bandName(band, units);
  return name.startsWith('under') ? name : `from ${name}`;
};

/** Putts lost against the benchmark, from there. */
export const lostInterval = ({ putts, benchmark }: RoundCosts['bands'][number]): Interval => ({
  value: putts.value - benchmark,
  low: putts.low - benchmark,
  high: putts.high - benchmark,
});

/** Whose errors these are, and what the ranges hold. */
export const whoseWords = (fit: FitFacts | undefined, players: number): string =>
  fit === undefined && players > 1
    ? `Ranges hold 95 in 100 of ${formatCount(players)} players who hole about as much as the one chosen, from mostly stroke to mostly reading: whatever holds for all of them holds for you. What the engine itself may be off, ${ENGINE_ERROR} strokes a round, is the least they are wide.`
    : fit === undefined
      ? 'The range is what the engine itself may be off; your errors are taken as they stand. How sure you are of them is not in it.'
      : `Ranges hold 95 in 100 of ${formatCount(players)} players who would have written ${fit.source === 'demo' ? 'the invented player’s record' : 'your record'} as likely as one another: from ${plural(fit.answer.putts + fit.answer.practicePutts, 'recorded putt')}, fitted on ${formatDay(fit.day)}. What the engine itself may be off, ${ENGINE_ERROR} strokes a round, is the least they are wide.`;

/** Why the answer shown is not the one asked for. @param of players, when it is of the middle one of them; undefined: of other errors */
export const olderCostWords = (of: number | undefined, stopped: boolean): string =>
  of === undefined
    ? `Of your errors as they were before${stopped ? '.' : '; the new answer is on its way.'}`
    : `So far of the middle one of ${formatCount(of)} players you may be${stopped ? '.' : '; the others are on their way, and the ranges will widen.'}`;

/** Where putts are lost, beside a benchmark. */
export const lostWords = ({ putts, bands }: RoundCosts, name: string, units: Units): string => {
  const lost = bands.map(lostInterval);
  const taken = bands.reduce((sum, { benchmark }) => sum + benchmark, 0);
  const all = { value: putts.value - taken, low: putts.low - taken, high: putts.high - taken };
  const most = lost.reduce((best, one, i) => (one.value > lost[best].value ? i : best), 0);
  const total = `${partWords(putts, (value) => value.toFixed(1))} putts on 18 holes`;
  // With one player there is no range: what is less than the engine can tell is nothing.
  const might = Math.max(...lost.map(({ high }) => high)) >= ENGINE_ERROR;
  if (lost[most].value < ENGINE_ERROR || lost[most].low <= 0)
    return `${capital(total)}: nowhere ${might ? 'clearly ' : ''}more than ${name} takes from there${might ? `; if anywhere, ${mostWords(bands[most].band, units)}: ${partWords(lost[most])}` : ''}.`;
  return `${capital(total)}, ${partWords(all)} ${all.value < 0 ? '(fewer)' : 'more'} than ${name} takes from there; most is lost ${mostWords(bands[most].band, units)}: ${partWords(lost[most])}.`;
};

/** Where the first putts come from. @param invented the record shown is the invented player's */
export const mixWords = ({ holes, own }: FirstPuttMix, invented: boolean): string => {
  const whose = invented ? 'the invented player’s' : 'your own';
  if (own === 0)
    return 'First putts: a stated mix for a single-digit golfer (common practice, no source), because no hole is recorded yet.';
  if (own < 1)
    return `First putts: ${whose} from ${plural(holes, 'hole')} make ${formatPercent(own, 0)} of the mix; a stated mix (common practice, no source) the rest, until ${HOLES_TO_STAND_ALONE} holes are recorded.`;
  return `First putts: ${whose}, from ${plural(holes, 'hole')}.`;
};

/** "Would 10% better pace save more than half a degree of line?" */
export const comparedWords = (
  { first, second, more, chance, players }: ComparedSteps,
  clear: boolean,
): string => {
  const one = STEP_WORDS[first].step;
  const other = STEP_WORDS[second].step;
  if (first === second) return `${capital(one)} is both: choose two different steps.`;
  const { value, low, high } = honest(more);
  const size = `${fixed(Math.abs(value))} strokes a round`;
  const ends = value < 0 ? [-high, -low] : [low, high];
  const margin = `${fixed(ends[0])} to ${fixed(ends[1])}`;
  const sure = players > 1 ? `, with a chance of ${chanceWords(value < 0 ? 1 - chance : chance)}` : '';
  if (!clear) return `Cannot tell: ${one} and ${other} differ by ${size} (${margin})${sure}.`;
  return `${value < 0 ? 'No' : 'Yes'}: ${one} saves ${size} ${value < 0 ? 'less' : 'more'} than ${other} (${margin})${sure}.`;
};

const PLACE_WORDS = {
  uphill: 'uphill',
  sidehill: 'sidehill',
  downhill: 'downhill',
  any: 'all round',
} as const;

const cellWords = ({ length, slope, direction }: FirmerRow, units: Units): string =>
  `${formatLength(length, units)} ${PLACE_WORDS[direction]} on ${formatSlope(slope)}`;

/** Direction by direction: up to which length firm gains, on what slopes. */
const gainWords = (rows: readonly FirmerRow[], units: Units): string[] =>
  (['uphill', 'sidehill', 'downhill'] as const).flatMap((direction) => {
    const gains = rows.filter((row) => row.direction === direction && row.verdict === 'gains');
    if (gains.length === 0) return [];
    const slopes = [...new Set(gains.map(({ slope }) => slope))].sort((a, b) => a - b);
    const lengths = gains.map(({ length }) => length);
    const near = Math.min(...lengths);
    const far = Math.max(...lengths);
    const reach =
      near === far
        ? `from ${formatLength(near, units)}`
        : `from ${formatLength(near, units)} to ${formatLength(far, units)}`;
    const { firm } = gains.reduce((best, row) => (row.firm.value > best.firm.value ? row : best));
    return [
      `${direction} ${reach} on ${slopes.map(formatSlope).join(' and ')} (up to ${fixed(firm.value)} putts${aside(firm)})`,
    ];
  });

/** "Hit them firmer and play less break": the answer for this player. */
export const firmerWords = (all: readonly FirmerRow[], units: Units): string => {
  const rows = all.filter(({ direction }) => direction !== 'any');
  if (rows.length === 0) return 'These greens are too steep for their speed: nothing to say.';
  const { usual, firm } = rows[0].paces;
  const paces = `${formatShort(firm.pace, units)} past in the place of ${formatShort(usual.pace, units)}`;
  const byGain = [...rows].sort((a, b) => a.firm.value - b.firm.value);
  const worst = byGain[0];
  const mildest = byGain[byGain.length - 1];
  const gains = gainWords(rows, units);
  const cost = `it costs most from ${cellWords(worst, units)}: ${partWords(costOf(worst.firm))} putts`;
  if (gains.length > 0) return `Firmer (${paces}) holds for you ${gains.join('; ')}. Elsewhere ${cost}.`;
  if (mildest.verdict === 'costs')
    return `Firmer (${paces}) holds for you nowhere here: it costs from ${fixed(-mildest.firm.value)} putts (${cellWords(mildest, units)}${aside(costOf(mildest.firm))}) to ${fixed(-worst.firm.value)} (${cellWords(worst, units)}${aside(costOf(worst.firm))}).`;
  return `Firmer (${paces}) clearly holds for you nowhere here; ${cost}.`;
};

/** Where firm gains for some of those one may be and costs others; undefined: nowhere here. */
export const turnsWords = (
  all: readonly FirmerRow[],
  units: Units,
): { readonly words: string; readonly test: TellingTest } | undefined => {
  const rows = all.filter(({ direction, on }) => direction !== 'any' && on !== undefined);
  if (rows.length === 0) return undefined;
  const widest = rows.reduce((most, row) =>
    row.firm.high - row.firm.low > most.firm.high - most.firm.low ? row : most,
  );
  if (widest.on === undefined) return undefined;
  return {
    words: `From ${cellWords(widest, units)} it turns on your errors: ${turnWords(widest.on, 'your usual pace')}; ${TEST_WORDS[widest.on.test].words}.`,
    test: widest.on.test,
  };
};

/** And the other way: dying it in. */
export const dieWords = (all: readonly FirmerRow[], units: Units): string => {
  const rows = all.filter(({ direction }) => direction !== 'any');
  if (rows.length === 0) return '';
  const byGain = [...rows].sort((a, b) => b.die.value - a.die.value);
  const best = byGain[0];
  const worst = byGain[byGain.length - 1];
  const pace = formatShort(best.paces.die.pace, units);
  const gain =
    best.die.low > 0
      ? `gains most from ${cellWords(best, units)}: ${partWords(best.die)} putts`
      : 'gains nowhere here';
  return `Dying it in (${pace}) ${gain}${worst.die.high < 0 ? `; it costs most from ${cellWords(worst, units)}: ${partWords(costOf(worst.die))}` : ''}.`;
};

/** "63% · 0.2% · 1.32": holed, three putts, putts. */
export const paceCell = ({ holed, threePutt, expectedPutts }: FirmerRow['paces']['die']): string =>
  `${formatPercent(holed, 0)} · ${formatPercent(threePutt, threePutt < 0.0995 ? 1 : 0)} · ${expectedPutts.toFixed(2)}`;

export const FIRMER_VERDICTS: Readonly<Record<FirmerRow['verdict'], string>> = {
  gains: 'firm gains',
  costs: 'firm costs',
  same: 'no difference',
  cannotTell: 'cannot tell',
};

/** Putts firm saves: "+0.03" or "−0.05". */
export const firmerSaves = (value: number): string =>
  `${value > 0 && fixed(value) !== '0.00' ? '+' : ''}${fixed(value)}`;

/** What would change the answer. */
export const changeWords = (
  { own }: FirstPuttMix,
  { readBias, paceBias }: Player,
  usual: number,
  units: Units,
  whose: 'fit' | 'family' | 'one',
): readonly string[] => [
  whose === 'fit'
    ? 'More recorded putts: they narrow what is thought of your errors, and these ranges with it.'
    : whose === 'family'
      ? 'Knowing which of these players you are: balls through a gate, balls to a target and slopes named (Measure, Read it yourself), or putts recorded with direction.'
      : 'Your errors: they are taken as they stand below. A spread set a fifth too large makes its own step look larger, too.',
  ...(readBias === 0 && paceBias === 0
    ? ['A habit of reading or of pace: none is set, so that taking one away saves nothing.']
    : ['Habits count on first putts only: on later ones you are taken to know them and to allow for them.']),
  `Your usual pace, ${formatShort(usual, units)} past, and faster greens.`,
  own < 1
    ? 'Your own first putts: more long ones make pace count more, more short ones line and read.'
    : 'Other first putts than those recorded: more long ones make pace count more.',
];
