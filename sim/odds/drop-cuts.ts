/**
 * Cuts through what drops, and the region they make: what is read off a list of cuts, without a roll. Answers for: where the next
 * cut and the closing end are to be expected, where the region forks or bends, the curves through all cuts. Leaves out: solving for
 * a cut, and why it is cut this way (drop-region.ts); bites themselves (bite.ts).
 */

import { monotoneCubic } from '../maths/interpolation.ts';
import { type Bite, type BittenStarts, cutOut } from './bite.ts';

export interface DropRegion {
  /** Starts (radians from ball->hole) between which some energy drops. */
  readonly low: number;
  readonly high: number;
  /** Starts at which the softest or firmest energy jumps (a rule with a corner). */
  readonly corners: readonly number[];
  /**
   * Intervals of energies (m^2/s^2) that drop at this start, softest first, as pairs into `out` (room for two).
   * @returns how many: 0, 1 or 2
   */
  intervalsAt(start: number, out: Float64Array): number;
}

/** All energies that drop at one start, m^2/s^2. */
export interface Cut {
  readonly start: number;
  readonly soft: number;
  readonly firm: number;
  /** Energies between that do not drop: out of reach of the soft end, not yet firm enough to hold the line. */
  readonly bite?: Bite | undefined;
}

/** What is lower than this share of the interval before may be a part of it: steps towards a closing end leave more. */
const FORKED = 0.5;
/** An end that lies off the straight line between its neighbours by more than this share of the height: soft end, firm end. */
const BENT = { soft: 0.005, firm: 0.015 };

/** So much lower than its neighbour, or not found at all: it may be one part of an interval that forks. */
export const forked = (cut: Cut | undefined, beside: Cut): boolean =>
  cut === undefined || cut.firm - cut.soft < FORKED * (beside.firm - beside.soft);

/** Does the soft or the firm end turn a corner at this cut? */
export function bends(cuts: readonly Cut[], i: number, tall: number): boolean {
  const [before, here, after] = [cuts[i - 1], cuts[i], cuts[i + 1]];
  const share = (here.start - before.start) / (after.start - before.start);
  const off = (end: 'soft' | 'firm'): number =>
    Math.abs(before[end] + share * (after[end] - before[end]) - here[end]) / tall;
  return off('soft') > BENT.soft || off('firm') > BENT.firm;
}

/** Ends expected at a start beyond the last cut, along the line through the last two. */
export function ahead(cuts: readonly Cut[], start: number): Cut {
  const last = cuts[cuts.length - 1];
  if (cuts.length === 1) return { ...last, start };
  const before = cuts[cuts.length - 2];
  const times = (start - last.start) / (last.start - before.start);
  return {
    start,
    soft: last.soft + times * (last.soft - before.soft),
    firm: last.firm + times * (last.firm - before.firm),
  };
}

/** Where the last two cuts say the interval closes. */
export function closing(cuts: readonly Cut[]): Cut {
  const last = cuts[cuts.length - 1];
  const middle = (last.soft + last.firm) / 2;
  if (cuts.length === 1) return { start: last.start, soft: middle, firm: middle };
  const before = cuts[cuts.length - 2];
  const width = (last.firm - last.soft) ** 2;
  const fall = (before.firm - before.soft) ** 2 - width;
  const step = last.start - before.start;
  const start = last.start + (fall > 0 ? Math.min(1, width / fall) : 0) * step;
  const middleBefore = (before.soft + before.firm) / 2;
  const energy = middle + ((start - last.start) / step) * (middle - middleBefore);
  return { start, soft: energy, firm: energy };
}

export function interpolated(
  cuts: readonly Cut[],
  corners: readonly number[],
  bites: readonly BittenStarts[],
): DropRegion | undefined {
  const low = cuts[0].start;
  const high = cuts[cuts.length - 1].start;
  if (!(high > low) || cuts.length < 4) return undefined;
  const tOf = (start: number): number =>
    Math.acos(Math.max(-1, Math.min(1, 1 - (2 * (start - low)) / (high - low)))) / Math.PI;
  const ts = Float64Array.from(cuts, ({ start }) => tOf(start));
  const softs = monotoneCubic(
    ts,
    Float64Array.from(cuts, ({ soft }) => soft),
  );
  const firms = monotoneCubic(
    ts,
    Float64Array.from(cuts, ({ firm }) => firm),
  );
  return {
    low,
    high,
    corners,
    intervalsAt(start, out) {
      if (!(start > low && start < high)) return 0;
      const t = tOf(start);
      out[0] = softs(t);
      out[1] = firms(t);
      if (!(out[1] > out[0])) return 0;
      return bites.length > 0 ? cutOut(bites, start, out) : 1;
    },
  };
}
