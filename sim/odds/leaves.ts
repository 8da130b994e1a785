/**
 * Distances left after misses. Answers for: quantiles of a distribution given as stretches of even density.
 * Bins are equal in the square root of the distance, so narrow near the hole: 9 mm wide at 0.5 m, 4 cm at 8 m, and
 * quantiles are interpolated within them. A stretch costs two additions: bins hold the change of density, not density.
 */

/** Farther leaves count as this far, m. */
const FARTHEST = 40;
const BINS = 1000;
/** Narrowest stretch, bins: shorter ones are widened to it. */
const NARROWEST = 1;

export interface Leaves {
  clear(): void;
  /** A share of misses spread between two distances (m, either order), evenly in the bins' measure. */
  add(first: number, second: number, share: number): void;
  /** Distance (m) that `part` (0 to 1) of the misses do not exceed; 0 when nothing was missed. */
  quantile(part: number): number;
}

const binOf = (distance: number): number => BINS * Math.sqrt(Math.min(distance, FARTHEST) / FARTHEST);

export function makeLeaves(): Leaves {
  const changes = new Float64Array(BINS + NARROWEST + 2);
  let total = 0;
  const change = (at: number, amount: number): void => {
    const bin = Math.floor(at);
    changes[bin] += amount * (1 - (at - bin));
    changes[bin + 1] += amount * (at - bin);
  };
  return {
    clear() {
      changes.fill(0);
      total = 0;
    },
    add(first, second, share) {
      const a = binOf(first);
      const b = binOf(second);
      const width = Math.max(NARROWEST, Math.abs(a - b));
      const from = Math.max(0, (a + b - width) / 2);
      change(from, share / width);
      change(from + width, -share / width);
      total += share;
    },
    quantile(part) {
      if (!(total > 0)) return 0;
      let density = 0;
      let below = 0;
      let bin = 0;
      for (; bin <= BINS; bin++) {
        // A change split between two nodes ramps the density linearly between them: take the middle of the bin.
        const next = density + changes[bin];
        if (below + next >= part * total) {
          const at = bin + (part * total - below) / next;
          return FARTHEST * (at / BINS) ** 2;
        }
        below += next;
        density = next;
      }
      return FARTHEST;
    },
  };
}
