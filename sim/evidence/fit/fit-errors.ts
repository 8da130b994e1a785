/**
 * A player's six errors from what was recorded of his putts. Answers for: the way from a record to a report, and when the report
 * says that the player reads too little or too much break. Leaves out: its parts (outcomes.ts, likelihood.ts, measured-strokes.ts, prior.ts,
 * posterior.ts, tell-apart.ts); sentences. MODEL.md, section 5, "The player from the record", says what is assumed.
 */
import { drawNormal } from '../../odds/normal.ts';
import { playerBy } from '../../player/errors.ts';
import { seededRandom } from '../../random.ts';
import type { Player } from '../../types.ts';
import type { Matrix } from '../cholesky.ts';
import type { RecordedPutt } from '../record.ts';
import { Grounds } from './grounds.ts';
import { likelihoodOf, STRAY_TIMES } from './likelihood.ts';
import { logOfStrokes, NO_STROKES, strokesIn } from './measured-strokes.ts';
import {
  counts,
  type FitRecord,
  type OutcomeOptions,
  type Recorded,
  recordedPutt,
  recordedSet,
  Spots,
} from './outcomes.ts';
import { type Draws, drawPosterior, FEWEST_WORTH, likeliestOf } from './posterior.ts';
import {
  defaultPrior,
  ERRORS,
  type ErrorName,
  type ErrorsPrior,
  errorOf,
  HABITS,
  playerOfScores,
  SCORES,
  someoneOf,
  TAIL,
  tailsOf,
  USUAL,
  usualPaceOf,
  widened,
  wideOf,
} from './prior.ts';
import { spreadSample, TAPS, type Tap, type TellApart, tellApart } from './tell-apart.ts';
import { USUAL_PACE } from './words.ts';

export interface FitErrorsOptions {
  /** What is thought beforehand; default: about the preset "Handicap 6", weakly. */
  readonly prior?: ErrorsPrior;
  /** Grounds worked out before: fits that share them are quicker. */
  readonly grounds?: Grounds;
  /** All putts on level ground, whatever was said of them; default false. */
  readonly level?: boolean;
  /** The pace the player usually means, m past, asked for once: good for putts without a word about it. Default: not known. */
  readonly usualPace?: number;
  readonly seed?: number | string;
  /** Which taps to weigh for `tellApart`; default all. They take about as long as the rest: none where nobody asks. */
  readonly taps?: readonly Tap[];
  /** Asked now and then with the share of work done, 0 to 1; false ends the fit with status 'stopped'. */
  readonly wanted?: (done: number) => boolean;
}

export interface ErrorRange {
  readonly low: number;
  readonly high: number;
}

/** One error: radians for lineSd, rise over run for slopeSd, shares for the others; spreads are half the width that holds 68%. */
export interface FittedError {
  /** Half of what is thought lies below. */
  readonly median: number;
  /** 90 and 95% of what is thought lie between, half of the rest on each side. */
  readonly range90: ErrorRange;
  readonly range95: ErrorRange;
  /** The same before the record. */
  readonly before90: ErrorRange;
  readonly before95: ErrorRange;
  /** Share of the doubt (variance, in the measure of the prior) that the record has taken away: near 0 it says nothing yet. */
  readonly told: number;
}

/** 'cannotTell' does not say that there is no bias. */
export type FittedBiasVerdict = 'tooLittle' | 'tooMuch' | 'cannotTell';

export interface FittedReadBias {
  /** Chances that the player plays too little break, and too much; they sum to 1. */
  readonly tooLittle: number;
  readonly tooMuch: number;
  readonly verdict: FittedBiasVerdict;
}

/** Pace meant and pace rolled, m past the hole. */
export interface FittedPace {
  /**
   * False: what was meant was neither said of half the putts nor asked for once. Then errors.paceBias is no habit apart from the
   * pace meant, and only `rolledPast`, the sum of both, is to be told.
   */
  readonly intentKnown: boolean;
  /** Meant where nothing was said. */
  readonly usual: FittedError;
  /** Where the middle ball of a level putt of 10 ft would come to rest, hole covered. */
  readonly rolledPast: FittedError;
}

export interface FittedErrors {
  readonly status: 'ok';
  /** Putts and putts in practice sets that count; putts that do not (conceded, off the green, too near or too far). */
  readonly putts: number;
  readonly practicePutts: number;
  readonly passedOver: number;
  /** Balls rolled through gates and to targets that count. */
  readonly measuredStrokes: number;
  /** The medians: a player for every screen. */
  readonly player: Player;
  readonly errors: Readonly<Record<ErrorName, FittedError>>;
  readonly readBias: FittedReadBias;
  readonly pace: FittedPace;
  /** Degrees of freedom of the t that strokes follow: 30 and more is a bell curve, below 5 has now and then a very bad one. */
  readonly tails: FittedError;
  /** Correlations of what is thought of the errors, in the order of ERRORS. */
  readonly correlations: Matrix;
  readonly tellApart: TellApart;
  /** Equally likely players: what holds of so many of them is as likely. */
  readonly players: readonly Player[];
  /** Independent draws that the ranges rest on; rough: too few for their ends to be shown as more than that. */
  readonly worth: number;
  readonly rough: boolean;
}

