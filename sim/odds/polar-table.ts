/**
 * Putts still needed from everywhere round the hole, as a table: its grid, how a miss is shared among places, how the coarse
 * places become a fine table, and looking it up. Leaves out: where the numbers come from (next-putts.ts).
 */
import { HOLE_RADIUS } from '../constants.ts';
import { lagrange, monotoneCubic } from '../maths/interpolation.ts';
import type { Point } from '../types.ts';

/** Table of one green, hole, player: plain data, may cross threads. Angles from `zero`, counter-clockwise, all round. */
export interface NextPutts {
  readonly hole: Point;
  /** Bearing of angle 0, radians from +x (on a plane: straight downhill). */
  readonly zero: number;
  /** Farthest distance in the table, m; farther places count as this far. */
  readonly farthest: number;
  /** Distances are farthest (i / (rings - 1))^2, i from 0. */
  readonly rings: number;
  readonly spokes: number;
  /** Ring by ring: share of next putts missed, and putts still needed from there. */
  readonly missed: Float64Array;
  readonly expected: Float64Array;
  /** Chances of needing exactly two and exactly three; one is 1 - missed, more is what is left. */
  readonly two: Float64Array;
  readonly three: Float64Array;
  /** Pace played from there, m past. */
  readonly pace: Float64Array;
}

/** What holing out from one place takes, under the policy of the table. */
export interface HolingOut {
  readonly expectedPutts: number;
  /** Chances of so many putts from there; they make one. */
  readonly chances: {
    readonly one: number;
    readonly two: number;
    readonly three: number;
    readonly more: number;
  };
  /** Best pace of the putt from there, m past the covered hole. */
  readonly pace: number;
}

const FARTHEST = 12;
const FINE = { rings: 97, spokes: 96 };

/** Places solved: distances from the hole, m, by bearings. */
export interface Grid {
  readonly zero: number;
  readonly rings: readonly number[];
  readonly spokes: number;
  /** Bearings solved in each ring: all, or one half and the fall line where the other half is its mirror. */
  readonly columns: number;
}

const foldedSpoke = ({ spokes, columns }: Grid, spoke: number): number =>
  spoke < columns ? spoke : spokes - spoke;

// Filled by `spokesAbout`: reused, because a tuple made for every miss would be most of the work.
const about = { spoke: 0, next: 0, later: 0 };

/** The two spokes about a place, and how far it lies from the first to the second. */
function spokesAbout(
  { zero, spokes }: { readonly zero: number; readonly spokes: number },
  x: number,
  y: number,
): void {
  let turn = ((Math.atan2(y, x) - zero) / (2 * Math.PI)) * spokes;
  turn -= spokes * Math.floor(turn / spokes);
  const whole = Math.floor(turn);
  about.spoke = whole % spokes;
  about.next = (about.spoke + 1) % spokes;
  about.later = turn - whole;
}

/** Share a rest (relative to the hole, m) among the four places of the grid about it. */
export function spreadOver(grid: Grid, share: number, x: number, y: number, row: Float64Array): void {
  const { rings, columns } = grid;
  const distance = Math.min(FARTHEST, Math.sqrt(x * x + y * y));
  let ring = 0;
  while (ring < rings.length - 2 && rings[ring + 1] < distance) ring++;
  const outer = (distance - rings[ring]) / (rings[ring + 1] - rings[ring]);
  spokesAbout(grid, x, y);
  const { later } = about;
  const base = ring * columns;
  const spoke = base + foldedSpoke(grid, about.spoke);
  const next = base + foldedSpoke(grid, about.next);
  row[spoke] += share * (1 - outer) * (1 - later);
  row[next] += share * (1 - outer) * later;
  row[spoke + columns] += share * outer * (1 - later);
  row[next + columns] += share * outer * later;
}

/** What is known at the places of a grid, ring by ring, `columns` to a ring. */
export type Coarse = Readonly<Record<'missed' | 'expected' | 'two' | 'three' | 'pace', Float64Array>>;

