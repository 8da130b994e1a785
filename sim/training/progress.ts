/**
 * Is the reading better than it was, or were the questions easier?
 *
 * Answers for: bias of the read in each period; spread, typical error and the change between the last two at one fixed mix of
 * putts. Leaves out: which reads belong to which period; causes. Periods chosen after a look at the record find changes that
 * are not there.
 * Definition. A read is off by r = (aim - true)/true, of the break. Typical error: the mean of |r|, which a bias and a spread
 * both make larger; the verdict is on it. |r| and the size of what is left of r after the bias are fitted as a level for each
 * period plus what the kind of putt makes of it in any period: how much it breaks (its logarithm, and c/sqrt(t^2 + c^2), the part that
 * the hand's own inch has in it), its side, climb, length, green speed and pace. The levels are read off at the reference putt; the
 * change is the same at any putt (analysis of covariance: Cochran, Biometrics 13, 261, 1957, memory). Reads are weighted as in
 * evidence/reading-bias.ts; margins hold though reads of other putts spread otherwise and reads of one day go together (least-squares.ts). Where the two periods share no way of telling the
 * player's change from the putts', there is no verdict.
 * Tried and dropped: comparing like with like in bins of difficulty, which leaves most bins of a month empty.
 */
import { HOLE_RADIUS } from '../constants.ts';
import { offOf, type ReadingBias, readingBias } from '../evidence/reading-bias.ts';
import type { TrendVerdict } from '../evidence/trend.ts';
import { type LinearFit, linearFit } from '../statistics/least-squares.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { feetToMetres, inchesToMetres } from '../units.ts';
import type { Question } from './putt-question.ts';
import type { DatedRead } from './reader-model.ts';

/** Fewer reads than this in a period show no change, and make no level. */
export const FEWEST_READS = 10;
/** With less true break than this a share says nothing, m. */
const LEAST_BREAK = inchesToMetres(1);
/** The mean of |z| for a normal z, inverted: mean size to standard deviation. */
const SIZE_TO_SPREAD = Math.sqrt(Math.PI / 2);

/** The putt at which levels are read off: 10 ft at 10 ft of green speed, breaking 8 in, neither side, level, between die and firm. */
const REFERENCE = {
  aim: inchesToMetres(8),
  length: feetToMetres(10),
  greenSpeed: feetToMetres(10),
  pace: inchesToMetres(9),
};

