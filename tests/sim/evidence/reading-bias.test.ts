/** The reading bias: recovery and coverage by people whose days differ, edge cases, laws. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offOf, readingBias } from '../../../sim/evidence/reading-bias.ts';
import { readsBy } from '../../support/sloppyReader.ts';

const onMonday = (pairs: readonly { trueAim: number; aim: number }[]) =>
  pairs.map((pair) => ({ ...pair, day: 'monday' }));

describe('the reading bias', () => {
  it('finds the bias that was put in', () => {
    const bias = readingBias(readsBy({ bias: -0.25, spread: 0.2, daySd: 0.1 }, 400, 'recover'));
    // Standard error of 400 days 0.1/20 and of some 3500 reads 0.2/59: 0.006; three of them.
    expect(Math.abs((bias?.value ?? 0) + 0.25)).toBeLessThan(0.018);
    expect(bias?.verdict).toBe('tooLittle');
    expect(bias?.days).toBe(400);
  });

  it.each([2, 3, 6, 12, 30])(
    'covers the truth of 400 people whose days differ by 0 to 20%%, after %i days',
    (days) => {
      let covered = 0;
      for (let person = 0; person < 400; person++) {
        const reader = { bias: -0.2, spread: [0.2, 0.35, 0.55][person % 3], daySd: 0.05 * (person % 5) };
        const bias = readingBias(readsBy(reader, days, `cover ${days} ${person}`));
        if (bias !== undefined && bias.low <= -0.2 && bias.high >= -0.2) covered++;
      }
      // 95%, counting error of 400 is 1.1 points: three of them, and above a point and a half for what is thought of few days beforehand.
      expect(covered / 400).toBeGreaterThan(0.917);
      expect(covered / 400).toBeLessThanOrEqual(0.995);
    },
  );

  it('after one day is as wide as days may differ, however many the reads', () => {
    const [few, many] = [20, 2000].map((count) =>
      readingBias(
        onMonday(
          Array.from({ length: count }, (_, i) => ({ trueAim: 0.3, aim: 0.27 + (i % 2 ? 0.03 : -0.03) })),
        ),
      ),
    );
    if (few === undefined || many === undefined) throw new Error('there are reads');
    // A day of SD tau, tau half-normal with SD 0.2 and at most 0.6: 95% of such days lie within 0.43 (numerically, by 10^6 draws
    // of |z1| 0.2 z2: 0.438; cut at three SDs of tau: 0.43).
    expect(Math.abs((many.high - many.low) / 2 - 0.435)).toBeLessThan(0.01);
    expect(few.high - few.low).toBeGreaterThan(many.high - many.low);
    expect(many.days).toBe(1);
    expect(many.verdict).toBe('tooFew');
  });

  it('is hardly moved by a miss on a nearly straight putt', () => {
    const steady = [0.2, -0.3, 0.4, -0.25, 0.3].map((trueAim) => ({ trueAim, aim: 0.9 * trueAim }));
    // Half an inch off where the break is a tenth of an inch: a ratio of five.
    const bias = readingBias(onMonday([...steady, { trueAim: 0.0025, aim: 0.0152 }]));
    expect(Math.abs((bias?.value ?? 0) + 0.1)).toBeLessThan(0.01);
  });

  it('says nothing about straight putts alone, has no margin for one read, and never gives a verdict on three', () => {
    expect(readingBias([{ trueAim: 0, aim: 0.1, day: 'monday' }])).toBeUndefined();
    expect(readingBias([])).toBeUndefined();
    expect(readingBias([{ trueAim: 0.3, aim: 0.27, day: 'monday' }])?.high).toBe(Number.POSITIVE_INFINITY);
    const three = [0.2, 0.3, 0.4].map((trueAim, day) => ({ trueAim, aim: 0.7 * trueAim, day: `${day}` }));
    expect(readingBias(three)?.verdict).toBe('tooFew');
  });

  it('takes a wrong sign for twice too little and no more', () => {
    expect(offOf({ trueAim: 0.02, aim: -0.5 }).share).toBe(-2);
    expect(offOf({ trueAim: -0.02, aim: -0.5 }).share).toBe(2);
  });

  it('does not care which side a putt breaks', () => {
    const pair = fc.record({
      trueAim: fc.double({ min: 0.01, max: 1, noNaN: true }),
      aim: fc.double({ min: -1, max: 1, noNaN: true }),
      day: fc.constantFrom('monday', 'tuesday', 'sunday'),
    });
    fc.assert(
      fc.property(fc.array(pair, { minLength: 2, maxLength: 10 }), (pairs) => {
        const mirrored = pairs.map(({ trueAim, aim, day }, i) =>
          i % 2 ? { trueAim, aim, day } : { trueAim: -trueAim, aim: -aim, day },
        );
        expect(readingBias(mirrored)).toEqual(readingBias(pairs));
      }),
      { seed: 21, numRuns: 40 },
    );
  });
});
