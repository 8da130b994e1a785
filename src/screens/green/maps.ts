/**
 * Maps worked out so far, newest first, finished or not: coming back to a green goes on where it was left. On a plane a map
 * serves any place of the hole. Leaves out: making them (mapWork.ts).
 */
import {
  emptyGreenMap,
  type GreenMap,
  type GreenMapOptions,
  type Member,
  type NextPutts,
  type Player,
  type Putt,
} from '../../../sim/index.ts';
import { type Key, keyOf, sameKey } from '../../state/nextPutts.ts';
import type { Refinement } from './tiles.ts';

/** Everything a map depends on; the ball in the putt does not matter. */
export interface MapQuestion {
  readonly putt: Putt;
  readonly player: Player;
  /** Everybody the person may be: the map is of the player alone. Left out: nobody else. */
  readonly among?: readonly Member[];
}

export interface KeptMap extends Refinement {
  readonly table: NextPutts;
}

/** A map of a plane takes about a megabyte. */
const MOST_MAPS = 8;
/** Finest distance between nodes, m: at twice that, places a stride from the hole were out by 0.01 to 0.03 putts. */
const SPACING = 0.25;
/** Of a plane: as far as the widest view shows, m. */
const PLANE_REACH = 20;

export const mapOptions = (): GreenMapOptions => ({ spacing: SPACING, reach: PLANE_REACH });

export const newMap = ({ putt }: MapQuestion): Refinement => ({
  map: emptyGreenMap(putt, mapOptions()),
  step: 0,
});

/**
 * The node across the fall line, on a plane that falls straight down the page as the app's do: both ends have the same putt, left
 * for right. undefined: there is no such line.
 */
export const mirrorOf = (
  { surface }: Putt,
  { columns }: GreenMap,
): ((node: number) => number) | undefined => {
  if (surface.kind !== 'plane' || Math.abs(Math.cos(surface.downhill)) > 1e-9) return undefined;
  return (node) => node - (node % columns) + (columns - 1 - (node % columns));
};

const kept: { readonly key: Key; readonly hole: Putt['hole']; readonly found: KeptMap }[] = [];

const mapKey = ({ putt, player }: MapQuestion): Key => keyOf(putt, player);

const movedBy = (map: GreenMap, x: number, y: number): GreenMap =>
  x === 0 && y === 0 ? map : { ...map, origin: { x: map.origin.x + x, y: map.origin.y + y } };

/** The map of this question, as far as it is. */
export const mapFor = (question: MapQuestion): KeptMap | undefined => {
  const key = mapKey(question);
  const one = kept.find((each) => sameKey(each.key, key));
  if (one === undefined) return undefined;
  const { hole } = question.putt;
  return {
    step: one.found.step,
    map: movedBy(one.found.map, hole.x - one.hole.x, hole.y - one.hole.y),
    table: { ...one.found.table, hole },
  };
};

export const keepMap = (question: MapQuestion, found: KeptMap): void => {
  const key = mapKey(question);
  const before = kept.findIndex((each) => sameKey(each.key, key));
  if (before >= 0) kept.splice(before, 1);
  kept.unshift({ key, hole: question.putt.hole, found });
  kept.length = Math.min(kept.length, MOST_MAPS);
};
