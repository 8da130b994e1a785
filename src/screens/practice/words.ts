/**
 * Sentences of the practice screen: what score to expect, what a pass proves and does not, what scores say. Data in, words out. Leaves
 * out: a drill's own words (drills.ts), figures (sim/training).
 */
import {
  type DrillExpectation,
  MARK_CHANCE,
  metresToFeet,
  type PuttingDrill,
  type ScoreChange,
  type ScoresJudged,
  TOLD_APART,
  TRAINING_STEP,
  type Trained,
} from '../../../sim/index.ts';
import { scoreWords } from '../../text/drills.ts';
import { formatPercent } from '../../text/format.ts';
import { formatPoints, formatSigned, plural, signedRange } from '../../text/phrases.ts';

export const TRAINED_WORDS: Readonly<Record<Trained, string>> = {
  line: 'start line',
  pace: 'pace',
  read: 'read',
  mixed: 'all three',
};

export const DRILL_GROUND_WORDS: Readonly<Record<PuttingDrill['ground'], string>> = {
  grass: 'grass',
  carpet: 'carpet',
  both: 'grass or carpet',
};

const LESS = formatPercent(TRAINING_STEP, 0);

/** A step smaller of all that is trained, in words. */
const STEP_WORDS: Readonly<Record<Trained, string>> = {
  line: `a start line ${LESS} steadier`,
  pace: `a pace ${LESS} steadier`,
  read: `slope and green speed misread ${LESS} less`,
  mixed: `all of it ${LESS} better`,
};

const orBetter = ({ better }: Pick<DrillExpectation, 'better'>): string =>
  better === 'higher' ? 'or more' : 'or fewer';

/** A mean of scores: to a tenth, "11" when that is none. */
export const formatScore = (score: number): string => score.toFixed(1).replace(/\.0$/, '');

/** "Expect about 10.9 (balls through the gate, of 20): from 8 to 14 in at least eight tries out of ten." */
export const expectedSentence = (drill: PuttingDrill, { mean, low, high }: DrillExpectation): string =>
  `Expect about ${formatScore(mean)} (${scoreWords(drill)}): from ${low} to ${high} in at least eight tries out of ten.`;

/** The mark with both chances. */
export const markSentence = (drill: PuttingDrill, expected: DrillExpectation): string => {
  const { score, chanceNow, chanceBetter } = expected.mark;
  return `Pass mark: ${score} ${orBetter(expected)}. As you are you reach it in ${formatPercent(chanceNow)} of tries, with ${STEP_WORDS[drill.trains]} in ${formatPercent(chanceBetter)}.`;
};

export const PROVES_NOTHING =
  'So a pass does not prove that you have improved, nor a failure that you have not: you as you are pass now and then too.';

/** How often the drill must be repeated before its total tells a step. */
export const repetitionsSentence = (expected: DrillExpectation): string => {
  const { count, total } = expected.repetitions;
  if (!Number.isFinite(count))
    return 'No number of repetitions would tell such a step: this score does not follow it.';
  if (total === undefined) return `About ${plural(count, 'repetition')} would tell such a step from chance.`;
  return `${plural(count, 'repetition')} would tell such a step: ${total} ${orBetter(expected)} in all is reached at most ${formatPercent(MARK_CHANCE)} of the time as you are, and at least ${formatPercent(TOLD_APART)} with it.`;
};

const chances = ({ chanceAsGood, chanceAsBad }: ScoresJudged): string =>
  `as good or better ${formatPercent(chanceAsGood)} of the time, as bad or worse ${formatPercent(chanceAsBad)}`;

/** Whether the errors reckoned with explain the scores. */
export const judgedWords = (judged: ScoresJudged): string => {
  const { passed, passesExpected, verdict } = judged;
  const passes = `${plural(passed.length, 'score')} on this ground, ${passed.filter(Boolean).length} of them passed, ${formatScore(passesExpected)} to be expected.`;
  switch (verdict) {
    case 'oneScore':
      return `One score alone tells nothing: as you are it would be ${chances(judged)}.`;
    case 'asExpected':
      return `${passes} Chance explains them: as you are their total would be ${chances(judged)}.`;
    case 'betterThanExpected':
      return `${passes} Better than chance explains: as you are their total would be so good ${formatPercent(judged.chanceAsGood)} of the time. Your errors may be smaller than those below, or the ground easier.`;
    case 'worseThanExpected':
      return `${passes} Worse than chance explains: as you are their total would be so bad ${formatPercent(judged.chanceAsBad)} of the time. Your errors may be larger than those below, or the ground harder.`;
  }
};

/** What is still missing before a step could be told; empty when nothing is, or nothing would help. */
export const missingWords = ({ repetitionsMissing }: ScoresJudged): string =>
  repetitionsMissing > 0 && Number.isFinite(repetitionsMissing)
    ? `${plural(repetitionsMissing, 'more repetition')} before a step could be told from chance.`
    : '';

/** Differences of green speed that are worth a word, m: half a foot. */
const NOTED_SPEED = 0.15;

const VERDICTS: Readonly<Record<ScoreChange['verdict'], string>> = {
  better: 'better than chance explains',
  worse: 'worse than chance explains',
  cannotTell: 'chance alone could have made it',
};

/** Test against retest, in sentences. */
export const changeSentences = (
  { unit, value, low, high, verdict, smallestChange, greenSpeedChange }: ScoreChange,
  { before, after }: { readonly before: number; readonly after: number },
): string[] => {
  const write = unit === 'share' ? formatPoints : (change: number) => formatSigned(change, 1);
  const what = unit === 'share' ? 'strokes in 100' : 'a score';
  const range =
    Number.isFinite(low) && Number.isFinite(high)
      ? `95% range ${signedRange(low, high, write)}`
      : 'no margin from so few scores';
  return [
    `From test (${plural(before, 'score')}) to retest (${plural(after, 'score')}): ${write(value)} ${what} (${range}): ${VERDICTS[verdict]}.`,
    ...(Number.isFinite(smallestChange)
      ? [
          `So many scores would find a true change of ${write(smallestChange).replace('+', '')} ${what} four times in five, a smaller one less often.`,
        ]
      : []),
    ...(greenSpeedChange !== undefined && Math.abs(greenSpeedChange) >= NOTED_SPEED
      ? [
          `The ground was ${metresToFeet(Math.abs(greenSpeedChange)).toFixed(1)} ft ${greenSpeedChange > 0 ? 'faster' : 'slower'} at the retest: that is part of the change.`,
        ]
      : []),
  ];
};
