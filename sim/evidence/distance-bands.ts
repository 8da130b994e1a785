/**
 * How often holed, one-putted and three-putted, band of distance by band of distance. Answers for: the bands and the counts in
 * them. Leaves out: intervals of shares (proportion.ts) and the smooth curve (holing-curve.ts).
 * A band is "from x to y": the lower end belongs to it, the upper one does not. That is not the share holed "at" a distance.
 */
import { feetToMetres } from '../units.ts';
import { type Estimate, meanInterval } from './mean-interval.ts';
import type { PlayedHole, StruckPutt } from './played-holes.ts';
import type { PracticeSet } from './record.ts';

/** m; `to` may be Infinity. */
export interface DistanceBand {
  readonly from: number;
  readonly to: number;
}

/** @param edges rising, m, from 0; the last band has no end */
export const bandsOf = (edges: readonly number[]): readonly DistanceBand[] =>
  edges.map((from, i) => ({ from, to: edges[i + 1] ?? Number.POSITIVE_INFINITY }));

/** 0, 3, 6, 10, 15, 20, 30 and 40 ft. */
export const FEET_BANDS = bandsOf([0, 3, 6, 10, 15, 20, 30, 40].map(feetToMetres));
/** For players who count in metres; round figures of their own, not the others converted. */
export const METRE_BANDS = bandsOf([0, 1, 2, 3, 4.5, 6, 9, 12]);

/** Half a millimetre: 3 ft is 0.9144 m in a file and 3 x 0.3048 on a screen, and both are "from 3 ft". */
const ROUNDING = 5e-4;

/** Does this distance (m) lie in the band? */
export const isInBand = ({ from, to }: DistanceBand, distance: number): boolean =>
  distance >= from - ROUNDING && distance < to - ROUNDING;

/** @returns which of rising bands that touch; -1 below the first or beyond the last */
export function bandIndex(bands: readonly DistanceBand[], distance: number): number {
  let low = 0;
  let high = bands.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (distance < bands[middle].to - ROUNDING) high = middle;
    else low = middle + 1;
  }
  return high >= 0 && isInBand(bands[low], distance) ? low : -1;
}

/** So many of so many: give it to proportion.ts for its interval. */
export interface Counted {
  readonly hits: number;
  readonly tries: number;
}

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
