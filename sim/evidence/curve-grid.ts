/**
 * What holed and missed putts tell of two numbers of a player: the angle error and the distance error. Answers for: the chance of
 * every pair on a grid, Bayes' rule counted out. Leaves out: what is read off it (holing-curve.ts).
 *
 * Model: a putt from x drops with the chance (1 - LAPSE) a(x, angle) d(x, distance), Gelman's two-number model
 * (player/holing-models.ts) and a small chance of missing whatever the skill. Chance of the record: binomial in each bin. Before the record: both numbers
 * log-normal about a benchmark's. The grid is even in the logarithms, laid over all that is possible and then closer and closer
 * about what is likely, until it no longer shrinks; sums over it are good to about a hundredth of a point (tests, against a plain
 * grid of twenty times as many points).
 */
import { holedByAngle, holedByDistance } from '../player/holing-models.ts';
import { degreesToRadians, metresToFeet } from '../units.ts';
import type { HoledBins } from './holed-bins.ts';

/**
 * Share of putts missed by carelessness, from however near. The tour misses one of 3000 from 0.3 ft and one of 1500 from 1 ft (TOUR_HOLED),
 * where the model says none; others are less careful (ours). Without it one tap-in missed in a hurry would outweigh thirty honest putts.
 */
const LAPSE = 0.001;
/**
 * How far the model itself misses true shares p, in units of sqrt(p (1 - p)): measured against the five benchmarks (MODEL.md, section 5),
 * a point at p = 50%. A bin therefore never counts for more than 1/0.02^2 = 2500 putts.
 */
export const MODEL_MISS = 0.02;

/** Ends of what is possible: hardly any error, and hardly any skill. Radians; shares of the distance. */
const POSSIBLE: Box = {
  angle: [Math.log(degreesToRadians(0.1)), Math.log(degreesToRadians(15))],
  distance: [Math.log(0.005), Math.log(1)],
};
/** Points in angle and in distance while looking for what is likely, and in the end. */
const LOOKING = [24, 20] as const;
const FINAL = [60, 40] as const;
/** Less likely than this share of the likeliest pair: outside. */
const UNLIKELY = 1e-5;
/** A box that keeps more than this share of its area has stopped shrinking. */
const STOPS_AT = 0.7;
/** Each look shrinks the box to a tenth or so; more than this never came up. */
const MOST_LOOKS = 12;

/** Logarithms of the ends in both numbers. */
interface Box {
  readonly angle: readonly [number, number];
  readonly distance: readonly [number, number];
}

/** What is thought of a player before any putt. */
export interface CurvePrior {
  /** Whose numbers these are: a benchmark's name, for the sentence. */
  readonly name: string;
  /** Middle of the angle error, SD in radians. */
  readonly angleSd: number;
  /** Middle of the distance error, SD as a share of the distance. */
  readonly distanceSd: number;
  /** How sure: SD of the logarithm of each; Infinity: not at all. */
  readonly logAngleSpread: number;
  readonly logDistanceSpread: number;
}

/** Chances of pairs of errors; they sum to 1. Plain data. */
export interface CurveGrid {
  /** Rising; radians. */
  readonly angleSds: Float64Array;
  /** Rising; shares. */
  readonly distanceSds: Float64Array;
  /** Angle by angle, distances in turn. */
  readonly weights: Float64Array;
}

const middles = ([low, high]: readonly [number, number], count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => low + ((high - low) * (i + 0.5)) / count);

/** The two parts of the share holed from one distance, over the grid's axes; their product is the share. */
export function shareParts(
  distance: number,
  { angleSds, distanceSds }: Pick<CurveGrid, 'angleSds' | 'distanceSds'>,
): { byAngle: Float64Array; byDistance: Float64Array } {
  const feet = metresToFeet(distance);
  return {
    byAngle: angleSds.map((sd) => (1 - LAPSE) * holedByAngle(feet, sd)),
    byDistance: distanceSds.map((sd) => holedByDistance(feet, sd)),
  };
}

