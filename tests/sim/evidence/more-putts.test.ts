/** How many putts would tell: a textbook's worked example, the exact power of the test, and the bookkeeping. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { triesByNormal, triesToTell } from '../../../sim/evidence/more-putts.ts';
import { morePutts } from '../../../sim/index.ts';
import { zFactor } from '../../../sim/maths/student-t.ts';

/** Chance that an exact two-sided binomial test at 5% (2.5% in each tail) finds `truth` where `expected` is supposed. */
function exactPower(tries: number, expected: number, truth: number): number {
  let found = 0;
  for (let hits = 0; hits <= tries; hits++) {
    const atMost = jStat.binomial.cdf(hits, tries, expected);
    const atLeast = 1 - (hits === 0 ? 0 : jStat.binomial.cdf(hits - 1, tries, expected));
    if (Math.min(atMost, atLeast) <= 0.025) found += jStat.binomial.pdf(hits, tries, truth);
  }
  return found;
}

describe('the number of putts that would tell', () => {
  it('is the number of a textbook example', () => {
    // Rosner, Fundamentals of Biostatistics, one-sample binomial test: 2% against 5%, two-sided 5%, power 90%: 341 (memory).
    expect(Math.ceil(triesByNormal(0.02, 0.05, { power: 0.9 }))).toBe(341);
  });

  it.each([
    [0.18, 0.12],
    [0.18, 0.24],
    [0.5, 1 / 3],
    [0.8, 0.6],
    [0.1, 0.0667],
  ])('finds %f against %f with a chance near 80 percent by the exact test', (expected, other) => {
    const tries = triesToTell(expected, other);
    // One try more can lower the power of the exact test by several points, when the count that tells moves by one putt: the formula
    // speaks of the mean over such steps, here over a tenth of the tries either way. Two points below, four above for rounding up.
    const aside = Math.round(tries / 10);
    const near = Array.from({ length: 2 * aside + 1 }, (_, i) =>
      exactPower(tries - aside + i, expected, other),
    );
    const mean = near.reduce((sum, power) => sum + power, 0) / near.length;
    expect(mean).toBeGreaterThan(0.78);
    expect(mean).toBeLessThan(0.84);
    expect(exactPower(Math.floor(tries / 2), expected, other)).toBeLessThan(0.65);
  });

  it('takes the harder of a third fewer and a third more, less what is there, in rounds', () => {
    const answer = morePutts({ expectedShare: 0.18, alreadyHad: 6, perRound: 6 });
    const needed = Math.max(triesToTell(0.18, 0.12), triesToTell(0.18, 0.24));
    expect(answer?.fewerShare).toBeCloseTo(0.12, 12);
    expect(answer?.moreShare).toBeCloseTo(0.24, 12);
    expect(answer).toMatchObject({ needed, more: needed - 6, rounds: Math.ceil((needed - 6) / 6) });
  });

  it('looks only for fewer where a third more would be everything', () => {
    const answer = morePutts({ expectedShare: 0.9 });
    expect(answer).toMatchObject({ moreShare: undefined, rounds: undefined, needed: triesToTell(0.9, 0.6) });
  });

  it('asks for no more than there are, and for nothing where nothing can be told', () => {
    expect(morePutts({ expectedShare: 0.5, alreadyHad: 100_000, perRound: 4 })).toMatchObject({
      more: 0,
      rounds: 0,
    });
    expect(morePutts({ expectedShare: 0 })).toBeUndefined();
    expect(morePutts({ expectedShare: 1 })).toBeUndefined();
  });

  it('needs four times as many for half the departure, nearly', () => {
    const [third, sixth] = [1 / 3, 1 / 6].map(
      (departure) => morePutts({ expectedShare: 0.3, departure })?.needed ?? 0,
    );
    // Only the spread at the other share differs, by a tenth.
    expect(sixth / third).toBeGreaterThan(3.6);
    expect(sixth / third).toBeLessThan(4.4);
  });
});

describe('the normal factor', () => {
  it('is the printed one', () => {
    // Any table of the normal distribution.
    expect(zFactor(0.95)).toBeCloseTo(1.959963984540054, 10);
    expect(zFactor(0.99)).toBeCloseTo(2.5758293035489, 10);
    expect(zFactor(0.6)).toBeCloseTo(0.8416212335729143, 10);
  });
});
