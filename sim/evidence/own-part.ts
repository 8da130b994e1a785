/**
 * How much of a player's curve is the record's own, and how much still the benchmark's. Answers for: a share of doubt removed, at a
 * distance and in all, and a word for sentences. Leaves out: the curve (holing-curve.ts).
 *
 * The doubt about a share p is measured as the angle error that would make it alone: p = 2 Phi(z) - 1, doubt = variance of ln z. On
 * that scale both errors act as they are held beforehand, by their logarithms: near the hole ln z = const - ln(angle error), far off
 * const - ln(angle error) - ln(distance error). (Variances of shares or of log odds rise and fall with the share itself; with them
 * five putts made a curve less sure than none.)
 */
import { shareBelow } from '../player/holing-models.ts';
import { feetToMetres } from '../units.ts';
import { type CurveGrid, sharesOver } from './curve-grid.ts';

/** How much of a curve is the player's own. */
export interface OwnPart {
  /** Putts in it. */
  readonly putts: number;
  /** Share of the doubt about the benchmark player that they removed, 0 to 1, mean over 3, 6, 10, 20 and 30 ft. */
  readonly ownShare: number;
  /** benchmark: less than half is own ("leans on scratch: only 14 putts of your own"); record: four fifths or more. */
  readonly leansOn: 'benchmark' | 'both' | 'record';
}

/** Short, middling and long putts, m. */
const ASKED_AT = [3, 6, 10, 20, 30].map(feetToMetres);
/** From this share on the record decides, ours. */
const MOSTLY_OWN = 0.8;
const HALF_OWN = 0.5;

/** ln z at which p is tabled: 1 in 10 000 holed to 1 in a billion missed. */
const LOG_Z = { from: Math.log(1e-4), to: Math.log(6), steps: 400 };
const TABLED = Float64Array.from(
  { length: LOG_Z.steps + 1 },
  (_, i) => 2 * shareBelow(Math.exp(LOG_Z.from + ((LOG_Z.to - LOG_Z.from) * i) / LOG_Z.steps)) - 1,
);

/** ln z of p = 2 Phi(z) - 1, straight between tabled values; beyond the table its ends. */
function logZOf(p: number): number {
  let low = 0;
  let high = LOG_Z.steps;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (TABLED[middle] <= p) low = middle;
    else high = middle;
  }
  const between = Math.max(0, Math.min(1, (p - TABLED[low]) / (TABLED[high] - TABLED[low])));
  return LOG_Z.from + ((LOG_Z.to - LOG_Z.from) * (low + between)) / LOG_Z.steps;
}

function doubtAt(grid: CurveGrid, distance: number): number {
  const shares = sharesOver(grid, distance);
  let mean = 0;
  let squares = 0;
  for (let cell = 0; cell < shares.length; cell++) {
    const logZ = logZOf(shares[cell]);
    mean += grid.weights[cell] * logZ;
    squares += grid.weights[cell] * logZ * logZ;
  }
  return squares - mean * mean;
}

/** Share of the doubt at this distance (m) that the record removed: 0 none, 1 all. */
export const ownShareOf = (grid: CurveGrid, before: CurveGrid, distance: number): number =>
  Math.max(0, 1 - doubtAt(grid, distance) / doubtAt(before, distance));

/** @param putts how many went from `before` to `grid` */
export function ownPartOf(putts: number, grid: CurveGrid, before: CurveGrid): OwnPart {
  const ownShare =
    putts === 0
      ? 0
      : ASKED_AT.reduce((sum, distance) => sum + ownShareOf(grid, before, distance), 0) / ASKED_AT.length;
  const leansOn = ownShare >= MOSTLY_OWN ? 'record' : ownShare >= HALF_OWN ? 'both' : 'benchmark';
  return { putts, ownShare, leansOn };
}
