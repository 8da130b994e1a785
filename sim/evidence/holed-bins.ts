/**
 * Putts tried and holed, gathered by distance. Answers for: narrow bins that can be added and taken away. Leaves out: bands for
 * showing (distance-bands.ts), what is made of them (holing-curve.ts).
 * A bin reaches from a distance to 3% more and stands at the mean distance of its own putts, so that 100,000 putts are some 150 bins and
 * a curve moves by at most a twentieth of a point (tests). Tried and dropped: 0.1 m everywhere, which near the hole puts together
 * what differs by a factor of two in misses, and moved a curve by a fifth of a point.
 */
import type { StruckPutt } from './played-holes.ts';
import type { PracticeSet } from './record.ts';

/** Far end over near end of a bin, logarithm. */
const WIDTH = Math.log(1.03);
/** Nearer putts than this count as from here, m: a ball on the lip. */
const NEAREST = 0.01;

/** So many putts from one distance. */
export interface HoledTally {
  /** m */
  readonly distance: number;
  readonly tries: number;
  readonly holed: number;
}

/** Counts of one bin. */
export interface HoledBin {
  readonly tries: number;
  readonly holed: number;
  /** Sum of the distances of all tries, m. */
  readonly metres: number;
}

/** By number of the bin. */
export type HoledBins = ReadonlyMap<number, HoledBin>;

/** Putts of rounds and practice sets as tallies. */
export function talliesOf(struck: readonly StruckPutt[], sets: readonly PracticeSet[] = []): HoledTally[] {
  const tallies: HoledTally[] = [];
  for (const { putt } of struck)
    tallies.push({ distance: putt.distance, tries: 1, holed: putt.holed ? 1 : 0 });
  for (const { distance, attempts, holed } of sets) tallies.push({ distance, tries: attempts, holed });
  return tallies;
}

/** `bins` with these putts added, or taken away again; the bins given stay as they are. */
function changed(bins: HoledBins, tallies: readonly HoledTally[], sign: 1 | -1): HoledBins {
  const result = new Map<number, { tries: number; holed: number; metres: number }>();
  for (const [number, bin] of bins) result.set(number, { ...bin });
  for (const { distance, tries, holed } of tallies) {
    const number = Math.round(Math.log(Math.max(NEAREST, distance)) / WIDTH);
    let bin = result.get(number);
    if (bin === undefined) {
      bin = { tries: 0, holed: 0, metres: 0 };
      result.set(number, bin);
    }
    bin.tries += sign * tries;
    bin.holed += sign * holed;
    bin.metres += sign * tries * distance;
  }
  for (const [number, { tries }] of result) if (tries <= 0) result.delete(number);
  return result;
}

export const binsOf = (tallies: readonly HoledTally[]): HoledBins => changed(new Map(), tallies, 1);
/** @param tallies putts that are in the bins */
export const binsWithout = (bins: HoledBins, tallies: readonly HoledTally[]): HoledBins =>
  changed(bins, tallies, -1);
