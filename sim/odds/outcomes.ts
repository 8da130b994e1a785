/**
 * What becomes of a putt at one pace: the share holed, and where the misses lie.
 *
 * Start errors are integrated by Gauss-Legendre pieces cut where the drop region begins and ends; at each start the holed
 * share is the pace-error share inside the region, exact; the rest is spread over cells of energy outside it, each standing
 * at its middle (cells of 0.3 SD: their second-order error is far below the 0.3 points asked of three-putts).
 * Leaves out: what a miss is and costs (the visitor sorts and adds it up).
 */
import type { Player } from '../types.ts';
import type { DropRegion } from './drop-region.ts';
import { GAUSS_3, GAUSS_5, normalCdf } from './normal.ts';
import type { RestRange, Rests } from './rests.ts';
import { startErrors } from './start-errors.ts';

/** SDs looked at on either side: all but 7 in a million. */
const REACH = 4.5;
const CELLS = 30;
/** Widest piece of start error integrated at once, SD, where sums vary smoothly with the start. */
const WIDEST_PIECE = 1.3;
/** Where the region is cut into pieces, shares of its width: the holed share climbs near the ends, where the hole is widest. */
const INSIDE = [0, 0.06, 0.25, 0.5, 0.75, 0.94, 1];
/** A pace error below this (share of the distance) makes the holed share a step where the region's edge crosses the pace. */
const SHARP = 0.04;
/** Samples between which such crossings are looked for. */
const SAMPLES = 48;
/** A ball cannot be struck backwards: errors that would, leave it where it is. */
const LEAST_SHARE = 1e-6;

export interface Intent {
  /** Start angle meant, radians from ball->hole, and launch energy v^2 meant, m^2/s^2. */
  readonly start: number;
  readonly energy: number;
}

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

/** Starts and energies that `playOut` will ask of the rests of these intents. */
export function rangeOf(intents: readonly Intent[], player: Player): RestRange {
  const starts = intents.flatMap(({ start }) => {
    const { middle, sd } = startErrors(start, player);
    const reach = REACH * Math.max(sd, 1e-9);
    return [middle - reach, middle + reach];
  });
  const energies = intents.map(({ energy }) => energy);
  const shareAt = (z: number): number => Math.max(1 + player.paceBias + player.paceSd * z, LEAST_SHARE);
  return {
    starts: [Math.min(...starts), Math.max(...starts)],
    energies: [Math.min(...energies) * shareAt(-REACH), Math.max(...energies) * shareAt(REACH)],
  };
}

// Reused from call to call: nothing here outlives one `playOut`, and a visitor must not call it.
const cellEnergies = new Float64Array(CELLS + 1);
const cellBelows = new Float64Array(CELLS + 1);
const drop = new Float64Array(4);
const gaps = new Float64Array(16);
const touched = { low: 0, high: 0 };
const rest = { x: 0, y: 0, lipped: false };

/**
 * Play one intent with the player's errors.
 * @param regions what drops; empty: nothing
 * @returns share holed, 0 to 1
 */
