/**
 * The ground and green speed as a player sees them before one putt: the tilt and the speed of their sight, drawn anew each time.
 *
 * Answers for: the draw, and the ground it makes of the true one (MODEL.md section 3). Leaves out: the line on it
 * (oracle-line.ts), the stroke (oracle.ts).
 */
import { GRAVITY, ROLLING_FACTOR } from '../../sim/constants.ts';
import type { Player } from '../../sim/types.ts';
import type { Setting } from './oracle-roll.ts';

/** What is seen is never steeper than this share of the slope that still holds a ball; on a field that is not asked. */
const STEEPEST = 0.9;
/** Nobody sees a green slower than this share of what it is. */
const SLOWEST = 0.2;

/** The setting as seen by a player whose errors are drawn from `normal`: two of slope, then one of speed. */
export function sightOf(setting: Setting, player: Player, normal: () => number): Setting {
  const tiltX = player.slopeSd * normal();
  const tiltY = player.slopeSd * normal();
  const speed = Math.max(SLOWEST, 1 + player.speedSd * normal());
  return seenWith(setting, { share: 1 + player.readBias, tiltX, tiltY, friction: setting.friction / speed });
}

/** Ground seen `share` times as steep as it is, with a tilt added, that brakes by `friction`. */
export function seenWith(
  setting: Setting,
  { share, tiltX, tiltY, friction }: Pick<Setting, 'share' | 'tiltX' | 'tiltY' | 'friction'>,
): Setting {
  const { gradient, even, hole, step, pull } = setting;
  const seen = { gradient, even, share, tiltX, tiltY, friction, hole, step, pull };
  if (even === undefined) return seen;
  const x = share * even.x + tiltX;
  const y = share * even.y + tiltY;
  const steepness = (ROLLING_FACTOR * GRAVITY * Math.hypot(x, y)) / friction;
  if (steepness <= STEEPEST) return seen;
  // Made gentler, said as another tilt: on a plane it is the same.
  const gentler = STEEPEST / steepness - 1;
  return { ...seen, tiltX: tiltX + gentler * x, tiltY: tiltY + gentler * y };
}
