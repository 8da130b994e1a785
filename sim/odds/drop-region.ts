/**
 * Which rolls drop: for every start angle the interval of launch energies s = v^2 (m^2/s^2) that is holed.
 *
 * The rolls that drop form one region of the plane (start, energy). It is cut along lines of equal start, because on a plane
 * that holds the ball each such line meets it once: paths of one start are copies of each other at different scale (Cross),
 * so every point is reached at one energy only, and the ball passes the hole farther to the high side the harder it is hit.
 * Cut along equal energy it falls in two on steep slopes (tried first, dropped): a soft ball from far above and a firm one
 * from less far above are launched with the same speed. Cuts are solved one by one, outward from a line known to drop, with
 * steps that shrink as the interval closes; between them the ends are interpolated by cubics in t, where
 * start = low + (high - low)(1 - cos pi t)/2, because the interval closes as a square root, which t straightens.
 * On other ground a start may have two intervals: a soft ball still breaks into the hole's low edge, a firmer one misses it
 * there, a firm one holds its line (bite.ts). Does not depend on the player. Leaves out: a region of its own, apart from this
 * one, on ground that turns a ball both ways.
 */
import { HOLE_RADIUS } from '../constants.ts';
import { captureRule } from '../hole/capture.ts';
import type { CentreLine, LineWalk } from '../read/line.ts';
import { bearingOf, lengthOf, startOf } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import { biteIn, bitesOf } from './bite.ts';
import { arrivalClearance, type Clearance, eitherClearance, restClearance } from './clearance.ts';
import { ahead, bends, type Cut, closing, type DropRegion, forked, interpolated } from './drop-cuts.ts';
import { edgeBeyond, edgeNear } from './edge.ts';

export type { DropRegion } from './drop-cuts.ts';

/**
 * First and widest step outward, and the nearness to a closing end at which it is taken as reached: all in hole radii as
 * seen from the ball. Twice the widest step loses up to 1% of the region on a green.
 */
const FIRST_STEP = 0.25;
const WIDEST_STEP = 1;
const CLOSED = 0.003;
/** Share of the way to the foreseen end that one step goes. */
const APPROACH = 0.6;
const MOST_CUTS = 60;
/** Where in the interval before its soft and firm parts are sought when the middle no longer drops, shares of its height. */
const HORNS = [0.006, 0.02, 0.06, 0.15, 0.3, 0.45, 0.6, 0.7, 0.8, 0.88, 0.95];
/** An interval lower than this share of the tallest closes soon; it does not fork. */
const LOW = 0.12;
/** An end that moves by more than this share of the region's height between two cuts asks for another between them. */
const FAR = 0.22;
const MOST_ADDED = 20;
/** Looks for bends; each halves the gaps of the one before. */
const SWEEPS = 4;
/** No cut for a bend between two that are nearer than this, hole radii. */
const NARROW = 0.08;

/** Paces of a line to begin from, m past: one that rests in the hole, or any that surely arrives. */
const RESTING = [0.02, 0.01, 0.04];
const ARRIVING = [0.3, 0.15, 0.5, 0.05, 1];

const beginning = (walk: LineWalk, paces: readonly number[]): CentreLine | undefined => {
  for (const pace of paces) {
    const line = walk.lineAt(pace);
    if (line !== undefined) return line;
  }
  return undefined;
};

/**
 * All that drops, as one region, or as two that may overlap: what arrives and what would rest in the hole. A rule that drops
 * slow balls right out to the rim joins the two without a gap; one that does not leaves balls between them that stay out.
 * @returns empty when nothing drops from here, or the ground cannot be followed
 */
export function dropRegions(walk: LineWalk): readonly DropRegion[] {
  const rule = captureRule(walk.putt.capture);
  const joined = rule.widestDrop(0) >= HOLE_RADIUS;
  const regions = joined
    ? [regionOf(walk, eitherClearance, ARRIVING)]
    : [regionOf(walk, arrivalClearance, ARRIVING), regionOf(walk, restClearance, RESTING)];
  return regions.filter((region) => region !== undefined);
}