export type ErrorsFit =
  | FittedErrors
  /** Neither a putt that counts nor a measured stroke. */
  | { readonly status: 'nothing'; readonly passedOver: number }
  /** Ended by `wanted`. */
  | { readonly status: 'stopped' };

/**
 * A bias is claimed when all but 2% of what is thought lies on one side of none: the record of a player without bias then makes it
 * claim one in some 4% of records, less what the prior pulls towards none (MODEL.md: by simulation).
 */
export const SURE = 0.98;
/** Strokes are taken for a player of so many times the usual errors; then of so many times those found. */
const WIDE_TIMES = 1.5;
const NEAR_TIMES = 1.15;
/** Strokes that stand for one putt, and putts that the first look is at. */
const TAKEN = 100;
const FIRST_PUTTS = 160;
/** Players drawn for later use. */
const PLAYERS = 200;
/** Share of the work that is done when all outcomes are made. */
const OUTCOMES_DONE = 0.5;
const FIRST_DONE = 0.35;
/** And when only the taps are left to weigh. */
const NEARLY_DONE = 0.98;

/** Standard normal quantiles of the prior's ranges. */
const Z90 = 1.6448536269514722;
const Z95 = 1.959963984540054;

/**
 * Fits a player to his record. Pure; the same record, options and seed give the same answer.
 * @param record putts of any rounds, practice sets, the rounds themselves for their green speeds, strokes measured at practice
 */
export function fitErrors(record: FitRecord, options: FitErrorsOptions = {}): ErrorsFit {
  const { prior = defaultPrior(options.usualPace), seed = 1, taps = TAPS, wanted = () => true } = options;
  const outcomes: OutcomeOptions = {
    grounds: options.grounds ?? new Grounds(),
    level: options.level ?? false,
    wide: wideOf(prior, WIDE_TIMES),
    taken: TAKEN,
  };
  const speeds = new Map(record.rounds?.map(({ id, greenSpeed }) => [id, greenSpeed]));
  const counted = record.putts.filter(counts).map((putt) => ({ putt, greenSpeed: speeds.get(putt.roundId) }));
  const passedOver = record.putts.length - counted.length;
  const { strokes = NO_STROKES } = record;
  const measuredStrokes = strokesIn(strokes);
  const asked = counted.some(
    ({ putt }) => putt.startedAsMeant !== undefined || putt.paceAsMeant !== undefined,
  );
  const size = SCORES + (asked ? HABITS : 0);
  const logOf = (recorded: readonly Recorded[], spots: Spots): ((scores: readonly number[]) => number) => {
    const likelihood = likelihoodOf(recorded, spots.all, wideOf(prior, STRAY_TIMES));
    return (scores) => {
      const someone = someoneOf(prior, scores);
      return likelihood.of(someone) + logOfStrokes(strokes, someone, prior.about);
    };
  };
  // Twice: strokes are first taken for anybody, of some of the putts, then for the player found.
  const some = spreadSample(counted, FIRST_PUTTS);
  const first = outcomesOf(record, some, outcomes, (done) => wanted(FIRST_DONE * done));
  if (first === undefined) return { status: 'stopped' };
  if (first.recorded.length === 0 && measuredStrokes === 0) return { status: 'nothing', passedOver };
  const logFirst = logOf(first.recorded, first.spots);
  const about = likeliestOf(logFirst, size);
  const found = someoneOf(prior, about.at);
  const near: OutcomeOptions = { ...outcomes, wide: widened(found, NEAR_TIMES) };
  const made = outcomesOf(record, counted, near, (done) =>
    wanted(FIRST_DONE + (OUTCOMES_DONE - FIRST_DONE) * done),
  );
  if (made === undefined) return { status: 'stopped' };
  const { recorded, practicePutts, spots } = made;
  const drawn = drawPosterior({
    logLikelihood: logOf(recorded, spots),
    size,
    about,
    seed,
    goesOn: (done) => wanted(OUTCOMES_DONE + (1 - OUTCOMES_DONE) * done),
  });
  if (drawn === undefined) return { status: 'stopped' };
  const draws = withDays(drawn, prior, counted, seed);
  const { middle, covariance } = momentsOf(draws, size);
  const errors = Object.fromEntries(
    ERRORS.map((name, i) => [
      name,
      fittedError(draws, 1 - covariance[i][i], i, (score) => errorOf(prior, name, score)),
    ]),
  ) as Record<ErrorName, FittedError>;
  const tooLittle = draws.scores.reduce(
    (sum, scores, k) => sum + (scores[ERRORS.indexOf('readBias')] < 0 ? draws.weights[k] : 0),
    0,
  );
  const apart = tellApart({
    putts: counted,
    outcomes: near,
    prior,
    middle,
    covariance,
    taps,
    wanted: () => wanted(NEARLY_DONE),
  });
  if (apart === undefined) return { status: 'stopped' };
  const correlations = ERRORS.map((_, i) =>
    ERRORS.map((_also, j) => covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j])),
  );
  return {
    status: 'ok',
    putts: counted.length,
    practicePutts,
    passedOver,
    measuredStrokes,
    player: playerBy((name) => errors[name].median),
    errors,
    readBias: {
      tooLittle,
      tooMuch: 1 - tooLittle,
      verdict: tooLittle > SURE ? 'tooLittle' : tooLittle < 1 - SURE ? 'tooMuch' : 'cannotTell',
    },
    pace: fittedPace(draws, prior, counted, options.usualPace !== undefined),
    tails: fittedError(draws, 1 - covariance[TAIL][TAIL], TAIL, (score) => tailsOf(prior, score)),
    correlations,
    tellApart: apart,
    players: playersOf(draws, prior, seed),
    worth: draws.worth,
    rough: draws.worth < FEWEST_WORTH,
  };
}

