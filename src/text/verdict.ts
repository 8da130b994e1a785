/**
 * The sentence that answers "die or firm here, and what is it worth", and the sentence with its margin. Data in, words
 * out: no statistics here.
 */
import type { Odds } from '../../sim/index.ts';
import type { SensitivityCase } from '../worker/messages.ts';
import {
  formatGreenSpeed,
  formatLeave,
  formatPercent,
  formatPutts,
  formatShort,
  formatSlope,
  type Units,
} from './format.ts';

/** Putts. Below this neither pace is worth choosing: one putt in 200, what 0.2 points of holed and 0.3 of three putts make. */
export const WORTH_HAVING = 0.005;

export type Choice = 'die' | 'firm' | 'neither';

/** @param difference expected putts firm minus die */
export const choiceOf = (difference: number): Choice =>
  Math.abs(difference) < WORTH_HAVING ? 'neither' : difference > 0 ? 'die' : 'firm';

/** Which pace takes fewer putts and by how many: "die 0.04", "no difference". @param difference expected putts firm minus die */
export const formatWorth = (difference: number): string => {
  const choice = choiceOf(difference);
  return choice === 'neither'
    ? 'no difference'
    : `${choice} ${formatPutts(Math.max(Math.abs(difference), 0.01))}`;
};

export const verdictHeadline = (die: Odds, firm: Odds): string => {
  const difference = firm.expectedPutts - die.expectedPutts;
  const size = formatPutts(Math.max(Math.abs(difference), 0.01));
  switch (choiceOf(difference)) {
    case 'die':
      return `Die it in here: ${size} putts better than firm.`;
    case 'firm':
      return `Firm it in here: ${size} putts better than dying it in.`;
    case 'neither':
      return 'Die or firm: no difference worth having here.';
  }
};

const compareHoled = (die: number, firm: number): string => {
  const shares = `${formatPercent(die, 0)} and ${formatPercent(firm, 0)}`;
  if (Math.abs(die - firm) < 0.015) return `the two hole about as often (${shares})`;
  return die > firm
    ? `dying it in holes more (${shares})`
    : `firm holes more (${formatPercent(firm, 0)} against ${formatPercent(die, 0)})`;
};

/** What the two words mean, above the answer. @param die @param firm paces, m past the hole */
export const verdictQuestion = (die: number, firm: number, units: Units): string =>
  `Die it in (stop ${formatShort(die, units)} past, if it misses) or firm (${formatShort(firm, units)} past)?`;

/** The figures behind the headline. @param best the pace with fewest expected putts, m past, where it is known */
export const verdictDetail = (
  die: Odds,
  firm: Odds,
  units: Units,
  best?: { readonly pace: number; readonly odds: Odds | undefined },
): string => {
  const leaves = `a typical miss is left ${formatLeave(die.leaveMedian, units)} away dying it in, ${formatLeave(firm.leaveMedian, units)} firm`;
  const three = `three putts follow ${formatPercent(die.threePutt)} and ${formatPercent(firm.threePutt)} of the time`;
  const fewest = best?.odds
    ? ` Fewest putts: ${formatPutts(best.odds.expectedPutts)}, stopping ${formatShort(best.pace, units)} past.`
    : '';
  return `With these errors ${compareHoled(die.holed, firm.holed)}; ${leaves}; ${three}.${fewest}`;
};

/** Why there is no verdict, when a pace has no line. */
export const verdictMissing = (dieReason: string | undefined, firmReason: string | undefined): string =>
  dieReason && firmReason
    ? 'Neither pace has a line to this hole.'
    : dieReason
      ? 'Only the firm putt has a line here.'
      : 'Only the dying putt has a line here.';

/** The conditions in words. @param speed green speed, m @param slope of a plane; undefined on a relief green */
export const caseWords = (
  speed: number,
  slope: number | undefined,
): Record<SensitivityCase['name'], string> => ({
  slower: `at green speed ${formatGreenSpeed(speed - 0.3048)}`,
  faster: `at green speed ${formatGreenSpeed(speed + 0.3048)}`,
  gentler:
    slope === undefined
      ? 'half a percent flatter'
      : slope >= 0.005
        ? `at ${formatSlope(slope - 0.005)} slope`
        : `at ${formatSlope(0.005 - slope)} slope the other way`,
  steeper: slope === undefined ? 'half a percent steeper' : `at ${formatSlope(slope + 0.005)} slope`,
});

/** The same, short enough for the first column of a table on a telephone. */
export const caseLabels = (
  speed: number,
  slope: number | undefined,
): Record<SensitivityCase['name'], string> => ({
  slower: `speed ${formatGreenSpeed(speed - 0.3048)}`,
  faster: `speed ${formatGreenSpeed(speed + 0.3048)}`,
  gentler: slope === undefined || slope < 0.005 ? '½% flatter' : `slope ${formatSlope(slope - 0.005)}`,
  steeper: slope === undefined ? '½% steeper' : `slope ${formatSlope(slope + 0.005)}`,
});

const CHOICE_WORDS: Record<Choice, string> = {
  die: 'die it in',
  firm: 'firm',
  neither: 'no difference',
};

export interface MarginInput {
  /** Expected putts firm minus die as asked. */
  readonly difference: number;
  readonly cases: readonly SensitivityCase[];
  /** Green speed, m. */
  readonly greenSpeed: number;
  /** Slope of a plane; undefined on a relief green. */
  readonly slope: number | undefined;
}

/** Whether a foot of green speed or half a percent of slope changes the answer, and the range of the gain. */
export const verdictMargin = ({ difference, cases, greenSpeed, slope }: MarginInput): string => {
  const words = caseWords(greenSpeed, slope);
  const choice = choiceOf(difference);
  const known = cases.filter(
    (one): one is SensitivityCase & { difference: number } => one.difference !== undefined,
  );
  const lost = cases.filter((one) => one.difference === undefined);
  const changed = known.filter((one) => choiceOf(one.difference) !== choice);
  const values = [difference, ...known.map((one) => one.difference)];
  // The range is told as a gain of the pace that was chosen; with no choice, as die over firm.
  const sign = choice === 'firm' ? -1 : 1;
  const low = Math.min(...values.map((value) => sign * value));
  const high = Math.max(...values.map((value) => sign * value));
  const signed = (value: number): string =>
    `${value > 0.005 ? '+' : ''}${formatPutts(value).replace('-', '−')}`;
  const range = `${choice === 'firm' ? 'firm over die' : 'die over firm'} ${signed(low)} to ${signed(high)} putts`;
  const noLine =
    lost.length > 0 ? ` No line for one of the paces ${lost.map((one) => words[one.name]).join(', ')}.` : '';
  if (changed.length === 0)
    return `Holds for a foot of green speed and half a percent of slope either way (${range}).${noLine}`;
  const turns = changed.map((one) => `${words[one.name]}: ${CHOICE_WORDS[choiceOf(one.difference)]}`);
  return `The answer changes ${turns.join('; ')} (${range}).${noLine}`;
};
