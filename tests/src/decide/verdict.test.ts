/** The sentence. Inputs are made-up odds; expected words follow from their differences by hand. */
import { describe, expect, it } from 'vitest';
import type { Odds } from '../../../sim/index.ts';
import {
  choiceOf,
  formatWorth,
  verdictDetail,
  verdictHeadline,
  verdictMargin,
  verdictQuestion,
} from '../../../src/text/verdict.ts';
import type { SensitivityCase } from '../../../src/worker/messages.ts';

const odds = (changes: Partial<Odds>): Odds => ({
  status: 'ok',
  holed: 0.27,
  short: 0.1,
  high: 0.3,
  low: 0.33,
  lippedOut: 0,
  threePutt: 0.01,
  expectedPutts: 1.75,
  leaveMedian: 0.3556,
  leaveP10: 0.1,
  leaveP90: 0.8,
  ...changes,
});

const cases = (slower: number, faster: number, gentler: number, steeper: number): SensitivityCase[] =>
  [
    ['slower', slower] as const,
    ['faster', faster] as const,
    ['gentler', gentler] as const,
    ['steeper', steeper] as const,
  ].map(([name, difference]) => ({ name, difference, dieAim: 0, firmAim: 0 }));

describe('the headline', () => {
  it('says die when firm takes 0.04 putts more', () => {
    expect(verdictHeadline(odds({}), odds({ expectedPutts: 1.79 }))).toBe(
      'Die it in here: 0.04 putts better than firm.',
    );
  });
  it('says firm when dying it in takes more', () => {
    expect(verdictHeadline(odds({ expectedPutts: 1.82 }), odds({}))).toBe(
      'Firm it in here: 0.07 putts better than dying it in.',
    );
  });
  it('refuses to choose over less than one putt in two hundred', () => {
    expect(verdictHeadline(odds({}), odds({ expectedPutts: 1.7541 }))).toContain(
      'no difference worth having',
    );
    expect(choiceOf(0.0049)).toBe('neither');
    expect(choiceOf(-0.0051)).toBe('firm');
  });
});

describe('the detail', () => {
  it('names both shares, both leaves and both three-putt shares with units', () => {
    const words = verdictDetail(
      odds({}),
      odds({ holed: 0.28, leaveMedian: 0.7874, threePutt: 0.06 }),
      'imperial',
    );
    expect(words).toContain('about as often (27% and 28%)');
    expect(words).toContain('14 in');
    expect(words).toContain('31 in');
    expect(words).toContain('1.0% and 6.0%');
  });
});

describe('the words before and beside the sentence', () => {
  it('say what dying it in and firm mean, in the units in use', () => {
    expect(verdictQuestion(0.1524, 0.762, 'imperial')).toBe(
      'Die it in (stop 6 in past, if it misses) or firm (30 in past)?',
    );
    expect(verdictQuestion(0.15, 0.75, 'metric')).toContain('15 cm past');
  });
  it('name the pace that is worth more, and by how many putts', () => {
    expect(formatWorth(0.043)).toBe('die 0.04');
    expect(formatWorth(-0.052)).toBe('firm 0.05');
    expect(formatWorth(0.004)).toBe('no difference');
  });
  it('name the pace with fewest putts where it is known', () => {
    const best = { pace: 0.508, odds: odds({ expectedPutts: 1.63 }) };
    expect(verdictDetail(odds({}), odds({}), 'imperial', best)).toContain(
      'Fewest putts: 1.63, stopping 20 in past.',
    );
  });
});

describe('the margin', () => {
  const asked = { difference: 0.04, greenSpeed: 3.048, slope: 0.02 };
  it('says the answer holds, with its range, when no case changes it', () => {
    const words = verdictMargin({ ...asked, cases: cases(0.02, 0.06, 0.03, 0.05) });
    expect(words).toContain('Holds');
    expect(words).toContain('die over firm +0.02 to +0.06 putts');
  });
  it('names the condition that changes the answer', () => {
    const words = verdictMargin({ ...asked, cases: cases(-0.01, 0.06, 0.03, 0.05) });
    expect(words).toContain('The answer changes at green speed 9 ft: firm');
    expect(words).toContain('−0.01 to +0.06');
  });
  it('says that the ground may fall the other way when it is nearly level', () => {
    const words = verdictMargin({ ...asked, slope: 0.002, cases: cases(0.02, 0.06, -0.03, 0.05) });
    expect(words).toContain('at 0.3% slope the other way: firm');
  });
  it('names a condition in which a pace has no line', () => {
    const words = verdictMargin({
      ...asked,
      cases: [
        ...cases(0.02, 0.06, 0.03, 0.05).slice(0, 3),
        { name: 'steeper', difference: undefined, dieAim: undefined, firmAim: undefined },
      ],
    });
    expect(words).toContain('No line for one of the paces at 2.5% slope');
  });
});
