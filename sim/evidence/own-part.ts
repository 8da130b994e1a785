/**
 * How much of a player's curve is the record's own, and how much still the benchmark's. Answers for: a share of doubt removed, at a
 * distance and in all, and a word for sentences. Leaves out: the curve (holing-curve.ts).
 * Doubt is the variance of the log odds of a miss, the scale on which the curve is held beforehand. (Variances of the share itself rise and
 * fall with it: with them five putts made a curve less sure than none.)
 */
import { feetToMetres } from '../units.ts';

/** How much of a curve is the player's own. */
export interface OwnPart {
  /** Putts in it. */
  readonly putts: number;
  /** Share of the doubt about the benchmark player that they removed, 0 to 1, mean over 3, 6, 10, 20 and 30 ft. */
  readonly ownShare: number;
  /** benchmark: less than half is own ("leans on scratch: only 14 putts of your own"); record: four fifths or more. */
  readonly leansOn: 'benchmark' | 'both' | 'record';
}

/** Variances at one distance, before the record and after. */
export interface Doubts {
  readonly before: number;
  readonly after: number;
}

/** Short, middling and long putts, m. */
const ASKED_AT = [3, 6, 10, 20, 30].map(feetToMetres);
/** From this share on the record decides, ours. */
const MOSTLY_OWN = 0.8;
const HALF_OWN = 0.5;

/** Share of the doubt that the record removed: 0 none, 1 all. */
export const ownShareOf = ({ before, after }: Doubts): number => Math.max(0, 1 - after / before);

/** @param putts how many were recorded @param doubtsAt by distance, m */
export function ownPartOf(putts: number, doubtsAt: (distance: number) => Doubts): OwnPart {
  const ownShare =
    putts === 0
      ? 0
      : ASKED_AT.reduce((sum, distance) => sum + ownShareOf(doubtsAt(distance)), 0) / ASKED_AT.length;
  const leansOn = ownShare >= MOSTLY_OWN ? 'record' : ownShare >= HALF_OWN ? 'both' : 'benchmark';
  return { putts, ownShare, leansOn };
}
