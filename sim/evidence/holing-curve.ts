/**
 * What a player holes from any distance, with its margin: a smooth curve through few putts, leaning on a benchmark as long as they
 * are few. Answers for: shares with 95% intervals, shares of equally likely players for sums over many putts, how much of the answer
 * is the record's own. Leaves out: the counting (holed-bins.ts), Bayes' rule (curve-grid.ts), the benchmark (curve-prior.ts), how
 * much is whose (own-part.ts).
 * "At" a distance, never "from x to y": distance-bands.ts has those.
 */
import { seededRandom } from '../random.ts';
import { type CurveGrid, type CurvePrior, curveGrid, MODEL_MISS, shareParts } from './curve-grid.ts';
import { binsOf, binsWithout, type HoledBins, type HoledTally } from './holed-bins.ts';
import { type OwnPart, ownPartOf, ownShareOf } from './own-part.ts';

/** Normal SDs either side of the middle that hold 95%. */
const TWO_SIDED_95 = 1.959964;
/** Plain data: it may be sent to a worker and back. */
export interface HolingCurve {
  readonly prior: CurvePrior;
  readonly bins: HoledBins;
  readonly grid: CurveGrid;
  /** The same before any putt. */
  readonly before: CurveGrid;
  readonly effective: OwnPart;
}

/** Share holed at one distance. */
export interface CurveShare {
  readonly distance: number;
  readonly mean: number;
  /** 95% of players with such a record lie between; the model's own misses are in it. */
  readonly low: number;
  readonly high: number;
}

/** Cells that carry weight at all; the others together are less than a ten-thousandth. */
const LEAST_WEIGHT = 1e-8;
/** A share to a millionth. */
const HALVINGS = 20;

function curveOf(bins: HoledBins, prior: CurvePrior, before: CurveGrid): HolingCurve {
  const grid = curveGrid(bins, prior);
  let putts = 0;
  for (const { tries } of bins.values()) putts += tries;
  return { prior, bins, grid, before, effective: ownPartOf(putts, grid, before) };
}

/** The player's curve after these putts (talliesOf makes them), about a benchmark player (curvePriorOf). */
export const holingCurve = (tallies: readonly HoledTally[], prior: CurvePrior): HolingCurve =>
  curveOf(binsOf(tallies), prior, curveGrid(new Map(), prior));

/** The curve without some of its putts, such as those of the round it is to judge. @param tallies putts that are in it */
export const curveWithout = (
  { bins, prior, before }: HolingCurve,
  tallies: readonly HoledTally[],
): HolingCurve => curveOf(binsWithout(bins, tallies), prior, before);

/** How much of the share at this distance (m) is the player's own, 0 to 1. */
export const ownShareAt = ({ grid, before }: HolingCurve, distance: number): number =>
  ownShareOf(grid, before, distance);

/** Share holed from this distance, m: mean and 95% interval. */
export function curveShareAt({ grid }: HolingCurve, distance: number): CurveShare {
  const { angleSds, distanceSds, weights } = grid;
  const half = Math.sqrt(angleSds[1] / angleSds[0]);
  // A cell is as wide as its angles differ: its shares are spread evenly between those of its two edges, or a quantile would
  // jump from cell to cell.
  const edges = Float64Array.from({ length: angleSds.length + 1 }, (_, i) =>
    i === 0 ? angleSds[0] / half : angleSds[i - 1] * half,
  );
  const { byAngle, byDistance } = shareParts(distance, { angleSds: edges, distanceSds });
  let mean = 0;
  const cells: { weight: number; low: number; width: number }[] = [];
  for (let i = 0, cell = 0; i < angleSds.length; i++)
    for (let j = 0; j < byDistance.length; j++, cell++) {
      const [high, low] = [byAngle[i] * byDistance[j], byAngle[i + 1] * byDistance[j]];
      mean += (weights[cell] * (low + high)) / 2;
      if (weights[cell] > LEAST_WEIGHT) cells.push({ weight: weights[cell], low, width: high - low });
    }
  const weightBelow = (share: number): number => {
    let sum = 0;
    for (const { weight, low, width } of cells)
      if (share > low) sum += share < low + width ? (weight * (share - low)) / width : weight;
    return sum;
  };
  /** The share below which this part of the weight lies: it rises steadily, so halving finds it. */
  const quantile = (part: number): number => {
    let [low, high] = [0, 1];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (weightBelow(middle) < part) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  const ownMiss = TWO_SIDED_95 * MODEL_MISS * Math.sqrt(mean * (1 - mean));
  return {
    distance,
    mean,
    low: Math.max(0, mean - Math.hypot(mean - quantile(0.025), ownMiss)),
    high: Math.min(1, mean + Math.hypot(quantile(0.975) - mean, ownMiss)),
  };
}

/** Players who could have made the record, with the chance of each; what each holes from a list of distances. */
export interface PlayerShares {
  /** Sum to 1. */
  readonly weights: Float64Array;
  /** For each player the shares, distance by distance. */
  readonly shares: readonly Float64Array[];
}

/**
 * The same players for all distances, because a player better than thought at one is better at the next.
 * @param distances m
 * @param count players, equally likely, taken evenly through the grid
 * @param seed where the even steps begin
 */
export function playerShares(
  { grid }: HolingCurve,
  distances: readonly number[],
  count = 200,
  seed: number | string = 1,
): PlayerShares {
  const offset = seededRandom(seed)();
  const players: (readonly [number, number])[] = [];
  const across = grid.distanceSds.length;
  let sum = 0;
  for (let cell = 0; cell < grid.weights.length; cell++) {
    sum += grid.weights[cell];
    // Systematic sampling: far less noise than drawing each for itself.
    while (players.length < count && (players.length + offset) / count < sum)
      players.push([Math.floor(cell / across), cell % across]);
  }
  const shares = players.map(() => new Float64Array(distances.length));
  for (const [k, distance] of distances.entries()) {
    const { byAngle, byDistance } = shareParts(distance, grid);
    for (const [p, [i, j]] of players.entries()) shares[p][k] = byAngle[i] * byDistance[j];
  }
  return { weights: new Float64Array(players.length).fill(1 / players.length), shares };
}
