/**
 * What a player holes from any distance, with its margin: a smooth curve through few putts, leaning on a benchmark as long as they
 * are few. Answers for: shares with 95% intervals, shares of players who could have made the record for sums over the putts of a day, how
 * much of the answer is the record's own. Leaves out: the benchmark and how players differ (curve-family.ts), Bayes' rule
 * (curve-posterior.ts, curve-players.ts), how much is whose (own-part.ts).
 * "At" a distance, never "from x to y": distance-bands.ts has those. A share is the one of the long run, over good days and bad.
 */
import { drawNormal } from '../maths/normal.ts';
import { seededRandom } from '../random.ts';
import type { HoledTally } from '../record/tallies.ts';
import type { CurveFamily } from './curve-family.ts';
import { type CurvePlayer, curvePlayers, heightAt, shareOf } from './curve-players.ts';
import { curvePosterior } from './curve-posterior.ts';
import { type OwnPart, ownPartOf, ownShareOf } from './own-part.ts';

/** Gauss-Hermite: means over a standard normal (Abramowitz & Stegun, table 25.10, for the weight exp(-z^2/2)). */
const NORMAL_5 = {
  nodes: [-2.8569700138728, -1.35562617997427, 0, 1.35562617997427, 2.8569700138728],
  weights: [0.011257411327721, 0.222075922005613, 0.533333333333333, 0.222075922005613, 0.011257411327721],
};

export interface HolingCurve {
  readonly family: CurveFamily;
  readonly tallies: readonly HoledTally[];
  /** Equally likely ones, in an even order: the first few stand for all. */
  readonly players: readonly CurvePlayer[];
  /** The same before any putt. */
  readonly before: readonly CurvePlayer[];
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

/** Share holed over all days, of a player who on the middle one misses with these log odds. */
const inTheLongRun = (height: number, daySd: number): number =>
  daySd === 0
    ? shareOf(height)
    : NORMAL_5.nodes.reduce((sum, z, k) => sum + NORMAL_5.weights[k] * shareOf(height + daySd * z), 0);

/** How far players differ at a distance (m): variance of the log odds of a miss. */
function doubtAt(players: readonly CurvePlayer[], distance: number): number {
  let [sum, squares] = [0, 0];
  for (const player of players) {
    const height = heightAt(player, distance);
    sum += height;
    squares += height * height;
  }
  return squares / players.length - (sum / players.length) ** 2;
}

/** The player's curve after these putts (talliesOf makes them), about a benchmark player (curveFamilyOf). */
export const holingCurve = (tallies: readonly HoledTally[], family: CurveFamily): HolingCurve =>
  curveAfter(tallies, family, curvePlayers(curvePosterior([], family), family));

function curveAfter(
  tallies: readonly HoledTally[],
  family: CurveFamily,
  before: readonly CurvePlayer[],
): HolingCurve {
  const players = tallies.length === 0 ? before : curvePlayers(curvePosterior(tallies, family), family);
  const putts = tallies.reduce((sum, { tries }) => sum + tries, 0);
  const doubts = (distance: number) => ({
    before: doubtAt(before, distance),
    after: doubtAt(players, distance),
  });
  return { family, tallies, players, before, effective: ownPartOf(putts, doubts) };
}

/** The curve without one day, such as the round it is to judge. @param day as its tallies say */
export const curveWithout = ({ tallies, family, before }: HolingCurve, day: string): HolingCurve =>
  curveAfter(
    tallies.filter((tally) => tally.day !== day),
    family,
    before,
  );

/** How much of the share at this distance (m) is the player's own, 0 to 1. */
export const ownShareAt = ({ players, before }: HolingCurve, distance: number): number =>
  ownShareOf({ before: doubtAt(before, distance), after: doubtAt(players, distance) });

/** Share holed from this distance, m: mean and 95% interval. */
export function curveShareAt({ players }: HolingCurve, distance: number): CurveShare {
  const shares = Float64Array.from(players, (player) =>
    inTheLongRun(heightAt(player, distance), player.daySd),
  );
  shares.sort();
  const outside = 0.025 * shares.length;
  return {
    distance,
    mean: shares.reduce((sum, share) => sum + share, 0) / shares.length,
    low: shares[Math.floor(outside)],
    high: shares[Math.ceil(shares.length - outside) - 1],
  };
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
 * @param count players, at most as many as the curve has
 * @param seed of the days
 */
export function playerShares(
  { players }: HolingCurve,
  distances: readonly number[],
  count = 200,
  seed: number | string = 1,
): PlayerShares {
  const random = seededRandom(seed);
  const shares = players.slice(0, count).map((player) => {
    const day = player.daySd * drawNormal(random);
    return distances.map((distance) => shareOf(heightAt(player, distance) + day));
  });
  return { weights: shares.map(() => 1 / shares.length), shares };
}
