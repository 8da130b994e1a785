/** The review in words: bands, margins, refusals. What is expected is written by hand from the counts beside it. */
import { describe, expect, it } from 'vitest';
import { feetToMetres, judgeLean, proportionInterval } from '../../../sim/index.ts';
import { daysOf, EVERYTHING, monthsBefore } from '../../../src/screens/review/filter.ts';
import { takenWords } from '../../../src/screens/review/gainedWords.ts';
import { leanWords } from '../../../src/screens/review/missesWords.ts';
import { bandSentence, moreWords, verdictWords } from '../../../src/screens/review/roundWords.ts';
import { newestThird } from '../../../src/screens/review/trend.ts';
import {
  bandWords,
  formatPoints,
  formatSigned,
  leftOutWords,
  periodWords,
  rangeWords,
  remainingWords,
  shareWords,
  signedRange,
} from '../../../src/text/phrases.ts';

const feet = (from: number, to: number) => ({ from: feetToMetres(from), to: feetToMetres(to) });

describe('bands', () => {
  it('are from x to y, in whole numbers of the unit, never at', () => {
    expect(bandWords(feet(3, 6), 'imperial')).toBe('from 3 to 6 ft');
    expect(bandWords(feet(0, 3), 'imperial')).toBe('under 3 ft');
    const open = { from: feetToMetres(40), to: Number.POSITIVE_INFINITY };
    expect(bandWords(open, 'imperial')).toBe('from 40 ft on');
    expect(bandWords({ from: 3, to: 4.5 }, 'metric')).toBe('from 3 to 4.5 m');
  });
});

describe('numbers', () => {
  it('come with their margin', () => {
    // Jeffreys' interval of 5 of 10: 0.224 to 0.776 (Brown, Cai & DasGupta 2001, table; memory).
    expect(shareWords(proportionInterval(5, 10))).toBe('50% (22 to 78%)');
    expect(shareWords(proportionInterval(0, 0))).toBe('nothing to count');
    expect(rangeWords(0, 0.035)).toBe('0 to 3.5%');
    expect(formatSigned(-1.104)).toBe('−1.10');
    expect(formatSigned(-0.001)).toBe('0.00');
    expect(formatPoints(0.032)).toBe('+3.2');
    expect(signedRange(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, formatSigned)).toBe(
      'no margin from so few rounds',
    );
  });

  it('say how many putts remain, and what stays out', () => {
    expect(remainingWords(610, 12870)).toBe('610 putts of 12,870 pass these filters.');
    expect(remainingWords(1, 9)).toBe('1 putt of 9 passes these filters.');
    expect(remainingWords(9, 9)).toBe('All 9 putts of your record.');
    expect(leftOutWords({ carpetPutts: 0, unreadable: 0 })).toBeUndefined();
    expect(leftOutWords({ carpetPutts: 20, unreadable: 1 })).toBe(
      '20 practice putts on carpet stay out; 1 record could not be read and stays as it is.',
    );
  });
});

describe('days', () => {
  it('go back three months to the same day, or to that month’s last', () => {
    expect(monthsBefore('2026-05-31', 3)).toBe('2026-02-28');
    expect(monthsBefore('2026-02-10', 3)).toBe('2025-11-10');
    expect(daysOf({ ...EVERYTHING, dates: 'year' }, '2026-05-31')).toEqual({
      from: '2026-01-01',
      to: '2026-12-31',
    });
    expect(daysOf({ ...EVERYTHING, dates: 'own', from: '', to: '2026-01-02' }, '2026-05-31')).toEqual({
      to: '2026-01-02',
    });
  });

  it('of the newest third begin after the rest end, rounds of one day together', () => {
    expect(newestThird(['2026-01-01', '2026-01-05', '2026-01-05'])).toEqual({
      before: { from: '2026-01-01', to: '2026-01-04' },
      after: { from: '2026-01-05', to: '2026-01-05' },
    });
    expect(newestThird(['2026-01-01', '2026-01-01'])).toBeUndefined();
    expect(newestThird([])).toBeUndefined();
    expect(periodWords({ from: '', to: '' })).toBe('all days');
  });
});

describe('leans', () => {
  it('of six low misses of six are not concluded from', () => {
    expect(leanWords('highLow', judgeLean({ first: 0, second: 6 }, { looks: 3 }))).toBe(
      '6 of 6 misses low: fewer than 12, so nothing to conclude.',
    );
  });

  it('are told with the chance that an even coin does it, all looks counted', () => {
    // 2 x 0.5^20 x 3 looks is far below a thousandth. Interval of 20 of 20: from 0.025^(1/20) = 83.2%.
    expect(leanWords('highLow', judgeLean({ first: 0, second: 20 }, { looks: 3 }))).toBe(
      '20 of 20 misses low (100%, 83 to 100%): a lean. An even coin does that under 0.1% of the time, all looks counted.',
    );
    expect(leanWords('shortPast', judgeLean({ first: 9, second: 13 }, { looks: 3 }))).toMatch(
      /^13 of 22 misses past \(59%, \d+ to \d+%\): no more of a lean than chance makes\.$/,
    );
  });
});

describe('a round', () => {
  const beside = { mean: 1.1, sd: 0.9, low: 0, high: 3, soFew: 0.31, soMany: 1, none: 0.31 };
  const six = {
    band: feet(12, 20),
    tries: 6,
    holed: 0,
    byPlayer: beside,
    byBenchmark: beside,
    chance: 0.62,
    correctedChance: 1,
    verdict: 'nothingToConclude',
    morePutts: { needed: 344, more: 284, rounds: 48, fewerShare: 0.12, moreShare: 0.24 },
  } as const;

  it('is told with what a player like this one does, and six putts are too few', () => {
    expect(bandSentence(six, 'imperial')).toBe(
      'You holed 0 of 6 from 12 to 20 ft; a player like you holes none in such a set 31% of the time.',
    );
    expect(verdictWords(six)).toBe('6 putts: fewer than 12, nothing to conclude.');
    expect(moreWords(six)).toBe('284 more such putts, some 48 rounds.');
  });

  it('looks at the side on which the number lies', () => {
    const many = { ...six, holed: 3, byPlayer: { ...beside, soFew: 0.97, soMany: 0.09 } };
    expect(bandSentence(many, 'imperial')).toContain('holes 3 or more in such a set 9.0% of the time');
    const few = { ...six, holed: 1, byPlayer: { ...beside, mean: 2.2, soFew: 0.3 } };
    expect(bandSentence(few, 'imperial')).toContain('holes 1 or fewer in such a set 30% of the time');
  });

  it('of 31 putts is good or bad only beside where they began', () => {
    const taken = {
      holes: 18,
      putts: 31,
      expected: 32.4,
      sd: 1.9,
      low: 29,
      high: 36,
      soFew: 0.31,
      soMany: 0.83,
    };
    const rest = { gained: 1.4, leftOut: 0, name: 'Tour record (published)' };
    expect(takenWords({ taken, ...rest })).toBe(
      '31 putts on 18 holes: neither good nor bad; from those places the benchmark, Tour record (published), takes 32.4, and nine in ten of its rounds take 29 to 36: yours is one of them.',
    );
    expect(takenWords({ taken: { ...taken, soFew: 0.02 }, ...rest })).toContain(
      '31 putts on 18 holes: good;',
    );
    expect(takenWords({ taken: { ...taken, soMany: 0.02 }, ...rest })).toContain(
      'so many only 2.0% of the time',
    );
    expect(takenWords({ taken: undefined, ...rest, leftOut: 3 })).toContain(
      '3 putts of unknown end left out.',
    );
  });
});