function regionOf(walk: LineWalk, measure: Clearance, paces: readonly number[]): DropRegion | undefined {
  const line = beginning(walk, paces);
  if (line === undefined) return undefined;
  const { roller } = walk.search;
  const rule = captureRule(walk.putt.capture);
  const zero = bearingOf(walk.putt);
  const unit = HOLE_RADIUS / lengthOf(walk.putt);
  const pass = newPass();
  let heading = zero;
  const clearance = (energy: number): number =>
    energy > 0 ? measure(roller, rule, roller.pass(heading, Math.sqrt(energy), pass)) : -HOLE_RADIUS;

  // Slopes of the clearance at the soft and the firm end of the last cut: the first step of the next.
  const slopes = new Float64Array(2);
  const cutFrom = (start: number, inside: number, soft: number, firm: number): Cut | undefined => {
    heading = zero + start;
    if (!(clearance(inside) > 0)) return undefined;
    slopes.fill(0);
    return { start, soft: edgeBeyond(clearance, inside, soft), firm: edgeBeyond(clearance, inside, firm) };
  };
  const cutNear = (start: number, soft: number, firm: number): Cut | undefined => {
    heading = zero + start;
    const softEnd = edgeNear(clearance, soft, 1, slopes, 0);
    const firmEnd = softEnd === undefined ? undefined : edgeNear(clearance, firm, -1, slopes, 1);
    return softEnd !== undefined && firmEnd !== undefined && firmEnd > softEnd
      ? { start, soft: softEnd, firm: firmEnd }
      : undefined;
  };

  /** A cut beside one whose middle no longer drops: a bite out of it leaves the soft part, the firm part or both. */
  const cutHorns = (start: number, { soft, firm }: Cut): Cut | undefined => {
    heading = zero + start;
    const inside = HORNS.map((share) => soft + share * (firm - soft)).filter(
      (energy) => clearance(energy) > 0,
    );
    if (inside.length === 0) return undefined;
    const [low, high] = [inside[0], inside[inside.length - 1]];
    const reach = HORNS[0] * (firm - soft);
    return {
      start,
      soft: edgeBeyond(clearance, low, low - reach),
      firm: edgeBeyond(clearance, high, high + reach),
    };
  };

  const energy = line.speed ** 2;
  const first = cutFrom(startOf(walk.putt, line.heading), energy, energy * 0.97, energy * 1.05);
  if (first === undefined) return undefined;

  /** Cuts on one side, outward, ending where the interval has closed. */
  const outward = (side: 1 | -1): Cut[] => {
    const cuts = [first];
    let step = FIRST_STEP * unit;
    let tallest = 0;
    for (let i = 0; i < MOST_CUTS; i++) {
      const last = cuts[cuts.length - 1];
      const start = last.start + side * step;
      const guess = ahead(cuts, start);
      const middle = (guess.soft + guess.firm) / 2;
      const height = last.firm - last.soft;
      tallest = Math.max(tallest, height);
      const found =
        cutNear(start, guess.soft, guess.firm) ??
        cutFrom(start, middle, guess.soft, guess.firm) ??
        cutFrom(start, last.soft + height / 2, guess.soft, guess.firm);
      // Where nothing is found a shorter step may still find it whole: parts are looked for only then.
      const parts = forked(found, last) && (found !== undefined || step < FIRST_STEP * unit);
      const cut = (parts && height > LOW * tallest ? cutHorns(start, last) : undefined) ?? found;
      if (cut === undefined) {
        step /= 3;
        if (step < CLOSED * unit) break;
        continue;
      }
      cuts.push(cut);
      if (forked(cut, last)) {
        // A part of the region goes on alone: nothing is known yet of where it ends.
        step = Math.min(step, FIRST_STEP * unit) / 2;
        continue;
      }
      // The square of the interval falls evenly towards its end.
      const fall = (last.firm - last.soft) ** 2 - (cut.firm - cut.soft) ** 2;
      const left = fall > 0 ? (step * (cut.firm - cut.soft) ** 2) / fall : Number.POSITIVE_INFINITY;
      if (left < CLOSED * unit) break;
      step = Math.min(step * 2, APPROACH * left, WIDEST_STEP * unit);
    }
    cuts.push(closing(cuts));
    return cuts;
  };
  const left = outward(1);
  const right = outward(-1);
  const cuts = [...right.reverse(), ...left.slice(1)];
  const corners: number[] = [];
  /** A cut halfway to the one before cut `i`; undefined where nothing drops there. */
  const cutBefore = (i: number): Cut | undefined => {
    const [before, after] = [cuts[i - 1], cuts[i]];
    const taller = before.firm - before.soft > after.firm - after.soft ? before : after;
    const middle = (before.soft + before.firm + after.soft + after.firm) / 4;
    const start = (before.start + after.start) / 2;
    const soft = (before.soft + after.soft) / 2;
    const firm = (before.firm + after.firm) / 2;
    const found =
      cutFrom(start, middle, soft, firm) ??
      cutFrom(start, (before.soft + before.firm) / 2, before.soft, before.firm) ??
      cutFrom(start, (after.soft + after.firm) / 2, after.soft, after.firm);
    return (forked(found, taller) ? cutHorns(start, taller) : undefined) ?? found;
  };
  /** More cuts where an end moves far from one to the next, or bends: rules have corners, and regions that fork have too. */
  const refine = (): void => {
    const tall = Math.max(...cuts.map(({ firm }) => firm)) - Math.min(...cuts.map(({ soft }) => soft));
    let added = 0;
    const insert = (i: number): boolean => {
      const cut = cutBefore(i);
      if (cut === undefined) return false;
      cuts.splice(i, 0, cut);
      added++;
      return true;
    };
    for (let i = 2; i < cuts.length - 1 && added < MOST_ADDED; i++) {
      const [before, after] = [cuts[i - 1], cuts[i]];
      const moved = Math.max(Math.abs(after.firm - before.firm), Math.abs(after.soft - before.soft));
      if (moved < FAR * tall) continue;
      if (after.start - before.start < CLOSED * unit) corners.push((before.start + after.start) / 2);
      else if (insert(i)) i -= 1;
    }
    // All bends of one look at once, so that both sides of a straight putt are cut alike.
    for (let sweep = 0; sweep < SWEEPS; sweep++) {
      const gaps = new Set<number>();
      for (let i = 2; i < cuts.length - 2; i++) {
        if (!bends(cuts, i, tall)) continue;
        const wider = cuts[i].start - cuts[i - 1].start > cuts[i + 1].start - cuts[i].start ? i : i + 1;
        if (cuts[wider].start - cuts[wider - 1].start > NARROW * unit) gaps.add(wider);
      }
      for (const gap of [...gaps].sort((one, two) => two - one)) if (added < MOST_ADDED) insert(gap);
    }
  };
  refine();
  if (walk.putt.surface.kind === 'plane') return interpolated(cuts, corners, []);
  const biteOf = (cut: Cut): Cut => {
    heading = zero + cut.start;
    return { ...cut, bite: biteIn(clearance, cut) };
  };
  const bitten = cuts.map((cut) => (cut.firm > cut.soft ? biteOf(cut) : cut));
  const curve = interpolated(bitten, corners, []);
  if (curve === undefined) return undefined;
  // Where bites begin: halved between a whole cut and a bitten one.
  const energies = new Float64Array(4);
  const cutAt = (start: number): Cut | undefined =>
    curve.intervalsAt(start, energies) > 0
      ? biteOf({ start, soft: energies[0], firm: energies[1] })
      : undefined;
  const bites = bitesOf(bitten, cutAt);
  if (bites.length === 0) return curve;
  const tips = bites.flatMap(({ starts }) => [starts[0], starts[starts.length - 1]]);
  return interpolated(bitten, [...corners, ...tips], bites);
}
