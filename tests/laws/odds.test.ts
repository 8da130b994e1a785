/** Laws of the odds: what must hold for any player. Seeds fixed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  comparePaces,
  degreesToRadians,
  feetToMetres,
  type Player,
  type Putt,
  planeSurface,
  prepareNextPutts,
} from '../../sim/index.ts';
import { sized } from '../support/size.ts';

const PACES = Array.from({ length: 15 }, (_, index) => 0.1 * (index + 1));
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const puttArbitrary: fc.Arbitrary<Putt> = fc
  .record({
    slope: between(0, 0.03),
    feet: between(8, 11),
    length: between(1, 6),
    bearing: between(0, 2 * Math.PI),
  })
  .map(({ slope, feet, length, bearing }) => ({
    surface: planeSurface({ slope, downhill: 0 }),
    greenSpeed: feetToMetres(feet),
    ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) },
    hole: { x: 0, y: 0 },
    capture: 'simple' as const,
  }));
const playerArbitrary: fc.Arbitrary<Player> = fc.record({
  lineSd: between(degreesToRadians(0.5), degreesToRadians(2)),
  paceSd: between(0.03, 0.15),
  slopeSd: between(0, 0.008),
  speedSd: between(0, 0.08),
  readBias: fc.constant(0),
  paceBias: fc.constant(0),
});

/** Each holed share is promised to 0.2 points: two of them, hence 0.4. */
const HOLED_SLACK = 0.004;

/** What is holed does not depend on the putts after: one table, of any green, serves where only that is asked. */
const ANY_TABLE = prepareNextPutts(
  {
    surface: planeSurface({ slope: 0, downhill: 0 }),
    greenSpeed: feetToMetres(10),
    ball: { x: 1, y: 0 },
    hole: { x: 0, y: 0 },
    capture: 'simple',
  },
  { lineSd: degreesToRadians(1), paceSd: 0.1, slopeSd: 0, speedSd: 0, readBias: 0, paceBias: 0 },
  { policy: 'fixed' },
);

const mostHoled = (putt: Putt, player: Player): number => {
  const { rows } = comparePaces(putt, PACES, player, ANY_TABLE, false);
  return Math.max(...rows.map(({ odds }) => odds?.holed ?? 0));
};

describe('the odds of a putt', () => {
  it('share out all putts: holed, short, high and low make one, and no putt takes fewer than one stroke', () => {
    fc.assert(
      fc.property(puttArbitrary, playerArbitrary, (putt, player) => {
        const { rows } = comparePaces(putt, [0.15, 0.75], player, prepareNextPutts(putt, player));
        for (const { odds } of rows) {
          if (!odds) throw new Error('expected a line on so gentle a slope');
          // A sum of four numbers: rounding only.
          expect(Math.abs(odds.holed + odds.short + odds.high + odds.low - 1)).toBeLessThan(1e-9);
          for (const share of [odds.holed, odds.short, odds.high, odds.low, odds.threePutt]) {
            expect(share).toBeGreaterThanOrEqual(0);
            expect(share).toBeLessThanOrEqual(1);
          }
          expect(odds.threePutt).toBeLessThanOrEqual(1 - odds.holed + 1e-9);
          // One putt each, one more for every miss, one more for every second miss: at least.
          expect(odds.expectedPutts).toBeGreaterThanOrEqual(1 + (1 - odds.holed) + odds.threePutt - 1e-9);
        }
      }),
      { seed: 301, numRuns: sized(4, 12) },
    );
  });

  it('never get worse from the best pace when one of the errors shrinks', () => {
    fc.assert(
      fc.property(
        puttArbitrary,
        playerArbitrary,
        fc.constantFrom('lineSd' as const, 'paceSd' as const, 'slopeSd' as const, 'speedSd' as const),
        between(0.3, 0.95),
        (putt, player, which, share) => {
          const better = { ...player, [which]: player[which] * share };
          expect(mostHoled(putt, better)).toBeGreaterThan(mostHoled(putt, player) - HOLED_SLACK);
        },
      ),
      { seed: 302, numRuns: sized(10, 20) },
    );
  });
});
