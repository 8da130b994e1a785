/**
 * How far a modelled player lies from a published record, row by row and in one number. Answers for: which rows count, and
 * how large a difference in each counts as one. Leaves out: the search for the best player (fit.ts).
 */
import { prepareNextPutts } from '../odds/next-putts.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import {
  PUBLISHED_FIGURES,
  type PublishedFigure,
  type PublishedPlayer,
  type SourceMark,
  TOUR_HOLED,
} from '../player/published.ts';
import type { Player } from '../types.ts';
import { feetToMetres, metresToFeet } from '../units.ts';
import { playThirds } from './directions.ts';
import { CLUB_MIX, type Mix, type MixOptions, type MixRow, playMix, TOUR_MIX } from './mix.ts';

/** The greens each record was made on. */
export const MIX_OF: Readonly<Record<PublishedPlayer, Mix>> = {
  tour: TOUR_MIX,
  scratch: CLUB_MIX,
  averaging90: CLUB_MIX,
};

/** Lengths of the tour table that are fitted, feet: nearer nothing is told, farther few are holed by anyone. */
const FITTED = { from: 1.9, to: 41 };
/** Nearest length at which a rounded three-putt or mean tells of the player, feet. */
const TELLS_FROM = 8;

const TOUR_TABLE: readonly PublishedFigure[] = TOUR_HOLED.filter(
  ({ feet }) => feet >= FITTED.from && feet <= FITTED.to,
).map(({ feet, tries, holed }) => ({
  player: 'tour',
  what: 'holed',
  feet,
  value: holed / tries,
  mark: 'read',
  source: 'Broadie, in Gelman 2019',
}));

/** The tour's rounded one-putts would only repeat its table, but for lengths beyond it. */
const repeats = ({ player, what, feet }: PublishedFigure): boolean =>
  player === 'tour' && what === 'holed' && feet <= FITTED.to;

/** All rows of one record, those first that are fitted most closely. */
export const recordOf = (player: PublishedPlayer): readonly PublishedFigure[] => [
  ...(player === 'tour' ? TOUR_TABLE : []),
  ...PUBLISHED_FIGURES.filter((figure) => figure.player === player && !repeats(figure)),
];

/** A difference that counts as one, ours: shares as shares, putts, feet; figures from memory count half as much. */
const SCALES: Readonly<Record<PublishedFigure['what'], (value: number) => number>> = {
  holed: () => 0.01,
  // Between a whole per cent of rounding and a tenth of the figure: other greens, other years.
  threePutt: (value) => 0.01 + 0.1 * value,
  meanPutts: () => 0.02,
  short: () => 0.02,
  leaveFeet: () => 0.2,
  // Whether "percent" means points or a ratio is not said: 2 to 8 points, 10 to 25%.
  upLessDown: () => 0.03,
  downOverUp: () => 0.07,
};
const MARK_TIMES: Readonly<Record<SourceMark, number>> = { read: 1, secondHand: 1, memory: 2 };

/** One row of a record beside the model. */
export interface ComparedFigure {
  readonly figure: PublishedFigure;
  /** In the figure's own unit. */
  readonly ours: number;
  /** ours - published, in differences that count as one. */
  readonly scaled: number;
  /** The row takes part in the fit. */
  readonly fitted: boolean;
}

const VALUE_OF: Readonly<Record<PublishedFigure['what'], (row: MixRow) => number>> = {
  holed: ({ holed }) => holed,
  threePutt: ({ threePutt }) => threePutt,
  meanPutts: ({ expectedPutts }) => expectedPutts,
  short: ({ short }) => short,
  upLessDown: ({ upLessDown }) => upLessDown,
  downOverUp: () => Number.NaN,
  leaveFeet: ({ leave }) => metresToFeet(leave),
};

const isFitted = ({ what, feet }: PublishedFigure): boolean => what === 'holed' || feet >= TELLS_FROM;
/** What tells slope from stroke: left out where only distance is asked. */
const isByDirection = ({ what, on }: PublishedFigure): boolean => what === 'upLessDown' || on !== undefined;

const middleOf = ([low, high]: readonly [number, number]): number => (low + high) / 2;

type TableOf = NonNullable<MixOptions['tableOf']>;

/** Tables of one player, each made once: several figures are of one slope. */
function tablesMadeOnce(): TableOf {
  const made = new Map<string, NextPutts>();
  return (green, player) => {
    const key = JSON.stringify([green.surface, green.greenSpeed]);
    const table = made.get(key) ?? prepareNextPutts(green, player);
    made.set(key, table);
    return table;
  };
}

/** Means over the record's mix at the length of each figure that does not ask for one kind of putt. */
function overMix(
  record: PublishedPlayer,
  player: Player,
  figures: readonly PublishedFigure[],
  tableOf: TableOf,
): Map<number, MixRow> {
  const feet = [...new Set(figures.filter(({ on }) => on === undefined).map((figure) => figure.feet))];
  const rows = playMix({ mix: MIX_OF[record], lengths: feet.map(feetToMetres), player, tableOf });
  return new Map(rows.map((row, i) => [feet[i], row]));
}

/** What one figure of one slope and direction comes to, at the mix's middle green speed; NaN: no line. */
function onSlope(
  { feet, what, on }: PublishedFigure,
  record: PublishedPlayer,
  player: Player,
  tableOf: TableOf,
): number {
  if (on === undefined) return Number.NaN;
  const greenSpeed = middleOf(MIX_OF[record].greenSpeeds);
  const thirds = playThirds({ length: feetToMetres(feet), slope: on.slope, greenSpeed, player, tableOf });
  if (thirds === undefined) return Number.NaN;
  return what === 'downOverUp'
    ? thirds.sidehillDown.holed / thirds.sidehillUp.holed
    : metresToFeet(thirds[on.direction].leave);
}

/** Every second row of a table of bins: its neighbours say the same. */
const thinned = (figures: readonly PublishedFigure[]): readonly PublishedFigure[] =>
  figures.filter((figure, i) => i % 2 === 0 || !TOUR_TABLE.includes(figure));

export interface CompareOptions {
  /** All rows, or what a fit looks at: those that are fitted, or of these the ones that know of no direction. */
  readonly which?: 'all' | 'fitted' | 'distance';
  /** Tables of next putts at hand; missing: made. */
  readonly tableOf?: MixOptions['tableOf'];
}

/** Every row of a record beside what this player makes of the same lengths over the record's mix. */
export function compareWithRecord(
  record: PublishedPlayer,
  player: Player,
  { which = 'all', tableOf = tablesMadeOnce() }: CompareOptions = {},
): readonly ComparedFigure[] {
  const counts = (figure: PublishedFigure): boolean =>
    isFitted(figure) && (which !== 'distance' || !isByDirection(figure));
  const figures =
    which === 'all' ? recordOf(record) : thinned(recordOf(record).filter((figure) => counts(figure)));
  const rows = overMix(record, player, figures, tableOf);
  return figures.map((figure) => {
    const row = figure.on === undefined ? rows.get(figure.feet) : undefined;
    const ours = row === undefined ? onSlope(figure, record, player, tableOf) : VALUE_OF[figure.what](row);
    const scale = SCALES[figure.what](figure.value) * MARK_TIMES[figure.mark];
    return { figure, ours, scaled: (ours - figure.value) / scale, fitted: counts(figure) };
  });
}

/** Mean square of the fitted differences; 1 is a typical difference of one. */
export function misfitOf(compared: readonly ComparedFigure[]): number {
  const fitted = compared.filter((row) => row.fitted);
  return fitted.reduce((sum, { scaled }) => sum + scaled ** 2, 0) / fitted.length;
}
