/**
 * A map of a green filled coarse to fine: which places are still to be played, and what stands between those played. Pure:
 * every function takes a map and gives another, so that work may be shared among workers in any order, shown half done, or
 * dropped.
 *
 * What is interpolated is not the putts themselves but how far they are from the table of next putts (polar-table.ts), which
 * knows nearly as much everywhere: what is left is small, mostly what lies between the spokes of the table. Spacing is halved
 * where the last halving moved a value by more than `bound`; elsewhere the next places are interpolated. Leaves out: playing
 * a place (whole-green.ts).
 */
import { type GreenMap, nodePoint, PLACE_STATUS, type PlayedPlaces, VALUES } from './green-map.ts';
import { holingOutAt, type NextPutts } from './polar-table.ts';

/** Halvings that are made everywhere, before anything is known of where they matter. */
const EVERYWHERE = 1;

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

/**
 * Columns, or rows, of the spacing before about a new node's: those on either side of it; where it lies on one, that one, or
 * with its neighbours.
 */
const coarseAbout = (at: number, stride: number, neighbours: boolean): readonly number[] => {
  const before = 2 * stride;
  if (at % before !== 0) return [at - stride, at + stride];
  return neighbours ? [at - before, at, at + before] : [at];
};

/** Calls for the nodes of the spacing before that a new node lies between: two along an edge, four in the middle of a cell. */
function eachParent(
  map: GreenMap,
  step: number,
  [column, row]: readonly [number, number],
  visit: (node: number) => void,
): void {
  const stride = map.strides[step];
  for (const r of coarseAbout(row, stride, false))
    for (const c of coarseAbout(column, stride, false)) visit(r * map.columns + c);
}

/** Calls for the corners of the cells of the spacing before that a new node touches. */
function eachCorner(
  map: GreenMap,
  step: number,
  [column, row]: readonly [number, number],
  visit: (node: number) => void,
): void {
  const stride = map.strides[step];
  for (const r of coarseAbout(row, stride, true))
    for (const c of coarseAbout(column, stride, true))
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
