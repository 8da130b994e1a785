/**
 * What published records say of players: holed shares, three-putts, mean putts, leaves. Data alone, each with its source and
 * its mark (MODEL.md): read, second-hand or memory. Distances are in feet, as printed; everything else that leaves this file
 * for the engine is converted by its user. Leaves out: what our model gives for the same (benchmarks/).
 */

/** How far a figure can be trusted: seen in the source, in someone else's account of it, or recalled only. */
export type SourceMark = 'read' | 'secondHand' | 'memory';

/** Putts tried and holed at one distance. */
export interface HoledRow {
  /** Feet; in a table of bins the mean distance within the bin. */
  readonly feet: number;
  readonly tries: number;
  readonly holed: number;
}

const holedRows = (rows: readonly (readonly [number, number, number])[]): readonly HoledRow[] =>
  rows.map(([feet, tries, holed]) => ({ feet, tries, holed }));

/**
 * D. Berry, Statistics: A Bayesian Perspective, 1996; printed in A. Gelman & D. Nolan, "A probability model for golf
 * putting", Teaching Statistics 24(3), 2002. Professionals. Read.
 */
export const BERRY_HOLED = holedRows([
  [2, 1443, 1346],
  [3, 694, 577],
  [4, 455, 337],
  [5, 353, 208],
  [6, 272, 149],
  [7, 256, 136],
  [8, 240, 111],
  [9, 217, 69],
  [10, 200, 67],
  [11, 237, 75],
  [12, 202, 52],
  [13, 192, 46],
  [14, 174, 54],
  [15, 167, 28],
  [16, 201, 27],
  [17, 195, 31],
  [18, 191, 33],
  [19, 147, 20],
  [20, 152, 24],
]);

/**
 * M. Broadie, tour professionals 2016-2018, mean distance in each bin; printed in A. Gelman, "Model building and expansion
 * for golf putting", 2019. Read.
 */
export const TOUR_HOLED = holedRows([
  [0.28, 45198, 45183],
  [0.97, 183020, 182899],
  [1.93, 169503, 168594],
  [2.92, 113094, 108953],
  [3.93, 73855, 64740],
  [4.94, 53659, 41106],
  [5.94, 42991, 28205],
  [6.95, 37050, 21334],
  [7.95, 33275, 16615],
  [8.95, 30836, 13503],
  [9.95, 28637, 11060],
  [10.95, 26239, 9032],
  [11.95, 24636, 7687],
  [12.95, 22876, 6432],
  [14.43, 41267, 9813],
  [16.43, 35712, 7196],
  [18.44, 31573, 5290],
  [20.44, 28280, 4086],
  [21.95, 13238, 1642],
  [24.39, 46570, 4767],
  [28.4, 38422, 2980],
  [32.39, 31641, 1996],
  [36.39, 25604, 1327],
  [40.37, 20366, 834],
  [44.38, 15977, 559],
  [48.37, 11770, 311],
  [52.36, 8708, 231],
  [57.25, 8878, 204],
  [63.23, 5492, 103],
  [69.18, 3087, 35],
  [75.19, 1742, 24],
]);

/** Whose record; 'averaging90' is a golfer who takes 90 strokes a round. */
export const PUBLISHED_PLAYERS = ['tour', 'scratch', 'averaging90'] as const;
export type PublishedPlayer = (typeof PUBLISHED_PLAYERS)[number];

/** One figure of one player. Shares are 0 to 1; a leave is in feet, among misses. */
export interface PublishedFigure {
  readonly player: PublishedPlayer;
  /** upLessDown: holed uphill less holed downhill; downOverUp: sidehill with a fall over sidehill with a climb, a ratio. */
  readonly what: 'holed' | 'threePutt' | 'meanPutts' | 'short' | 'leaveFeet' | 'upLessDown' | 'downOverUp';
  readonly feet: number;
  readonly value: number;
  readonly mark: SourceMark;
  readonly source: string;
  /** Only putts of this kind; missing: all. */
  readonly on?: { readonly slope: number; readonly direction: Direction };
}

/** Which way a putt runs: from below the hole, from beside it, from above. */
export type Direction = 'uphill' | 'sidehill' | 'downhill';

const ACCOUNT = 'Broadie, in an account';
const BOOK = 'Broadie 2014';
const STUDY = 'Broadie 2020';
/** "5 percent more often" uphill than downhill; "almost 20 percent less often" sidehill-downhill than sidehill-uphill on steep slopes. */
const COLUMN = 'Broadie 2019, a column';

