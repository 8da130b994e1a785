/**
 * What the page shows of a map, as data: the part of the ground in view, the isolines' grid, rows of the table, the sides at
 * other green speeds. Pure. Leaves out: words (screens/green/words.ts), drawing (scene/).
 */
import {
  type ApproachSide,
  type ApproachSides,
  approachSides,
  type GreenMap,
  type NextPutts,
  PLACE_STATUS,
  type Point,
  type Surface,
  surfaceBounds,
} from '../../../sim/index.ts';
import type { SceneValues, Viewport } from '../../scene/model.ts';
import { formatPutts } from '../../text/format.ts';
import type { OtherSpeed } from './words.ts';

/** Places looked at round the hole: every half hour. */
export const PLACES = 24;
/** Putts between isolines, and where their tint begins and is full. */
const STEP = 0.1;
const TINT = [1, 2.3] as const;
/** Room about the ring and about a green, as a ratio; least part of a plane shown across, m. */
const ABOUT_RING = 1.3;
const ABOUT_GREEN = 1.04;
const LEAST_ACROSS = 4;

/** A plane: the ring and some ground about it. A green: all of it. */
export const viewOf = (surface: Surface, hole: Point, distance: number): Viewport => {
  const bounds = surfaceBounds(surface);
  if (bounds === undefined)
    return { centre: hole, metresAcross: Math.max(LEAST_ACROSS, 2 * ABOUT_RING * distance) };
  const { minX, minY, maxX, maxY } = bounds;
  return {
    centre: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 },
    metresAcross: ABOUT_GREEN * Math.max(maxX - minX, maxY - minY),
  };
};

/** The isolines of a map. */
export const valuesOf = (map: GreenMap, surface: Surface, stale: boolean): SceneValues => {
  const bounds = surfaceBounds(surface);
  const { origin, spacingX, spacingY, columns, rows, expected, status } = map;
  const values = Float64Array.from(expected, (putts, node) => {
    if (status[node] === PLACE_STATUS.played || status[node] === PLACE_STATUS.interpolated) return putts;
    // Beside the hole it takes one, so that lines close round it.
    return status[node] === PLACE_STATUS.inHole ? 1 : Number.NaN;
  });
  return {
    origin,
    spacingX,
    spacingY,
    columns,
    rows,
    values,
    // A map keeps off the edge of a green: to look at, that strip is as the places beside it.
    beyond: bounds ? Math.max(0, origin.x - bounds.minX) : 0,
    step: STEP,
    tint: TINT,
    format: (putts) => putts.toFixed(1),
    stale,
  };
};

/** The sides at a distance; undefined: none can be putted from. */
export const sidesOf = (
  surface: Surface,
  hole: Point,
  source: GreenMap | NextPutts,
  distance: number,
): ApproachSides | undefined => {
  const found = approachSides(surface, hole, source, { distance, places: PLACES });
  return found.status === 'ok' ? found : undefined;
};

export interface SideRow extends ApproachSide {
  readonly mark: 'best' | 'worst' | undefined;
  /** Putts more than from the best place, of the two numbers as they are shown. */
  readonly more: number;
}

/** Every whole hour, and the best and the worst place wherever they are. */
export const rowsOf = ({ sides, best, worst }: ApproachSides): SideRow[] => {
  const shown = (side: ApproachSide): number => Number(formatPutts(side.expectedPutts));
  return sides
    .filter((side) => side === best || side === worst || Math.abs(side.clock - Math.round(side.clock)) < 1e-6)
    .map((side) => ({
      ...side,
      mark: side === best ? 'best' : side === worst ? 'worst' : undefined,
      more: shown(side) - shown(best),
    }));
};

export interface OtherSpeedsRequest {
  readonly surface: Surface;
  readonly hole: Point;
  readonly sides: ApproachSides;
  /** Next putts of the green as thought, slower and faster. */
  readonly table: NextPutts;
  readonly slower: NextPutts | undefined;
  readonly faster: NextPutts | undefined;
}

/**
 * What the side is worth at other green speeds: told by tables of next putts, which know the best aim too; so only the change
 * from table to table is taken from them, and put on what the map says.
 */
export const otherSpeedsOf = ({
  surface,
  hole,
  sides,
  table,
  ...others
}: OtherSpeedsRequest): OtherSpeed[] => {
  const { distance, difference } = sides;
  const asThought = sidesOf(surface, hole, table, distance);
  return (['slower', 'faster'] as const).map((name) => {
    const other = others[name];
    const found = other && sidesOf(surface, hole, other, distance);
    return {
      name,
      found:
        found && asThought
          ? { difference: difference + found.difference - asThought.difference, best: found.best.clock }
          : undefined,
    };
  });
};
