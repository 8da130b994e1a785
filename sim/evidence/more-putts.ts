/**
 * How many more such putts would tell whether a player is not his expected share?
 *
 * Answers for: the number of putts, and of rounds, after which a departure worth knowing would be found with a stated chance. Leaves
 * out: any verdict on the putts already there.
 * Source: sample size of a test of one share, n = (z_{1-a/2} sqrt(p0 q0) + z_{power} sqrt(p1 q1))^2 / (p1 - p0)^2, made larger for the
 * step of half a putt: n/4 (1 + sqrt(1 + 2/(n |p1 - p0|)))^2 (Fleiss, Levin & Paik, Statistical Methods for Rates and Proportions,
 * 3rd ed. 2003; memory; the step derived again). Without the step the exact test finds 74% of departures, not 80%, where n is small.
 * It takes one p0 for all putts of the set: with chances that differ the count varies a little less, so the number is on the safe side. It
 * takes p0 as known.
 */
import { zFactor } from '../maths/student-t.ts';

/** A third of the expected share: from 15 ft, 4 points of 18%; ours. Smaller: ever more putts for a difference that costs little. */
const WORTH_KNOWING = 1 / 3;
const POWER = 0.8;
const FALSE_ALARMS = 0.05;

/** What a standard normal variable stays below, on one side, with a chance above a half. */
const oneSided = (chance: number): number => zFactor(2 * chance - 1);

export interface TestDesign {
  /** Chance of finding the departure if it is there, above a half; default 80%. */
  readonly power?: number;
  /** Chance of finding one that is not there, two-sided; default 5%. */
  readonly falseAlarms?: number;
}

/**
 * Tries that tell one share from another, by the normal approximation without the step of half a putt; not rounded.
 * @param expected p0, 0 < p0 < 1
 * @param other p1, 0..1, not p0
 */
export function triesByNormal(expected: number, other: number, design: TestDesign = {}): number {
  const { power = POWER, falseAlarms = FALSE_ALARMS } = design;
  const spread = (share: number): number => Math.sqrt(share * (1 - share));
  const needed = zFactor(1 - falseAlarms) * spread(expected) + oneSided(power) * spread(other);
  return (needed / (other - expected)) ** 2;
}

/** The same for counts that go in whole putts; whole, rounded up. */
export function triesToTell(expected: number, other: number, design: TestDesign = {}): number {
  const tries = triesByNormal(expected, other, design);
  return Math.ceil((tries / 4) * (1 + Math.sqrt(1 + 2 / (tries * Math.abs(other - expected)))) ** 2);
}

export interface MorePuttsQuestion extends TestDesign {
  /** Share of such putts the player is expected to hole, 0..1. */
  readonly expectedShare: number;
  /** Departure worth knowing, as a share of the expected share, 0 < departure <= 1; default a third, fewer or more. */
  readonly departure?: number;
  /** Such putts already recorded; default 0. */
  readonly alreadyHad?: number;
  /** Such putts in a round; 0 or left out: rounds are not told. */
  readonly perRound?: number;
}

export interface MorePutts {
  /** In all, those already had included. */
  readonly needed: number;
  /** Still to come, 0 or more. */
  readonly more: number;
  /** Rounds for those; undefined when there are no such putts in a round. */
  readonly rounds: number | undefined;
  /** The shares that would then be told from the expected one; `moreShare` undefined when it would be 1 or above. */
  readonly fewerShare: number;
  readonly moreShare: number | undefined;
}

/** @returns undefined when nothing or everything is expected to drop: no number of putts is asked for then */
export function morePutts(question: MorePuttsQuestion): MorePutts | undefined {
  const { expectedShare, departure = WORTH_KNOWING, alreadyHad = 0, perRound = 0, ...design } = question;
  if (!(expectedShare > 0 && expectedShare < 1)) return undefined;
  const fewerShare = expectedShare * (1 - departure);
  const above = expectedShare * (1 + departure);
  const moreShare = above < 1 ? above : undefined;
  const needed = Math.max(
    ...[fewerShare, moreShare].flatMap((share) =>
      share === undefined ? [] : [triesToTell(expectedShare, share, design)],
    ),
  );
  const more = Math.max(0, needed - alreadyHad);
  return {
    needed,
    more,
    rounds: perRound > 0 ? Math.ceil(more / perRound) : undefined,
    fewerShare,
    moreShare,
  };
}
