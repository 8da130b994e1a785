/**
 * The oracle's read: start and speed for a pace, by shooting. Newton's method in two unknowns on plain fixed-step rolls
 * (oracle-roll.ts), derivatives by differences. Where that does not settle from a straight guess, gravity's pull is raised
 * from nothing in steps and the line followed. Shares nothing with sim/read.
 */
import type { Point } from '../../sim/types.ts';
import { newPlainRoll, type PlainRoll, rollPlain, type Setting } from './oracle-roll.ts';

export interface PlainLine {
  /** Radians from +x. */
  readonly heading: number;
  /** m/s. */
  readonly speed: number;
}

export interface Shot {
  /** Radians from +x. */
  readonly heading: number;
  /** Square of the launch speed, m^2/s^2. */
  readonly energy: number;
}

/** How the offset at the hole and the error of the pace change with heading and energy. */
export interface Slopes {
  readonly offsetByHeading: number;
  readonly offsetByEnergy: number;
  readonly paceByHeading: number;
  readonly paceByEnergy: number;
}

const roll: PlainRoll = newPlainRoll();

/** Offset at the hole and error of the pace, m; false when the ball does not get past the hole or is lost. */
function missOf(setting: Setting, ball: Point, pace: number, shot: Shot, out: Float64Array): boolean {
  if (!(shot.energy > 0)) return false;
  rollPlain(setting, ball, shot.heading, Math.sqrt(shot.energy), roll);
  if (roll.status !== 'atRest' || !roll.passed) return false;
  out[0] = roll.offset;
  out[1] = Math.hypot(roll.x - setting.hole.x, roll.y - setting.hole.y) - pace;
  return true;
}

const now = new Float64Array(2);
const turned = new Float64Array(2);
const pushed = new Float64Array(2);
const tried = new Float64Array(2);

/** Derivatives at a shot whose misses are in `now`; undefined where a neighbour does not get past the hole. */
function slopesHere(setting: Setting, ball: Point, pace: number, shot: Shot): Slopes | undefined {
  const turn = 1e-3;
  const push = 2e-3 * shot.energy;
  if (!missOf(setting, ball, pace, { heading: shot.heading + turn, energy: shot.energy }, turned))
    return undefined;
  if (!missOf(setting, ball, pace, { heading: shot.heading, energy: shot.energy + push }, pushed))
    return undefined;
  return {
    offsetByHeading: (turned[0] - now[0]) / turn,
    offsetByEnergy: (pushed[0] - now[0]) / push,
    paceByHeading: (turned[1] - now[1]) / turn,
    paceByEnergy: (pushed[1] - now[1]) / push,
  };
}

export const slopesAt = (setting: Setting, ball: Point, pace: number, shot: Shot): Slopes | undefined =>
  missOf(setting, ball, pace, shot, now) ? slopesHere(setting, ball, pace, shot) : undefined;

export interface Search {
  readonly guess: Shot;
  /** How near the hole centre and the pace counts as found, m. */
  readonly close: number;
  /** Derivatives at a line nearby: kept as long as every step with them at least halves the miss. */
  readonly known?: Slopes;
}

/** Newton's method from a guess; undefined when it does not settle. */
export function shootFrom(
  setting: Setting,
  ball: Point,
  pace: number,
  { guess, close, known }: Search,
): Shot | undefined {
  let shot = guess;
  // A guess too soft to get there is hit harder.
  for (let i = 0; !missOf(setting, ball, pace, shot, now); i++) {
    if (i === 8) return undefined;
    shot = { heading: shot.heading, energy: 1.2 * shot.energy };
  }
  let kept = known;
  for (let i = 0; i < 30; i++) {
    const size = Math.hypot(now[0], now[1]);
    if (size < close) return shot;
    const fresh = kept === undefined;
    const slopes = kept ?? slopesHere(setting, ball, pace, shot);
    if (slopes === undefined) return undefined;
    const { offsetByHeading: a, offsetByEnergy: b, paceByHeading: c, paceByEnergy: d } = slopes;
    const determinant = a * d - b * c;
    const byHeading = (now[1] * b - now[0] * d) / determinant;
    const byEnergy = (now[0] * c - now[1] * a) / determinant;
    let better = false;
    // Derivatives from elsewhere are not worth a shorter step.
    for (let share = 1; share > (fresh ? 0.01 : 0.9) && !better; share /= 2) {
      const next = { heading: shot.heading + share * byHeading, energy: shot.energy + share * byEnergy };
      if (!missOf(setting, ball, pace, next, tried) || Math.hypot(tried[0], tried[1]) >= size) continue;
      better = true;
      shot = next;
      now.set(tried);
    }
    if (fresh && !better) return undefined;
    kept = better && Math.hypot(now[0], now[1]) < size / 2 ? slopes : undefined;
  }
  return undefined;
}

/**
 * The line for a pace (m past the covered hole), or undefined.
 * @param close how near the hole centre and the pace counts as found, m
 */
export function plainLine(setting: Setting, ball: Point, pace: number, close: number): PlainLine | undefined {
  const { hole } = setting;
  const straight: Shot = {
    heading: Math.atan2(hole.y - ball.y, hole.x - ball.x),
    energy: 2 * setting.friction * (Math.hypot(hole.x - ball.x, hole.y - ball.y) + pace),
  };
  let found = shootFrom(setting, ball, pace, { guess: straight, close });
  // More than half a right angle from a straight guess at once may be the other, long line: follow it up instead.
  if (found === undefined || Math.abs(found.heading - straight.heading) > Math.PI / 4) {
    let shot: Shot | undefined = straight;
    for (let part = 1; part <= 16 && shot !== undefined; part++)
      shot = shootFrom({ ...setting, pull: part / 16 }, ball, pace, {
        guess: shot,
        close: part === 16 ? close : 1e-3,
      });
    found = shot;
  }
  return found === undefined ? undefined : { heading: found.heading, speed: Math.sqrt(found.energy) };
}
