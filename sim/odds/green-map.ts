/**
 * Expected putts from everywhere on a green, as a map that is filled coarse to fine: which places are still to be played, and
 * what stands between those played. Pure: every function takes a map and gives another, so that work may be shared among
 * workers in any order, shown half done, or dropped.
 *
 * What is interpolated is not the putts themselves but how far they are from the table of next putts (polar-table.ts), which
 * knows nearly as much everywhere: what is left is small, mostly what lies between the spokes of the table. Spacing is halved where the last halving moved a
 * value by more than `bound`; elsewhere the next places are interpolated. Leaves out: playing a place (whole-green.ts).
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import { sampleSurface, surfaceBounds } from '../surface/sample.ts';
import type { Point, Putt } from '../types.ts';
import { holingOutAt, type NextPutts } from './polar-table.ts';

/** What is known of a node of the map. */
export const PLACE_STATUS = {
  unknown: 0,
  /** Played: computed for this very place. */
  played: 1,
  /** Between places played; see `bound`. */
  interpolated: 2,
  /** Off the green, or nearer its edge than 10 cm. */
  offGreen: 3,
  /** No line from here: too steep for this green speed, or the ball would leave the green. */
  noLine: 4,
  /** No putt is needed: the ball would lie in the hole or touch its rim. */
  inHole: 5,
} as const;

/** What the first putt from a place comes to, at the pace that needs fewest putts, on its true line. Plain data. */
export interface PlaceValues {
  /** Expected putts, at least 1; 0 where there is no value. */
  readonly expected: Float64Array;
  /** Chance of one putt, and of three or more. */
  readonly one: Float64Array;
  readonly threeOrMore: Float64Array;
  /** Pace that needs fewest, m past. */
  readonly pace: Float64Array;
  /** A PLACE_STATUS each. */
  readonly status: Uint8Array;
}

/** A map: nodes row by row, x fastest. Plain data, may cross threads. */
export interface GreenMap extends PlaceValues {
  /** Lower left node, m. */
  readonly origin: Point;
  /** Distance between nodes, m; at most what was asked, so that nodes fall on both borders. */
  readonly spacingX: number;
  readonly spacingY: number;
  readonly columns: number;
  readonly rows: number;
  /** Spacings from coarse to fine, as nodes from one to the next: 8, 4, 2, 1. */
  readonly strides: readonly number[];
  /** Putts by which halving must have moved a value for its neighbourhood to be halved again; what is left is up to twice this. */
  readonly bound: number;
  /** By how much playing a node moved it from what was interpolated, putts. */
  readonly moved: Float64Array;
}

export interface GreenMapOptions {
  /** Finest distance between nodes, m. */
  readonly spacing?: number;
  /** On a plane: the map is a square with the hole in the middle, reaching so far, m. */
  readonly reach?: number;
  /** Putts; 0: play every node. */
  readonly bound?: number;
}

/** Places nearer the edge are not played, m: a ball there is off the green with half a turn of the putter. */
const FROM_EDGE = 0.1;
/** A quarter of a green's picture still tells high side from low. */
const FINEST = 0.25;
/** Coarsest spacing aimed at, m. */
const COARSEST = 2;
const REACH = 8;
/** A hundredth of a stroke is no matter to anybody, and values are off by at most twice the bound (MODEL.md section 4). */
const BOUND = 0.005;
/** Halvings that are made everywhere, before anything is known of where they matter. */
const EVERYWHERE = 1;

/**
 * The map with nothing played: only what lies off the green or in the hole is known.
 * @param putt its ball does not matter
 */
export function emptyGreenMap(putt: Putt, options: GreenMapOptions = {}): GreenMap {
  const { spacing = FINEST, reach = REACH, bound = BOUND } = options;
  const { surface, hole } = putt;
  const around = { minX: hole.x - reach, maxX: hole.x + reach, minY: hole.y - reach, maxY: hole.y + reach };
  const inset = surface.kind === 'plane' ? 0 : FROM_EDGE;
  const { minX, maxX, minY, maxY } = surfaceBounds(surface) ?? around;
  const halvings = Math.max(0, Math.round(Math.log2(COARSEST / spacing)));
  const coarsest = 2 ** halvings;
  const cells = (width: number): number =>
    coarsest * Math.max(1, Math.ceil(width / (coarsest * spacing) - 1e-9));
  const across = cells(maxX - minX - 2 * inset);
  const along = cells(maxY - minY - 2 * inset);
  const nodes = (across + 1) * (along + 1);
  const map: GreenMap = {
    origin: { x: minX + inset, y: minY + inset },
    spacingX: (maxX - minX - 2 * inset) / across,
    spacingY: (maxY - minY - 2 * inset) / along,
    columns: across + 1,
    rows: along + 1,
    strides: Array.from({ length: halvings + 1 }, (_, i) => 2 ** (halvings - i)),
    bound,
    expected: new Float64Array(nodes),
    one: new Float64Array(nodes),
    threeOrMore: new Float64Array(nodes),
    pace: new Float64Array(nodes),
    status: new Uint8Array(nodes),
    moved: new Float64Array(nodes),
  };
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  for (let node = 0; node < nodes; node++) {
    const { x, y } = nodePoint(map, node);
    if (!sampleSurface(surface, x, y, ground)) map.status[node] = PLACE_STATUS.offGreen;
    else if (Math.hypot(x - hole.x, y - hole.y) < HOLE_RADIUS + BALL_RADIUS)
      map.status[node] = PLACE_STATUS.inHole;
  }
  return map;
}