type Marked = readonly [feet: number, value: number, mark: SourceMark];

const figures = (
  player: PublishedPlayer,
  what: PublishedFigure['what'],
  source: string,
  rows: readonly Marked[],
  on?: PublishedFigure['on'],
): PublishedFigure[] => rows.map(([feet, value, mark]) => ({ player, what, feet, value, mark, source, on }));

const oneMark = (mark: SourceMark, rows: readonly (readonly [number, number])[]): Marked[] =>
  rows.map(([feet, value]) => [feet, value, mark]);

/**
 * Figures printed as whole per cents or hundredths of a putt. The short share of "amateurs" at 10 ft stands with the golfer
 * averaging 90: the study's amateurs are not that golfer alone.
 */
export const PUBLISHED_FIGURES: readonly PublishedFigure[] = [
  ...figures('tour', 'holed', BOOK, [
    [3, 0.96, 'secondHand'],
    [5, 0.77, 'secondHand'],
    [8, 0.5, 'secondHand'],
    [10, 0.4, 'secondHand'],
    [15, 0.23, 'read'],
    [20, 0.15, 'secondHand'],
    [30, 0.07, 'read'],
    [40, 0.04, 'read'],
    [50, 0.03, 'read'],
    [60, 0.02, 'read'],
  ]),
  ...figures('tour', 'threePutt', BOOK, [
    [3, 0.001, 'memory'],
    [5, 0.003, 'memory'],
    [8, 0.006, 'memory'],
    [10, 0.007, 'memory'],
    [15, 0.013, 'memory'],
    [20, 0.022, 'read'],
    [30, 0.05, 'memory'],
    [40, 0.1, 'read'],
    [50, 0.17, 'memory'],
    [60, 0.23, 'memory'],
  ]),
  ...figures('tour', 'meanPutts', BOOK, [
    [3, 1.04, 'memory'],
    [5, 1.23, 'memory'],
    [8, 1.5, 'read'],
    [10, 1.61, 'memory'],
    [15, 1.78, 'memory'],
    [20, 1.87, 'memory'],
    [30, 1.98, 'memory'],
    [33, 2.0, 'read'],
    [40, 2.06, 'memory'],
    [50, 2.14, 'memory'],
    [60, 2.21, 'memory'],
  ]),
  ...figures('tour', 'short', STUDY, [[10, 0.07, 'read']]),
  ...figures('tour', 'leaveFeet', STUDY, [[10, 1.6, 'read']]),
  ...figures('tour', 'upLessDown', COLUMN, [[8, 0.05, 'read']]),
  ...figures('tour', 'downOverUp', COLUMN, [[8, 0.82, 'read']], { slope: 0.03, direction: 'sidehill' }),
  ...figures('tour', 'leaveFeet', STUDY, [[10, 1.1, 'read']], { slope: 0.03, direction: 'uphill' }),
  ...figures('tour', 'leaveFeet', STUDY, [[10, 2.1, 'read']], { slope: 0.03, direction: 'downhill' }),
  ...figures(
    'scratch',
    'holed',
    ACCOUNT,
    oneMark('secondHand', [
      [3, 0.93],
      [5, 0.66],
      [8, 0.41],
      [10, 0.33],
      [20, 0.14],
    ]),
  ),
  ...figures(
    'averaging90',
    'holed',
    ACCOUNT,
    oneMark('secondHand', [
      [3, 0.84],
      [5, 0.5],
      [8, 0.27],
      [10, 0.2],
      [20, 0.06],
    ]),
  ),
  ...figures(
    'averaging90',
    'threePutt',
    BOOK,
    oneMark('memory', [
      [20, 0.08],
      [30, 0.18],
      [40, 0.3],
      [50, 0.41],
      [60, 0.51],
    ]),
  ),
  ...figures('averaging90', 'short', `${STUDY}, amateurs`, [[10, 0.17, 'read']]),
];

/**
 * Best pace. Hoadley 1994 (read): two feet times the chance of holing. Pelz (second-hand): about 17 in past the hole. Common
 * practice, no source: 12 to 18 in.
 */
export const PUBLISHED_PACES = {
  hoadleyFeetPerShareHoled: 2,
  pelzInches: 17,
  commonPracticeInches: [12, 18],
} as const;

/** Putts a round, Broadie in an account (second-hand). Not compared: that needs the lengths a round leaves. */
export const PUTTS_PER_ROUND: Readonly<Partial<Record<PublishedPlayer, number>>> = {
  tour: 29,
  averaging90: 33,
};
