/**
 * Where the ball is sent, against where it should go: the error of the read and the error of the start line together.
 *
 * MODEL.md, the player: the player perceives break times m = 1 + readBias + readSd z, so starts at
 * atan2(m sin(start), cos(start)), which is atan(m aimOffset / L) below 90 degrees and stays smooth above, and adds a
 * normal start-line error. The wider of the two errors is taken exactly, the narrower is
 * summed over equally spaced points: for a bell curve no wider than the one it blurs that sum is good to about 1e-6.
 * Leaves out: pace.
 */
import type { Player } from '../types.ts';
import { normalDensity } from './normal.ts';

/** The narrower error is summed over this many SD to either side (the rest is 4e-7 of all putts) in this many points. */
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
  /** One SD of all start errors together, radians, to first order (the read's share is not quite normal); 0: no error. */
  readonly sd: number;
  /** Share of putts per radian that start at this angle; only where sd > 0. */
  density(angle: number): number;
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
  const { lineSd, readSd } = player;
  const readAngle = turn * readSd;
  const sd = Math.hypot(lineSd, readAngle);

  if (readAngle === 0)
    return { middle, sd, density: (angle) => normalDensity((angle - middle) / lineSd) / lineSd };
  if (readAngle <= lineSd) {
    const centres = OFFSETS.map((z) => angleOf(seen + readSd * z));
    return {
      middle,
      sd,
      density: (angle) => {
        let sum = 0;
        for (let i = 0; i < POINTS; i++) sum += SHARES[i] * normalDensity((angle - centres[i]) / lineSd);
        return sum / lineSd;
      },
    };
  }
  /** Density of reads alone: the break that would have to be seen for this angle, as a normal score, times its slope. */
  const readDensity = (angle: number): number => {
    const along = Math.cos(angle);
    // Only angles on the same side of +-90 degrees as the start can come of a read.
    if (along * cosine <= 0) return 0;
    const score = ((Math.tan(angle) * cosine) / sine - seen) / readSd;
    return (normalDensity(score) * Math.abs(cosine / sine)) / (along * along * readSd);
  };
  if (lineSd === 0) return { middle, sd, density: readDensity };
  return {
    middle,
    sd,
    density: (angle) => {
      let sum = 0;
      for (let i = 0; i < POINTS; i++) sum += SHARES[i] * readDensity(angle - lineSd * OFFSETS[i]);
      return sum;
    },
  };
}
