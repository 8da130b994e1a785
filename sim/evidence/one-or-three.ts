/**
 * From what distance is one more likely to take three putts than one?
 *
 * Answers for: what a record of holes says of it, band by band, and where a benchmark's two curves meet. Leaves out: intervals of
 * either share alone (proportion.ts).
 * Two-putts say nothing here. Of the holes with one putt or with three or more, the share with one is judged against a half (sign
 * test, lean.ts), all bands considered together.
 */
import type { Benchmark } from '../benchmarks/putting-benchmark.ts';
import { lastPlace } from '../maths/halving.ts';
import type { DistanceBand } from '../record/bands.ts';
import type { BandTally } from './distance-bands.ts';
import { judgeLean } from './lean.ts';

export interface OneOrThree {
  readonly band: DistanceBand;
  readonly onePutts: number;
  readonly threePutts: number;
  readonly verdict: 'one' | 'three' | 'cannotTell';
}

export function oneOrThree(tallies: readonly BandTally[]): OneOrThree[] {
  return tallies.map(({ band, onePutts, threePutts }) => {
    const { verdict, way } = judgeLean(
      { first: onePutts.hits, second: threePutts.hits },
      { looks: tallies.length },
    );
    const clear = verdict !== 'leans' ? 'cannotTell' : way === 'first' ? 'one' : 'three';
    return { band, onePutts: onePutts.hits, threePutts: threePutts.hits, verdict: clear };
  });
}

/** m beyond which the benchmark three-putts more often than it one-putts; undefined: nowhere in its table. */
export function threeBeatsOne({ holedAt, threePuttAt, from, to }: Benchmark): number | undefined {
  const one = (distance: number): boolean => holedAt(distance) > threePuttAt(distance);
  return one(from) && !one(to) ? lastPlace(one, from, to) : undefined;
}
