/**
 * Where the ball is sent, against where it should go: the error of the read and the error of the start line together.
 *
 * MODEL.md, the player: the player perceives break times m = 1 + readBias + readSd z, so starts at
 * atan2(m sin(start), cos(start)), which is atan(m aimOffset / L) below 90 degrees and stays smooth above, and adds a
 * normal start-line error. The wider of the two errors is taken exactly through the normal distribution, the narrower is
 * summed over equally spaced points: for a bell curve no wider than the one it blurs that sum is good to about 1e-6.
 * Leaves out: pace.
 */
import type { Player } from '../types.ts';
import { normalCdf } from './normal.ts';

/** Reaches this many SD; the rest is 4e-7 of all putts. */
const REACH = 5;
const POINTS = 15;
const STEP = (2 * REACH) / (POINTS - 1);
const OFFSETS = Float64Array.from({ length: POINTS }, (_, i) => -REACH + i * STEP);
const SHARES = (() => {
  const raw = OFFSETS.map((z) => Math.exp((-z * z) / 2));
  const sum = raw.reduce((total, share) => total + share, 0);
  return raw.map((share) => share / sum);
})();

export interface StartErrors {
  /** Start angle in the middle of what the player does, radians from ball->hole. */
  readonly middle: number;
  /** Size of one SD of all start errors together, radians; about: the read's share is not quite normal. */
  readonly sd: number;
  /** Share of putts that start to the right of (below) this angle. */
  below(angle: number): number;
}

/**
 * @param start intended start angle, radians from ball->hole, positive left
 * @param player its lineSd, readSd and readBias count
 */
export function startErrors(start: number, player: Player): StartErrors {
  const sine = Math.sin(start);
  const cosine = Math.cos(start);
  const seen = 1 + player.readBias;
  const angleOf = (times: number): number => Math.atan2(times * sine, cosine);
  const middle = angleOf(seen);
  // d/dm atan2(m sine, cosine).
  const turn = Math.abs(sine * cosine) / (cosine * cosine + (seen * sine) ** 2);
  const readAngle = turn * player.readSd;
  const { lineSd } = player;
  const sd = Math.hypot(lineSd, readAngle);
  if (sd === 0) return { middle, sd, below: (angle) => (angle < middle ? 0 : angle > middle ? 1 : 0.5) };

  if (readAngle <= lineSd) {
    const centres = OFFSETS.map((z) => angleOf(seen + player.readSd * z));
    if (readAngle === 0) return { middle, sd, below: (angle) => normalCdf((angle - middle) / lineSd) };
    return {
      middle,
      sd,
      below: (angle) => {
        let share = 0;
        for (let i = 0; i < POINTS; i++) share += SHARES[i] * normalCdf((angle - centres[i]) / lineSd);
        return share;
      },
    };
  }

  /** Share of reads that start to the right of this angle: the break that would have to be seen, as a normal score. */
  const sign = sine < 0 ? -1 : 1;
  const readBelow = (angle: number): number => {
    // Only angles on the same side of +-90 degrees as the start can come of a read.
    const along = Math.cos(angle) * cosine;
    if (along <= 0) return angle < middle ? 0 : 1;
    const times = (Math.tan(angle) * cosine) / sine;
    const score = (times - seen) / player.readSd;
    const growing = sign * cosine > 0;
    return normalCdf(growing ? score : -score);
  };
  if (lineSd === 0) return { middle, sd, below: readBelow };
  return {
    middle,
    sd,
    below: (angle) => {
      let share = 0;
      for (let i = 0; i < POINTS; i++) share += SHARES[i] * readBelow(angle - lineSd * OFFSETS[i]);
      return share;
    },
  };
}
