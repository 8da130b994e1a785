/**
 * What is thought of a player before his record is looked at, and the measure in which a fit searches. Answers for: the five errors
 * and two habits of speech as normal scores, one for each. Leaves out: the record.
 *
 * Each score is standard normal before the record: 0 is the middle, 1 is one SD more. The three spreads are log-normal about a
 * preset's, the two biases normal about 0. The habits (what this player calls "as meant") are unknowns of no interest in
 * themselves; they take part only where such answers were given.
 */
import { presetOf } from '../../player/presets.ts';
import type { Player } from '../../types.ts';
import type { Bands } from './error-shares.ts';
import { BAND_SPREAD, PACE_BAND, START_BAND } from './words.ts';

/** Fitted errors, in the order of scores. */
export const ERRORS = ['lineSd', 'paceSd', 'readSd', 'paceBias', 'readBias'] as const;
export type ErrorName = (typeof ERRORS)[number];

export interface ErrorsPrior {
  /** Whose spreads are the middles; its biases do not count. */
  readonly about: Player;
  /** SD of the logarithm of each spread. */
  readonly logSpread: number;
  /** SD, share of the distance; and share of the break. */
  readonly paceBiasSd: number;
  readonly readBiasSd: number;
}

/**
 * Ours. Spreads: from the tour's presets to those of a golfer averaging 90 the line grows by a factor e^0.46, the pace by e^0.27, the read by
 * e^0.61: one SD either side of the middle takes in both ends in line and nearly in read. Biases: one player in three misses by
 * more than 5 points of distance, or two fifths of the break, to one side; that many play half the break and less is said of amateurs
 * (common practice, no source).
 */
const SPREADS = { logSpread: 0.45, paceBiasSd: 0.05, readBiasSd: 0.4 };

/** About the preset between scratch and averaging 90, from which the records of most players are not far. */
export function defaultPrior(): ErrorsPrior {
  const preset = presetOf('handicap-6');
  if (preset === undefined) throw new Error("Got no preset 'handicap-6'; expected it in player/presets.ts.");
  return { about: preset.player, ...SPREADS };
}

/** Scores as many as errors, and two more where habits take part. */
export const HABITS = 2;

const SPREAD_NAMES = ['lineSd', 'paceSd', 'readSd'] as const;

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
export function playerOfScores(prior: ErrorsPrior, scores: readonly number[]): Player {
  const [line, pace, read] = SPREAD_NAMES.map((name, i) => errorOf(prior, name, scores[i]));
  return {
    lineSd: line,
    paceSd: pace,
    readSd: read,
    paceBias: errorOf(prior, 'paceBias', scores[3]),
    readBias: errorOf(prior, 'readBias', scores[4]),
  };
}

/** What "as meant" takes in, from the scores that follow the errors; without them the middles. */
export const bandsOfScores = (scores: readonly number[]): Bands => ({
  start: START_BAND * Math.exp(BAND_SPREAD * (scores[ERRORS.length] ?? 0)),
  pace: PACE_BAND * Math.exp(BAND_SPREAD * (scores[ERRORS.length + 1] ?? 0)),
});
