/**
 * What is thought of a player before his record is looked at, and the measure in which a fit searches. Answers for: the six errors,
 * four things of no interest in themselves and two habits of speech as normal scores, one for each. Leaves out: the record.
 *
 * Each score is standard normal before the record: 0 is the middle, 1 is one SD more. The four spreads are log-normal about a
 * preset's, the two biases normal about 0. The habits of speech (what this player calls "as meant") take part only where such answers
 * were given.
 */
import { LOG_SPREAD, playerBy } from '../../player/errors.ts';
import { presetOf } from '../../player/presets.ts';
import type { Player } from '../../types.ts';
import type { Bands, Someone } from './player-strokes.ts';
import {
  ASKED_PACE_SPREAD,
  BAND_SPREAD,
  PACE_BAND,
  START_BAND,
  USUAL_PACE,
  USUAL_PACE_SPREAD,
} from './words.ts';

/** Fitted errors, in the order of scores. */
export const ERRORS = ['lineSd', 'paceSd', 'slopeSd', 'speedSd', 'paceBias', 'readBias'] as const;
export type ErrorName = (typeof ERRORS)[number];

export interface ErrorsPrior {
  /** Whose spreads are the middles; its biases do not count. */
  readonly about: Player;
  /** SD of the logarithm of each spread. */
  readonly logSpread: number;
  /** SD, share of the distance; and share of the slope. */
  readonly paceBiasSd: number;
  readonly readBiasSd: number;
  /** Pace meant where nothing was said: middle, m past, and SD of its logarithm. */
  readonly usualPace: number;
  readonly usualPaceSpread: number;
  /** Degrees of freedom of strokes: middle, and SD of the logarithm of what lies above FEWEST_DEGREES. */
  readonly tails: number;
  readonly tailsSpread: number;
  /** SD of the logarithm of what the hole takes in beside the rim rule. */
  readonly rimSpread: number;
}

/**
 * Ours. Spreads: as golfers differ (player/errors.ts). Biases: one player in three misses by more than 5 points of distance, or sees
 * slope by more than two fifths too small or too large; that many play half the break and less is said of amateurs (common practice, no
 * source).
 */
const SPREADS = { logSpread: LOG_SPREAD, paceBiasSd: 0.05, readBiasSd: 0.4 };

/**
 * Degrees of freedom of strokes: log-normal, at its middle now and then one far off, at two SD a bell curve or two thirds of tails that no
 * mean survives (ours).
 */
const TAILS = { tails: 12, tailsSpread: 0.7 };
/** Fewer have no spread, more are a bell curve. */
const FEWEST_DEGREES = 2.1;
/** What drops beside the rim rule, share of its fastest: log-normal about the rule (ours: the rule is a rigid rim on a level green). */
const RIM = { rimSpread: 0.1 };
/** How much of what was misread is in the words: half, from a tenth to nine tenths at 1.6 SD (ours). */
const SAID_SPREAD = 1.4;

/** About the preset between scratch and averaging 90. @param usualPace asked of the player once, m past */
export function defaultPrior(usualPace?: number): ErrorsPrior {
  const preset = presetOf('handicap-6');
  if (preset === undefined) throw new Error("Got no preset 'handicap-6'; expected it in player/presets.ts.");
  return {
    about: preset.player,
    ...SPREADS,
    ...TAILS,
    ...RIM,
    usualPace: usualPace ?? USUAL_PACE,
    usualPaceSpread: usualPace === undefined ? USUAL_PACE_SPREAD : ASKED_PACE_SPREAD,
  };
}

/** Scores after those of the errors: usual pace, tails, rim, what the words are of. */
export const USUAL = ERRORS.length;
export const TAIL = USUAL + 1;
const RIM_SCORE = USUAL + 2;
const SAID = USUAL + 3;
/** So many scores, and two more where habits of speech take part. */
export const SCORES = ERRORS.length + 4;
export const HABITS = 2;

/** An error from its score. */
export function errorOf(
  { about, logSpread, paceBiasSd, readBiasSd }: ErrorsPrior,
  name: ErrorName,
  score: number,
): number {
  if (name === 'paceBias') return paceBiasSd * score;
  if (name === 'readBias') return readBiasSd * score;
  return about[name] * Math.exp(logSpread * score);
}

/** @param scores in the order of ERRORS */
export const playerOfScores = (prior: ErrorsPrior, scores: readonly number[]): Player =>
  playerBy((name) => errorOf(prior, name, scores[ERRORS.indexOf(name)]));

export const usualPaceOf = ({ usualPace, usualPaceSpread }: ErrorsPrior, score: number): number =>
  usualPace * Math.exp(usualPaceSpread * score);
export const tailsOf = ({ tails, tailsSpread }: ErrorsPrior, score: number): number =>
  FEWEST_DEGREES + (tails - FEWEST_DEGREES) * Math.exp(tailsSpread * score);

/** What "as meant" takes in, from the scores that follow the others; without them the middles. */
const bandsOfScores = (scores: readonly number[]): Bands => ({
  start: START_BAND * Math.exp(BAND_SPREAD * (scores[SCORES] ?? 0)),
  pace: PACE_BAND * Math.exp(BAND_SPREAD * (scores[SCORES + 1] ?? 0)),
});

/** Who it is at these scores; those that are missing are in the middle. */
export const someoneOf = (prior: ErrorsPrior, scores: readonly number[]): Someone => ({
  player: playerOfScores(prior, scores),
  usualPace: usualPaceOf(prior, scores[USUAL] ?? 0),
  tails: tailsOf(prior, scores[TAIL] ?? 0),
  rim: Math.exp(prior.rimSpread * (scores[RIM_SCORE] ?? 0)),
  saidAsSeen: 1 / (1 + Math.exp(-SAID_SPREAD * (scores[SAID] ?? 0))),
  bands: bandsOfScores(scores),
});

/** The same, with so many times the spreads, and tails. */
export function widened(someone: Someone, times: number): Someone {
  const { player } = someone;
  return {
    ...someone,
    tails: Math.min(someone.tails, WIDE_TAILS),
    player: {
      ...player,
      lineSd: times * player.lineSd,
      paceSd: times * player.paceSd,
      slopeSd: times * player.slopeSd,
      speedSd: times * player.speedSd,
    },
  };
}
const WIDE_TAILS = 5;

/** A player of so many times the usual errors. */
export const wideOf = (prior: ErrorsPrior, times: number): Someone =>
  widened(someoneOf(prior, new Array(SCORES).fill(0)), times);
