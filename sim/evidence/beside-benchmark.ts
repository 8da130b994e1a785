/**
 * Shares of a record beside a benchmark's from the very same places, band by band.
 *
 * Answers for: what the benchmark would have holed, or three-putted, on average, and whether the record differs from that more
 * than chance makes. Leaves out: counts (distance-bands.ts). The benchmark's chances differ within a band; one binomial with
 * their mean varies more than their sum does, so the verdict is on the careful side (Hoeffding 1956).
 */
import { bandIndex, type DistanceBand } from '../record/bands.ts';
import type { Counted } from '../statistics/proportion.ts';
import { judgeLean } from './lean.ts';

export interface BesideBenchmark {
  /** The benchmark's mean share from the same places; undefined: nothing was tried. */
  readonly expectedShare: number | undefined;
  /** Against the benchmark, all bands considered; tooFew: under twelve tries. */
  readonly verdict: 'tooFew' | 'cannotTell' | 'fewer' | 'more';
}

/** Places putts were tried from, flat: a record may hold a hundred thousand. */
export interface TriedFrom {
  /** m */
  readonly distances: Float64Array;
  /** One for each distance. */
  readonly tries: Float64Array;
}

/** Mean of a share, or of anything else that goes by distance (m), over the tries in each band; undefined where there are none. */
export function meanOverPutts(
  tried: TriedFrom,
  bands: readonly DistanceBand[],
  valueAt: (distance: number) => number,
): (number | undefined)[] {
  const sums = new Float64Array(bands.length);
  const tries = new Float64Array(bands.length);
  for (let i = 0; i < tried.distances.length; i++) {
    const index = bandIndex(bands, tried.distances[i]);
    if (index < 0) continue;
    sums[index] += tried.tries[i] * valueAt(tried.distances[i]);
    tries[index] += tried.tries[i];
  }
  return bands.map((_, i) => (tries[i] === 0 ? undefined : sums[i] / tries[i]));
}

/** @param counts one per band @param shares of the benchmark, likewise */
export function besideBenchmark(
  counts: readonly Counted[],
  shares: readonly (number | undefined)[],
): BesideBenchmark[] {
  return counts.map(({ hits, tries }, i) => {
    const expectedShare = shares[i];
    if (expectedShare === undefined || !(expectedShare > 0 && expectedShare < 1))
      return { expectedShare, verdict: tries < 1 ? 'tooFew' : 'cannotTell' };
    const { verdict, way } = judgeLean(
      { first: hits, second: tries - hits },
      { expectedShare, looks: counts.length },
    );
    if (verdict !== 'leans') return { expectedShare, verdict: verdict === 'tooFew' ? verdict : 'cannotTell' };
    return { expectedShare, verdict: way === 'first' ? 'more' : 'fewer' };
  });
}
