/**
 * What one more tap on each putt would have told. Answers for: by how much each error would be known better, and which errors trade
 * off in this record, so that more of the same putts would not tell them apart soon. Leaves out: words for it.
 *
 * Derived. For a recorded outcome o and the answer w to one more question, log P(o, w) = log P(o) + log P(w | o): the curvature that w
 * adds is, on average over the answers that such a player would give, the covariance over w of the gradient of log P(o, w)
 * (Fisher's information of w given o). It is worked out at the middle of what is thought of the player, for up to SAMPLE putts
 * spread evenly over the lengths and leaves of those that were not asked, and counted up to all of them. Added to the posterior's own curvature it gives
 * the spread one would have with those answers. First order: good enough to rank taps, not to promise margins.
 */

import { inverseOf, type Matrix } from '../cholesky.ts';
import type { RecordedPutt } from '../record.ts';
import { type ErrorShares, fillShares, NO, newErrorShares, YES } from './error-shares.ts';
import { mixedChance, strayShares } from './likelihood.ts';
import { answersGiven, counts, groundsOfPutt, type OutcomeOptions, outcomeOf } from './outcomes.ts';
import { chanceOf, type Pattern, patternOf } from './patterns.ts';
import { bandsOfScores, ERRORS, type ErrorName, type ErrorsPrior, HABITS, playerOfScores } from './prior.ts';
import { writtenSide } from './words.ts';

/** What may be tapped of a putt beside its distance and end; each is optional in the form. */
export const TAPS = ['startedAsMeant', 'paceAsMeant', 'slopeFelt', 'paceMeant', 'side'] as const;
export type Tap = (typeof TAPS)[number];

/** What a tap would have told on all putts that were not asked. */
export interface TapGain {
  readonly tap: Tap;
  /** Putts without it, where it could have been tapped. */
  readonly putts: number;
  /** Spread of each error with it, as a share of the spread without: 1 tells nothing, 0.5 halves the margin. */
  readonly spread: Readonly<Record<ErrorName, number>>;
}

/** Two errors, and how they hang together. */
export interface ErrorPair {
  readonly errors: readonly [ErrorName, ErrorName];
  /** Correlation of what is thought of them: towards -1 more of one explains the record as well as more of the other. */
  readonly correlation: number;
  /** The tap that would narrow the two most, taken together; undefined: none would by NOTICED. */
  readonly tap: Tap | undefined;
  /** Area of the two's common uncertainty with that tap, as a share of that without; 1 without one. */
  readonly area: number;
}

export interface TellApart {
  readonly taps: readonly TapGain[];
  /** Those that trade off by TRADE_OFF or more, most first. */
  readonly pairs: readonly ErrorPair[];
}

/** Putts looked at for each tap: half as many ranked the taps otherwise when a record came in another order. */
const SAMPLE = 60;
/** From this correlation on two errors count as not told apart (ours): a quarter of what is unknown of one hangs on the other. */
const TRADE_OFF = 0.5;
/** A tap that leaves more than this share of the area is not worth a sentence. */
const NOTICED = 0.9;
/** Step of the differences, scores. */
const STEP = 0.1;

export interface TellApartOptions {
  readonly putts: readonly { readonly putt: RecordedPutt; readonly greenSpeed: number | undefined }[];
  readonly outcomes: OutcomeOptions;
  readonly prior: ErrorsPrior;
  /** Middle of what is thought, and covariance, in scores; with the habits where they take part. */
  readonly middle: readonly number[];
  readonly covariance: Matrix;
  /** Which taps to weigh; none: pairs only. */
  readonly taps: readonly Tap[];
  /** Asked before each tap; false ends it. */
  readonly wanted: () => boolean;
}

/** Could this tap have been made on this putt, and was it not? */
function isOpen(putt: RecordedPutt, tap: Tap): boolean {
  if (!counts(putt)) return false;
  return tap === 'side' ? !putt.holed && putt.miss?.side === undefined : putt[tap] === undefined;
}

interface Possible {
  readonly pattern: Pattern;
  /** Chance of the answer by the ground alone; 1 where it hangs on the stroke and is in the pattern. */
  readonly chance: number;
}

/** The recorded outcome with each answer that could have been tapped. */
function answersOf(
  { putt, greenSpeed }: TellApartOptions['putts'][number],
  tap: Tap,
  options: OutcomeOptions,
): Possible[] {
  const withWords = (said: Partial<RecordedPutt>): Possible => {
    const { grounds, chance } = groundsOfPutt({ ...putt, ...said }, options, greenSpeed);
    return { pattern: patternOf(grounds, outcomeOf(putt), answersGiven(putt)), chance };
  };
  if (tap === 'slopeFelt')
    return (['gentle', 'medium', 'steep'] as const).map((slopeFelt) => withWords({ slopeFelt }));
  if (tap === 'paceMeant') return saidPaces(putt, options, greenSpeed);
  const { grounds } = groundsOfPutt(putt, options, greenSpeed);
  const outcome = outcomeOf(putt);
  const given = answersGiven(putt);
  if (tap === 'side')
    return outcome === 'holed'
      ? []
      : (['high', 'low', 'online'] as const).map((side) => ({
          pattern: patternOf(grounds, { ...outcome, side: writtenSide(side, putt.breaks) }, given),
          chance: 1,
        }));
  const pattern = patternOf(grounds, outcome, given);
  return ([YES, NO] as const).map((answer) => ({
    pattern: { ...pattern, [tap === 'startedAsMeant' ? 'startAnswer' : 'paceAnswer']: answer },
    chance: 1,
  }));
}

