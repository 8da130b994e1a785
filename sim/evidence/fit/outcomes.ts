/**
 * From a record to what the likelihood is a product of. Answers for: which strokes count, the ground each may have had by its
 * words, putts of one practice set on one ground. Leaves out: patterns (patterns.ts), players (likelihood.ts).
 *
 * - Putts of kind 'putt' count, each on a ground of its own. Shorter than SHORTEST or longer than LONGEST: passed over.
 * - A practice set is so many putts from one spot: its ground is not known, but the same for all. On carpet it is level.
 * - Of a set's misses those counted high or low say so; of the others nothing but that they missed is known. Short and past are
 *   a second count of the same misses; it is taken as independent of the first.
 */

import type { PracticeSet, RecordedPutt, RecordedRound } from '../record.ts';
import { type Answer, NO, UNASKED, YES } from './error-shares.ts';
import type { Ground, Grounds } from './grounds.ts';
import type { MeasuredStrokes } from './measured-strokes.ts';
import { type Outcome, type Pattern, type PatternOptions, patternOf } from './patterns.ts';
import type { Strokes } from './strokes.ts';
import {
  countedSide,
  type PaceShare,
  pacesMeant,
  type WrittenMiss,
  wordsShare,
  writtenSide,
} from './words.ts';

/** A record to fit. */
export interface FitRecord {
  readonly putts: readonly RecordedPutt[];
  readonly sets?: readonly PracticeSet[];
  /** Their green speeds count; a putt whose round is not among them has none. */
  readonly rounds?: readonly RecordedRound[];
  /** Balls rolled through gates and to targets. */
  readonly strokes?: MeasuredStrokes;
}

/** Nearer, m, nobody misses (a touch more than the hole's own radius and the ball's); farther, nobody putts. */
const SHORTEST = 0.15;
const LONGEST = 30;
/** A ground that the words make so unlikely, beside the likeliest, is not looked at. */
const UNLIKELY = 0.01;

/** One ground with its strokes and the chance, by the words, that it was this one. */
export interface LikelyGround {
  readonly strokes: Strokes;
  readonly share: number;
}

/** Outcomes with how often each came: chance = sum over grounds of share x product of chance^count. */
export interface Recorded {
  /** Of each ground: one when it is averaged over within the patterns. */
  readonly shares: readonly number[];
  /** Ground by ground, outcomes in turn. */
  readonly patterns: readonly (readonly Pattern[])[];
  readonly counts: readonly number[];
}

export interface OutcomeOptions {
  readonly grounds: Grounds;
  /** All putts on level ground, whatever was said. */
  readonly level: boolean;
  readonly unsaidPaces: readonly PaceShare[];
}

type Words = Pick<RecordedPutt, 'climb' | 'breaks' | 'slopeFelt' | 'paceMeant'>;

/** Grounds by words. */
export interface LikelyGrounds {
  readonly grounds: readonly LikelyGround[];
  /** Chance of the words (and the pace meant, if said) among all putts of that length. */
  readonly chance: number;
}

/** Grounds that putts with these words may have had, but for what the words all but rule out. */
export function likelyGrounds(
  candidates: readonly Ground[],
  words: Words,
  unsaidPaces: readonly PaceShare[],
): LikelyGrounds {
  const weighed: { ground: Ground; pace: number; share: number }[] = [];
  for (const ground of candidates)
    for (const { pace, share } of pacesMeant(words.paceMeant, unsaidPaces)) {
      const aimOffset = ground.aimOffsetAt(pace);
      if (aimOffset === undefined) continue;
      const { rise, slope } = ground;
      weighed.push({
        ground,
        pace,
        share: ground.share * share * wordsShare(words, { rise, slope, aimOffset }),
      });
    }
  const likeliest = weighed.reduce((most, { share }) => Math.max(most, share), 0);
  const kept = weighed.filter(({ share }) => share > UNLIKELY * likeliest);
  const total = kept.reduce((sum, { share }) => sum + share, 0);
  const grounds = kept.flatMap(({ ground, pace, share }) => {
    const strokes = ground.strokesAt(pace);
    return strokes ? [{ strokes, share: share / total }] : [];
  });
  return { grounds, chance: weighed.reduce((sum, { share }) => sum + share, 0) };
}