/** Share holed from one distance (m) for every pair, flat like the weights. */
export function sharesOver(grid: CurveGrid, distance: number): Float64Array {
  const { byAngle, byDistance } = shareParts(distance, grid);
  const shares = new Float64Array(grid.weights.length);
  for (let i = 0, cell = 0; i < byAngle.length; i++)
    for (let j = 0; j < byDistance.length; j++, cell++) shares[cell] = byAngle[i] * byDistance[j];
  return shares;
}

function gridOn(box: Box, counts: readonly [number, number], bins: HoledBins, prior: CurvePrior): CurveGrid {
  const logAngles = middles(box.angle, counts[0]);
  const logDistances = middles(box.distance, counts[1]);
  const axes = { angleSds: logAngles.map(Math.exp), distanceSds: logDistances.map(Math.exp) };
  const priorOf = (at: number, middle: number, spread: number): number =>
    -(((at - Math.log(middle)) / spread) ** 2) / 2;
  const angleTerms = logAngles.map((at) => priorOf(at, prior.angleSd, prior.logAngleSpread));
  const distanceTerms = logDistances.map((at) => priorOf(at, prior.distanceSd, prior.logDistanceSpread));
  const logs = new Float64Array(counts[0] * counts[1]);
  for (const { tries, holed, metres } of bins.values()) {
    const { byAngle, byDistance } = shareParts(metres / tries, axes);
    const counted = 1 / (1 + tries * MODEL_MISS ** 2);
    const hits = holed * counted;
    const misses = (tries - holed) * counted;
    if (hits > 0) {
      // The logarithm of a product: each part once, not once for every pair.
      for (let i = 0; i < byAngle.length; i++) angleTerms[i] += hits * Math.log(byAngle[i]);
      for (let j = 0; j < byDistance.length; j++) distanceTerms[j] += hits * Math.log(byDistance[j]);
    }
    if (misses > 0)
      for (let i = 0, cell = 0; i < byAngle.length; i++)
        for (let j = 0; j < byDistance.length; j++, cell++)
          logs[cell] += misses * Math.log(1 - byAngle[i] * byDistance[j]);
  }
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0, cell = 0; i < angleTerms.length; i++)
    for (let j = 0; j < distanceTerms.length; j++, cell++) {
      logs[cell] += angleTerms[i] + distanceTerms[j];
      if (logs[cell] > most) most = logs[cell];
    }
  const weights = logs.map((log) => Math.exp(log - most));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return { ...axes, weights: weights.map((weight) => weight / sum) };
}

/** The box about all pairs that are not unlikely, a cell wider on each side, within the box before. */
function likelyBox({ weights }: CurveGrid, box: Box, counts: readonly [number, number]): Box {
  const most = weights.reduce((a, b) => Math.max(a, b), 0);
  const ends = { angle: [counts[0], -1], distance: [counts[1], -1] };
  for (let cell = 0; cell < weights.length; cell++) {
    if (weights[cell] < UNLIKELY * most) continue;
    const [i, j] = [Math.floor(cell / counts[1]), cell % counts[1]];
    ends.angle = [Math.min(ends.angle[0], i), Math.max(ends.angle[1], i)];
    ends.distance = [Math.min(ends.distance[0], j), Math.max(ends.distance[1], j)];
  }
  const about = (which: keyof Box, count: number): readonly [number, number] => {
    const [low, high] = box[which];
    const cell = (high - low) / count;
    return [
      Math.max(low, low + (ends[which][0] - 1) * cell),
      Math.min(high, low + (ends[which][1] + 2) * cell),
    ];
  };
  return { angle: about('angle', counts[0]), distance: about('distance', counts[1]) };
}

const areaOf = ({ angle, distance }: Box): number => (angle[1] - angle[0]) * (distance[1] - distance[0]);

/** The chances of all pairs after these putts. */
export function curveGrid(bins: HoledBins, prior: CurvePrior): CurveGrid {
  let box = POSSIBLE;
  for (let look = 0; look < MOST_LOOKS; look++) {
    const closer = likelyBox(gridOn(box, LOOKING, bins, prior), box, LOOKING);
    const shrunk = areaOf(closer) / areaOf(box);
    box = closer;
    if (shrunk > STOPS_AT) break;
  }
  return gridOn(box, FINAL, bins, prior);
}
