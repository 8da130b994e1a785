/**
 * Where a hole may be cut.
 *
 * Answers for: seeded hole positions away from the edge, apart from one another, with gentle ground round them. Leaves
 * out: which of them suits a putt. The figures are common greenkeeping practice (memory): at least three paces from the
 * edge, even ground of at most 3% within about a metre.
 */
import { seededRandom } from '../random.ts';
import type { HeightSample, Point, Surface } from '../types.ts';
import { sampleSurface, surfaceBounds } from './sample.ts';

/** Ground within 1 m of the hole counts; looked at a little farther, m, so that the rim between two looks is covered. */
const SURROUND = 1.125;
/** Slopes in the surround stay below 3%; the places looked at below this, rise over run, for what lies between them. */
const STEEPEST_SURROUND = 0.029;
/** Distance between looks, m: a green's slope changes by about 0.1% over it. */
const BETWEEN_LOOKS = 0.225;
/** Distance from the edge, m; on small greens a quarter of the shorter side instead. */
const FROM_EDGE = 3;
/** Distance wished for between holes, m; halved each round until there are enough. */
const APART = 4;
const ROUNDS = 4;
const TRIES_PER_ROUND = 400;

/**
 * Up to `count` hole positions; fewer when the surface has no more gentle places, none on an endless plane.
 * The same surface, count and seed give the same places.
 */
export function pinSpots(surface: Surface, count: number, seed: number | string): Point[] {
  const bounds = surfaceBounds(surface);
  if (bounds === undefined) return [];
  const width = bounds.maxX - bounds.minX;
  const depth = bounds.maxY - bounds.minY;
  const margin = Math.min(FROM_EDGE, width / 4, depth / 4);
  const random = seededRandom(`pins ${seed}`);
  const spots: Point[] = [];
  let apart = APART;
  for (let round = 0; round < ROUNDS; round++, apart /= 2)
    for (let attempt = 0; attempt < TRIES_PER_ROUND && spots.length < count; attempt++) {
      const spot = {
        x: bounds.minX + margin + random() * (width - 2 * margin),
        y: bounds.minY + margin + random() * (depth - 2 * margin),
      };
      if (spots.some((other) => Math.hypot(other.x - spot.x, other.y - spot.y) < apart)) continue;
      if (steepestAround(surface, spot) < STEEPEST_SURROUND) spots.push(spot);
    }
  return spots;
}

/** Steepest slope within SURROUND of a spot. */
function steepestAround(surface: Surface, spot: Point): number {
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  const steps = Math.round(SURROUND / BETWEEN_LOOKS);
  let steepest = 0;
  for (let j = -steps; j <= steps; j++)
    for (let i = -steps; i <= steps; i++) {
      if (i * i + j * j > steps * steps) continue;
      if (!sampleSurface(surface, spot.x + i * BETWEEN_LOOKS, spot.y + j * BETWEEN_LOOKS, sample))
        return Number.POSITIVE_INFINITY;
      steepest = Math.max(steepest, Math.hypot(sample.gradientX, sample.gradientY));
    }
  return steepest;
}
