/**
 * Greens to practise on, made from a seed.
 *
 * Answers for: a believable relief (long swells, not bumps) on a tilt that drains it, with an optional tier; most of it
 * sloped 1 to 3%, nothing 7% or more; the same seed gives the same heights on every machine. Leaves out: greens copied
 * from anywhere, bunkers, fringes, holes (pins.ts). The shape limits are ours: agronomy texts ask for hole surrounds up
 * to about 3% and drainage of 1% or more (memory).
 * Sameness: noise and step use only + - * / and square roots, which are exactly specified; cosine and sine of the
 * downhill angle are not, so heights are rounded to 0.1 micrometre, which swallows a difference in the last place.
 */
import { createNoise2D } from 'simplex-noise';
import { seededRandom } from '../random.ts';
import type { FieldSurface } from '../types.ts';
import { fieldSurface } from './field.ts';
import { makeSpline, splineGradient } from './spline.ts';

/** Distance between nodes, m: the shortest swell below is 20 nodes long, so the interpolant is exact to micrometres. */
const SPACING = 0.25;
/** Swells: wavelength (m) and share of the relief. Shorter ones would be bumps, which no mower leaves. */
const SWELLS = [
  { length: 14, share: 1 },
  { length: 8, share: 0.4 },
  { length: 5, share: 0.12 },
] as const;
/** Root mean square slope of the relief alone, rise over run. Higher: more double-breakers, fewer places for a hole. */
const RELIEF_SLOPE = 0.0105;
/** Range from which a seed draws the tilt when none is asked for, rise over run. */
const GENTLEST_TILT = 0.013;
const STEEPEST_DRAWN_TILT = 0.021;
/** Steepest tilt one may ask for. */
const STEEPEST_TILT = 0.05;
/** Tier: height (m) and half-width (m) of the step; its own steepest slope is height / (2 half-width) = 4%. */
const TIER_HEIGHT = 0.16;
const TIER_HALF_WIDTH = 2;
/** No place on the green is steeper; below the promised 7% so that rounding and interpolation cannot reach it. */
const STEEPEST_PLACE = 0.065;
/** Rounding of heights, m. */
const HEIGHT_STEPS_PER_METRE = 1e7;
const SMALLEST_SIZE = 6;
const LARGEST_SIZE = 60;

export interface GreenOptions {
  readonly seed: number | string;
  /** Side of the square green, m; default 20. It spans 0..size in x and y. */
  readonly sizeM?: number;
  /** Overall tilt, rise over run, 0 to 0.05; default drawn from the seed. */
  readonly tilt?: number;
  /** Direction the tilt falls, radians from +x; default drawn from the seed. */
  readonly downhill?: number;
  /** A step between two levels across the green; default false. */
  readonly tier?: boolean;
}

/** A green from a seed. @throws RangeError when an option is out of range. */
export function generateGreen(options: GreenOptions): FieldSurface {
  const random = seededRandom(`green ${options.seed}`);
  // Drawn in a fixed order whether used or not: asking for a tilt must not change the relief.
  const drawnTilt = GENTLEST_TILT + random() * (STEEPEST_DRAWN_TILT - GENTLEST_TILT);
  const drawnDownhill = random() * 2 * Math.PI;
  const tierAcross = 0.4 + 0.2 * random();
  const tierTurn = (random() - 0.5) * 0.8;
  const { sizeM = 20, tilt = drawnTilt, downhill = drawnDownhill, tier = false } = options;
  checkOptions(sizeM, tilt, downhill);

  const cells = Math.round(sizeM / SPACING);
  const spacing = sizeM / cells;
  const count = cells + 1;
  const relief = new Float64Array(count * count);
  for (const { length, share } of SWELLS) {
    const noise = createNoise2D(random);
    for (let row = 0; row < count; row++)
      for (let column = 0; column < count; column++)
        relief[row * count + column] += share * noise((column * spacing) / length, (row * spacing) / length);
  }

  const grid = { origin: { x: 0, y: 0 }, spacing, columns: count, rows: count };
  const scale = RELIEF_SLOPE / slopesOf({ ...grid, heights: relief }).rootMeanSquare;
  const fallX = Math.cos(downhill);
  const fallY = Math.sin(downhill);
  const stepX = Math.cos(downhill + tierTurn);
  const stepY = Math.sin(downhill + tierTurn);
  // A tier takes over part of the fall: the levels it joins are flatter than a plain green.
  const evenTilt = tier ? 0.7 * tilt : tilt;
  const heights = new Float64Array(count * count);
  for (let row = 0; row < count; row++)
    for (let column = 0; column < count; column++) {
      const x = column * spacing - sizeM / 2;
      const y = row * spacing - sizeM / 2;
      let height = scale * relief[row * count + column] - evenTilt * (x * fallX + y * fallY);
      if (tier) {
        const along = (x * stepX + y * stepY + (0.5 - tierAcross) * sizeM) / TIER_HALF_WIDTH;
        height -= (TIER_HEIGHT / 2) * (along / Math.sqrt(1 + along * along));
      }
      heights[row * count + column] = height;
    }

  const { steepest } = slopesOf({ ...grid, heights });
  const shrink = Math.min(1, STEEPEST_PLACE / steepest);
  for (let i = 0; i < heights.length; i++)
    heights[i] = Math.round(heights[i] * shrink * HEIGHT_STEPS_PER_METRE) / HEIGHT_STEPS_PER_METRE;
  return fieldSurface({ ...grid, heights });
}

/** Root mean square and largest slope over the nodes. */
function slopesOf(grid: Parameters<typeof makeSpline>[0]): { rootMeanSquare: number; steepest: number } {
  const spline = makeSpline(grid);
  const gradient = new Float64Array(2);
  const place = new Float64Array(2);
  let sum = 0;
  let steepest = 0;
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++) {
      place[0] = column * grid.spacing;
      place[1] = row * grid.spacing;
      splineGradient(spline, place, gradient);
      const square = gradient[0] * gradient[0] + gradient[1] * gradient[1];
      sum += square;
      if (square > steepest) steepest = square;
    }
  return { rootMeanSquare: Math.sqrt(sum / (grid.rows * grid.columns)), steepest: Math.sqrt(steepest) };
}

function checkOptions(sizeM: number, tilt: number, downhill: number): void {
  if (!(sizeM >= SMALLEST_SIZE && sizeM <= LARGEST_SIZE))
    throw new RangeError(
      `Got a green ${sizeM} m wide, expected ${SMALLEST_SIZE} to ${LARGEST_SIZE} m: choose a size in that range.`,
    );
  if (!(tilt >= 0 && tilt <= STEEPEST_TILT))
    throw new RangeError(
      `Got a tilt of ${tilt}, expected 0 to ${STEEPEST_TILT} rise over run: write 2% as 0.02.`,
    );
  if (!Number.isFinite(downhill))
    throw new RangeError(
      `Got a downhill direction of ${downhill}, expected a finite angle in radians: leave it out to draw one from the seed.`,
    );
}