export function playOut(
  intent: Intent,
  player: Player,
  regions: readonly DropRegion[],
  rests: Rests,
  visitor: MissVisitor,
): number {
  const mean = 1 + player.paceBias;
  const { paceSd } = player;
  const energyAt = (z: number): number => intent.energy * Math.max(mean + paceSd * z, LEAST_SHARE);
  /** Share of paces softer than this energy; only where paceSd > 0. */
  const below = (energy: number): number => normalCdf((energy / intent.energy - mean) / paceSd);
  for (let i = 0; i <= CELLS; i++) {
    const z = -REACH + (2 * REACH * i) / CELLS;
    cellEnergies[i] = energyAt(z);
    cellBelows[i] = i === 0 ? 0 : i === CELLS ? 1 : normalCdf(z);
  }
  const softest = cellEnergies[0];
  const firmest = cellEnergies[CELLS];

  const visit = (share: number, softer: number, firmer: number): void => {
    if (!(share > 1e-12)) return;
    const middle = (softer + firmer) / 2;
    rest.lipped = false;
    rests.at(middle, rest);
    // d ln(density) / dz = -z for the bell curve.
    const tilt =
      paceSd > 0 ? ((mean - middle / intent.energy) * (firmer - softer)) / (intent.energy * paceSd ** 2) : 0;
    visitor.miss(share, rest.x, rest.y, softer, firmer, Math.max(-2, Math.min(2, tilt)), rest.lipped);
  };
  /** Misses between two energies, cell by cell. */
  const spread = (from: number, to: number, belowFrom: number, belowTo: number, weight: number): void => {
    for (let i = 0; i < CELLS; i++) {
      if (cellEnergies[i + 1] <= from || cellEnergies[i] >= to) continue;
      const cutLow = cellEnergies[i] < from;
      const cutHigh = cellEnergies[i + 1] > to;
      const share = (cutHigh ? belowTo : cellBelows[i + 1]) - (cutLow ? belowFrom : cellBelows[i]);
      visit(weight * share, cutLow ? from : cellEnergies[i], cutHigh ? to : cellEnergies[i + 1]);
    }
  };
  /** All putts that start at one angle. Returns the share of them holed, times weight. */
  const start = (angle: number, weight: number): number => {
    if (!(weight > 1e-12)) return 0;
    rests.aim(angle);
    visitor.aim(angle);
    const count = missesAt(regions, angle, softest, firmest);
    let missed = 0;
    for (let i = 0; i < count; i++) {
      const from = gaps[2 * i];
      const to = gaps[2 * i + 1];
      if (paceSd === 0) {
        const energy = intent.energy * mean;
        if (energy < from || energy > to) continue;
        visit(weight, energy, energy);
        return 0;
      }
      const belowTo = to === firmest ? 1 : below(to);
      let belowFrom = from === softest ? 0 : below(from);
      missed += belowTo - belowFrom;
      let reached = from;
      for (let jump = nextJump(rests, reached, to); jump < to; jump = nextJump(rests, reached, to)) {
        const belowJump = below(jump);
        spread(reached, jump, belowFrom, belowJump, weight);
        reached = jump;
        belowFrom = belowJump;
      }
      spread(reached, to, belowFrom, belowTo, weight);
    }
    return weight * (1 - missed);
  };

  const errors = startErrors(intent.start, player);
  if (errors.sd === 0) return start(errors.middle, 1);
  const reach = REACH * errors.sd;
  const ends = [errors.middle - reach, errors.middle + reach];
  const cuts = [...ends, intent.start];
  for (const { low, high, corners } of regions) {
    for (const share of INSIDE) cuts.push(low + share * (high - low));
    cuts.push(...corners);
  }
  const touching = rests.touched(softest, firmest, touched);
  if (touching) cuts.push(touched.low, touched.high);
  if (paceSd < SHARP)
    for (const region of regions)
      for (const z of paceSd > 0 ? [-2, 0, 2] : [0]) cuts.push(...startsAt(region, energyAt(z)));
  const inOrder = cuts.filter((cut) => cut >= ends[0] && cut <= ends[1]).sort((a, b) => a - b);
  let holed = 0;
  for (let piece = 1; piece < inOrder.length; piece++) {
    const [from, to] = [inOrder[piece - 1], inOrder[piece]];
    if (!(to > from)) continue;
    const parts = Math.ceil((to - from) / ((visitor.widestPiece ?? WIDEST_PIECE) * errors.sd));
    const size = (to - from) / parts;
    // Where nothing drops all is smooth, and fewer points do.
    const outside =
      regions.every(({ low, high }) => to <= low || from >= high) &&
      !(touching && to > touched.low && from < touched.high);
    const { nodes, weights } = outside ? GAUSS_3 : GAUSS_5;
    for (let part = 0; part < parts; part++)
      for (let k = 0; k < nodes.length; k++) {
        const angle = from + (part + (1 + nodes[k]) / 2) * size;
        holed += start(angle, (errors.density(angle) * weights[k] * size) / 2);
      }
  }
  return holed;
}

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
