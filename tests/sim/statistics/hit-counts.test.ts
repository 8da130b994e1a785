/** The number that drop: every subset by brute force, the binomial, the moments, and mixtures. */
import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  chanceAtLeast,
  chanceAtMost,
  hitCounts,
  mixedHitCounts,
  summarizeHits,
  twoSidedChance,
} from '../../../sim/index.ts';

/** Every subset of putts that could drop, one by one. */
function bySubsets(shares: readonly number[]): number[] {
  const chances = new Array<number>(shares.length + 1).fill(0);
  for (let subset = 0; subset < 2 ** shares.length; subset++) {
    let chance = 1;
    let hits = 0;
    shares.forEach((share, i) => {
      const drops = (subset >> i) & 1;
      hits += drops;
      chance *= drops ? share : 1 - share;
    });
    chances[hits] += chance;
  }
  return chances;
}

const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('the number of hits', () => {
  it('has the chances that all subsets add up to', () => {
    fc.assert(
      fc.property(fc.array(share, { maxLength: 14 }), (shares) => {
        const expected = bySubsets(shares);
        // Sums of at most 2^14 positive terms in double precision.
        hitCounts(shares).forEach((chance, hits) => {
          expect(Math.abs(chance - expected[hits])).toBeLessThan(1e-12);
        });
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  it('is binomial when all putts are alike', () => {
    for (const tries of [1, 6, 25, 60])
      for (const chance of [0.03, 0.18, 0.5, 0.96]) {
        const chances = hitCounts(new Array<number>(tries).fill(chance));
        // jstat works with logarithms: 1e-10 is far coarser than either.
        for (let hits = 0; hits <= tries; hits++)
          expect(Math.abs(chances[hits] - jStat.binomial.pdf(hits, tries, chance))).toBeLessThan(1e-10);
      }
  });

  it('says that six putts holed 15 to 20% of the time all miss 38 to 26% of the time', () => {
    // 0.85^6 and 0.80^6.
    expect(hitCounts(new Array<number>(6).fill(0.15))[0]).toBeCloseTo(0.377149515625, 12);
    expect(hitCounts(new Array<number>(6).fill(0.2))[0]).toBeCloseTo(0.262144, 12);
  });

  it('has the sum of the shares as mean and of p(1-p) as variance, and its tails meet', () => {
    fc.assert(
      fc.property(fc.array(share, { minLength: 1, maxLength: 60 }), fc.nat(), (shares, any) => {
        const chances = hitCounts(shares);
        const { mean, sd } = summarizeHits(chances);
        expect(mean).toBeCloseTo(
          shares.reduce((sum, p) => sum + p, 0),
          9,
        );
        expect(sd ** 2).toBeCloseTo(
          shares.reduce((sum, p) => sum + p * (1 - p), 0),
          9,
        );
        const hits = any % (shares.length + 1);
        expect(chanceAtMost(chances, hits - 1) + chanceAtLeast(chances, hits)).toBeCloseTo(1, 12);
        expect(twoSidedChance(chances, hits)).toBeLessThanOrEqual(1);
      }),
      { seed: 32, numRuns: 200 },
    );
  });

  it('has nothing to count without putts', () => {
    expect([...hitCounts([])]).toEqual([1]);
    expect(summarizeHits(hitCounts([]))).toEqual({ mean: 0, sd: 0, low: 0, high: 0 });
    expect(chanceAtMost(hitCounts([]), 0)).toBe(1);
    expect(chanceAtMost(hitCounts([0.4]), -1)).toBe(0);
  });

  it('has a central range with at most half of the rest beyond either end, and no narrower one', () => {
    fc.assert(
      fc.property(fc.array(share, { minLength: 1, maxLength: 12 }), (shares) => {
        const chances = bySubsets(shares);
        const below = (hits: number): number => chances.slice(0, hits).reduce((sum, p) => sum + p, 0);
        const { low, high } = summarizeHits(hitCounts(shares), 0.9);
        const rounding = 1e-9;
        expect(below(low)).toBeLessThanOrEqual(0.05 + rounding);
        expect(1 - below(high + 1)).toBeLessThanOrEqual(0.05 + rounding);
        expect(below(low + 1)).toBeGreaterThan(0.05 - rounding);
        expect(1 - below(high)).toBeGreaterThan(0.05 - rounding);
      }),
      { seed: 33, numRuns: 100 },
    );
  });
});

describe('the number of hits of an uncertain player', () => {
  it('is the weighted mean of those of his draws', () => {
    const [good, poor] = [bySubsets([0.5, 0.3, 0.2]), bySubsets([0.3, 0.1, 0.1])];
    mixedHitCounts(
      [
        [0.5, 0.3, 0.2],
        [0.3, 0.1, 0.1],
      ],
      [3, 1],
    ).forEach((chance, hits) => {
      expect(chance).toBeCloseTo(0.75 * good[hits] + 0.25 * poor[hits], 13);
    });
  });

  it('spreads by what is uncertain on top of what is chance', () => {
    // Law of total variance: mean of the variances plus variance of the means.
    const draws = [0.1, 0.18, 0.3].map((p) => new Array<number>(20).fill(p));
    const means = [2, 3.6, 6];
    const centre = (2 + 3.6 + 6) / 3;
    const between = means.reduce((sum, mean) => sum + (mean - centre) ** 2, 0) / 3;
    const within = (20 * (0.1 * 0.9 + 0.18 * 0.82 + 0.3 * 0.7)) / 3;
    const { mean, sd } = summarizeHits(mixedHitCounts(draws));
    expect(mean).toBeCloseTo(centre, 10);
    expect(sd ** 2).toBeCloseTo(between + within, 10);
  });

  it('is refused without players, with lists of different length, or without weight', () => {
    expect(() => mixedHitCounts([])).toThrow(/expected one weight per list/);
    expect(() => mixedHitCounts([[0.1], [0.1, 0.2]])).toThrow(RangeError);
    expect(() => mixedHitCounts([[0.1]], [0])).toThrow(RangeError);
    expect(() => mixedHitCounts([[0.1]], [1, 1])).toThrow(RangeError);
  });
});