/** Where a node lies, m. */
export const nodePoint = (map: GreenMap, node: number): Point => ({
  x: map.origin.x + (node % map.columns) * map.spacingX,
  y: map.origin.y + Math.floor(node / map.columns) * map.spacingY,
});

/** Calls for every node of a stride that is not of a coarser one; every node of the coarsest. */
function eachNew(
  map: GreenMap,
  step: number,
  visit: (node: number, column: number, row: number) => void,
): void {
  const stride = map.strides[step];
  const before = step === 0 ? Number.POSITIVE_INFINITY : map.strides[step - 1];
  for (let row = 0; row < map.rows; row += stride)
    for (let column = 0; column < map.columns; column += stride)
      if (step === 0 || row % before !== 0 || column % before !== 0)
        visit(row * map.columns + column, column, row);
}

/** Calls for the nodes of the spacing before that a new node lies between: two along an edge, four in the middle of a cell. */
function eachParent(
  map: GreenMap,
  step: number,
  at: readonly [number, number],
  visit: (node: number) => void,
): void {
  const stride = map.strides[step];
  const before = 2 * stride;
  const [column, row] = at;
  const columns = column % before === 0 ? [column] : [column - stride, column + stride];
  const rows = row % before === 0 ? [row] : [row - stride, row + stride];
  for (const r of rows) for (const c of columns) visit(r * map.columns + c);
}

/** Calls for the corners of the cells of the spacing before that a new node touches. */
function eachCorner(
  map: GreenMap,
  step: number,
  at: readonly [number, number],
  visit: (node: number) => void,
): void {
  const stride = map.strides[step];
  const before = 2 * stride;
  const [column, row] = at;
  const columns =
    column % before === 0 ? [column - before, column, column + before] : [column - stride, column + stride];
  const rows = row % before === 0 ? [row - before, row, row + before] : [row - stride, row + stride];
  for (const r of rows)
    for (const c of columns)
      if (r >= 0 && c >= 0 && r < map.rows && c < map.columns) visit(r * map.columns + c);
}

/**
 * Nodes to be played in one step: all of them at first, later those about which the step before moved something, or which
 * lie between places with and without a line.
 * @param map in which all steps before are played and filled in (`filledIn`)
 * @param step index into `map.strides`, 0 first
 * @returns nodes, row by row
 */
export function placesToPlay(map: GreenMap, step: number): Int32Array {
  const nodes: number[] = [];
  eachNew(map, step, (node, column, row) => {
    if (map.status[node] !== PLACE_STATUS.unknown && map.status[node] !== PLACE_STATUS.interpolated) return;
    let wanted = step <= EVERYWHERE || map.bound === 0;
    if (!wanted) {
      let withLine = false;
      let without = false;
      eachCorner(map, step, [column, row], (corner) => {
        const { played, interpolated, noLine } = PLACE_STATUS;
        const status = map.status[corner];
        // Only what the step before played tells how far halving still moves values.
        const stride = map.strides[step - 1];
        const fresh =
          Math.floor(corner / map.columns) % (2 * stride) !== 0 ||
          (corner % map.columns) % (2 * stride) !== 0;
        if (status === played && fresh && map.moved[corner] > map.bound) wanted = true;
        if (status === played || status === interpolated) withLine = true;
        if (status === noLine) without = true;
      });
      wanted ||= withLine && without;
    }
    if (wanted) nodes.push(node);
  });
  return Int32Array.from(nodes);
}

/** Values of some nodes, in the order of `nodes`. */
export interface PlayedPlaces extends PlaceValues {
  readonly nodes: Int32Array;
}

const VALUES = ['expected', 'one', 'threeOrMore', 'pace'] as const;

const copied = (map: GreenMap): GreenMap => ({
  ...map,
  expected: map.expected.slice(),
  one: map.one.slice(),
  threeOrMore: map.threeOrMore.slice(),
  pace: map.pace.slice(),
  status: map.status.slice(),
  moved: map.moved.slice(),
});

/** The map with these places entered; the order in which the tiles of one step are entered makes no difference. */
export function withPlayed(map: GreenMap, played: PlayedPlaces, table: NextPutts): GreenMap {
  const next = copied(map);
  const { nodes } = played;
  for (let i = 0; i < nodes.length; i++) {
    const node = nodes[i];
    if (played.status[i] === PLACE_STATUS.played) {
      const guess = between(map, node, table);
      next.moved[node] = guess === undefined ? 0 : Math.abs(played.expected[i] - guess.expected);
    }
    for (const name of VALUES) next[name][node] = played[name][i];
    next.status[node] = played.status[i];
  }
  return next;
}

