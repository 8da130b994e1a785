/** How scores add up: closed forms, a library's distributions, and every sequence counted one by one. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { hitCounts } from '../../../sim/statistics/hit-counts.ts';
import {
  bestOf,
  longestRun,
  meanOf,
  rungReached,
  sumOf,
  times,
  together,
} from '../../../sim/training/tally.ts';

const bernoulli = (share: number): Float64Array => Float64Array.of(1 - share, share);

/** Every sequence of successes and failures with its chance. */
function* sequences(shares: readonly number[]): Generator<readonly [readonly boolean[], number]> {
  for (let bits = 0; bits < 2 ** shares.length; bits++) {
    const hits = shares.map((_, i) => (bits & (1 << i)) !== 0);
    yield [hits, shares.reduce((chance, share, i) => chance * (hits[i] ? share : 1 - share), 1)];
  }
}
/** Sums in another order: rounding only. */
const PLACES = 12;

describe('sums', () => {
  it('of equal chances are binomial', () => {
    const chances = times(bernoulli(0.37), 12);
    for (let k = 0; k <= 12; k++) expect(chances[k]).toBeCloseTo(jstat.binomial.pdf(k, 12, 0.37), 10);
  });

  it('of unequal chances are those of the count of hits', () => {
    const shares = [0.1, 0.9, 0.45, 0.6];
    const counted = hitCounts(shares);
    sumOf(shares.map(bernoulli)).forEach((chance, k) => {
      expect(chance).toBeCloseTo(counted[k], PLACES);
    });
  });

  it('of dice are as counted by hand', () => {
    const die = Float64Array.from({ length: 7 }, (_, eyes) => (eyes === 0 ? 0 : 1 / 6));
    // Six of 36 throws of two dice make seven.
    expect(together(die, die)[7]).toBeCloseTo(6 / 36, PLACES);
    expect(meanOf(times(die, 3))).toBeCloseTo(10.5, PLACES);
  });
});

describe('the best of several', () => {
  it.each(['higher', 'lower'] as const)('(%s is better) is as counted over all triples', (better) => {
    const one = Float64Array.of(0.2, 0.5, 0.3);
    const counted = new Float64Array(3);
    for (let a = 0; a < 3; a++)
      for (let b = 0; b < 3; b++)
        for (let c = 0; c < 3; c++)
          counted[better === 'higher' ? Math.max(a, b, c) : Math.min(a, b, c)] += one[a] * one[b] * one[c];
    bestOf(one, 3, better).forEach((chance, score) => {
      expect(chance).toBeCloseTo(counted[score], PLACES);
    });
  });
});

describe('the longest run', () => {
  it.each([3, 5, 10])('up to %s is as counted over all sequences', (length) => {
    const shares = [0.9, 0.3, 0.7, 0.5, 0.8, 0.6, 0.4, 0.9, 0.2, 0.75];
    const counted = new Float64Array(length + 1);
    for (const [hits, chance] of sequences(shares)) {
      let run = 0;
      let longest = 0;
      for (const hit of hits) {
        run = hit ? run + 1 : 0;
        longest = Math.max(longest, run);
      }
      counted[Math.min(length, longest)] += chance;
    }
    longestRun(shares, length).forEach((chance, score) => {
      expect(chance).toBeCloseTo(counted[score], PLACES);
    });
  });

  it('of two heads in four fair throws comes in half of all throws', () => {
    // 8 of 16: HHxx 4, THHx 2, TTHH and HTHH 2 (Feller's runs, counted by hand).
    expect(longestRun([0.5, 0.5, 0.5, 0.5], 2)[2]).toBeCloseTo(0.5, PLACES);
  });
});

describe('the rung reached', () => {
  it.each([0, 1, 2])('with %s back is as counted over all sequences', (back) => {
    const shares = [0.8, 0.6, 0.5, 0.3];
    const strokes = 9;
    const counted = new Float64Array(shares.length + 1);
    // A stroke's chance depends on the rung: walk the tree.
    const walk = (rung: number, left: number, chance: number): void => {
      if (left === 0 || rung === shares.length) {
        counted[rung] += chance;
        return;
      }
      walk(rung + 1, left - 1, chance * shares[rung]);
      walk(Math.max(0, rung - back), left - 1, chance * (1 - shares[rung]));
    };
    walk(0, strokes, 1);
    rungReached(shares, { strokes, back }).forEach((chance, rung) => {
      expect(chance).toBeCloseTo(counted[rung], PLACES);
    });
  });
});
