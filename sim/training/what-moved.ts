/**
 * After the next rounds: what moved since a week was planned, and what that record cannot yet say.
 *
 * Answers for: the four things a week is judged by, each with its interval, a verdict by the interval alone, and the change it could have
 * shown. Leaves out: causes, words. Verdicts are made stricter for four looks at once (Bonferroni); intervals told stay 95%.
 */
import {
  adjustedTrend,
  type JudgedPutt,
  meanTrend,
  type RoundValues,
  type TrendVerdict,
} from '../evidence/trend.ts';
import { compareScores, type DrillResult } from './compare-scores.ts';
import { readingProgress } from './progress.ts';
import type { PuttingDrill } from './putting-drill.ts';
import type { DatedRead } from './reader-model.ts';

export const MOVED_TOPICS = ['rounds', 'putts', 'reading', 'test'] as const;
export type MovedTopic = (typeof MOVED_TOPICS)[number];

/** What is known of the time before the week, or of the time since. */
export interface WeekPeriod {
  /** Strokes gained per 18 holes, round by round. */
  readonly rounds: RoundValues;
  readonly putts: readonly JudgedPutt[];
  readonly reads: readonly DatedRead[];
  /** Scores of the test. */
  readonly tests: readonly DrillResult[];
}

export interface Change {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** A true change of this size would be found four times in five; Infinity: none would; undefined: not known. */
  readonly smallestChange: number | undefined;
}

export interface Moved {
  readonly topic: MovedTopic;
  readonly verdict: TrendVerdict;
  /** rounds: strokes per 18 holes. putts: share above the benchmark. reading: share of the break. test: share or points. */
  readonly unit: 'strokes' | 'share' | 'points';
  /** undefined: nothing to compare yet. */
  readonly change: Change | undefined;
  /** Records that went in: rounds, putts, reads, scores. */
  readonly before: number;
  readonly after: number;
}

const CONFIDENCE = 0.95;
const STRICTLY = 1 - (1 - CONFIDENCE) / MOVED_TOPICS.length;

export interface TestedDrill {
  readonly drill: PuttingDrill;
  /** Standard deviation of one score by the engine. */
  readonly expectedSd: number;
}

/** @param test undefined: the week has none */
export function whatMoved(test: TestedDrill | undefined, before: WeekPeriod, after: WeekPeriod): Moved[] {
  const counts = (of: (period: WeekPeriod) => number): Pick<Moved, 'before' | 'after'> => ({
    before: of(before),
    after: of(after),
  });
  const nothing = { verdict: 'cannotTell', change: undefined } as const;
  const told = ({ value, low, high, smallestChange }: Change): Change => ({
    value,
    low,
    high,
    smallestChange,
  });

  const rounds = { before: before.rounds, after: after.rounds };
  const gained = meanTrend(rounds, CONFIDENCE);
  const putts = adjustedTrend({ before: before.putts, after: after.putts }, CONFIDENCE, {
    looks: MOVED_TOPICS.length,
  });
  const reads = [before.reads, after.reads];
  const reading = readingProgress(reads, CONFIDENCE).change;
  const scores = { before: before.tests, after: after.tests };
  const scored = (confidence: number) =>
    test && compareScores(test.drill, scores, { confidence, expectedSd: test.expectedSd });
  const score = scored(CONFIDENCE);
  const strictScore = scored(STRICTLY);
  return [
    {
      topic: 'rounds',
      unit: 'strokes',
      ...(gained === undefined
        ? nothing
        : { verdict: meanTrend(rounds, STRICTLY)?.verdict ?? 'cannotTell', change: told(gained) }),
      ...counts((period) => period.rounds.values.length),
    },
    {
      topic: 'putts',
      unit: 'share',
      ...(putts === undefined ? nothing : { verdict: putts.verdict, change: told(putts) }),
      ...counts((period) => period.putts.length),
    },
    {
      topic: 'reading',
      unit: 'share',
      ...(reading === undefined
        ? nothing
        : {
            verdict: readingProgress(reads, STRICTLY).change?.verdict ?? 'cannotTell',
            change: told({ ...reading, smallestChange: undefined }),
          }),
      ...counts((period) => period.reads.length),
    },
    {
      topic: 'test',
      unit: score?.status === 'ok' ? score.unit : 'points',
      ...(score?.status === 'ok' && strictScore?.status === 'ok'
        ? { verdict: strictScore.verdict, change: told(score) }
        : nothing),
      ...counts((period) => period.tests.length),
    },
  ];
}
