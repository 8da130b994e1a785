/**
 * What becomes of a putt at one pace: the share holed, and where the misses lie.
 *
 * Starts are integrated by Gauss-Legendre pieces cut where the drop region begins and ends. At each start the energies are cut where
 * dropping begins and ends; within cells of 0.3 SD the share of energies is exact and the chance of starting so, which hangs on the
 * energy, is taken at the middle (the second-order error of such cells is far below the 0.3 points asked of three-putts).
 * Leaves out: what a miss is and costs (the visitor sorts and adds it up).
 */

import { GAUSS_3, GAUSS_5, INVERSE_ROOT_TWO_PI, normalCdf } from '../maths/normal.ts';
import type { DropRegion } from './drop-region.ts';
import { COVERED, type RestRange, type Rests } from './rests.ts';
import { newStarts, REACH, type StartsGiven, type StrokeErrors } from './stroke-errors.ts';

const CELLS = 30;
/** A start so many squared SDs from a bell curve is none of it. */
const FARTHEST = 2 * REACH * REACH;
/** Widest piece of starts integrated at once, SDs of the starts at one energy, where sums vary smoothly with the start. */
const WIDEST_PIECE = 1.3;
/** Where the region is cut into pieces, shares of its width: the holed share climbs near the ends, where the hole is widest. */
const INSIDE = [0, 0.06, 0.25, 0.5, 0.75, 0.94, 1];
/** Energies that spread less than this share make the holed share a step where the region's edge crosses the pace. */
const SHARP = 0.04;
/** Samples between which such crossings are looked for. */
const SAMPLES = 48;

export interface MissVisitor {
  /** Widest piece of start error integrated at once, SD, for sums with edges of their own; left out: as for smooth ones. */
  readonly widestPiece?: number;
  /** The misses that follow start at this angle, radians from ball->hole. */
  aim(start: number): void;
  /**
   * @param share of all putts
   * @param x rest relative to the hole, m
   * @param softer the miss stands for balls of energies from here (m^2/s^2)
   * @param firmer to here
   * @param tilt how their number grows on the way: density proportional to 1 + tilt (f - 1/2), f from 0 to 1
   * @param lipped they touched the hole and left it again
   */
  miss(
    share: number,
    x: number,
    y: number,
    softer: number,
    firmer: number,
    tilt: number,
    lipped: boolean,
  ): void;
}

/** Starts and energies that `playOut` will ask of the rests of these strokes. */
export function rangeOf(strokes: readonly StrokeErrors[]): RestRange {
  return {
    starts: [Math.min(...strokes.map(({ low }) => low)), Math.max(...strokes.map(({ high }) => high))],
    energies: [
      Math.min(...strokes.map(({ energyAt }) => energyAt(-REACH))),
      Math.max(...strokes.map(({ energyAt }) => energyAt(REACH))),
    ],
  };
}

// Reused from call to call: nothing here outlives one `playOut`, and a visitor must not call it.
const cellEnergies = new Float64Array(CELLS + 1);
const cellBelows = Float64Array.from({ length: CELLS + 1 }, (_, i) =>
  i === 0 ? 0 : i === CELLS ? 1 : normalCdf(-REACH + (2 * REACH * i) / CELLS),
);
const drop = new Float64Array(4);
const gaps = new Float64Array(16);
const touched = { low: 0, high: 0 };
const rest = { x: 0, y: 0, lipped: false };

/**
 * Play all strokes at one pace.
 * @param regions what drops; empty: nothing
 * @returns share holed, 0 to 1
 */
