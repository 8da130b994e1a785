/**
 * How often holed, one-putted and three-putted, band of distance by band of distance. Answers for: the counts in each band.
 * Leaves out: what belongs to a band (bands.ts), intervals of shares (proportion.ts) and the smooth curve (holing-curve.ts).
 */
import { bandIndex, type DistanceBand, FEET_BANDS } from '../record/bands.ts';
import type { PlayedHole, StruckPutt } from '../record/played-holes.ts';
import type { PracticeSet } from '../record/record.ts';
import { type Estimate, meanInterval } from '../statistics/mean-interval.ts';
import type { Counted } from '../statistics/proportion.ts';

export interface BandTally {
  readonly band: DistanceBand;
  /** Putts struck from there and holed: rounds and practice together, and each. */
  readonly holed: Counted;
  readonly holedInRounds: Counted;
  readonly holedInPractice: Counted;
  /** Holes first putted from there. */
  readonly holes: number;
  /** Of those for which it is known (always: the first putt dropped or did not). */
  readonly onePutts: Counted;
  /** Of those for which it is known (played-holes.ts). */
  readonly threePutts: Counted;
  /** Of the holes putted out, with Student's interval; undefined: none. */
  readonly meanPutts: Estimate | undefined;
}

interface Count {
  hits: number;
  tries: number;
}

const none = (): Count => ({ hits: 0, tries: 0 });
const both = (a: Counted, b: Counted): Counted => ({ hits: a.hits + b.hits, tries: a.tries + b.tries });

/** Putts, holes and practice sets already chosen (putt-filter.ts), counted by band; distances outside all bands are left out. */
export function distanceBands(
  chosen: {
    readonly holes: readonly PlayedHole[];
    readonly struck: readonly StruckPutt[];
    readonly sets: readonly PracticeSet[];
  },
  bands: readonly DistanceBand[] = FEET_BANDS,
): BandTally[] {
  const counts = bands.map(() => ({
    rounds: none(),
    practice: none(),
    holes: 0,
    onePutts: none(),
    threePutts: none(),
    taken: [] as number[],
  }));
  const at = (distance: number): (typeof counts)[number] | undefined => counts[bandIndex(bands, distance)];
  for (const { putt } of chosen.struck) {
    const count = at(putt.distance);
    if (count === undefined) continue;
    count.rounds.tries++;
    if (putt.holed) count.rounds.hits++;
  }
  for (const set of chosen.sets) {
    const count = at(set.distance);
    if (count === undefined) continue;
    count.practice.tries += set.attempts;
    count.practice.hits += set.holed;
  }
  for (const hole of chosen.holes) {
    const count = at(hole.first.distance);
    if (count === undefined) continue;
    count.holes++;
    count.onePutts.tries++;
    if (hole.first.holed) count.onePutts.hits++;
    if (hole.threePutted !== undefined) {
      count.threePutts.tries++;
      if (hole.threePutted) count.threePutts.hits++;
    }
    if (hole.end === 'holed') count.taken.push(hole.putts.length);
  }
  return bands.map((band, i) => {
    const { rounds, practice, holes, onePutts, threePutts, taken } = counts[i];
    return {
      band,
      holed: both(rounds, practice),
      holedInRounds: rounds,
      holedInPractice: practice,
      holes,
      onePutts,
      threePutts,
      meanPutts: meanInterval(taken),
    };
  });
}