/** What the table says of a place, in the map's terms. */
function tableValues(map: GreenMap, node: number, table: NextPutts): Record<(typeof VALUES)[number], number> {
  const { x, y } = nodePoint(map, node);
  const { expectedPutts, chances, pace } = holingOutAt(table, x - table.hole.x, y - table.hole.y);
  return { expected: expectedPutts, one: chances.one, threeOrMore: chances.three + chances.more, pace };
}

const stepOf = (map: GreenMap, node: number): number => {
  const column = node % map.columns;
  const row = Math.floor(node / map.columns);
  return map.strides.findIndex((stride) => column % stride === 0 && row % stride === 0);
};

/** A node as its parents have it: the table there, corrected by the mean of what corrects it at the parents. */
function between(
  map: GreenMap,
  node: number,
  table: NextPutts,
): Record<(typeof VALUES)[number], number> | undefined {
  const step = stepOf(map, node);
  if (step === 0) return undefined;
  const at = [node % map.columns, Math.floor(node / map.columns)] as const;
  const correction = { expected: 0, one: 0, threeOrMore: 0, pace: 0 };
  let known = 0;
  eachParent(map, step, at, (parent) => {
    const status = map.status[parent];
    if (status !== PLACE_STATUS.played && status !== PLACE_STATUS.interpolated) return;
    known++;
    const told = tableValues(map, parent, table);
    for (const name of VALUES) correction[name] += map[name][parent] - told[name];
  });
  if (known === 0) return undefined;
  const told = tableValues(map, node, table);
  const one = Math.max(0, Math.min(1, told.one + correction.one / known));
  return {
    expected: Math.max(2 - one, told.expected + correction.expected / known),
    one,
    threeOrMore: Math.max(0, Math.min(1 - one, told.threeOrMore + correction.threeOrMore / known)),
    pace: Math.max(0, told.pace + correction.pace / known),
  };
}

/**
 * The map with every node that is not played filled in from those that are, from coarse to fine: what a picture is drawn
 * from at any time, and what the next step begins with.
 */
export function filledIn(map: GreenMap, table: NextPutts): GreenMap {
  const next = copied(map);
  const { unknown, played, interpolated, noLine } = PLACE_STATUS;
  for (let step = 1; step < map.strides.length; step++)
    eachNew(map, step, (node, column, row) => {
      if (next.status[node] !== unknown && next.status[node] !== interpolated) return;
      const guess = between(next, node, table);
      if (guess !== undefined) {
        for (const name of VALUES) next[name][node] = guess[name];
        next.status[node] = interpolated;
        return;
      }
      let without = false;
      let others = false;
      eachParent(map, step, [column, row], (parent) => {
        if (next.status[parent] === noLine) without = true;
        if (next.status[parent] === played || next.status[parent] === unknown) others = true;
      });
      if (without && !others) next.status[node] = noLine;
    });
  return next;
}

/** Values of one place of a map. */
export interface PlaceValue {
  readonly expected: number;
  readonly one: number;
  readonly threeOrMore: number;
  readonly pace: number;
}

/**
 * Between the nodes of a filled map, along straight lines.
 * @param x,y place on the green, m
 * @returns undefined off the map, or where no node about the place has a value
 */
export function mapValueAt(map: GreenMap, x: number, y: number): PlaceValue | undefined {
  const across = (x - map.origin.x) / map.spacingX;
  const along = (y - map.origin.y) / map.spacingY;
  const slack = 1e-9;
  if (!(across >= -slack && across <= map.columns - 1 + slack)) return undefined;
  if (!(along >= -slack && along <= map.rows - 1 + slack)) return undefined;
  const column = Math.max(0, Math.min(map.columns - 2, Math.floor(across)));
  const row = Math.max(0, Math.min(map.rows - 2, Math.floor(along)));
  const sum = { expected: 0, one: 0, threeOrMore: 0, pace: 0 };
  let weight = 0;
  for (const [nodeColumn, acrossShare] of [
    [column, 1 - (across - column)],
    [column + 1, across - column],
  ])
    for (const [nodeRow, alongShare] of [
      [row, 1 - (along - row)],
      [row + 1, along - row],
    ]) {
      const node = nodeRow * map.columns + nodeColumn;
      const status = map.status[node];
      const share = acrossShare * alongShare;
      if (!(share > slack) || (status !== PLACE_STATUS.played && status !== PLACE_STATUS.interpolated))
        continue;
      weight += share;
      for (const name of VALUES) sum[name] += share * map[name][node];
    }
  if (weight === 0) return undefined;
  return {
    expected: sum.expected / weight,
    one: sum.one / weight,
    threeOrMore: sum.threeOrMore / weight,
    pace: sum.pace / weight,
  };
}
