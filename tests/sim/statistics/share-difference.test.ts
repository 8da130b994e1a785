/** Differences of two shares: the examples of the source, coverage by counting every outcome and by simulation. */
import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { seededRandom, shareDifference } from '../../../sim/index.ts';

describe('the difference of two shares', () => {
  it.each([
    // Newcombe 1998, table II, method 10 (memory): after, before, 95% limits.
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [6, 7, 2, 7, 0.0582, 0.8062],
    [5, 56, 0, 29, -0.0381, 0.1926],
    [0, 10, 0, 20, -0.1611, 0.2775],
    [0, 10, 0, 10, -0.2775, 0.2775],
    [10, 10, 0, 20, 0.6791, 1],
    [10, 10, 0, 10, 0.6075, 1],
  ])('of %i/%i less %i/%i has the printed interval', (hits, tries, hitsBefore, triesBefore, low, high) => {
    const difference = shareDifference({ hits: hitsBefore, tries: triesBefore }, { hits, tries });
    expect(difference.value).toBeCloseTo(hits / tries - hitsBefore / triesBefore, 12);
    // Printed to four figures.
    expect(Math.abs(difference.low - low)).toBeLessThan(0.00006);
    expect(Math.abs(difference.high - high)).toBeLessThan(0.00006);
  });

  it('turns round when the periods are exchanged and stays between -1 and 1', () => {
    const counted = fc.tuple(fc.integer({ min: 1, max: 200 }), fc.nat()).map(([tries, any]) => ({
      tries,
      hits: any % (tries + 1),
    }));
    fc.assert(
      fc.property(counted, counted, (one, other) => {
        const there = shareDifference(one, other);
        const back = shareDifference(other, one);
        expect(back.low).toBeCloseTo(-there.high, 12);
        expect(back.high).toBeCloseTo(-there.low, 12);
        // 1e-12: rounding at 0 of n beside n of n.
        expect(there.low).toBeGreaterThanOrEqual(-1 - 1e-12);
        expect(there.high).toBeLessThanOrEqual(1 + 1e-12);
        expect(there.low).toBeLessThanOrEqual(there.value ?? Number.NaN);
        expect(there.high).toBeGreaterThanOrEqual(there.value ?? Number.NaN);
      }),
      { seed: 36, numRuns: 200 },
    );
  });

  it('is everything when one side has no tries', () => {
    const all = { value: undefined, low: -1, high: 1 };
    expect(shareDifference({ hits: 0, tries: 0 }, { hits: 3, tries: 4 })).toEqual(all);
    expect(shareDifference({ hits: 3, tries: 4 }, { hits: 0, tries: 0 })).toEqual(all);
  });

  it.each([
    [8, 8],
    [12, 30],
    [40, 25],
  ])('holds the truth in about 95 of 100 records of %i and %i tries, every outcome counted', (n1, n2) => {
    const shares = [0.03, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 0.97];
    const intervals = Array.from({ length: n1 + 1 }, (_, h1) =>
      Array.from({ length: n2 + 1 }, (_, h2) =>
        shareDifference({ hits: h1, tries: n1 }, { hits: h2, tries: n2 }),
      ),
    );
    let sum = 0;
    let least = 1;
    for (const p1 of shares)
      for (const p2 of shares) {
        let covered = 0;
        intervals.forEach((row, h1) => {
          const chance = jStat.binomial.pdf(h1, n1, p1);
          row.forEach(({ low, high }, h2) => {
            if (low <= p2 - p1 && p2 - p1 <= high) covered += chance * jStat.binomial.pdf(h2, n2, p2);
          });
        });
        sum += covered;
        least = Math.min(least, covered);
      }
    // Newcombe's own: 96.0% on average, never under 86.7% for 5 to 50 tries (memory). A point and a half for our few places.
    expect(sum / shares.length ** 2).toBeGreaterThan(0.945);
    expect(sum / shares.length ** 2).toBeLessThan(0.975);
    expect(least).toBeGreaterThan(0.867);
  });

  it('holds the truth as often when putts are played', () => {
    const random = seededRandom('two months');
    const play = (share: number, tries: number): { hits: number; tries: number } => {
      let hits = 0;
      for (let putt = 0; putt < tries; putt++) if (random() < share) hits++;
      return { hits, tries };
    };
    const runs = 3000;
    let covered = 0;
    for (let run = 0; run < runs; run++) {
      const [p1, p2] = [random(), random()];
      const { low, high } = shareDifference(play(p1, 24), play(p2, 40));
      if (low <= p2 - p1 && p2 - p1 <= high) covered++;
    }
    // Counting error 0.4 points; three below 95, two points of care above.
    expect(covered / runs).toBeGreaterThan(0.938);
    expect(covered / runs).toBeLessThan(0.975);
  });
});
