/**
 * Expected putts from everywhere on a green, as a map: its grid, what is known of each node, and reading it at any place.
 * Leaves out: filling it (green-steps.ts), playing a place (whole-green.ts).
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import { sampleSurface, surfaceBounds } from '../surface/sample.ts';
import type { Point, Putt } from '../types.ts';

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
/** A hundredth of a stroke is no matter to anybody: values are off by at most twice the bound, save where the odds themselves jump (MODEL.md section 4). */
const BOUND = 0.005;
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

/** Values of some nodes, in the order of `nodes`. */
export interface PlayedPlaces extends PlaceValues {
  readonly nodes: Int32Array;
}

/** What a place has beside its status. */
export const VALUES = ['expected', 'one', 'threeOrMore', 'pace'] as const;

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
