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
import { chanceOfWords, mixedChance, STRAY_TIMES } from './likelihood.ts';
import {
  answersGiven,
  counts,
  type OutcomeOptions,
  outcomeOf,
  type SaidOf,
  Spots,
  saidOf,
  spotsOfPutt,
} from './outcomes.ts';
import { PlayerStrokes, type Someone } from './player-strokes.ts';
import { ERRORS, type ErrorName, type ErrorsPrior, HABITS, SCORES, someoneOf, wideOf } from './prior.ts';
import { chanceOf, type RecordedStrokes, recordedStrokes } from './recorded-strokes.ts';

/** What may be tapped of a putt beside its distance and end; each is optional in the form. */
export const TAPS = [
  'startedAsMeant',
  'paceAsMeant',
  'slopeFelt',
  'climb',
  'breaks',
  'paceMeant',
  'side',
] as const;
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
  readonly strokes: RecordedStrokes;
  readonly said: SaidOf | undefined;
  /** Chance of an answer that hangs on neither ground nor stroke. */
  readonly share: number;
}

const WORDS = {
  slopeFelt: ['gentle', 'medium', 'steep'],
  climb: ['up', 'level', 'down'],
  breaks: ['straight', 'leftToRight'],
  paceMeant: ['die', 'normal', 'firm'],
} as const;
/** How often each pace is meant where it was not said, in the order of WORDS (ours). */
const PACE_SHARES = [0.2, 0.6, 0.2];

/** The recorded outcome with each answer that could have been tapped. */
function answersOf(
  { putt, greenSpeed }: TellApartOptions['putts'][number],
  tap: Tap,
  options: OutcomeOptions,
  list: Spots,
): Possible[] {
  const made = (of: RecordedPutt): Possible => {
    const spots = spotsOfPutt(of, options, greenSpeed, list);
    return {
      strokes: recordedStrokes(spots, outcomeOf(of), options, answersGiven(of)),
      said: saidOf(spots),
      share: 1,
    };
  };
  if (tap === 'side')
    return putt.miss === undefined
      ? []
      : (['high', 'low', 'online'] as const).map((side) =>
          made({ ...putt, breaks: putt.breaks ?? 'leftToRight', miss: { leave: 0, ...putt.miss, side } }),
        );
  if (tap === 'startedAsMeant' || tap === 'paceAsMeant') {
    const { strokes, ...rest } = made(putt);
    return [true, false].map((answer) => ({ strokes: { ...strokes, [tap]: answer }, ...rest }));
  }
  return WORDS[tap].map((word, i) => ({
    ...made({ ...putt, [tap]: word }),
    share: tap === 'paceMeant' ? PACE_SHARES[i] : 1,
  }));
}

/** The middle player, those one step away in each score, up and down, and the stray one. */
interface Around {
  readonly middle: Someone;
  readonly ups: readonly Someone[];
  readonly downs: readonly Someone[];
  readonly stray: Someone;
}

function around(prior: ErrorsPrior, at: readonly number[]): Around {
  const moved = (i: number, by: number): Someone =>
    someoneOf(
      prior,
      at.map((score, k) => (k === i ? score + by : score)),
    );
  return {
    middle: someoneOf(prior, at),
    ups: at.map((_, i) => moved(i, STEP)),
    downs: at.map((_, i) => moved(i, -STEP)),
    stray: wideOf(prior, STRAY_TIMES),
  };
}

/** Adds the covariance over answers of the gradient, putt by putt. */
function addInformation(
  putts: readonly (readonly Possible[])[],
  list: Spots,
  about: Around,
  into: number[][],
): void {
  // Of the outcome given the words, as the fit has it; and of the words.
  const strokesOf = new PlayerStrokes(list.all);
  const chancesOf = (someone: Someone): { given: number; words: number }[][] => {
    strokesOf.fill(someone);
    return putts.map((answers) =>
      answers.map(({ strokes, said }) => {
        const words = said ? chanceOfWords(said, strokesOf) : 1;
        return { given: chanceOf(strokes, strokesOf, someone.rim, words), words };
      }),
    );
  };
  const strays = chancesOf(about.stray);
  const middles = chancesOf(about.middle);
  const ups = about.ups.map(chancesOf);
  const downs = about.downs.map(chancesOf);
  putts.forEach((answers, p) => {
    const chance = (of: typeof middles, w: number): number => mixedChance(of[p][w].given, strays[p][w].given);
    addOne(
      answers.map(({ share }, w) => share * middles[p][w].words * chance(middles, w)),
      answers.map((_, w) => ups.map((up, i) => Math.log(chance(up, w) / chance(downs[i], w)) / (2 * STEP))),
      into,
    );
  });
}

function addOne(
  chances: readonly number[],
  gradients: readonly (readonly number[])[],
  into: number[][],
): void {
  const size = into.length;
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  if (!(total > 0)) return;
  const mean = into.map((_, i) =>
    gradients.reduce((sum, gradient, w) => sum + (chances[w] / total) * gradient[i], 0),
  );
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      for (let w = 0; w < gradients.length; w++)
        into[i][j] += (chances[w] / total) * (gradients[w][i] - mean[i]) * (gradients[w][j] - mean[j]);
}

/** So many at most, evenly through a list. */
export function spreadSample<T>(list: readonly T[], most: number): T[] {
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
  const size = SCORES + HABITS;
  const precision = inverseOf(covariance) ?? [];
  // A habit that took no part is as unknown as its prior.
  const known = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_also, j) => precision[i]?.[j] ?? (i === j ? 1 : 0)),
  );
  const at = Array.from({ length: size }, (_, i) => middle[i] ?? 0);
  const about = around(prior, at);
  const withTap: { gain: TapGain; after: Matrix }[] = [];
  const ordered = inOrder(putts);
  for (const tap of taps) {
    if (!wanted()) return undefined;
    const open = ordered.filter(({ putt }) => isOpen(putt, tap));
    if (open.length === 0) continue;
    const sample = spreadSample(open, SAMPLE);
    const added = known.map((row) => row.map(() => 0));
    const list = new Spots();
    const answers = sample.map((one) => answersOf(one, tap, outcomes, list));
    addInformation(answers, list, about, added);
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