export interface Margin {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface PeriodReading {
  /** Reads of putts that break at least an inch. */
  readonly count: number;
  /** Over the putts as they were, as every screen has it; undefined: too few reads. */
  readonly bias: ReadingBias | undefined;
  /** At the reference putt, shares of the break; undefined: too few reads, or too few days to tell how days differ. */
  readonly spread: Margin | undefined;
  readonly error: Margin | undefined;
  /** Mean of |r| over the putts as they were. */
  readonly plainError: number | undefined;
  /** Mean size of the true aim offset, m. */
  readonly meanBreak: number | undefined;
}

export interface ReadingChange extends Margin {
  /** Last period less the one before, of the typical error at one and the same mix of putts: below 0 better. */
  readonly verdict: TrendVerdict;
  /** The change of the typical error as the putts were. */
  readonly plain: number;
  /** The part of it that the putts made: below 0 easier ones. */
  readonly fromPutts: number;
}

export interface ReadingProgress {
  /** In the order given. */
  readonly periods: readonly PeriodReading[];
  /** undefined: too few reads in one of the last two, or no way of telling. */
  readonly change: ReadingChange | undefined;
}

interface Row {
  readonly period: number;
  readonly day: string;
  readonly share: number;
  readonly weight: number;
  readonly putt: readonly number[];
}

const handPart = (aim: number): number => HOLE_RADIUS / Math.hypot(aim, HOLE_RADIUS);

/** What a putt itself may make of an error, each 0 at the reference putt. */
const puttColumns = (question: Omit<Question, 'number' | 'group'>): number[] => {
  const { trueAim, length, greenSpeed, pace, direction, climb } = question;
  const size = Math.abs(trueAim);
  return [
    Math.log(size / REFERENCE.aim),
    handPart(size) - handPart(REFERENCE.aim),
    direction === 'leftToRight' ? -0.5 : direction === 'rightToLeft' ? 0.5 : 0,
    climb === 'up' ? 1 : 0,
    climb === 'down' ? 1 : 0,
    Math.log(length / REFERENCE.length),
    greenSpeed - REFERENCE.greenSpeed,
    pace - REFERENCE.pace,
  ];
};

const rowOf = ({ question, aim, day }: DatedRead, period: number): Row[] => {
  const { trueAim } = question;
  if (Math.abs(trueAim) < LEAST_BREAK) return [];
  return [{ period, day, ...offOf({ trueAim, aim }), putt: puttColumns(question) }];
};

/** Columns of the fit: one level for all, what the putts make, and each later period's difference from the first. */
const columnsOf = (rows: readonly Row[], periods: readonly number[]): number[][] => [
  rows.map(() => 1),
  ...rows[0].putt.map((_column, index) => rows.map(({ putt }) => putt[index])),
  ...periods.slice(1).map((period) => rows.map((row) => (row.period === period ? 1 : 0))),
];

const ownAims = (reads: readonly DatedRead[]) =>
  reads.map(({ question: { trueAim }, aim, day }) => ({ trueAim, aim, day }));

const mean = (values: readonly number[]): number | undefined => meanInterval(values)?.value;

/**
 * Reading by period.
 * @param periods reads of each, none in two of them; oldest period first
 */
export function readingProgress(
  periods: readonly (readonly DatedRead[])[],
  confidence = 0.95,
): ReadingProgress {
  const all = periods.flatMap((reads, period) => reads.flatMap((read) => rowOf(read, period)));
  const countOf = (period: number): number => all.filter((row) => row.period === period).length;
  const full = periods.flatMap((_reads, period) => (countOf(period) >= FEWEST_READS ? [period] : []));
  const rows = all.filter(({ period }) => full.includes(period));
  const columns = rows.length > 0 ? columnsOf(rows, full) : [];
  const weights = rows.map(({ weight }) => weight);
  const days = rows.map(({ day }) => day);
  const fitted = (values: readonly number[]): LinearFit => linearFit(values, columns, weights, days);
  const biasFit = fitted(rows.map(({ share }) => share));
  const errorFit = fitted(rows.map(({ share }) => Math.abs(share)));
  const spreadFit = fitted(
    biasFit.residuals.map(
      (residual, index) => (SIZE_TO_SPREAD * Math.abs(residual)) / Math.sqrt(biasFit.slack[index]),
    ),
  );
  /** Parts of the sum of coefficients that is a period's level. */
  const levelOf = (period: number): number[] =>
    columns.map((_column, index) =>
      index === 0 ||
      (index >= columns.length - full.length + 1 && full[index - columns.length + full.length] === period)
        ? 1
        : 0,
    );
  const reading = (period: number): PeriodReading => {
    const own = all.filter((row) => row.period === period);
    const level = (of: LinearFit): Margin | undefined =>
      full.includes(period) ? of.estimate(levelOf(period), confidence) : undefined;
    const positive = (margin: Margin | undefined): Margin | undefined =>
      margin && { ...margin, value: Math.max(0, margin.value), low: Math.max(0, margin.low) };
    return {
      count: own.length,
      bias: full.includes(period) ? readingBias(ownAims(periods[period])) : undefined,
      spread: positive(level(spreadFit)),
      error: positive(level(errorFit)),
      plainError: mean(own.map(({ share }) => Math.abs(share))),
      meanBreak: mean(
        periods[period].flatMap(({ question }) =>
          Math.abs(question.trueAim) < LEAST_BREAK ? [] : [Math.abs(question.trueAim)],
        ),
      ),
    };
  };
  const readings = periods.map((_reads, period) => reading(period));
  return { periods: readings, change: changeOf(readings) };

  function changeOf(found: readonly PeriodReading[]): ReadingChange | undefined {
    const [before, after] = [periods.length - 2, periods.length - 1];
    if (!full.includes(before) || !full.includes(after)) return undefined;
    const [from, to] = [levelOf(before), levelOf(after)];
    const change = errorFit.estimate(
      to.map((part, index) => part - from[index]),
      confidence,
      2,
    );
    const [plainBefore, plainAfter] = [found[before].plainError, found[after].plainError];
    if (change === undefined || plainBefore === undefined || plainAfter === undefined) return undefined;
    const verdict = change.high < 0 ? 'better' : change.low > 0 ? 'worse' : 'cannotTell';
    const plain = plainAfter - plainBefore;
    return { ...change, verdict, plain, fromPutts: plain - change.value };
  }
}