interface CountedPutt {
  readonly putt: RecordedPutt;
  readonly greenSpeed: number | undefined;
}

/** Like putts that ended alike count as one, so many times. @returns undefined when it was not wanted to the end */
function outcomesOf(
  record: FitRecord,
  putts: readonly CountedPutt[],
  outcomes: OutcomeOptions,
  wanted: (done: number) => boolean,
): { recorded: Recorded[]; practicePutts: number; spots: Spots } | undefined {
  const alike = new Map<string, { putt: CountedPutt; times: number }>();
  for (const putt of putts) {
    const { distance, holed, miss, climb, breaks, slopeFelt, paceMeant, startedAsMeant, paceAsMeant } =
      putt.putt;
    const key = JSON.stringify([
      [distance, putt.greenSpeed, climb, breaks, slopeFelt, paceMeant, startedAsMeant, paceAsMeant],
      holed || [miss?.side, miss?.reach, miss?.leave],
    ]);
    const known = alike.get(key);
    if (known === undefined) alike.set(key, { putt, times: 1 });
    else known.times++;
  }
  const recorded: Recorded[] = [];
  const spots = new Spots();
  const steps = alike.size + (record.sets?.length ?? 0);
  let done = 0;
  for (const { putt, times } of alike.values()) {
    if (done % 8 === 0 && !wanted(done / steps)) return undefined;
    done++;
    const one = recordedPutt(putt.putt, outcomes, putt.greenSpeed, spots);
    if (one !== undefined) recorded.push({ ...one, counts: [times] });
  }
  let practicePutts = 0;
  for (const set of record.sets ?? []) {
    if (!wanted(done++ / steps)) return undefined;
    const one = recordedSet(set, outcomes, spots);
    if (one === undefined) continue;
    recorded.push(one);
    practicePutts += set.attempts;
  }
  return { recorded, practicePutts, spots };
}

function momentsOf({ scores, weights }: Draws, size: number): { middle: number[]; covariance: number[][] } {
  const each = Array.from({ length: size }, (_, i) => i);
  const middle = each.map((i) => scores.reduce((sum, draw, k) => sum + weights[k] * draw[i], 0));
  const covariance = each.map((i) =>
    each.map((j) =>
      scores.reduce((sum, draw, k) => sum + weights[k] * (draw[i] - middle[i]) * (draw[j] - middle[j]), 0),
    ),
  );
  return { middle, covariance };
}

/** @param value of a score, rising with it */
function fittedError(
  draws: Draws,
  told: number,
  which: number,
  value: (score: number) => number,
): FittedError {
  const quantile = quantilesOf(draws, (scores) => scores[which]);
  const range = (low: number, high: number): ErrorRange => ({ low: value(low), high: value(high) });
  return {
    median: value(quantile(0.5)),
    range90: range(quantile(0.05), quantile(0.95)),
    range95: range(quantile(0.025), quantile(0.975)),
    before90: range(-Z90, Z90),
    before95: range(-Z95, Z95),
    told: Math.max(0, Math.min(1, told)),
  };
}

