/**
 * How a player's strokes at one putt spread: what he means (meant.ts) and how he strikes it, put together.
 *
 * Answers for: launch energy as a nearly normal number, and the chance of each start at each energy. Why in this order: who sees the
 * ground fall more both hits it softer and starts it wider, so that at each energy the starts are near a bell curve, or a few side by side,
 * while over all energies they are not. MODEL.md, section 3; derived.
 * Leaves out: what drops and where misses lie (outcomes.ts).
 */

import { normalCdf } from '../maths/normal.ts';
import { Reading } from '../read/reading.ts';
import type { Player, Putt } from '../types.ts';
import { type Meant, meantOf } from './meant.ts';

/** SDs looked at on either side: all but 7 in a million. */
export const REACH = 4.5;
/** A ball cannot be struck backwards: errors that would, leave it where it is; as a share of the mean energy. */
const LEAST_SHARE = 1e-6;
/** The energy meant is never taken for less than this share of its mean: far out in the tail of a wild reader. */
const LEAST_MEANT = 0.1;
/** Starts at one energy never spread less than this share of all starts: a spike could not be summed. */
const LEAST_PART = 0.05;
/** Most of the skewness that is followed, as a in z + a (z^2 - 1). */
const MOST_SKEWED = 0.05;

/** Why there are no odds where there is a line. */
export const UNSEEN =
  'No line on the ground as this player sees it: too steep for this green speed, or off the green. Try a smaller reading habit, a slower green or a gentler slope.';

/** The starts of balls of one energy: bell curves side by side. */
export interface StartsGiven {
  /** Share of each, mean and SD (radians from ball->hole, positive left), and how the mean goes with energy. */
  readonly shares: Float64Array;
  readonly means: Float64Array;
  readonly sds: Float64Array;
  readonly drifts: Float64Array;
}

export interface StrokeErrors {
  /** Mean and SD of the launch energy v^2, m^2/s^2. */
  readonly energy: number;
  readonly energySd: number;
  /** Mean start, radians from ball->hole, positive left, and SD of all starts; 0: all balls start alike. */
  readonly start: number;
  readonly startSd: number;
  /** Starts beyond which nothing is looked for. */
  readonly low: number;
  readonly high: number;
  /** Smallest SD of a bell curve of starts that counts. */
  readonly sharpest: number;
  /** How many bell curves of starts there are at each energy. */
  readonly curves: number;
  /** Energy so many normal scores from the middle. */
  energyAt(score: number): number;
  /** Share of balls softer than this energy. */
  below(energy: number): number;
  /** The starts of balls of this energy, into `out` from place `from` on. */
  startsAt(energy: number, out: StartsGiven, from?: number): void;
}

export interface StrokeOptions {
  /** Turned by the player on purpose, radians, positive left. */
  readonly turn?: number;
}

/** Room for the starts of so many energies. */
export const newStarts = (curves: number, energies = 1): StartsGiven => ({
  shares: new Float64Array(curves * energies),
  means: new Float64Array(curves * energies),
  sds: new Float64Array(curves * energies),
  drifts: new Float64Array(curves * energies),
});

/** One player at one putt, pace by pace. */
export class Strokes {
  private readonly reading: Reading;

  constructor(
    putt: Putt,
    private readonly player: Player,
  ) {
    this.reading = new Reading(putt, player);
  }

  /** @param pace m past the covered hole @returns undefined when the ground as seen has no line for it */
  at(pace: number, options?: StrokeOptions): StrokeErrors | undefined {
    const lines = this.reading.linesFor(pace);
    const meant = lines && meantOf(lines, this.player);
    return meant && strokeErrors(meant, this.player, options);
  }
}

/** Energy and start of one bell curve of what is meant, once struck. */
interface Curve {
  readonly share: number;
  readonly rarity: number;
  readonly seen: number;
  readonly mean: number;
  readonly variance: number;
  readonly third: number;
  /** Of the energy meant when so much was given: how it goes with that, and the variance left. */
  readonly part: number;
  readonly left: number;
  readonly sweep: number;
  /** Of the sweep given the energy meant. */
  readonly sweepSlope: number;
  readonly sweepLeft: number;
}

function struck(meant: Meant, { paceSd, paceBias }: Player): Curve {
  const { share, rarity, energy: seen, energyVariance, sweep, sweepVariance, covariance } = meant;
  const times = 1 + paceBias;
  // Moments of a product of two independent numbers.
  const variance = energyVariance * (times ** 2 + paceSd ** 2) + (seen * paceSd) ** 2;
  const third = meant.energyThird * times ** 3 + 6 * seen * times * energyVariance * paceSd ** 2;
  const part = variance > 0 ? (energyVariance * times) / variance : 0;
  const sweepSlope = energyVariance > 0 ? covariance / energyVariance : 0;
  return {
    share,
    rarity,
    seen,
    mean: seen * times,
    variance,
    third,
    part,
    left: Math.max(0, energyVariance - part * part * variance),
    sweep,
    sweepSlope,
    sweepLeft: Math.max(0, sweepVariance - sweepSlope * covariance),
  };
}