/** One pace each, in its share of those that may have been meant. */
function saidPaces(putt: RecordedPutt, options: OutcomeOptions, greenSpeed: number | undefined): Possible[] {
  return options.unsaidPaces.map(({ pace, share }) => {
    const { grounds, chance } = groundsOfPutt(
      putt,
      { ...options, unsaidPaces: [{ pace, share: 1 }] },
      greenSpeed,
    );
    return { pattern: patternOf(grounds, outcomeOf(putt), answersGiven(putt)), chance: share * chance };
  });
}

/** Shares of the middle player and of those one step away in each score, up and down. */
interface Around {
  readonly middle: ErrorShares;
  readonly ups: readonly ErrorShares[];
  readonly downs: readonly ErrorShares[];
  readonly stray: ErrorShares;
}

function sharesAround(prior: ErrorsPrior, at: readonly number[]): Around {
  const sharesAt = (scores: readonly number[]): ErrorShares => {
    const shares = newErrorShares();
    fillShares(playerOfScores(prior, scores), bandsOfScores(scores), { start: true, pace: true }, shares);
    return shares;
  };
  const moved = (i: number, by: number): ErrorShares =>
    sharesAt(at.map((score, k) => (k === i ? score + by : score)));
  return {
    middle: sharesAt(at),
    ups: at.map((_, i) => moved(i, STEP)),
    downs: at.map((_, i) => moved(i, -STEP)),
    stray: strayShares(prior.about, bandsOfScores([])),
  };
}

/** Adds the covariance over answers of the gradient. */
function addInformation(answers: readonly Possible[], around: Around, into: number[][]): void {
  const size = around.ups.length;
  const chances: number[] = [];
  const gradients: number[][] = [];
  for (const { pattern, chance } of answers) {
    const stray = chanceOf(pattern, around.stray);
    const log = (shares: ErrorShares): number => Math.log(mixedChance(chanceOf(pattern, shares), stray));
    chances.push(chance * mixedChance(chanceOf(pattern, around.middle), stray));
    gradients.push(around.ups.map((up, i) => (log(up) - log(around.downs[i])) / (2 * STEP)));
  }
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  if (!(total > 0)) return;
  const mean = around.ups.map((_, i) =>
    gradients.reduce((sum, gradient, w) => sum + (chances[w] / total) * gradient[i], 0),
  );
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      for (let w = 0; w < gradients.length; w++)
        into[i][j] += (chances[w] / total) * (gradients[w][i] - mean[i]) * (gradients[w][j] - mean[j]);
}

/** Evenly through a list. */
function spreadSample<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  return Array.from({ length: most }, (_, i) => list[Math.floor(((i + 0.5) * list.length) / most)]);
}

const areaOf = (covariance: Matrix, i: number, j: number): number =>
  Math.sqrt(Math.max(0, covariance[i][i] * covariance[j][j] - covariance[i][j] ** 2));

/** By length, then by leave: whatever order a record comes in, evenly through it is the same putts. */
const inOrder = (putts: TellApartOptions['putts']): TellApartOptions['putts'] => {
  const leaveOf = ({ holed, miss }: RecordedPutt): number => (holed ? -1 : (miss?.leave ?? 0));
  return [...putts].sort(
    ({ putt: one }, { putt: other }) =>
      one.distance - other.distance || leaveOf(one) - leaveOf(other) || (one.id < other.id ? -1 : 1),
  );
};

/** @returns undefined when it was not wanted to the end */
export function tellApart(options: TellApartOptions): TellApart | undefined {
  const { putts, outcomes, prior, middle, covariance, taps, wanted } = options;
  const size = ERRORS.length + HABITS;
  const precision = inverseOf(covariance) ?? [];
  // A habit that took no part is as unknown as its prior.
  const known = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_also, j) => precision[i]?.[j] ?? (i === j ? 1 : 0)),
  );
  const at = Array.from({ length: size }, (_, i) => middle[i] ?? 0);
  const around = sharesAround(prior, at);
  const withTap: { gain: TapGain; after: Matrix }[] = [];
  const ordered = inOrder(putts);
  for (const tap of taps) {
    if (!wanted()) return undefined;
    const open = ordered.filter(({ putt }) => isOpen(putt, tap));
    if (open.length === 0) continue;
    const sample = spreadSample(open, SAMPLE);
    const added = known.map((row) => row.map(() => 0));
    for (const one of sample) addInformation(answersOf(one, tap, outcomes), around, added);
    const times = open.length / sample.length;
    const after = inverseOf(known.map((row, i) => row.map((value, j) => value + times * added[i][j])));
    if (after === undefined) continue;
    const spread = Object.fromEntries(
      ERRORS.map((name, i) => [name, Math.sqrt(after[i][i] / covariance[i][i])]),
    ) as Record<ErrorName, number>;
    withTap.push({ gain: { tap, putts: open.length, spread }, after });
  }
  const pairs: ErrorPair[] = [];
  for (let i = 0; i < ERRORS.length; i++)
    for (let j = i + 1; j < ERRORS.length; j++) {
      const correlation = covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j]);
      if (Math.abs(correlation) < TRADE_OFF) continue;
      let tap: Tap | undefined;
      let area = 1;
      for (const { gain, after } of withTap) {
        const left = areaOf(after, i, j) / areaOf(covariance, i, j);
        if (left < Math.min(area, NOTICED)) {
          area = left;
          tap = gain.tap;
        }
      }
      pairs.push({ errors: [ERRORS[i], ERRORS[j]], correlation, tap, area });
    }
  pairs.sort((one, other) => Math.abs(other.correlation) - Math.abs(one.correlation));
  return { taps: withTap.map(({ gain }) => gain), pairs };
}
