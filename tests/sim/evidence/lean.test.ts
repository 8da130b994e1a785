/** Leans of misses: exact chances in whole numbers, the cautious rule, and how often it is wrong. */
import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { judgeLean, leansOf, publishedShortOfMisses } from '../../../sim/index.ts';
import { recorded } from '../record/recorded.ts';

const choose = (n: number, k: number): bigint => {
  let ways = 1n;
  for (let i = 0; i < k; i++) ways = (ways * BigInt(n - i)) / BigInt(i + 1);
  return ways;
};

/** Chance of as many or more of the more frequent side of a fair coin, both ways, counted in whole numbers. */
function signTest(first: number, second: number): number {
  const tosses = first + second;
  let ways = 0n;
  for (let k = Math.max(first, second); k <= tosses; k++) ways += choose(tosses, k);
  return Math.min(1, (2 * Number((ways * 10n ** 18n) / 2n ** BigInt(tosses))) / 1e18);
}

describe('a lean', () => {
  it('has the chance of the sign test, counted in whole numbers', () => {
    for (const [first, second] of [
      [0, 6],
      [6, 0],
      [2, 10],
      [7, 7],
      [30, 52],
      [3, 197],
    ])
      expect(Math.abs(judgeLean({ first, second }).chance - signTest(first, second))).toBeLessThan(1e-12);
    // Six low of six: 1/64 one way (1.6%), 1/32 both ways.
    expect(judgeLean({ first: 0, second: 6 }).chance).toBeCloseTo(1 / 32, 12);
  });

  it('has the smaller tail of jstat’s binomial, doubled, where the coin is not fair', () => {
    for (const [first, second, q] of [
      [5, 15, 0.12],
      [0, 30, 0.12],
      [9, 31, 0.21],
    ]) {
      const tries = first + second;
      const atMost = jStat.binomial.cdf(first, tries, q);
      const atLeast = 1 - (first === 0 ? 0 : jStat.binomial.cdf(first - 1, tries, q));
      const { chance } = judgeLean({ first, second }, { expectedShare: q });
      // jstat sums from its incomplete beta, good to about 1e-7.
      expect(Math.abs(chance - Math.min(1, 2 * Math.min(atMost, atLeast)))).toBeLessThan(1e-6);
    }
  });

  it('is never concluded from fewer than twelve misses, however lopsided', () => {
    for (let misses = 0; misses < 12; misses++)
      for (let first = 0; first <= misses; first++)
        expect(judgeLean({ first, second: misses - first }).verdict).toBe('tooFew');
    expect(judgeLean({ first: 0, second: 12 })).toMatchObject({ verdict: 'leans', way: 'second' });
    expect(judgeLean({ first: 6, second: 6 })).toMatchObject({ verdict: 'even', way: undefined, chance: 1 });
  });

  it('needs more when several are looked at', () => {
    // 2 of 12: 79/2048 = 3.9%; looked at with two others 11.6%.
    expect(judgeLean({ first: 2, second: 10 }).verdict).toBe('leans');
    const three = judgeLean({ first: 2, second: 10 }, { looks: 3 });
    expect(three.verdict).toBe('even');
    expect(three.correctedChance).toBeCloseTo((3 * 79) / 2048, 12);
  });

  it('does not care which way is named first', () => {
    fc.assert(
      fc.property(fc.nat(200), fc.nat(200), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (a, b, q) => {
        const one = judgeLean({ first: a, second: b }, { expectedShare: q });
        const other = judgeLean({ first: b, second: a }, { expectedShare: 1 - q });
        expect(other.chance).toBeCloseTo(one.chance, 9);
        expect(other.verdict).toBe(one.verdict);
        expect(other.way === 'first').toBe(one.way === 'second');
      }),
      { seed: 34, numRuns: 200 },
    );
  });

  it.each([
    [0.5, 1],
    [0.5, 3],
    [0.12, 3],
  ])('with a true share of %f and %i looks is called wrongly at most as often as stated', (truth, looks) => {
    for (const misses of [12, 20, 45, 120, 400]) {
      let wrong = 0;
      for (let first = 0; first <= misses; first++)
        if (judgeLean({ first, second: misses - first }, { expectedShare: truth, looks }).verdict === 'leans')
          wrong += jStat.binomial.pdf(first, misses, truth);
      expect(wrong).toBeLessThanOrEqual(0.05 / looks);
    }
  });

  it('is found when it is there and the misses are many', () => {
    let found = 0;
    for (let first = 0; first <= 100; first++)
      if (judgeLean({ first, second: 100 - first }, { looks: 3 }).way === 'second')
        found += jStat.binomial.pdf(first, 100, 0.25);
    // 25 of 100 lies five standard errors from a half, 2.4 of which the corrected test asks for.
    expect(found).toBeGreaterThan(0.98);
  });
});

describe('the leans of recorded misses', () => {
  it('count only misses of real putts that say which way they went', () => {
    const putts = [
      ...Array.from({ length: 12 }, () => recorded({ way: { side: 'low', reach: 'past' } })),
      recorded({ way: { side: 'high' } }),
      recorded({ way: { side: 'online', reach: 'short' } }),
      recorded({ way: { side: 'left' } }),
      recorded(),
      recorded({ holed: true }),
      recorded({ kind: 'offGreen', way: { side: 'high', reach: 'short' } }),
      recorded({ kind: 'conceded', holed: true }),
    ];
    const { highLow, leftRight, shortPast } = leansOf(putts);
    expect(highLow.share).toMatchObject({ hits: 1, tries: 13 });
    expect(leftRight.share).toMatchObject({ hits: 1, tries: 1 });
    expect(shortPast.share).toMatchObject({ hits: 1, tries: 13 });
    // 14/8192 both ways = 0.34%, times three leans.
    expect(highLow.correctedChance).toBeCloseTo((3 * 2 * 14) / 8192, 12);
    expect(highLow.way).toBe('second');
  });

  it('judge short or past against the share that is usual, when that is given', () => {
    const putts = Array.from({ length: 30 }, (_, i) =>
      recorded({ way: { reach: i < 5 ? 'short' : 'past' } }),
    );
    expect(leansOf(putts).shortPast.way).toBe('second');
    expect(leansOf(putts, { expectedShort: 0.12 }).shortPast.verdict).toBe('even');
  });

  it('know how many misses stay short by the records: 7 of 60 on tour, 17 of 80 averaging 90', () => {
    // Broadie 2020: 7% and 17% short from 10 ft; Broadie 2014 and an account: 40% and 20% holed.
    expect(publishedShortOfMisses('tour')).toBeCloseTo(7 / 60, 12);
    expect(publishedShortOfMisses('averaging90')).toBeCloseTo(17 / 80, 12);
    expect(publishedShortOfMisses('scratch')).toBeUndefined();
  });
});