/** @param player lineSd, paceSd and paceBias count; what is seen is in `meant` */
export function strokeErrors(
  meant: readonly Meant[],
  player: Player,
  { turn = 0 }: StrokeOptions = {},
): StrokeErrors {
  const curves = meant.map((one) => struck(one, player));
  const over = (value: (curve: Curve) => number): number =>
    curves.reduce((sum, curve) => sum + curve.share * value(curve), 0);
  const energy = over(({ mean }) => mean);
  const variance = over(({ mean, variance: within }) => within + (mean - energy) ** 2);
  const third = over(
    ({ mean, variance: within, third: own }) => own + (mean - energy) * (3 * within + (mean - energy) ** 2),
  );
  const energySd = Math.sqrt(variance);
  // Cornish & Fisher: mean + SD (z + a (z^2 - 1)), a a sixth of the skewness.
  const a = energySd > 0 ? Math.max(-MOST_SKEWED, Math.min(MOST_SKEWED, third / (6 * energySd ** 3))) : 0;
  const least = LEAST_SHARE * energy;
  const energyAt = (score: number): number =>
    Math.max(least, energy + energySd * (score + a * (score * score - 1)));
  const below = (value: number): number => {
    const y = (value - energy) / energySd + a;
    const inside = 1 + 4 * a * y;
    return normalCdf(inside > 0 ? (2 * y) / (1 + Math.sqrt(inside)) : -0.5 / a);
  };

  const lineVariance = player.lineSd ** 2;
  let floor = 0;
  const startsAt = (value: number, out: StartsGiven, from = 0): void => {
    let total = 0;
    for (let k = 0; k < curves.length; k++) {
      const { share, seen, mean, variance: within, part, left, sweep, sweepSlope, sweepLeft } = curves[k];
      const then = Math.max(LEAST_MEANT * seen, seen + part * (value - mean));
      const square = then * then;
      const plain = (sweep + sweepSlope * (then - seen)) / then;
      const byEnergy = sweepSlope - plain;
      const unsure = left / square;
      // start = sweep / energy, the energy known to `left`: mean to second order; variance to first, with the mean of 1/energy^2.
      out.means[from + k] = plain - byEnergy * unsure + turn;
      out.sds[from + k] = Math.max(
        floor,
        Math.sqrt(lineVariance + (sweepLeft * (1 + 3 * unsure)) / square + byEnergy * byEnergy * unsure),
      );
      out.drifts[from + k] = (part * byEnergy) / then;
      // Which curve a ball of this energy is of.
      const z = within > 0 ? (value - mean) ** 2 / within : 0;
      const likely = within > 0 ? (share * Math.exp(-z / 2)) / Math.sqrt(within) : share;
      out.shares[from + k] = likely;
      total += likely;
    }
    for (let k = 0; k < curves.length; k++)
      out.shares[from + k] = total > 0 ? out.shares[from + k] / total : curves[k].share;
  };

  // All starts: three energies stand for their middle and spread, nine for how far they reach.
  const given = newStarts(curves.length);
  let first = 0;
  let second = 0;
  for (const [score, weight] of THREE) {
    startsAt(energyAt(score), given);
    for (let k = 0; k < curves.length; k++) {
      const share = weight * given.shares[k];
      first += share * given.means[k];
      second += share * (given.means[k] ** 2 + given.sds[k] ** 2);
    }
  }
  const startSd = Math.sqrt(Math.max(0, second - first * first));
  floor = LEAST_PART * startSd;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let sharpest = Number.POSITIVE_INFINITY;
  for (let i = -4; i <= 4; i++) {
    const score = (i / 4) * REACH;
    startsAt(energyAt(score), given);
    for (let k = 0; k < curves.length; k++) {
      const out = score * score + curves[k].rarity;
      const reach = Math.sqrt(Math.max(0, REACH * REACH - out)) * given.sds[k];
      low = Math.min(low, given.means[k] - reach);
      high = Math.max(high, given.means[k] + reach);
      if (Math.abs(i) <= 2) sharpest = Math.min(sharpest, given.sds[k]);
    }
  }
  return {
    energy,
    energySd,
    start: first,
    startSd,
    low,
    high,
    sharpest,
    curves: curves.length,
    energyAt,
    below,
    startsAt,
  };
}

/** Gauss-Hermite of three points. */
const THREE: readonly (readonly [score: number, weight: number])[] = [
  [-Math.sqrt(3), 1 / 6],
  [0, 2 / 3],
  [Math.sqrt(3), 1 / 6],
];