export function playOut(
  strokes: StrokeErrors,
  regions: readonly DropRegion[],
  rests: Rests,
  visitor: MissVisitor,
): number {
  const { energy: mean, energySd, startSd, below, curves } = strokes;
  for (let i = 0; i <= CELLS; i++) cellEnergies[i] = strokes.energyAt(-REACH + (2 * REACH * i) / CELLS);
  const softest = cellEnergies[0];
  const firmest = cellEnergies[CELLS];
  // The starts of whole cells, worked out once; of a part of a cell when it is met.
  const whole = newStarts(curves, CELLS);
  for (let i = 0; i < CELLS; i++)
    strokes.startsAt((cellEnergies[i] + cellEnergies[i + 1]) / 2, whole, i * curves);
  const partly = newStarts(curves);
  /** How the number of balls of a start grows with energy, per m^2/s^2. */
  let grows = 0;
  /** Chance of this start, per radian, among balls of one energy. */
  const chanceOf = (angle: number, { shares, means, sds, drifts }: StartsGiven, from: number): number => {
    let chance = 0;
    let drift = 0;
    for (let k = from; k < from + curves; k++) {
      const z = (angle - means[k]) / sds[k];
      const square = z * z;
      if (square > FARTHEST) continue;
      const one = (shares[k] * Math.exp(-square / 2)) / sds[k];
      chance += one;
      drift += (one * z * drifts[k]) / sds[k];
    }
    grows = chance > 0 ? drift / chance : 0;
    return INVERSE_ROOT_TWO_PI * chance;
  };
  const chanceIn = (angle: number, cell: number, energy: number, cut: boolean): number => {
    if (startSd === 0) return 1;
    if (!cut) return chanceOf(angle, whole, cell * curves);
    strokes.startsAt(energy, partly);
    return chanceOf(angle, partly, 0);
  };

  const visit = (share: number, softer: number, firmer: number): void => {
    if (!(share > 1e-12)) return;
    const middle = (softer + firmer) / 2;
    rest.lipped = false;
    rests.at(middle, rest);
    // d ln(density) / dz = -z for the bell curve.
    const tilt = energySd > 0 ? ((mean - middle) / (energySd * energySd) + grows) * (firmer - softer) : 0;
    visitor.miss(share, rest.x, rest.y, softer, firmer, Math.max(-2, Math.min(2, tilt)), rest.lipped);
  };
  /** Balls of the start in hand between two energies, cell by cell; misses are told. Returns their share, times weight. */
  const spread = (angle: number, weight: number, from: number, to: number, missed: boolean): number => {
    if (energySd === 0) {
      if (mean < from || mean > to) return 0;
      const share = weight * chanceIn(angle, 0, mean, true);
      if (missed) visit(share, mean, mean);
      return share;
    }
    let sum = 0;
    for (let i = 0; i < CELLS; i++) {
      if (cellEnergies[i + 1] <= from || cellEnergies[i] >= to) continue;
      const cutLow = cellEnergies[i] < from;
      const cutHigh = cellEnergies[i + 1] > to;
      const softer = cutLow ? from : cellEnergies[i];
      const firmer = cutHigh ? to : cellEnergies[i + 1];
      const part = (cutHigh ? below(to) : cellBelows[i + 1]) - (cutLow ? below(from) : cellBelows[i]);
      const share = weight * part * chanceIn(angle, i, (softer + firmer) / 2, cutLow || cutHigh);
      sum += share;
      if (missed) visit(share, softer, firmer);
    }
    return sum;
  };
  /** All putts that start at one angle. Returns the share of them holed, times weight. */
  const start = (angle: number, weight: number): number => {
    rests.aim(angle);
    visitor.aim(angle);
    const count = missesAt(regions, angle, softest, firmest);
    let holed = 0;
    let dropsFrom = softest;
    for (let i = 0; i < count; i++) {
      const from = gaps[2 * i];
      const to = gaps[2 * i + 1];
      if (from > dropsFrom) holed += spread(angle, weight, dropsFrom, from, false);
      let reached = from;
      for (let jump = nextJump(rests, reached, to); jump < to; jump = nextJump(rests, reached, to)) {
        spread(angle, weight, reached, jump, true);
        reached = jump;
      }
      spread(angle, weight, reached, to, true);
      dropsFrom = to;
    }
    if (firmest > dropsFrom || count === 0) holed += spread(angle, weight, dropsFrom, firmest, false);
    return holed;
  };

  if (startSd === 0) return start(strokes.start, 1);
  const { low, high } = strokes;
  const cuts = [low, high, strokes.start];
  for (const region of regions) {
    for (const share of INSIDE) cuts.push(region.low + share * (region.high - region.low));
    cuts.push(...region.corners);
  }
  const touching = rests.touched(softest, firmest, touched);
  if (touching) cuts.push(touched.low, touched.high);
  if (energySd < SHARP * mean)
    for (const region of regions)
      for (const score of energySd > 0 ? [-2, 0, 2] : [0])
        cuts.push(...startsAt(region, strokes.energyAt(score)));
  const inOrder = cuts.filter((cut) => cut >= low && cut <= high).sort((a, b) => a - b);
  const widest = (visitor.widestPiece ?? WIDEST_PIECE) * strokes.sharpest;
  let holed = 0;
  for (let piece = 1; piece < inOrder.length; piece++) {
    const [from, to] = [inOrder[piece - 1], inOrder[piece]];
    if (!(to > from)) continue;
    const parts = Math.ceil((to - from) / widest);
    const size = (to - from) / parts;
    // Where nothing drops all is smooth, and fewer points do.
    const outside =
      regions.every((region) => to <= region.low || from >= region.high) &&
      !(touching && to > touched.low && from < touched.high);
    const { nodes, weights } = outside ? GAUSS_3 : GAUSS_5;
    for (let part = 0; part < parts; part++)
      for (let k = 0; k < nodes.length; k++)
        holed += start(from + (part + (1 + nodes[k]) / 2) * size, (weights[k] * size) / 2);
  }
  return holed;
}