const answerOf = (asMeant: boolean | undefined): Answer =>
  asMeant === undefined ? UNASKED : asMeant ? YES : NO;

/** How "as meant?" was answered of a putt. */
export const answersGiven = ({ startedAsMeant, paceAsMeant }: RecordedPutt): Required<PatternOptions> => ({
  startAnswer: answerOf(startedAsMeant),
  paceAnswer: answerOf(paceAsMeant),
});

/** What was written of the end of a putt. */
export function outcomeOf({ holed, miss, breaks }: RecordedPutt): Outcome {
  if (holed) return 'holed';
  const { side, reach, leave } = miss ?? {};
  return {
    ...(side && { side: writtenSide(side, breaks) }),
    ...(reach && { reach }),
    ...(leave !== undefined && { leave }),
  };
}

/** Does this putt say anything of its player? */
export const counts = ({ kind, distance }: RecordedPutt): boolean =>
  kind === 'putt' && distance >= SHORTEST && distance <= LONGEST;

/** Where a recorded putt may have lain. */
export function groundsOfPutt(
  putt: RecordedPutt,
  { grounds, level, unsaidPaces }: OutcomeOptions,
  greenSpeed: number | undefined,
): LikelyGrounds {
  const candidates = grounds.of({ length: putt.distance, greenSpeed, level, exact: false });
  return likelyGrounds(candidates, level ? { paceMeant: putt.paceMeant } : putt, unsaidPaces);
}

/** @returns undefined when the putt has no ground on which a ball rests */
export function recordedPutt(
  putt: RecordedPutt,
  options: OutcomeOptions,
  greenSpeed: number | undefined,
): Recorded | undefined {
  const { grounds } = groundsOfPutt(putt, options, greenSpeed);
  if (grounds.length === 0) return undefined;
  const pattern = patternOf(grounds, outcomeOf(putt), answersGiven(putt));
  return { shares: [1], patterns: [[pattern]], counts: [1] };
}

/** @returns undefined when the set says nothing */
export function recordedSet(
  set: PracticeSet,
  { grounds, level, unsaidPaces }: OutcomeOptions,
): Recorded | undefined {
  const { distance: length, attempts, holed, misses = {} } = set;
  if (!(attempts > 0) || length < SHORTEST || length > LONGEST) return undefined;
  const isLevel = level || set.ground === 'carpet';
  const candidates = grounds.of({ length, level: isLevel, exact: true });
  const { grounds: likely } = likelyGrounds(candidates, isLevel ? {} : set, unsaidPaces);
  const missed = attempts - holed;
  const { high = 0, low = 0, short = 0, past = 0 } = misses;
  const tellSide = high + low > 0 && high + low <= missed;
  const tellReach = short + past > 0 && short + past <= missed;
  const outcomes: (readonly [Outcome, number])[] = [['holed', holed]];
  const any: WrittenMiss = {};
  outcomes.push([any, missed - (tellSide ? high + low : 0) - (tellReach ? short + past : 0)]);
  if (tellSide) outcomes.push([{ side: countedSide('high') }, high], [{ side: countedSide('low') }, low]);
  if (tellReach) outcomes.push([{ reach: 'short' }, short], [{ reach: 'past' }, past]);
  const told = outcomes.filter(([, count]) => count !== 0);
  return {
    shares: likely.map(({ share }) => share),
    // The share of each ground stays outside: it is one for all putts of the set.
    patterns: likely.map(({ strokes }) =>
      told.map(([outcome]) => patternOf([{ strokes, share: 1 }], outcome)),
    ),
    counts: told.map(([, count]) => count),
  };
}
