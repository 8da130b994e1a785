/**
 * What one roll says of the ground under it: how fast it slows a ball down, from a stretch timed to rest or from a roll off a ramp.
 *
 * Answers for: both kinds of rolls turned into one, with the error expected of each. Leaves out: what follows for green speed
 * and slope (green-speed.ts).
 * Source: the rolling model (MODEL.md sections 1 and 6): constant slowing a along the line, so that the last d metres to rest
 * take t seconds with d = a t^2/2, and a ball that starts at v rests after v^2/(2a).
 */
import { GRAVITY, ROLLING_FACTOR } from '../constants.ts';

/** There and back along one line; which of them climbs need not be known. */
export type RollWay = 'there' | 'back';

/** The last stretch of a roll, timed from a mark to rest. */
export interface TimedRoll {
  readonly way: RollWay;
  /** Mark to rest, m. */
  readonly distance: number;
  /** s */
  readonly seconds: number;
}

/** A roll off a ramp. */
export interface RampRoll {
  readonly way: RollWay;
  /** Foot of the ramp to rest, m. */
  readonly distance: number;
}

/** One roll of either kind. */
export interface SlowedRoll {
  readonly way: RollWay;
  /** Along the line, m/s^2. */
  readonly slowing: number;
  /** Expected error of this one roll, share of the slowing, one standard deviation. */
  readonly own: number;
  /** Expected error common to all of them, likewise. */
  readonly shared: number;
}

export interface StopwatchErrors {
  /**
   * Spread of the timed stretch from roll to roll, s: both presses of a thumb together. 0.1: reaction to what one has seen
   * coming (common practice, no source). Only the prior of the scatter (readings.ts).
   */
  readonly spread: number;
  /**
   * What is always too long or too short, s. 0.05, ours: a tenth of a second before rest a ball at 10 ft has 3 mm to go, so the
   * moment of rest itself is not seen more sharply.
   */
  readonly common: number;
}
export const STOPWATCH: StopwatchErrors = { spread: 0.1, common: 0.05 };

const withWay = <Roll extends { readonly way: RollWay }>(rolls: readonly Roll[], way: RollWay): Roll[] =>
  rolls.filter((roll) => roll.way === way);

/**
 * Rolls timed over their last stretch. The error of a roll is twice that of its time, 2 spread/t; t is what the stretch should
 * take by all rolls of its way (the time read is itself off, and would give the luckiest readings the largest weight).
 * @param rolls distances and times above 0
 */
export function timedSlowings(
  rolls: readonly TimedRoll[],
  { spread, common }: StopwatchErrors = STOPWATCH,
): SlowedRoll[] {
  const slowingOf = ({ distance, seconds }: TimedRoll): number => (2 * distance) / seconds ** 2;
  return (['there', 'back'] as const).flatMap((way) => {
    const these = withWay(rolls, way);
    const typical = Math.exp(these.reduce((sum, roll) => sum + Math.log(slowingOf(roll)), 0) / these.length);
    return these.map((roll) => {
      const seconds = Math.sqrt((2 * roll.distance) / typical);
      return { way, slowing: slowingOf(roll), own: (2 * spread) / seconds, shared: (2 * common) / seconds };
    });
  });
}

/** Speed of a ball at the foot of a ramp that it rolled down by `height` metres, m/s: sqrt(10 g h/7), all of it rolling. */
export const rampSpeed = (height: number): number => Math.sqrt(2 * ROLLING_FACTOR * GRAVITY * height);

/** Height from which a ball leaves a ramp as fast as it leaves the Stimpmeter, m: 24 cm. */
export const rampHeightFor = (speed: number): number => speed ** 2 / (2 * ROLLING_FACTOR * GRAVITY);

export interface RampErrors {
  /** Spread of the distance from roll to roll, share of it; 3%, ours. Only the prior of the scatter. */
  readonly spread: number;
  /** Error of the height, m; 3 mm, ours: a ruler, and a ball let go by hand. */
  readonly height: number;
}
export const RAMP: RampErrors = { spread: 0.03, height: 0.003 };

/**
 * Rolls off a ramp with a flat bed and a foot that runs out level. A grooved ramp lets the ball spin faster and is slower: not for
 * this formula; a foot that meets the ground at an angle loses speed there.
 * @param rolls distances above 0
 * @param height how much lower the ball is at the foot than where it was let go, m, above 0
 */
export function rampSlowings(
  rolls: readonly RampRoll[],
  height: number,
  errors: RampErrors = RAMP,
): SlowedRoll[] {
  const energy = rampSpeed(height) ** 2 / 2;
  return rolls.map(({ way, distance }) => ({
    way,
    slowing: energy / distance,
    own: errors.spread,
    shared: errors.height / height,
  }));
}
