/**
 * The lines a player means for one putt, one for every ground they may see: each is shot anew on that ground.
 *
 * Answers for: the line on a ground as seen, and what their errors amount to when they are small: derivatives of start and
 * energy by tilt and speed. They only say where shooting begins (and are stored, to be compared with): a line counts as
 * found by where its ball goes, whatever it began from. Leaves out: the draw (oracle-seen.ts), the stroke (oracle.ts).
 */
import type { Player, Point } from '../../sim/types.ts';
import { type PlainLine, plainLine, type Shot, shootFrom, slopesAt } from './oracle-line.ts';
import type { Setting } from './oracle-roll.ts';
import { seenWith } from './oracle-seen.ts';

/** Lines are found this closely, m: the true one to a hundredth of a millimetre, those as seen by the ten thousand. */
const TRUE_CLOSE = 1e-5;
const SEEN_CLOSE = 1e-4;
/** Steps of the derivatives: slope, m per m, and friction, share. Small beside what is seen, large beside SEEN_CLOSE. */
const TILT_STEP = 2e-3;
const FRICTION_STEP = 0.03;

/** How start and distance are out together: of the start struck and the energy struck, over the true line's, less 1. */
export interface JointErrors {
  /** Radians from the ball-to-hole line, positive left. */
  readonly startMean: number;
  readonly startSd: number;
  /** Share. */
  readonly shareMean: number;
  readonly shareSd: number;
  readonly correlation: number;
}

export interface MeantLines {
  /** The line on the true ground. */
  readonly line: PlainLine;
  /** The line on a ground as seen, made by `sightOf` from the same setting for the same readBias; undefined: none found. */
  meant(seen: Setting): PlainLine | undefined;
  /** What the errors of a player amount to, to first order in all but the habits, which count in full. */
  firstOrder(player: Player): JointErrors;
}

/** Undefined where the true ground, or the one seen with the habit alone, has no line for this pace. */
export function meantLines(
  setting: Setting,
  ball: Point,
  pace: number,
  readBias: number,
): MeantLines | undefined {
  const { hole, friction } = setting;
  const line = plainLine(setting, ball, pace, TRUE_CLOSE);
  const share = 1 + readBias;
  const usual = seenWith(setting, { share, tiltX: 0, tiltY: 0, friction });
  const found = plainLine(usual, ball, pace, TRUE_CLOSE);
  if (line === undefined || found === undefined) return undefined;
  const habit: Shot = { heading: found.heading, energy: found.speed ** 2 };
  const known = slopesAt(usual, ball, pace, habit);
  if (known === undefined) return undefined;

  /** Change of heading and energy for each unit of one error. */
  const derivative = (of: 'tiltX' | 'tiltY' | 'friction', step: number): Shot | undefined => {
    const [more, less] = [step, -step].map((change) =>
      shootFrom(seenWith(setting, { ...usual, [of]: usual[of] + change }), ball, pace, {
        guess: habit,
        close: SEEN_CLOSE,
        known,
      }),
    );
    return more && less
      ? {
          heading: (more.heading - less.heading) / (2 * step),
          energy: (more.energy - less.energy) / (2 * step),
        }
      : undefined;
  };
  const byX = derivative('tiltX', TILT_STEP);
  const byY = derivative('tiltY', TILT_STEP);
  const byFriction = derivative('friction', FRICTION_STEP * friction);
  if (byX === undefined || byY === undefined || byFriction === undefined) return undefined;

  return {
    line,
    meant(seen) {
      const { tiltX, tiltY } = seen;
      const slower = seen.friction - friction;
      const guess = {
        heading: habit.heading + byX.heading * tiltX + byY.heading * tiltY + byFriction.heading * slower,
        energy: habit.energy + byX.energy * tiltX + byY.energy * tiltY + byFriction.energy * slower,
      };
      const shot = shootFrom(seen, ball, pace, { guess, close: SEEN_CLOSE, known });
      if (shot !== undefined) return { heading: shot.heading, speed: Math.sqrt(shot.energy) };
      return plainLine(seen, ball, pace, SEEN_CLOSE);
    },
    firstOrder({ lineSd, paceSd, paceBias, slopeSd, speedSd }) {
      const trueEnergy = line.speed ** 2;
      const struck = (1 + paceBias) / trueEnergy;
      const parts = [
        { start: byX.heading * slopeSd, share: struck * byX.energy * slopeSd },
        { start: byY.heading * slopeSd, share: struck * byY.energy * slopeSd },
        {
          start: byFriction.heading * friction * speedSd,
          share: struck * byFriction.energy * friction * speedSd,
        },
        { start: lineSd, share: 0 },
        { start: 0, share: (paceSd * habit.energy) / trueEnergy },
      ];
      const sum = (of: (part: (typeof parts)[0]) => number): number =>
        parts.reduce((total, part) => total + of(part), 0);
      const startSd = Math.sqrt(sum(({ start }) => start ** 2));
      const shareSd = Math.sqrt(sum((part) => part.share ** 2));
      return {
        startMean: turn(habit.heading - Math.atan2(hole.y - ball.y, hole.x - ball.x)),
        startSd,
        shareMean: struck * habit.energy - 1,
        shareSd,
        correlation: sum((part) => part.start * part.share) / (startSd * shareSd),
      };
    },
  };
}

/** An angle between -pi and pi. */
export const turn = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));
