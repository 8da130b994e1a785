/**
 * What a miss costs from wherever it stops: chance of missing the next putt too, and putts still to come.
 *
 * A polar table round the hole. Each place is a putt of its own on the same surface, by the same player, at one sensible
 * pace (NEXT_PUTT_PACE; softer where the slope allows no such line), so expected putts solve E = 1 + sum of share x E(rest)
 * over its misses: a linear system, iterated until it no longer moves. Depends on surface, green speed, hole, capture and
 * player, not on the ball; on a plane not on where the hole is either, and mirrored about the fall line.
 * Leaves out: choosing the best pace and aim for each place (the table would then be a dynamic program).
 */
import { HOLE_RADIUS, NEXT_PUTT_PACE } from '../constants.ts';
import { LineWalk } from '../read/line.ts';
import { startOf } from '../roll/roll.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { Player, Point, Putt } from '../types.ts';
import { dropRegions } from './drop-region.ts';
import { lagrange, monotoneCubic } from './interpolation.ts';
import { missRests } from './lip-outs.ts';
import { playOut, rangeOf } from './outcomes.ts';

/** Table of one green, hole, player: plain data, may cross threads. Angles from `zero`, counter-clockwise, all round. */
export interface NextPutts {
  readonly hole: Point;
  /** Bearing of angle 0, radians from +x (on a plane: straight downhill). */
  readonly zero: number;
  /** Farthest distance in the table, m; farther places count as this far. */
  readonly farthest: number;
  /** Distances are farthest (i / (rings - 1))^2, i from 0. */
  readonly rings: number;
  readonly spokes: number;
  /** Ring by ring: share of next putts missed, and putts still needed from there. */
  readonly missed: Float64Array;
  readonly expected: Float64Array;
}

