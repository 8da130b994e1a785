/**
 * What is known of a player's eye, kind by kind: bias and spread of the read as shares of the break, and how sure.
 *
 * Answers for: the posterior, and one draw from it. Leaves out: which question follows (choose-next.ts), intervals to show
 * (summary.ts, progress.ts).
 * Model. A read is off by r = (aim - true)/true. Its mean is a bias of the player plus one effect for each kind the putt is of; its
 * spread is the player's times one factor for each kind, each about 1. Effects and factors have priors about nothing, so that a kind with
 * few reads borrows from all others (partial pooling; Gelman & Hill 2007, ch. 12, memory). As in evidence/reading-bias.ts a read
 * on a nearly straight putt carries the weight w = t^2/(t^2 + c^2), its variance being sigma^2/w.
 * Short cuts: spreads are fitted to the residuals of one fit with the prior's spread, each kind by itself (scaled inverse chi-squared);
 * the mean then takes the player's fitted spread as known.
 */

import { offOf } from '../evidence/reading-bias.ts';
import { choleskyFactor, type Matrix, solveFactored, solveUpper } from '../maths/cholesky.ts';
import { drawNormal } from '../maths/normal.ts';
import type { Random } from './draw.ts';
import { kindsOf, PUTT_READ_KINDS, type PuttReadKind } from './kinds.ts';
import type { Question } from './putt-question.ts';

/** Priors, shares of the break; ours, weak: named reads that spread by 30 to 55%. */
const BIAS_SD = 0.3;
const EFFECT_SD = 0.15;
const SPREAD = 0.4;
/** What the prior of the player's spread counts for, in reads, and that of a kind's being the same as all. */
const SPREAD_READS = 4;
const KIND_READS = 8;

/** A read to learn from. */
export interface SeenRead {
  readonly question: Omit<Question, 'number' | 'group'>;
  /** m, positive left. */
  readonly aim: number;
}

/** And the day it was made on: reads of the same day have the same. */
export interface DatedRead extends SeenRead {
  readonly day: string;
}

interface Spread {
  readonly degrees: number;
  /** Mean square, share squared. */
  readonly scale: number;
}

export interface ReaderModel {
  /** Bias, then the effect of each kind in the order of PUTT_READ_KINDS. */
  readonly mean: readonly number[];
  /** Lower factor of the precision of the above. */
  readonly factor: Matrix;
  readonly spread: Spread;
  readonly spreadOf: readonly Spread[];
}

/** One player who fits what was seen: mean square error of the read by kinds, as a share of the break. */
export interface DrawnReader {
  /** Root mean square error for a putt of these kinds, share. */
  errorOf(kinds: readonly PuttReadKind[]): number;
}

interface Row {
  readonly share: number;
  readonly weight: number;
  /** 0 for the bias, then 1 + index of each kind. */
  readonly places: readonly number[];
}

const rowOf = ({ question, aim }: SeenRead): Row[] => {
  const off = offOf({ trueAim: question.trueAim, aim });
  if (off.weight === 0) return [];
  return [{ ...off, places: [0, ...kindsOf(question).map((kind) => 1 + PUTT_READ_KINDS.indexOf(kind))] }];
};

const SIZE = 1 + PUTT_READ_KINDS.length;

function fitMean(rows: readonly Row[], variance: number): { mean: readonly number[]; factor: Matrix } {
  const precision = Array.from({ length: SIZE }, (_row, i) =>
    Array.from({ length: SIZE }, (_column, j) => (i === j ? 1 / (i === 0 ? BIAS_SD : EFFECT_SD) ** 2 : 0)),
  );
  const right = new Array<number>(SIZE).fill(0);
  for (const { share, weight, places } of rows)
    for (const i of places) {
      right[i] += (weight * share) / variance;
      for (const j of places) precision[i][j] += weight / variance;
    }
  const factor = choleskyFactor(precision);
  if (factor === undefined) throw new Error('Got a precision that is none, expected the prior to see to it.');
  return { mean: solveFactored(factor, right), factor };
}

/** @param reads in any order */
export function fitReader(reads: readonly SeenRead[]): ReaderModel {
  const rows = reads.flatMap(rowOf);
  const first = fitMean(rows, SPREAD ** 2);
  const squares = rows.map(
    ({ share, weight, places }) =>
      weight * (share - places.reduce((sum, place) => sum + first.mean[place], 0)) ** 2,
  );
  const spreadFrom = (prior: number, count: number, members: readonly number[]): Spread => ({
    degrees: count + members.length,
    scale: (count * prior + members.reduce((sum, one) => sum + one, 0)) / (count + members.length),
  });
  const spread = spreadFrom(SPREAD ** 2, SPREAD_READS, squares);
  const spreadOf = PUTT_READ_KINDS.map((_kind, index) =>
    spreadFrom(
      spread.scale,
      KIND_READS,
      squares.filter((_square, row) => rows[row].places.includes(1 + index)),
    ),
  );
  return { ...fitMean(rows, spread.scale), spread, spreadOf };
}

/**
 * A chi-squared variable made from a normal one, 0 or more (Wilson & Hilferty, PNAS 17, 684 (1931)): near enough for a draw, and a
 * hundredth of the work of the quantile itself.
 */
const chiSquaredAt = (z: number, degrees: number): number => {
  const ninth = 2 / (9 * degrees);
  return degrees * Math.max(0, 1 - ninth + z * Math.sqrt(ninth)) ** 3;
};

const drawSpread = ({ degrees, scale }: Spread, random: Random): number =>
  // At most four times too wide: the approximation of chi-squared reaches 0 in the far tail of few degrees.
  (scale * degrees) / Math.max(degrees / 16, chiSquaredAt(drawNormal(random), degrees));

/** A player drawn from the posterior. */
export function drawReader({ mean, factor, spread, spreadOf }: ReaderModel, random: Random): DrawnReader {
  const away = solveUpper(
    factor,
    mean.map(() => drawNormal(random)),
  );
  const effects = mean.map((value, i) => value + away[i]);
  const whole = drawSpread(spread, random);
  const factors = spreadOf.map((one) => drawSpread(one, random) / spread.scale);
  return {
    errorOf(kinds) {
      const places = kinds.map((kind) => PUTT_READ_KINDS.indexOf(kind));
      const bias = places.reduce((sum, place) => sum + effects[1 + place], effects[0]);
      const variance = places.reduce((product, place) => product * factors[place], whole);
      return Math.sqrt(bias ** 2 + variance);
    },
  };
}