/** The fine table, filled by cubics so that one look-up is four cells. */
export function tableOf(hole: Point, grid: Grid, coarse: Coarse): NextPutts {
  // Cubics overshoot where the table levels out; the bounds are what a share and a count can be.
  const missed = refine(coarse.missed, grid).map((share) => Math.max(0, Math.min(1, share)));
  const two = refine(coarse.two, grid).map((share, i) => Math.max(0, Math.min(missed[i], share)));
  const three = refine(coarse.three, grid).map((share, i) =>
    Math.max(0, Math.min(missed[i] - two[i], share)),
  );
  return {
    hole,
    zero: grid.zero,
    farthest: FARTHEST,
    rings: FINE.rings,
    spokes: FINE.spokes,
    missed,
    // One for each, one more for every miss, every second and every third miss: at least.
    expected: refine(coarse.expected, grid).map((putts, i) =>
      Math.max(1 + 3 * missed[i] - 2 * two[i] - three[i], putts),
    ),
    two,
    three,
    pace: refine(coarse.pace, grid).map((pace) => Math.max(0, pace)),
  };
}

/**
 * The coarse table on the fine grid: cubics round the hole, then cubics outward that do not overshoot.
 */
function refine(coarse: Float64Array, grid: Grid): Float64Array {
  const { rings, spokes, columns } = grid;
  const fine = new Float64Array(FINE.rings * FINE.spokes);
  const distances = Float64Array.from(rings);
  const round = { first: 0, w: new Float64Array(4) };
  for (let spoke = 0; spoke < FINE.spokes; spoke++) {
    // Two spokes of margin on either side keep the cubic centred all round.
    lagrange((spoke / FINE.spokes) * spokes + 2, spokes + 4, round);
    const outward = distances.map((_, ring) => {
      let value = 0;
      for (let j = 0; j < 4; j++) {
        const from = (round.first + j - 2 + spokes) % spokes;
        value += round.w[j] * coarse[ring * columns + foldedSpoke(grid, from)];
      }
      return value;
    });
    const at = monotoneCubic(distances, outward);
    for (let ring = 0; ring < FINE.rings; ring++)
      fine[ring * FINE.spokes + spoke] = at(FARTHEST * (ring / (FINE.rings - 1)) ** 2);
  }
  return fine;
}

// The four cells about a place and their weights: filled by `cellsAbout`, read at once.
const cells = new Int32Array(4);
const weights = new Float64Array(4);

function cellsAbout(table: NextPutts, distance: number, x: number, y: number): void {
  const { rings, spokes } = table;
  const along = Math.min(rings - 1, (rings - 1) * Math.sqrt(distance / table.farthest));
  const ring = Math.min(rings - 2, Math.floor(along));
  const outer = along - ring;
  spokesAbout(table, x, y);
  const { later } = about;
  const inner = 1 - outer;
  const sooner = 1 - later;
  cells[0] = ring * spokes + about.spoke;
  cells[1] = ring * spokes + about.next;
  cells[2] = cells[0] + spokes;
  cells[3] = cells[1] + spokes;
  weights[0] = inner * sooner;
  weights[1] = inner * later;
  weights[2] = outer * sooner;
  weights[3] = outer * later;
}

const weighed = (values: Float64Array): number =>
  weights[0] * values[cells[0]] +
  weights[1] * values[cells[1]] +
  weights[2] * values[cells[2]] +
  weights[3] * values[cells[3]];

/**
 * Look up two values at a place relative to the hole, m: fills `out` with [share missed, putts still needed] of a putt from
 * there under the policy of the table.
 */
export function nextPuttAt(table: NextPutts, x: number, y: number, out: Float64Array): void {
  const distance = Math.sqrt(x * x + y * y);
  if (distance <= HOLE_RADIUS) {
    out[0] = 0;
    out[1] = 1;
    return;
  }
  cellsAbout(table, distance, x, y);
  out[0] = weighed(table.missed);
  out[1] = weighed(table.expected);
}

/**
 * Holing out from a place: putts needed, the chance of each count, and the pace that needs fewest.
 * @param x,y place relative to the hole, m; beyond the table's `farthest` counts as that far
 */
export function holingOutAt(table: NextPutts, x: number, y: number): HolingOut {
  cellsAbout(table, Math.hypot(x, y), x, y);
  const missed = weighed(table.missed);
  const two = weighed(table.two);
  const three = weighed(table.three);
  return {
    expectedPutts: weighed(table.expected),
    chances: { one: 1 - missed, two, three, more: Math.max(0, missed - two - three) },
    pace: weighed(table.pace),
  };
}
