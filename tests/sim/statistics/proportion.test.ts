/** Intervals of a share: the printed table, an independent library, laws, and coverage by counting every outcome. */
import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { proportionInterval, seededRandom } from '../../../sim/index.ts';

describe('the interval of a share', () => {
  it.each([
    // Brown, Cai & DasGupta 2001, table 5, 95% limits of the modified Jeffreys interval (memory).
    [0, 7, 0, 0.41],
    [1, 7, 0, 0.501],
    [2, 7, 0.065, 0.648],
    [3, 7, 0.139, 0.766],
    [0, 8, 0, 0.369],
    [2, 8, 0.056, 0.592],
    [4, 8, 0.199, 0.801],
    [0, 10, 0, 0.308],
    [1, 10, 0, 0.381],
    [2, 10, 0.044, 0.503],
    [3, 10, 0.093, 0.606],
    [4, 10, 0.153, 0.696],
    [5, 10, 0.224, 0.776],
  ])('of %i in %i is the printed one, %f to %f', (hits, tries, low, high) => {
    const { low: ours, high: oursHigh } = proportionInterval(hits, tries);
    // Printed to three figures; a little more than half a unit, because 0.30850 may be printed either way.
    expect(Math.abs(ours - low)).toBeLessThan(0.00051);
    expect(Math.abs(oursHigh - high)).toBeLessThan(0.00051);
  });

  it('is between the quantiles of the beta distribution that jstat gives', () => {
    for (const tries of [4, 9, 37, 250, 5000])
      for (const share of [0.3, 0.5, 0.62, 0.74]) {
        const hits = Math.max(2, Math.min(tries - 2, Math.round(share * tries)));
        const { low, high } = proportionInterval(hits, tries, 0.9);
        // jstat's quantile is good to about 6e-8 (its type stub).
        expect(Math.abs(low - jStat.beta.inv(0.05, hits + 0.5, tries - hits + 0.5))).toBeLessThan(2e-7);
        expect(Math.abs(high - jStat.beta.inv(0.95, hits + 0.5, tries - hits + 0.5))).toBeLessThan(2e-7);
      }
  });

  it('without hits reaches as far as a share that would give none in one record of forty', () => {
    // (1 - p)^n = 0.025, the definition of the end in Brown, Cai & DasGupta.
    for (const tries of [1, 6, 40, 1000])
      expect((1 - proportionInterval(0, tries).high) ** tries).toBeCloseTo(0.025, 12);
  });

  it('is everything without tries, and has no value then', () => {
    expect(proportionInterval(0, 0)).toEqual({ value: undefined, low: 0, high: 1, hits: 0, tries: 0 });
  });

  it('is the mirror image when misses are counted, holds its value, rises with hits and widens with confidence', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 300 }), fc.nat(), (tries, any) => {
        const hits = any % tries;
        const here = proportionInterval(hits, tries);
        const mirrored = proportionInterval(tries - hits, tries);
        expect(1 - mirrored.high).toBeCloseTo(here.low, 12);
        expect(here.low).toBeLessThanOrEqual(hits / tries);
        expect(here.high).toBeGreaterThanOrEqual(hits / tries);
        const next = proportionInterval(hits + 1, tries);
        expect(next.low).toBeGreaterThanOrEqual(here.low);
        expect(next.high).toBeGreaterThanOrEqual(here.high);
        const wider = proportionInterval(hits, tries, 0.99);
        expect(wider.low).toBeLessThanOrEqual(here.low);
        expect(wider.high).toBeGreaterThanOrEqual(here.high);
      }),
      { seed: 30, numRuns: 200 },
    );
  });

  it.each([5, 10, 20, 50, 100])(
    'holds the truth in about 95 of 100 records of %i tries, every outcome counted',
    (tries) => {
      const intervals = Array.from({ length: tries + 1 }, (_, hits) => proportionInterval(hits, tries));
      let sum = 0;
      let least = 1;
      const places = 500;
      for (let i = 0; i < places; i++) {
        const truth = (i + 0.5) / places;
        let covered = 0;
        intervals.forEach(({ low, high }, hits) => {
          if (low <= truth && truth <= high) covered += jStat.binomial.pdf(hits, tries, truth);
        });
        sum += covered;
        least = Math.min(least, covered);
      }
      // MODEL.md section 5: on average 95 to 97.5%, nowhere under 89% (10 tries).
      expect(sum / places).toBeGreaterThan(0.95);
      expect(sum / places).toBeLessThan(0.977);
      expect(least).toBeGreaterThan(0.89);
    },
  );

  it('holds the truth as often when putts are played', () => {
    const random = seededRandom('share holed');
    const runs = 4000;
    let covered = 0;
    for (let run = 0; run < runs; run++) {
      const truth = random();
      let hits = 0;
      for (let putt = 0; putt < 18; putt++) if (random() < truth) hits++;
      const { low, high } = proportionInterval(hits, 18);
      if (low <= truth && truth <= high) covered++;
    }
    // Counting error of 4000 runs is 0.33 points: three of them below 95, and 97.7 as above.
    expect(covered / runs).toBeGreaterThan(0.94);
    expect(covered / runs).toBeLessThan(0.977);
  });
});
