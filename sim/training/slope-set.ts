/**
 * "What slope is this?": questions, and how far off an estimate is.
 *
 * Answers for: the putts of a set, the true slopes of one, a set summed up by sign and spread, and what it says of who answers. Leaves
 * out: how it is shown.
 * Two slopes of every putt: of the ground as a whole, which says how much it can break, and along the line, which says how hard to
 * hit it; both as rise over run, along the line positive uphill. Even ground only: over a green there is no one slope to name.
 */

import type { Measurement } from '../player/known.ts';
import { seededRandom } from '../random.ts';
import { type Estimate, meanInterval } from '../statistics/mean-interval.ts';
import { spreadInterval } from '../statistics/spread.ts';
import { feetToMetres } from '../units.ts';
import { type Random, within } from './draw.ts';
import type { Range } from './drill.ts';
import {
  groundAlong,
  type Judged,
  judge,
  planeSpot,
  type Question,
  surfaceOfGround,
} from './putt-question.ts';
import { SET_SIZE } from './question.ts';

const SLOPE: Range = [0.005, 0.04];
const GREEN_SPEED: Range = [feetToMetres(9), feetToMetres(11)];
const LENGTH: Range = [feetToMetres(4), feetToMetres(25)];
/** The pace of the line that is shown afterwards, m past. */
const PACE = feetToMetres(1);
const MOST_DRAWS = 200;

/** Rise over run. */
export interface Slopes {
  /** Of the ground, 0 or more. */
  readonly total: number;
  /** To the hole, positive uphill. */
  readonly along: number;
}

function drawPutt(random: Random): Judged {
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const spot = planeSpot(within(SLOPE, random), within([0, 12], random), within(LENGTH, random));
    const found = judge({ ...spot, greenSpeed: within(GREEN_SPEED, random), pace: PACE });
    if (found !== undefined) return found;
  }
  throw new RangeError(
    `Got no putt that can be asked in ${MOST_DRAWS} draws, expected one: make the slopes gentler.`,
  );
}

/** A set of ten, each on a plane of its own: the same seed gives the same set. */
export function makeSlopeSet(seed: number | string, size = SET_SIZE): Question[] {
  const random = seededRandom(`what slope ${seed}`);
  return Array.from({ length: size }, (_unused, index) => ({
    ...drawPutt(random),
    number: index + 1,
    group: index,
  }));
}

/** The true slopes of a question; on a green the means along the line. */
export function slopesOf({ ground, ball, hole, slope }: Question): Slopes {
  const along = groundAlong({ ground, surface: surfaceOfGround(ground), ball, hole });
  return { total: slope, along: along?.rise ?? 0 };
}

export interface SlopeAnswer extends Slopes {
  readonly question: Question;
}

/** Errors of one of the two slopes over a set, rise over run: above 0 too steep, along the line too much uphill. */
export interface SlopeErrors {
  readonly bias: Estimate;
  /** undefined: a single answer. */
  readonly spread: ReturnType<typeof spreadInterval>;
  readonly meanSize: number;
}

export interface SlopeSummary {
  readonly count: number;
  readonly total: SlopeErrors;
  readonly along: SlopeErrors;
}

/** @returns undefined when there are no answers */
export function summarizeSlopes(answers: readonly SlopeAnswer[]): SlopeSummary | undefined {
  const errorsOf = (which: keyof Slopes): SlopeErrors | undefined => {
    const errors = answers.map((answer) => answer[which] - slopesOf(answer.question)[which]);
    const bias = meanInterval(errors);
    return (
      bias && {
        bias,
        spread: spreadInterval(errors),
        meanSize: errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length,
      }
    );
  };
  const total = errorsOf('total');
  const along = errorsOf('along');
  return total && along && { count: answers.length, total, along };
}

/**
 * Least true slope across the line that is used, rise over run: nobody says to which side a putt falls when asked how steep it is, so a
 * slope seen across to the other side would pass for a small error. Twice what a middling player misreads (fitted.ts).
 */
const LEAST_ACROSS = 0.01;

/** The slopes of a set as they narrow a family: along the line, and across it where that tells; nothing without answers. */
export function slopesNamed(answers: readonly SlopeAnswer[]): Measurement[] {
  const across = ({ total, along }: Slopes): number => Math.sqrt(Math.max(0, total ** 2 - along ** 2));
  const pairs = answers.map((answer) => ({ answer, truth: slopesOf(answer.question) }));
  const along = pairs.map(({ answer, truth }) => ({ named: answer.along, true: truth.along }));
  const aside = pairs
    .map(({ answer, truth }) => ({ named: across(answer), true: across(truth) }))
    .filter((one) => one.true >= LEAST_ACROSS);
  return [along, aside]
    .filter((slopes) => slopes.length > 0)
    .map((slopes) => ({ kind: 'readingSet', slopes }));
}
