/**
 * A pass mark that means something at a player's level, and how often a drill must be done before it tells two levels apart.
 *
 * Answers for: the score that the player as he is reaches in about three tries of ten, its chance once the trained error is a
 * step smaller, and how many repetitions' total separates the two. Leaves out: how scores are distributed (drill-score.ts).
 * One pass is never "improvement": the player as he is passes too.
 */
import { afterStep, type StepId } from '../costs/steps.ts';
import { zFactor } from '../maths/student-t.ts';
import { chanceAtLeast, chanceAtMost } from '../statistics/hit-counts.ts';
import type { Player } from '../types.ts';
import type { Trained } from './putting-drill.ts';
import { meanOf, together } from './tally.ts';

/** What a stretch of practice may be hoped to take off each error of what it trains, a share of it (ours): the step of costs/steps.ts. */
export const TRAINING_STEP = 0.1;

/** The pass mark is reached about so often by the player as he is (ours). */
export const MARK_CHANCE = 0.3;
/** Levels count as told apart when the better one passes at least so often. */
export const TOLD_APART = 0.65;
/** Repetitions counted exactly; beyond, the normal approximation is good to a few of them. */
const MOST_COUNTED = 60;
/** Normal scores of the two: 0.5244 and 0.3853. */
const SCORE_NOW = zFactor(1 - 2 * MARK_CHANCE);
const SCORE_BETTER = zFactor(2 * TOLD_APART - 1);

const STEPS_OF: Readonly<Record<Trained, readonly StepId[]>> = {
  line: ['lineShare'],
  pace: ['paceShare'],
  read: ['readShare'],
  mixed: ['lineShare', 'paceShare', 'readShare'],
};

/** The player once every trained error, habits included, is a step smaller. */
export const withStep = (player: Player, trains: Trained): Player =>
  STEPS_OF[trains].reduce(afterStep, player);

export type Better = 'higher' | 'lower';

/** Chance of a score as good as this or better. */
export const chanceAsGood = (chances: Float64Array, score: number, better: Better): number =>
  better === 'higher' ? chanceAtLeast(chances, score) : chanceAtMost(chances, score);

export interface PassMark {
  /** A score as good as this passes. */
  readonly score: number;
  /** Chance of passing as the player is, 0..1: the nearest to MARK_CHANCE that whole points allow. */
  readonly chanceNow: number;
  /** The same once the trained error is a step smaller. */
  readonly chanceBetter: number;
}

/** Of all scores the one whose chance is nearest to MARK_CHANCE. */
export function passMark(now: Float64Array, improved: Float64Array, better: Better): PassMark {
  let score = 0;
  for (let one = 1; one < now.length; one++) {
    const off = (mark: number): number => Math.abs(chanceAsGood(now, mark, better) - MARK_CHANCE);
    if (off(one) < off(score)) score = one;
  }
  return {
    score,
    chanceNow: chanceAsGood(now, score, better),
    chanceBetter: chanceAsGood(improved, score, better),
  };
}

export interface Repetitions {
  /** Infinity: the trained error does not move this score. */
  readonly count: number;
  /** counted: from the distribution of the total. estimated: by the normal approximation. */
  readonly by: 'counted' | 'estimated';
  /** The total that separates; undefined where it was not counted. */
  readonly total: number | undefined;
}

const varianceOf = (chances: Float64Array): number => {
  const mean = meanOf(chances);
  return chances.reduce((sum, chance, score) => sum + chance * (score - mean) ** 2, 0);
};

/** The normal approximation: thresholds MARK_CHANCE above the one mean and TOLD_APART below the other meet. */
function estimate(now: Float64Array, improved: Float64Array, better: Better): number {
  const gain = (meanOf(improved) - meanOf(now)) * (better === 'higher' ? 1 : -1);
  if (!(gain > 1e-9)) return Number.POSITIVE_INFINITY;
  const spread = SCORE_NOW * Math.sqrt(varianceOf(now)) + SCORE_BETTER * Math.sqrt(varianceOf(improved));
  return Math.max(1, Math.ceil((spread / gain) ** 2));
}

/**
 * Repetitions whose total separates the two levels: some total is reached with at most MARK_CHANCE by the player as he is and with at least
 * TOLD_APART by the better one.
 */
export function repetitionsApart(now: Float64Array, improved: Float64Array, better: Better): Repetitions {
  const about = estimate(now, improved, better);
  if (about > MOST_COUNTED) return { count: about, by: 'estimated', total: undefined };
  let totalNow = now;
  let totalImproved = improved;
  for (let count = 1; count <= MOST_COUNTED; count++) {
    const total = separatingTotal(totalNow, totalImproved, better);
    if (total !== undefined) return { count, by: 'counted', total };
    totalNow = together(totalNow, now);
    totalImproved = together(totalImproved, improved);
  }
  return { count: about, by: 'estimated', total: undefined };
}

/** The easiest total that the first reaches at most with MARK_CHANCE, if the other reaches it often enough. */
function separatingTotal(now: Float64Array, improved: Float64Array, better: Better): number | undefined {
  const most = now.length - 1;
  let total: number | undefined;
  let beyondNow = 0;
  let beyondImproved = 0;
  for (let steps = 0; steps <= most; steps++) {
    const score = better === 'higher' ? most - steps : steps;
    if (beyondNow + now[score] > MARK_CHANCE) break;
    beyondNow += now[score];
    beyondImproved += improved[score];
    total = score;
  }
  return beyondImproved >= TOLD_APART ? total : undefined;
}
