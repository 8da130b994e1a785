/**
 * What scores of a drill say beside the expectation: passed or not, and whether chance explains them.
 *
 * Answers for: passes, the chance of a total so good and so bad by the player as he was reckoned, and a verdict. Leaves out: change over time
 * (compare-scores.ts). A pass alone is never called improvement: the player as he is passes about three times in ten.
 */
import type { DrillExpectation } from './drill-score.ts';
import { chanceAsGood } from './pass-mark.ts';
import { times } from './tally.ts';

/** Under this chance, both tails together, the errors reckoned with do not explain the scores (ours, as in the round check). */
const BEYOND_CHANCE = 0.01;

/** oneScore: nothing can be said of one; asExpected: chance explains them; the others: it does not. */
export type ScoresVerdict = 'oneScore' | 'asExpected' | 'betterThanExpected' | 'worseThanExpected';

export interface ScoresJudged {
  readonly passed: readonly boolean[];
  /** Passes to expect of the player as he is, so many scores. */
  readonly passesExpected: number;
  /** Chance of a total as good as this or better by the player as he is, 0..1. */
  readonly chanceAsGood: number;
  /** The same as bad or worse. */
  readonly chanceAsBad: number;
  readonly verdict: ScoresVerdict;
  /** Repetitions still missing before a step of the trained error could be told from chance; 0: enough. */
  readonly repetitionsMissing: number;
}

/**
 * @param scores whole, each from the same drill, version and ground as the expectation
 * @throws RangeError without scores, or for one that the drill cannot give
 */
export function judgeScores(scores: readonly number[], expected: DrillExpectation): ScoresJudged {
  const { chances, mark, repetitions, better } = expected;
  const impossible = scores.find((score) => !Number.isInteger(score) || !(score in chances));
  if (scores.length === 0 || impossible !== undefined)
    throw new RangeError(
      `Got ${impossible === undefined ? 'no scores' : `a score of ${impossible}`}; expected whole scores from 0 to ${chances.length - 1}. Check the score that was entered.`,
    );
  const total = scores.reduce((sum, score) => sum + score, 0);
  const all = times(chances, scores.length);
  const asGood = chanceAsGood(all, total, better);
  const asBad = chanceAsGood(all, total, better === 'higher' ? 'lower' : 'higher');
  const beyond = 2 * Math.min(asGood, asBad) < BEYOND_CHANCE;
  return {
    passed: scores.map((score) => (better === 'higher' ? score >= mark.score : score <= mark.score)),
    passesExpected: scores.length * mark.chanceNow,
    chanceAsGood: asGood,
    chanceAsBad: asBad,
    verdict:
      scores.length === 1
        ? 'oneScore'
        : !beyond
          ? 'asExpected'
          : asGood < asBad
            ? 'betterThanExpected'
            : 'worseThanExpected',
    repetitionsMissing: Math.max(0, repetitions.count - scores.length),
  };
}
