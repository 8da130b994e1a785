/**
 * The lengths one can tap: usual distances of a putt and of what is left of it, in the person's units, and the fine steps beside
 * them. Metres in and out; pure. Leaves out: their words (text/record.ts).
 * The grids are common practice, no source: what a player would say of a putt he has paced.
 */
import { feetToMetres, inchesToMetres, metresToInches } from '../../../sim/index.ts';
import { LONGEST_PUTT, SHORTEST_PUTT } from '../../store/recordSchema.ts';
import type { Units } from '../../text/format.ts';

const FEET = [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 35, 40, 50, 60];
const METRES = [0.6, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 12, 14, 16, 18];
const LEFT_INCHES = [3, 6, 9, 12, 18, 24, 30, 36, 42, 48, 60, 72, 96, 120, 144];
const LEFT_METRES = [0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4];

/** Usual distances of a putt, shortest first, m. */
export const usualDistances = (units: Units): number[] =>
  units === 'imperial' ? FEET.map(feetToMetres) : METRES;
/** Usual leaves, shortest first, m. */
export const usualLeaves = (units: Units): number[] =>
  units === 'imperial' ? LEFT_INCHES.map(inchesToMetres) : LEFT_METRES;

/** A step of so much applies up to a length; both in the smaller unit (inches, centimetres). */
interface Stair {
  readonly upTo: number;
  readonly step: number;
}
const STAIRS: Readonly<Record<Units, readonly Stair[]>> = {
  imperial: [
    { upTo: 36, step: 3 },
    { upTo: 120, step: 6 },
    { upTo: 480, step: 12 },
    { upTo: Number.POSITIVE_INFINITY, step: 60 },
  ],
  metric: [
    { upTo: 100, step: 5 },
    { upTo: 500, step: 10 },
    { upTo: 1500, step: 50 },
    { upTo: Number.POSITIVE_INFINITY, step: 100 },
  ],
};
/** Smaller units: a length this near a step stands on it (records made in the other units never do exactly). */
const ON_A_STEP = 0.01;

/** The next length up or down that a person would name. @param metres from where @returns m, within what can be kept */
export const fineStep = (metres: number, way: 1 | -1, units: Units): number => {
  const value = units === 'imperial' ? metresToInches(metres) : metres * 100;
  const { step } =
    STAIRS[units].find(({ upTo }) => (way > 0 ? value < upTo - ON_A_STEP : value <= upTo + ON_A_STEP)) ??
    STAIRS[units][0];
  const next =
    way > 0
      ? Math.floor((value + ON_A_STEP) / step) * step + step
      : Math.ceil((value - ON_A_STEP) / step) * step - step;
  const found = units === 'imperial' ? inchesToMetres(next) : next / 100;
  return Math.min(Math.max(found, SHORTEST_PUTT), LONGEST_PUTT);
};

/** Whether two lengths are the same to whoever taps them, m: less than an eighth of an inch apart. */
export const sameLength = (one: number | undefined, two: number | undefined): boolean =>
  one !== undefined && two !== undefined && Math.abs(one - two) < 0.003;

/** For where a step is taken before anything was tapped, m: a putt of ten feet, a leave of a foot and a half. */
export const MIDDLE_DISTANCE = { imperial: feetToMetres(10), metric: 3 } as const;
export const MIDDLE_LEAVE = { imperial: inchesToMetres(18), metric: 0.5 } as const;
