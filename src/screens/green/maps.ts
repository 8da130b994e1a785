/**
 * Maps worked out so far, newest first, finished or not: coming back to a green goes on where it was left. On a plane a map
 * serves any place of the hole. Leaves out: making them (mapWork.ts).
 */
import {
  emptyGreenMap,
  type GreenMap,
  type GreenMapOptions,
  type NextPutts,
  type Player,
  type Putt,
} from '../../../sim/index.ts';
import { type Key, keyOf, sameKey } from '../../app/tables.ts';
import type { Refinement } from './tiles.ts';

/** Everything a map depends on; the ball in the putt does not matter. */
export interface MapQuestion {
  readonly putt: Putt;
  readonly player: Player;
}

export interface KeptMap extends Refinement {
  readonly table: NextPutts;
}

/** A map takes about half a megabyte. */
const MOST_MAPS = 12;
/** Nodes of a plane lie farther apart: nothing on it is narrower than the fall line's ridge, and 16 m is far. */
const PLANE_SPACING = 0.5;
const PLANE_REACH = 16;
const GREEN_SPACING = 0.25;

export const mapOptions = ({ surface }: Putt): GreenMapOptions =>
  surface.kind === 'plane' ? { spacing: PLANE_SPACING, reach: PLANE_REACH } : { spacing: GREEN_SPACING };

export const newMap = ({ putt }: MapQuestion): Refinement => ({
  map: emptyGreenMap(putt, mapOptions(putt)),
  step: 0,
});

const kept: { readonly key: Key; readonly hole: Putt['hole']; readonly found: KeptMap }[] = [];

const mapKey = ({ putt, player }: MapQuestion): Key => {
  const { spacing, reach } = mapOptions(putt);
  return [spacing, reach, ...keyOf(putt, player)];
};

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
