/**
 * Which side of the hole is the better one to putt from: expected putts all round it at one distance. Data only; the words
 * belong to the app. Leaves out: how likely a side is to be hit.
 */
import { sampleSurface } from '../surface/sample.ts';
import type { Point, Surface } from '../types.ts';
import { bearingToClock, clockToBearing, feetToMetres } from '../units.ts';
import { type GreenMap, mapValueAt } from './green-map.ts';
import { holingOutAt, type NextPutts } from './polar-table.ts';

/** One place at the distance asked. */
export interface ApproachSide {
  /** Hours, 12 straight uphill of the hole by the mean slope near it. */
  readonly clock: number;
  /** From the hole, radians from +x, and on a field the same as a compass has it: clockwise from +y, 0 to 2 pi. */
  readonly bearing: number;
  readonly compass: number | undefined;
  readonly place: Point;
  readonly expectedPutts: number;
  readonly onePutt: number;
  readonly threeOrMore: number;
}

export interface ApproachSides {
  readonly status: 'ok';
  /** m from the hole. */
  readonly distance: number;
  /** Where a ball near the hole would run off, radians from +x, and the mean slope there, rise over run. */
  readonly downhill: number;
  readonly slope: number;
  /** Clockwise from 12 o'clock; places off the green or without a value are left out. */
  readonly sides: readonly ApproachSide[];
  readonly best: ApproachSide;
  readonly worst: ApproachSide;
  /** Putts that the worst place takes more than the best. */
  readonly difference: number;
}

export interface ApproachOptions {
  /** From the hole, m. */
  readonly distance?: number;
  /** Places looked at round the hole. */
  readonly places?: number;
}

const DISTANCE = feetToMetres(15);
/** Every half hour. */
const PLACES = 24;
/** The slope near the hole is the mean over this many places by this far from it, m: about a stride each way. */
const NEAR = 1.5;
const LOOKS = 8;

/**
 * @param source a table of next putts (best pace and aim; farther than its reach counts as that far), or a map of the whole
 * green (best pace on the true line)
 * @returns NoSides when no place at this distance is on the green with a value
 */
export function approachSides(
  surface: Surface,
  hole: Point,
  source: NextPutts | GreenMap,
  { distance = DISTANCE, places = PLACES }: ApproachOptions = {},
): ApproachSides | { readonly status: 'noSides' } {
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  let sumX = 0;
  let sumY = 0;
  let looks = 0;
  for (let row = -LOOKS; row <= LOOKS; row++)
    for (let column = -LOOKS; column <= LOOKS; column++) {
      if (Math.hypot(row, column) > LOOKS) continue;
      const x = hole.x + (NEAR * column) / LOOKS;
      const y = hole.y + (NEAR * row) / LOOKS;
      if (!sampleSurface(surface, x, y, ground)) continue;
      sumX += ground.gradientX;
      sumY += ground.gradientY;
      looks++;
    }
  if (looks === 0) return { status: 'noSides' };
  const downhill = surface.kind === 'plane' ? surface.downhill : Math.atan2(-sumY, -sumX);
  const sides: ApproachSide[] = [];
  for (let i = 0; i < places; i++) {
    const bearing = clockToBearing((12 * i) / places, downhill);
    const x = distance * Math.cos(bearing);
    const y = distance * Math.sin(bearing);
    const place = { x: hole.x + x, y: hole.y + y };
    if (!sampleSurface(surface, place.x, place.y, ground)) continue;
    const values = valuesAt(source, place, x, y);
    if (values === undefined) continue;
    sides.push({
      clock: bearingToClock(bearing, downhill),
      bearing,
      compass: surface.kind === 'field' ? compassOf(bearing) : undefined,
      place,
      ...values,
    });
  }
  if (sides.length === 0) return { status: 'noSides' };
  const best = sides.reduce((least, side) => (side.expectedPutts < least.expectedPutts ? side : least));
  const worst = sides.reduce((most, side) => (side.expectedPutts > most.expectedPutts ? side : most));
  return {
    status: 'ok',
    distance,
    downhill,
    slope: Math.hypot(sumX, sumY) / looks,
    sides,
    best,
    worst,
    difference: worst.expectedPutts - best.expectedPutts,
  };
}

const compassOf = (bearing: number): number => {
  const turn = (Math.PI / 2 - bearing) % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
};

type Values = Pick<ApproachSide, 'expectedPutts' | 'onePutt' | 'threeOrMore'>;

function valuesAt(source: NextPutts | GreenMap, place: Point, x: number, y: number): Values | undefined {
  if ('moved' in source) {
    const found = mapValueAt(source, place.x, place.y);
    return found && { expectedPutts: found.expected, onePutt: found.one, threeOrMore: found.threeOrMore };
  }
  const { expectedPutts, chances } = holingOutAt(source, x, y);
  return { expectedPutts, onePutt: chances.one, threeOrMore: chances.three + chances.more };
}
