/**
 * The whole green played in tiles by several players at once, coarse to fine. Answers for: which tile is next, entering what
 * comes back in any order, how far it is, stopping and going on. Leaves out: threads (a player is any function), drawing.
 */
import {
  filledIn,
  type GreenMap,
  holingOutAt,
  type NextPutts,
  nodePoint,
  PLACE_STATUS,
  type PlayedPlaces,
  placesToPlay,
  withPlayed,
} from '../../../sim/index.ts';

/** Plays a tile; undefined: it was called off. */
export type PlayTile = (nodes: Int32Array) => Promise<PlayedPlaces | undefined>;

/** How far a map is; may be put aside and gone on with later. */
export interface Refinement {
  /** With what is played so far. */
  readonly map: GreenMap;
  /** Index into `map.strides` of the step being played; past its end nothing is left to do. */
  readonly step: number;
}

export interface RefineOptions {
  readonly from: Refinement;
  readonly table: NextPutts;
  readonly players: readonly PlayTile[];
  /** Where a map has a mirror image of itself: the node across. Only one of the two is played. */
  readonly mirror?: ((node: number) => number) | undefined;
  /** Asked before every tile; false: stop. */
  wanted(): boolean;
  /** After every tile and every step. @param share 0 to 1, never less than before */
  onProgress(now: Refinement, share: number): void;
}

/** Places in a tile: about a tenth of a second of work on a green, so that a stop is soon felt. */
export const TILE = 12;
/** Share of work that the later steps, of which nothing is known beforehand, are taken to add. */
const LATER = 0.15;

export const isDone = ({ map, step }: Refinement): boolean => step >= map.strides.length;

/** Tiles of places, nearest the hole first: there the picture is looked at, and there it changes most. */
export function tilesOf(map: GreenMap, nodes: Int32Array, hole: { x: number; y: number }): Int32Array[] {
  const far = (node: number): number => {
    const { x, y } = nodePoint(map, node);
    return (x - hole.x) ** 2 + (y - hole.y) ** 2;
  };
  const inOrder = [...nodes].sort((one, two) => far(one) - far(two));
  const tiles: Int32Array[] = [];
  for (let at = 0; at < inOrder.length; at += TILE) tiles.push(Int32Array.from(inOrder.slice(at, at + TILE)));
  return tiles;
}

/** Each place and its mirror image. */
function bothSides(played: PlayedPlaces, mirror: (node: number) => number): PlayedPlaces {
  const across = played.nodes.map(mirror);
  const twice = (values: Float64Array): Float64Array => Float64Array.of(...values, ...values);
  return {
    nodes: Int32Array.of(...played.nodes, ...across),
    expected: twice(played.expected),
    one: twice(played.one),
    threeOrMore: twice(played.threeOrMore),
    pace: twice(played.pace),
    status: Uint8Array.of(...played.status, ...played.status),
  };
}

/** Plays what is left of a map, or as much as is wanted. @returns how far it came */
export async function refine(options: RefineOptions): Promise<Refinement> {
  const { table, players, mirror, wanted, onProgress } = options;
  let { map, step } = options.from;
  const counted = (status: number): number =>
    map.status.reduce((sum, one) => sum + (one === status ? 1 : 0), 0);
  let done = counted(PLACE_STATUS.played) + counted(PLACE_STATUS.noLine);
  let share = 0;
  /** Places of the map that one played stands for. */
  const worth = mirror ? 2 : 1;
  // Places of the first two steps are known: both are played everywhere.
  const early = placesToPlay(map, 0).length + placesToPlay(map, 1).length;
  const foreseen = (done + (step <= 1 ? early : 0)) * (1 + LATER);
  const tell = (left: number): void => {
    share = Math.max(share, done / Math.max(foreseen, done + left, 1));
    onProgress({ map, step }, share);
  };
  while (step < map.strides.length && wanted()) {
    const places = placesToPlay(map, step);
    const half = mirror ? places.filter((node) => node <= mirror(node)) : places;
    const tiles = tilesOf(map, half, table.hole);
    let left = half.length * worth;
    const work = async (play: PlayTile): Promise<void> => {
      while (wanted()) {
        const tile = tiles.shift();
        if (tile === undefined) return;
        const played = await play(tile);
        if (played === undefined || !wanted()) return;
        map = withPlayed(map, mirror ? bothSides(played, mirror) : played, table);
        done += tile.length * worth;
        left -= tile.length * worth;
        tell(left);
      }
    };
    await Promise.all(players.map(work));
    if (left > 0) break;
    map = filledIn(map, table);
    step += 1;
    tell(0);
  }
  return { map, step };
}

/**
 * A map to look at, at any time: what lies between places played is interpolated, and where nothing is known yet the table of
 * next putts tells, which is all there is at first.
 */
export function pictureOf(map: GreenMap, table: NextPutts): GreenMap {
  const picture = filledIn(map, table);
  for (let node = 0; node < picture.status.length; node++) {
    if (picture.status[node] !== PLACE_STATUS.unknown) continue;
    const { x, y } = nodePoint(picture, node);
    const told = holingOutAt(table, x - table.hole.x, y - table.hole.y);
    picture.status[node] = PLACE_STATUS.interpolated;
    picture.expected[node] = told.expectedPutts;
    picture.one[node] = told.chances.one;
    picture.threeOrMore[node] = told.chances.three + told.chances.more;
    picture.pace[node] = told.pace;
  }
  return picture;
}
