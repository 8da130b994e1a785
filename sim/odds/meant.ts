/**
 * What a player means when he reads one putt for one pace: start and launch energy of the line on the ground as seen, over all that
 * may be seen. Answers for: their joint distribution as a few bell curves. Leaves out: the stroke (stroke-errors.ts), the line on
 * one ground (read/reading.ts).
 *
 * The slope seen across the putt moves the start, and far from evenly where much breaks: the bell curve of that slope is cut into
 * narrower ones, each with its own line. The slope seen along and the green speed move the energy, and the start with it: on a plane
 * the energy is 2 (L + pace) (a_f + k slope along), the start nearly k slope across / (a_f + k slope along), so that energy and
 * start x energy bend hardly at all with either. Moments are taken of these two, by three reads along each axis (Gauss-Hermite, exact up to
 * the fifth power). MODEL.md, section 3; derived.
 */
import type { LineSeen, MeantLine, Misread } from '../read/reading.ts';
import type { Player } from '../types.ts';

/** One bell curve of what is meant; sweep = start x energy (radians m^2/s^2), positive left. */
export interface Meant {
  /** Of all that is meant. */
  readonly share: number;
  /** How rare its middle is, as a squared score of a bell curve. */
  readonly rarity: number;
  /** Energy v^2, m^2/s^2: mean, variance, third central moment. */
  readonly energy: number;
  readonly energyVariance: number;
  readonly energyThird: number;
  /** Sweep: mean, variance, covariance with the energy. */
  readonly sweep: number;
  readonly sweepVariance: number;
  readonly covariance: number;
}

/** Gauss-Hermite of three points: at 0 and at this many SD to either side. */
const ASIDE = Math.sqrt(3);
/** A bell curve cut into narrower ones, equally far apart; all in SDs of the whole. Their sum is the whole within 1 in 10 000. */
interface Cut {
  readonly step: number;
  readonly scores: readonly number[];
  /** SD of each. */
  readonly within: number;
  readonly shares: readonly number[];
}

/** @param step between them @param within their SD @param aside of them on either side of the middle one */
function cutInto(step: number, within: number, aside: number): Cut {
  const scores = Array.from({ length: 2 * aside + 1 }, (_, i) => (i - aside) * step);
  const raw = scores.map((score) => Math.exp((-score * score) / 2 / (1 - within ** 2)));
  const sum = raw.reduce((total, share) => total + share, 0);
  return { step, scores, within, shares: raw.map((share) => share / sum) };
}

const FIVE = cutInto(1, 0.7, 2);
const NINE = cutInto(0.7, 0.5, 4);
/** Who misreads slope by more than this (rise over run) is worth the nine: on 4% five are out by 0.4 points of putts holed. */
const WIDE = 0.0075;
const PLAIN: Misread = { along: 0, across: 0, speed: 1 };

/** @returns undefined when the ground as seen on average has no line */
export function meantOf(lines: LineSeen, { slopeSd, speedSd }: Player): readonly Meant[] | undefined {
  const middle = lines(PLAIN);
  if (middle === undefined) return undefined;
  const speedAxis = axisOf(
    middle,
    speedSd > 0 ? lines({ ...PLAIN, speed: 1 - ASIDE * speedSd }) : undefined,
    speedSd > 0 ? lines({ ...PLAIN, speed: 1 + ASIDE * speedSd }) : undefined,
  );
  if (slopeSd === 0) return [asMeant(middle, [speedAxis])];
  const cut = slopeSd > WIDE ? NINE : FIVE;
  const about = cut.scores.map((score) =>
    score === 0 ? middle : lines({ ...PLAIN, across: score * slopeSd }),
  );
  const found: Meant[] = [];
  let total = 0;
  cut.scores.forEach((score, k) => {
    const line = about[k];
    if (line === undefined) return;
    const across = score * slopeSd;
    const alongAxis = axisOf(
      line,
      lines({ ...PLAIN, across, along: -ASIDE * slopeSd }),
      lines({ ...PLAIN, across, along: ASIDE * slopeSd }),
    );
    total += cut.shares[k];
    found.push({
      share: cut.shares[k],
      rarity: score ** 2 / (1 - cut.within ** 2),
      ...momentsOf(line, [alongAxis, speedAxis, acrossAxis(about, k, cut)]),
    });
  });
  return found.map((one) => ({ ...one, share: one.share / total }));
}

/** How energy and sweep go with one misreading, in its SDs: slope z + bend (z^2 - 1). */
interface Axis {
  readonly energySlope: number;
  readonly energyBend: number;
  readonly sweepSlope: number;
  readonly sweepBend: number;
}

const sweepOf = ({ start, energy }: MeantLine): number => start * energy;

/** One line alone for all that is meant, give or take what the axes say. */
export const asMeant = (line: MeantLine, axes: readonly Axis[] = []): Meant => ({
  share: 1,
  rarity: 0,
  ...momentsOf(line, axes),
});

/** From the lines ASIDE to either side; where one is missing the other stands for both. */
function axisOf(middle: MeantLine, below: MeantLine | undefined, above: MeantLine | undefined): Axis {
  const off = (value: (line: MeantLine) => number): [slope: number, bend: number] => {
    const down = below && value(below) - value(middle);
    const up = above && value(above) - value(middle);
    const [low, high] = [down ?? -(up ?? 0), up ?? -(down ?? 0)];
    return [(high - low) / (2 * ASIDE), (high + low) / 6];
  };
  const [energySlope, energyBend] = off(({ energy }) => energy);
  const [sweepSlope, sweepBend] = off(sweepOf);
  return { energySlope, energyBend, sweepSlope, sweepBend };
}

/** What is left of the slope across within one of the narrower curves: slopes there, from its neighbours. */
function acrossAxis(about: readonly (MeantLine | undefined)[], k: number, { step, within }: Cut): Axis {
  const slope = (value: (line: MeantLine) => number): number => {
    const at = (i: number): number | undefined => about[i] && value(about[i]);
    const [here, before, after] = [at(k) ?? 0, at(k - 1), at(k + 1)];
    if (before !== undefined && after !== undefined) return (after - before) / (2 * step);
    // At an end: the parabola through the last three.
    const side = after === undefined ? -1 : 1;
    const [next, last] = [at(k + side), at(k + 2 * side)];
    if (next === undefined) return 0;
    return (side * (last === undefined ? next - here : (4 * next - 3 * here - last) / 2)) / step;
  };
  return {
    energySlope: within * slope(({ energy }) => energy),
    energyBend: 0,
    sweepSlope: within * slope(sweepOf),
    sweepBend: 0,
  };
}

function momentsOf(middle: MeantLine, axes: readonly Axis[]): Omit<Meant, 'share' | 'rarity'> {
  const sums = {
    energy: middle.energy,
    energyVariance: 0,
    energyThird: 0,
    sweep: sweepOf(middle),
    sweepVariance: 0,
    covariance: 0,
  };
  for (const { energySlope, energyBend, sweepSlope, sweepBend } of axes) {
    sums.energy += energyBend;
    sums.sweep += sweepBend;
    sums.energyVariance += energySlope ** 2 + 2 * energyBend ** 2;
    sums.energyThird += 6 * energySlope ** 2 * energyBend + 8 * energyBend ** 3;
    sums.sweepVariance += sweepSlope ** 2 + 2 * sweepBend ** 2;
    sums.covariance += energySlope * sweepSlope + 2 * energyBend * sweepBend;
  }
  return sums;
}
