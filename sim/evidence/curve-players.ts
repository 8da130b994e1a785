/**
 * Players who could have made a record, as whole curves. Answers for: an even sample of them, each hole's share falling with distance.
 * Leaves out: how likely they are (curve-posterior.ts), what is read off (holing-curve.ts).
 *
 * Each is drawn from the normal distributions of the posterior by a sequence that fills them evenly (Roberts' additive recurrence, memory:
 * steps by powers of the root of x^(d+1) = x + 1), and tabled over the logarithm of distance. Nobody holes more from farther off, whatever four
 * polynomials say: a curve whose share rises by a point is passed over, one that rises by less is levelled there. Where a record
 * leaves hardly any falling curve (all long putts holed, all short ones missed) rising ones are levelled, so that there is an answer.
 */
import { solveUpper } from '../maths/cholesky.ts';
import type { CurveFamily } from './curve-family.ts';
import type { CurvePart } from './curve-posterior.ts';

/** Enough for the ends of 95%: 25 lie beyond either. */
const PLAYERS = 1000;
/** Tabled from a ball on the lip to 100 ft, m; beyond as there. */
const NEAREST = 0.1;
const FARTHEST = 30;
const STEPS = 60;
const STEP = Math.log(FARTHEST / NEAREST) / STEPS;

/** A curve that rises by more than this is passed over, share holed. */
const MOST_RISE = 0.01;
/** Draws for each player wanted: before any putt four of five curves fall. */
const MOST_DRAWS = 6;

/** One player: what each putt is missed by on the middle one of his days, and how days differ. */
export interface CurvePlayer {
  /** Log odds of a miss, rising, at the tabled distances. */
  readonly heights: Float64Array;
  /** SD of a day, log odds. */
  readonly daySd: number;
}

/** Share holed with these log odds of a miss. */
export const shareOf = (height: number): number => 1 / (1 + Math.exp(height));

/** The steps of the recurrence in d dimensions. */
function evenSteps(dimensions: number): number[] {
  let root = 1.5;
  for (let i = 0; i < 60; i++) root = (1 + root) ** (1 / (dimensions + 1));
  return Array.from({ length: dimensions }, (_, i) => root ** -(i + 1));
}

/** A sample of players, all equally likely. */
export function curvePlayers(
  parts: readonly CurvePart[],
  family: CurveFamily,
  count = PLAYERS,
): CurvePlayer[] {
  const distances = Array.from({ length: STEPS + 1 }, (_, i) => NEAREST * Math.exp(STEP * i));
  const benchmark = distances.map(family.heightAt);
  const ways = distances.map(family.waysAt);
  const steps = evenSteps(1 + 2 * Math.ceil(family.ways / 2));
  const falling: CurvePlayer[] = [];
  const rising: CurvePlayer[] = [];
  for (let draw = 1; falling.length < count && draw <= MOST_DRAWS * count; draw++) {
    const [which, ...even] = steps.map((step) => (0.5 + step * draw) % 1);
    let part = 0;
    for (let below = parts[0].weight; part < parts.length - 1 && which > below; )
      below += parts[++part].weight;
    const { mean, factor, daySd } = parts[part];
    // Box & Muller, two even numbers to two normal ones.
    const normal = mean.map((_middle, i) => {
      const [size, turn] = [even[i - (i % 2)], 2 * Math.PI * even[i - (i % 2) + 1]];
      return Math.sqrt(-2 * Math.log(1 - size)) * (i % 2 ? Math.sin(turn) : Math.cos(turn));
    });
    const away = solveUpper(factor, normal);
    const heights = new Float64Array(distances.length);
    let rise = 0;
    for (let i = 0; i < heights.length; i++) {
      let height = benchmark[i];
      for (let k = 0; k < mean.length; k++) height += ways[i][k] * (mean[k] + away[k]);
      heights[i] = i === 0 ? height : Math.max(height, heights[i - 1]);
      rise = Math.max(rise, shareOf(height) - shareOf(heights[i]));
    }
    (rise > MOST_RISE ? rising : falling).push({ heights, daySd });
  }
  return [...falling, ...rising.slice(0, Math.max(0, count - falling.length))];
}

/** Log odds of a miss of a player on the middle one of his days. @param distance m */
export function heightAt({ heights }: CurvePlayer, distance: number): number {
  const place = Math.min(STEPS, Math.max(0, Math.log(Math.max(NEAREST, distance) / NEAREST) / STEP));
  const before = Math.min(STEPS - 1, Math.floor(place));
  return heights[before] + (heights[before + 1] - heights[before]) * (place - before);
}
