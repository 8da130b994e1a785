/**
 * What a player holes from any distance, with its margin: a smooth curve through few putts, leaning on a benchmark as long as they
 * are few. Answers for: shares with 95% intervals, shares of players who could have made the record for sums over the putts of a day, how
 * much of the answer is the record's own. Leaves out: the benchmark and how players differ (curve-family.ts), Bayes' rule
 * (curve-posterior.ts), how much is whose (own-part.ts).
 * "At" a distance, never "from x to y": distance-bands.ts has those. A share is the one of the long run, over good days and bad.
 */
import { drawNormal } from '../odds/normal.ts';
import { seededRandom } from '../random.ts';
import { solveLower, solveUpper } from './cholesky.ts';
import type { CurveFamily } from './curve-family.ts';
import { type CurvePart, curvePosterior } from './curve-posterior.ts';
import { type OwnPart, ownPartOf, ownShareOf } from './own-part.ts';
import type { HoledTally } from './tallies.ts';

/** Normal SDs either side of the middle that hold 95%. */
const TWO_SIDED_95 = 1.959964;
/** Gauss-Hermite: means over a standard normal (Abramowitz & Stegun, table 25.10, for the weight exp(-z^2/2)). */
const NORMAL_5 = {
  nodes: [-2.8569700138728, -1.35562617997427, 0, 1.35562617997427, 2.8569700138728],
  weights: [0.011257411327721, 0.222075922005613, 0.533333333333333, 0.222075922005613, 0.011257411327721],
};

export interface HolingCurve {
  readonly family: CurveFamily;
  readonly tallies: readonly HoledTally[];
  readonly parts: readonly CurvePart[];
  /** The same before any putt. */
  readonly before: readonly CurvePart[];
  readonly effective: OwnPart;
}

/** Share holed at one distance. */
export interface CurveShare {
  readonly distance: number;
  readonly mean: number;
  /** 95% of players with such a record lie between. */
  readonly low: number;
  readonly high: number;
}

/** The curve of one part of the answer, or its doubt, at one distance: log odds of a miss in the long run. */
export interface Height {
  readonly mean: number;
  readonly variance: number;
}

const shareOf = (height: number): number => 1 / (1 + Math.exp(height));

/** Share holed over all days, of a player who on the middle one misses with these log odds. */
const inTheLongRun = (height: number, daySd: number): number =>
  daySd === 0
    ? shareOf(height)
    : NORMAL_5.nodes.reduce((sum, z, k) => sum + NORMAL_5.weights[k] * shareOf(height + daySd * z), 0);

/** What players of the answer miss at a distance (m). */
function heightsAt(
  family: CurveFamily,
  parts: readonly CurvePart[],
  distance: number,
): Height & { share: number } {
  const benchmark = family.heightAt(distance);
  const ways = family.waysAt(distance);
  let [share, mean, squares] = [0, 0, 0];
  for (const { weight, daySd, mean: middles, factor } of parts) {
    const middle = ways.reduce((sum, way, i) => sum + way * middles[i], benchmark);
    const sd = Math.hypot(...solveLower(factor, ways));
    for (const [k, z] of NORMAL_5.nodes.entries()) {
      const chance = weight * NORMAL_5.weights[k];
      const holed = inTheLongRun(middle + sd * z, daySd);
      const height = Math.log((1 - holed) / holed);
      share += chance * holed;
      mean += chance * height;
      squares += chance * height * height;
    }
  }
  return { share, mean, variance: squares - mean * mean };
}

/** The player's curve after these putts (talliesOf makes them), about a benchmark player (curveFamilyOf). */
export function holingCurve(tallies: readonly HoledTally[], family: CurveFamily): HolingCurve {
  const parts = curvePosterior(tallies, family);
  const before = curvePosterior([], family);
  const putts = tallies.reduce((sum, { tries }) => sum + tries, 0);
  const doubts = (distance: number) => ({
    before: heightsAt(family, before, distance).variance,
    after: heightsAt(family, parts, distance).variance,
  });
  return { family, tallies, parts, before, effective: ownPartOf(putts, doubts) };
}

/** The curve without one day, such as the round it is to judge. @param day as its tallies say */
export const curveWithout = ({ tallies, family }: HolingCurve, day: string): HolingCurve =>
  holingCurve(
    tallies.filter((tally) => tally.day !== day),
    family,
  );

/** How much of the share at this distance (m) is the player's own, 0 to 1. */
export const ownShareAt = ({ family, parts, before }: HolingCurve, distance: number): number =>
  ownShareOf({
    before: heightsAt(family, before, distance).variance,
    after: heightsAt(family, parts, distance).variance,
  });

/** Share holed from this distance, m: mean and 95% interval. */
export function curveShareAt({ family, parts }: HolingCurve, distance: number): CurveShare {
  const { share, mean, variance } = heightsAt(family, parts, distance);
  const half = TWO_SIDED_95 * Math.sqrt(variance);
  return { distance, mean: share, low: shareOf(mean + half), high: shareOf(mean - half) };
}

/** Players who could have made the record, each on some day of theirs, with the chance of each; what each holes from a list of distances. */
export interface PlayerShares {
  /** Sum to 1. */
  readonly weights: readonly number[];
  /** For each player the shares, distance by distance. */
  readonly shares: readonly (readonly number[])[];
}

/**
 * The same players, on the same day, for all distances: who is better than thought at one is better at the next.
 * @param distances m
 * @param count players, equally likely; in pairs that differ from the middle by as much one way as the other
 */
export function playerShares(
  { family, parts }: HolingCurve,
  distances: readonly number[],
  count = 200,
  seed: number | string = 1,
): PlayerShares {
  const random = seededRandom(seed);
  const heights = distances.map((distance) => family.heightAt(distance));
  const ways = distances.map((distance) => family.waysAt(distance));
  const pairs = Math.ceil(count / 2);
  const shares: number[][] = [];
  let [part, below] = [0, parts[0].weight];
  for (let pair = 0; pair < pairs; pair++) {
    // Even steps through the parts: less noise than drawing each.
    while (part < parts.length - 1 && (pair + 0.5) / pairs > below) below += parts[++part].weight;
    const { mean, factor, daySd } = parts[part];
    const away = solveUpper(
      factor,
      mean.map(() => drawNormal(random)),
    );
    const day = daySd * drawNormal(random);
    for (const side of [1, -1])
      shares.push(
        heights.map((height, k) =>
          shareOf(
            ways[k].reduce((sum, way, i) => sum + way * (mean[i] + side * away[i]), height + side * day),
          ),
        ),
      );
  }
  return { weights: shares.map(() => 1 / shares.length), shares };
}
