/**
 * Where misses finish. Answers for: how far from the hole, how many short or past, high or low. Leaves out: intervals of the shares
 * (proportion.ts), whether they lean (lean.ts).
 * Only misses count, and of a share only those for which it was written down. High and low are asked of putts that break, left
 * and right of those that do not; on line counts in neither share and is given beside. Practice sets add to short or past, and to
 * high or low, when both of the pair were counted.
 */
import { bandIndex, type DistanceBand } from '../record/bands.ts';
import type { StruckPutt } from '../record/played-holes.ts';
import type { MissReach, MissSide, PracticeSet } from '../record/record.ts';
import type { Counted } from '../statistics/proportion.ts';

export interface Leaves {
  /** Putts that missed in rounds. */
  readonly misses: number;
  /** Of those whose leave is known, m: a quarter of them finish nearer than `lower`, a quarter farther than `upper`. */
  readonly leave:
    | { readonly count: number; readonly median: number; readonly lower: number; readonly upper: number }
    | undefined;
  /** Short, of those short or past. */
  readonly short: Counted;
  /** High, of those high or low. */
  readonly high: Counted;
  /** Left, of those left or right. */
  readonly left: Counted;
  /** Misses on line: short, or over the hole. */
  readonly online: number;
}

/** The value below which this share lies; straight lines between order statistics (Hyndman & Fan 1996, type 7). */
function quantileOf(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}

const share = (hits = 0, others = 0): Counted => ({ hits, tries: hits + others });

/** @param struck putts of rounds, chosen (putt-filter.ts); those holed are passed over @param sets practice, likewise */
export function leavesOf(struck: readonly StruckPutt[], sets: readonly PracticeSet[] = []): Leaves {
  const reaches: Record<MissReach, number> = { short: 0, past: 0 };
  const sides: Record<MissSide, number> = { high: 0, low: 0, left: 0, right: 0, online: 0 };
  const rests: number[] = [];
  let misses = 0;
  for (const { putt, rest } of struck) {
    if (putt.holed) continue;
    misses++;
    // The leave written down stands even where the ball ran off the green.
    const leave = rest ?? putt.miss?.leave;
    if (leave !== undefined) rests.push(leave);
    if (putt.miss?.reach !== undefined) reaches[putt.miss.reach]++;
    if (putt.miss?.side !== undefined) sides[putt.miss.side]++;
  }
  for (const { misses: counted } of sets) {
    if (counted?.short !== undefined && counted.past !== undefined) {
      reaches.short += counted.short;
      reaches.past += counted.past;
    }
    if (counted?.high !== undefined && counted.low !== undefined) {
      sides.high += counted.high;
      sides.low += counted.low;
    }
  }
  const sorted = new Float64Array(rests).sort();
  return {
    misses,
    leave:
      sorted.length === 0
        ? undefined
        : {
            count: sorted.length,
            median: quantileOf(sorted, 0.5),
            lower: quantileOf(sorted, 0.25),
            upper: quantileOf(sorted, 0.75),
          },
    short: share(reaches.short, reaches.past),
    high: share(sides.high, sides.low),
    left: share(sides.left, sides.right),
    online: sides.online,
  };
}

/** The same, band by band of the putt's distance; one for each band. */
export function leavesByBand(
  struck: readonly StruckPutt[],
  sets: readonly PracticeSet[],
  bands: readonly DistanceBand[],
): Leaves[] {
  const putts = bands.map((): StruckPutt[] => []);
  const practice = bands.map((): PracticeSet[] => []);
  for (const one of struck) putts[bandIndex(bands, one.putt.distance)]?.push(one);
  for (const set of sets) practice[bandIndex(bands, set.distance)]?.push(set);
  return bands.map((_, i) => leavesOf(putts[i], practice[i]));
}