/** Quantiles of something of the draws. */
function quantilesOf(
  { scores: all, weights }: Draws,
  of: (scores: readonly number[]) => number,
): (part: number) => number {
  const order = all
    .map((scores, k) => ({ score: of(scores), weight: weights[k] }))
    .sort((one, other) => one.score - other.score);
  /** Between draws along straight lines: each stands in the middle of its weight. */
  return (part) => {
    let below = 0;
    let lastMiddle = 0;
    for (let k = 0; k < order.length; k++) {
      const middle = below + order[k].weight / 2;
      if (middle >= part) {
        if (k === 0) return order[0].score;
        const share = (part - lastMiddle) / (middle - lastMiddle || 1);
        return order[k - 1].score + share * (order[k].score - order[k - 1].score);
      }
      lastMiddle = middle;
      below += order[k].weight;
    }
    return order[order.length - 1].score;
  };
}

/**
 * Habits differ from day to day, SD: of pace, share of the distance; of reading, share of the slope (ours). The mean of so many days
 * says so much less of the habit itself.
 */
const DAY_PACE = 0.015;
const DAY_READ = 0.08;

/** Draws as far apart as so few days leave them: of rounds of equal size exactly what an offset for each day, averaged over, would do. */
function withDays(
  draws: Draws,
  prior: ErrorsPrior,
  putts: readonly CountedPutt[],
  seed: number | string,
): Draws {
  const sizes = new Map<string, number>();
  for (const { putt } of putts) sizes.set(putt.roundId, (sizes.get(putt.roundId) ?? 0) + 1);
  let squares = 0;
  for (const size of sizes.values()) squares += size * size;
  if (squares === 0) return draws;
  const days = putts.length ** 2 / squares;
  const random = seededRandom(`days ${seed}`);
  const [pace, read] = [ERRORS.indexOf('paceBias'), ERRORS.indexOf('readBias')];
  return {
    ...draws,
    scores: draws.scores.map((scores) => {
      const moved = [...scores];
      moved[pace] += (DAY_PACE / prior.paceBiasSd / Math.sqrt(days)) * drawNormal(random);
      moved[read] += (DAY_READ / prior.readBiasSd / Math.sqrt(days)) * drawNormal(random);
      return moved;
    }),
  };
}

/** Length by which what rolls past is told, m: a level putt of 10 ft. */
const TOLD_AT = 3.048;

function fittedPace(
  draws: Draws,
  prior: ErrorsPrior,
  putts: readonly CountedPutt[],
  asked: boolean,
): FittedPace {
  const said = putts.filter(({ putt }) => putt.paceMeant !== undefined).length;
  const byWord = said > 0 && 2 * said >= putts.length;
  const bias = ERRORS.indexOf('paceBias');
  const past = (pace: number, habit: number): number => pace + habit * (TOLD_AT + pace);
  const usualOf = (score: number): number => usualPaceOf(prior, score);
  const rolled = (scores: readonly number[]): number =>
    past(byWord ? USUAL_PACE : usualOf(scores[USUAL]), errorOf(prior, 'paceBias', scores[bias]));
  const quantile = quantilesOf(draws, rolled);
  const range = (part: number): ErrorRange => ({ low: quantile(part), high: quantile(1 - part) });
  // Before the record: the two are independent, one log-normal, one normal; the ends by first order about the middle.
  const spread = Math.hypot(
    byWord ? 0 : prior.usualPace * prior.usualPaceSpread,
    prior.paceBiasSd * (TOLD_AT + prior.usualPace),
  );
  const before = (z: number): ErrorRange => ({
    low: prior.usualPace - z * spread,
    high: prior.usualPace + z * spread,
  });
  const width = range(0.05);
  const left = ((width.high - width.low) / (2 * Z90 * spread)) ** 2;
  const usualLeft = quantilesOf(draws, (scores) => scores[USUAL]);
  const usualWidth = (usualLeft(0.95) - usualLeft(0.05)) / (2 * Z90);
  return {
    intentKnown: asked || byWord,
    usual: fittedError(draws, 1 - usualWidth ** 2, USUAL, usualOf),
    rolledPast: {
      median: quantile(0.5),
      range90: width,
      range95: range(0.025),
      before90: before(Z90),
      before95: before(Z95),
      told: Math.max(0, Math.min(1, 1 - left)),
    },
  };
}

/** Taken evenly through the weights: far less noise than drawing each for itself. */
function playersOf({ scores, weights }: Draws, prior: ErrorsPrior, seed: number | string): Player[] {
  const offset = seededRandom(`players ${seed}`)();
  const players: Player[] = [];
  let sum = 0;
  for (let k = 0; k < scores.length; k++) {
    sum += weights[k];
    while (players.length < PLAYERS && (players.length + offset) / PLAYERS < sum)
      players.push(playerOfScores(prior, scores[k]));
  }
  return players;
}