export interface NextPuttsOptions {
  /** Called with the share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

/**
 * Places solved: distances from the hole (m), closest where the chance of missing climbs, by so many bearings. Nobody misses
 * from the first two: the ball all but hangs over the hole. The finer table is filled from them by cubics, so that one
 * look-up is four cells.
 */
const PLANE_RINGS = [
  0, 0.12, 0.2, 0.28, 0.36, 0.45, 0.55, 0.67, 0.81, 0.97, 1.17, 1.42, 1.75, 2.2, 2.8, 3.7, 5, 7.5, 12,
];
const FIELD_RINGS = [0, 0.12, 0.26, 0.38, 0.52, 0.7, 0.92, 1.2, 1.6, 2.15, 3, 4.4, 7, 12];
const CERTAIN = 2;
const SPOKES = { plane: 24, field: 20 };
const FINE = { rings: 97, spokes: 96 };
const FARTHEST = 12;
/** Paces tried in turn for a next putt, m past the hole. */
const PACES = [NEXT_PUTT_PACE, 0.2, 0.1, 0.05, 0.8, 1.5];
/** Where no pace has a line (a hole that cannot be putted at from there): putts still needed. A guess, rarely met. */
const HOPELESS = 3;
/** Expected putts are iterated to this. */
const SETTLED = 1e-7;

/** @param putt its ball does not matter */
export function prepareNextPutts(putt: Putt, player: Player, options: NextPuttsOptions = {}): NextPutts {
  const plane = putt.surface.kind === 'plane';
  const rings = plane ? PLANE_RINGS : FIELD_RINGS;
  const spokes = SPOKES[putt.surface.kind];
  const zero = putt.surface.kind === 'plane' ? putt.surface.downhill : 0;
  const grid = { zero, rings, spokes };
  const places = rings.length * spokes;
  const missed = new Float64Array(places);
  const fixed = new Float64Array(places).fill(1);
  const onward = new Float64Array(places * places);
  const solved = plane ? spokes / 2 + 1 : spokes;
  for (let ring = CERTAIN; ring < rings.length; ring++) {
    for (let spoke = 0; spoke < solved; spoke++) {
      const place = ring * spokes + spoke;
      const ball = placeOn(putt, rings[ring], zero + (2 * Math.PI * spoke) / spokes);
      const row = onward.subarray(place * places, (place + 1) * places);
      const miss = ball && playFrom({ ...putt, ball }, player, grid, row);
      missed[place] = miss ?? 1;
      if (miss === undefined) fixed[place] = HOPELESS;
    }
    options.onProgress?.((ring + 1) / rings.length);
  }
  if (plane) mirror(missed, fixed, onward, spokes);
  const expected = iterate(fixed, onward, places);
  // Cubics overshoot where the table levels out; the bounds are what a share and a count can be.
  const fineMissed = refine(missed, grid).map((share) => Math.max(0, Math.min(1, share)));
  const fineExpected = refine(expected, grid).map((putts, i) => Math.max(1 + fineMissed[i], putts));
  return {
    hole: putt.hole,
    zero,
    farthest: FARTHEST,
    rings: FINE.rings,
    spokes: FINE.spokes,
    missed: fineMissed,
    expected: fineExpected,
  };
}

/** A place at this distance and bearing, drawn in to the edge of the surface where it would lie outside. */
function placeOn(putt: Putt, distance: number, angle: number): Point | undefined {
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  for (let reach = distance; reach > PLANE_RINGS[CERTAIN - 1]; reach -= 0.05) {
    const x = putt.hole.x + reach * Math.cos(angle);
    const y = putt.hole.y + reach * Math.sin(angle);
    if (sampleSurface(putt.surface, x, y, ground)) return { x, y };
  }
  return undefined;
}

interface Grid {
  readonly zero: number;
  readonly rings: readonly number[];
  readonly spokes: number;
}

/** Play from one place; adds its misses to `row`, the share that goes on from each place of the grid. Returns share missed. */
function playFrom(putt: Putt, player: Player, grid: Grid, row: Float64Array): number | undefined {
  const walk = new LineWalk(putt);
  if (walk.reason !== undefined) return undefined;
  for (const pace of PACES) {
    const line = walk.lineAt(pace);
    if (line === undefined) continue;
    const intent = { start: startOf(putt, line.heading), energy: line.speed ** 2 };
    const rests = missRests(walk, rangeOf([intent], player));
    const share = new Float64Array(1);
    const holed = playOut(intent, player, dropRegions(walk), rests, {
      aim: () => undefined,
      miss(missed, x, y) {
        share[0] += missed;
        spreadOver(grid, missed, x, y, row);
      },
    });
    // What lies beyond the integration's reach is shared out, here as in the odds.
    const total = holed + share[0];
    for (let i = 0; i < row.length; i++) row[i] /= total;
    return share[0] / total;
  }
  return undefined;
}

/** Share a place among the four of the grid about it. */
function spreadOver(
  { zero, rings, spokes }: Grid,
  share: number,
  x: number,
  y: number,
  row: Float64Array,
): void {
  const distance = Math.min(FARTHEST, Math.hypot(x, y));
  let ring = 0;
  while (ring < rings.length - 2 && rings[ring + 1] < distance) ring++;
  const outer = (distance - rings[ring]) / (rings[ring + 1] - rings[ring]);
  const turn = ((((Math.atan2(y, x) - zero) / (2 * Math.PI)) * spokes) % spokes) + spokes;
  const spoke = Math.floor(turn) % spokes;
  const next = (spoke + 1) % spokes;
  const later = turn - Math.floor(turn);
  row[ring * spokes + spoke] += share * (1 - outer) * (1 - later);
  row[ring * spokes + next] += share * (1 - outer) * later;
  row[(ring + 1) * spokes + spoke] += share * outer * (1 - later);
  row[(ring + 1) * spokes + next] += share * outer * later;
}

/** Left of the fall line is the mirror of right of it. */
function mirror(missed: Float64Array, fixed: Float64Array, onward: Float64Array, spokes: number): void {
  const places = missed.length;
  const across = (place: number): number => {
    const spoke = place % spokes;
    return place - spoke + ((spokes - spoke) % spokes);
  };
  for (let place = 0; place < places; place++) {
    if (place % spokes <= spokes / 2) continue;
    const twin = across(place);
    missed[place] = missed[twin];
    fixed[place] = fixed[twin];
    for (let to = 0; to < places; to++) onward[place * places + to] = onward[twin * places + across(to)];
  }
}

/** E = fixed + onward E, from E = fixed upwards: every putt that goes on adds at least as much as is left to add. */
function iterate(fixed: Float64Array, onward: Float64Array, places: number): Float64Array {
  const expected = Float64Array.from(fixed);
  for (let round = 0; round < 200; round++) {
    let moved = 0;
    for (let place = 0; place < places; place++) {
      let value = fixed[place];
      const base = place * places;
      for (let to = 0; to < places; to++) value += onward[base + to] * expected[to];
      moved = Math.max(moved, Math.abs(value - expected[place]));
      expected[place] = value;
    }
    if (moved < SETTLED) break;
  }
  return expected;
}

/** The coarse table on the fine grid: cubics round the hole, then cubics outward that do not overshoot. */
function refine(coarse: Float64Array, { rings, spokes }: Grid): Float64Array {
  const fine = new Float64Array(FINE.rings * FINE.spokes);
  const distances = Float64Array.from(rings);
  const round = { first: 0, w: new Float64Array(4) };
  for (let spoke = 0; spoke < FINE.spokes; spoke++) {
    // Two spokes of margin on either side keep the cubic centred all round.
    lagrange((spoke / FINE.spokes) * spokes + 2, spokes + 4, round);
    const outward = distances.map((_, ring) => {
      let value = 0;
      for (let j = 0; j < 4; j++)
        value += round.w[j] * coarse[ring * spokes + ((round.first + j - 2 + spokes) % spokes)];
      return value;
    });
    const at = monotoneCubic(distances, outward);
    for (let ring = 0; ring < FINE.rings; ring++)
      fine[ring * FINE.spokes + spoke] = at(FARTHEST * (ring / (FINE.rings - 1)) ** 2);
  }
  return fine;
}

/** Look up both values at a place relative to the hole, m: fills `out` with [share missed, putts still needed]. */
export function nextPuttAt(table: NextPutts, x: number, y: number, out: Float64Array): void {
  const distance = Math.sqrt(x * x + y * y);
  if (distance <= HOLE_RADIUS) {
    out[0] = 0;
    out[1] = 1;
    return;
  }
  const { rings, spokes, missed, expected } = table;
  const along = Math.min(rings - 1, (rings - 1) * Math.sqrt(distance / table.farthest));
  const ring = Math.min(rings - 2, Math.floor(along));
  const outer = along - ring;
  let turn = ((Math.atan2(y, x) - table.zero) / (2 * Math.PI)) * spokes;
  turn -= spokes * Math.floor(turn / spokes);
  const spoke = Math.floor(turn) % spokes;
  const next = (spoke + 1) % spokes;
  const later = turn - Math.floor(turn);
  const a = ring * spokes + spoke;
  const b = ring * spokes + next;
  const inner = 1 - outer;
  const sooner = 1 - later;
  out[0] =
    inner * (sooner * missed[a] + later * missed[b]) +
    outer * (sooner * missed[a + spokes] + later * missed[b + spokes]);
  out[1] =
    inner * (sooner * expected[a] + later * expected[b]) +
    outer * (sooner * expected[a + spokes] + later * expected[b + spokes]);
}
