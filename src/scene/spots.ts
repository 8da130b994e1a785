/**
 * The marks on a line, the same on the map and in its legend: where one aims, the apex, where the ball would stop; and the
 * sizes of ball, hole and aims.
 */
import { BALL_RADIUS, HOLE_RADIUS, type Point } from '../../sim/index.ts';
import type { Camera } from './model.ts';
import type { Primitive } from './primitives.ts';

export type Spot = 'aim' | 'apex' | 'rest';
/** Radius of the ring at an aim spot, pixels. */
export const AIM_RADIUS = 6;
/** Radius of the ring of the person's own aim, pixels. */
export const OWN_AIM_RADIUS = 9;
/** Ball and hole are drawn at true size, but never smaller than this, pixels. */
const LEAST_RADIUS = 5;

/** Radius of ball or hole on the page, pixels. */
export const radiusOf = (thing: 'ball' | 'hole', { scale }: Camera): number =>
  Math.max(LEAST_RADIUS, scale * (thing === 'ball' ? BALL_RADIUS : HOLE_RADIUS));

export const ring = (
  { x, y }: Point,
  radius: number,
  colour: string,
  width: number,
  alpha = 1,
): Primitive => ({
  kind: 'circle',
  x,
  y,
  radius,
  alpha,
  stroke: { colour, width },
});

export const disc = ({ x, y }: Point, radius: number, fill: string, alpha = 1): Primitive => ({
  kind: 'circle',
  x,
  y,
  radius,
  alpha,
  fill,
});

/** A mark in a line's colour; apex and rest are lifted off the ground by paper, the ring of an aim lets it through. */
export function spotMark(spot: Spot, place: Point, colour: string, paper: string): Primitive[] {
  switch (spot) {
    case 'aim':
      return [ring(place, AIM_RADIUS, colour, 2.4), disc(place, 1.5, colour)];
    case 'apex': {
      const { x, y } = place;
      const diamond = (size: number) => [x - size, y, x, y - size, x + size, y, x, y + size];
      return [
        { kind: 'polygons', polygons: [diamond(6.5)], colour, alpha: 1 },
        { kind: 'polygons', polygons: [diamond(3.6)], colour: paper, alpha: 1 },
      ];
    }
    case 'rest':
      return [disc(place, 5.2, paper), disc(place, 3.6, colour)];
  }
}
