/**
 * Shares of a record beside a benchmark's from the very same places, band by band.
 *
 * Answers for: what the benchmark would have holed, or three-putted, on average, and whether the record differs from that more
 * than chance makes. Leaves out: counts (distance-bands.ts). The benchmark's chances differ within a band; one binomial with
 * their mean varies more than their sum does, so the verdict is on the careful side (Hoeffding 1956).
 */
import { bandIndex, type DistanceBand } from './bands.ts';
import { judgeLean } from './lean.ts';
import type { Counted } from './proportion.ts';

export interface BesideBenchmark {
  /** The benchmark's mean share from the same places; undefined: nothing was tried. */
  readonly expectedShare: number | undefined;
  /** Against the benchmark, all bands considered; tooFew: under twelve tries. */
  readonly verdict: 'tooFew' | 'cannotTell' | 'fewer' | 'more';
}

/** So many tries from one place. */
export interface TriedFrom {
  /** m */
  readonly distance: number;
  readonly tries: number;
}

/** Mean of a share, or of anything else that goes by distance (m), over the tries in each band; undefined where there are none. */
export function meanOverPutts(
  tried: Iterable<TriedFrom>,
  bands: readonly DistanceBand[],
  valueAt: (distance: number) => number,
): (number | undefined)[] {
  const sums = new Float64Array(bands.length);
  const tries = new Float64Array(bands.length);
  for (const one of tried) {
    const index = bandIndex(bands, one.distance);
    if (index < 0) continue;
    sums[index] += one.tries * valueAt(one.distance);
    tries[index] += one.tries;
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