/** Where misses go when nobody asks. */
const NOWHERE: Rests = { ...COVERED, aim: () => undefined, at: () => undefined };
const UNHEARD: MissVisitor = { aim: () => undefined, miss: () => undefined };

/** Share holed alone, 0 to 1. */
export const holedOf = (strokes: StrokeErrors, regions: readonly DropRegion[]): number =>
  playOut(strokes, regions, NOWHERE, UNHEARD);

/** The first energy after `from` at which rests jump; `to` when there is none before it. */
function nextJump({ jumps, jumpCount }: Rests, from: number, to: number): number {
  let first = to;
  for (let i = 0; i < jumpCount; i++) if (jumps[i] > from && jumps[i] < first) first = jumps[i];
  return first;
}

/** Energies between two bounds that miss at this start, softest first: fills `gaps` with pairs, returns how many. */
function missesAt(regions: readonly DropRegion[], start: number, softest: number, firmest: number): number {
  gaps[0] = softest;
  gaps[1] = firmest;
  let count = 1;
  for (const region of regions) {
    const intervals = region.intervalsAt(start, drop);
    for (let i = 0; i < intervals; i++) count = without(drop[2 * i], drop[2 * i + 1], count);
  }
  return count;
}

/** Takes the energies from `soft` to `firm` out of the first `count` pairs of `gaps`. Returns how many are left. */
function without(soft: number, firm: number, count: number): number {
  let left = count;
  for (let i = count - 1; i >= 0; i--) {
    const from = gaps[2 * i];
    const to = gaps[2 * i + 1];
    if (firm <= from || soft >= to) continue;
    // What is left below, and above: none, one or two pairs in the place of one.
    const below = soft > from ? 1 : 0;
    const pieces = below + (firm < to ? 1 : 0);
    gaps.copyWithin(2 * (i + pieces), 2 * (i + 1), 2 * left);
    if (below > 0) gaps[2 * i + 1] = soft;
    if (firm < to) {
      gaps[2 * (i + below)] = firm;
      gaps[2 * (i + below) + 1] = to;
    }
    left += pieces - 1;
  }
  return left;
}

/** Starts at which an edge of the region passes this energy. */
function startsAt(region: DropRegion, energy: number): number[] {
  const startOf = (i: number): number =>
    region.low + ((region.high - region.low) * (1 - Math.cos((Math.PI * i) / SAMPLES))) / 2;
  /** -1 below the region, 0 in it, above 0 beyond it or in a bite out of it. */
  const placeOf = (angle: number): number => {
    const intervals = region.intervalsAt(angle, drop);
    if (intervals === 0) return Number.NaN;
    const above = 2 * intervals - 1;
    if (energy < drop[0]) return -1;
    if (energy > drop[above]) return above;
    return energy > drop[1] && energy < drop[above - 1] ? 1 : 0;
  };
  const found: number[] = [];
  for (let i = 1; i < SAMPLES - 1; i++) {
    let low = startOf(i);
    let high = startOf(i + 1);
    const place = placeOf(low);
    const next = placeOf(high);
    if (place === next || Number.isNaN(place) || Number.isNaN(next)) continue;
    for (let halving = 0; halving < 24; halving++) {
      const middle = (low + high) / 2;
      if (placeOf(middle) === place) low = middle;
      else high = middle;
    }
    found.push((low + high) / 2);
  }
  return found;
}
