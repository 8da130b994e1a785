/** What errors cost, in words: sentences for figures made by hand. */
import { describe, expect, it } from 'vitest';
import {
  type ComparedSteps,
  ENGINE_ERROR,
  type FirmerRow,
  feetToMetres,
  type Interval,
  inchesToMetres,
  type RoundCosts,
  type StepCost,
  type StepId,
} from '../../../sim/index.ts';
import { isClear } from '../../../src/state/costs/answer.ts';
import {
  comparedWords,
  costHeadline,
  dieWords,
  firmerWords,
  honest,
  lostInterval,
  lostWords,
  mixWords,
  olderCostWords,
  partWords,
  savedWords,
  whoseWords,
} from '../../../src/text/costs.ts';

const exactly = (value: number): Interval => ({ value, low: value, high: value });
const step = (id: StepId, value: number, low = value, high = value): StepCost => ({
  step: id,
  saved: { value, low, high },
  byBand: [],
});

const CLEAR = { clear: true, chance: 1, players: 1 };

describe('the answer', () => {
  it('names the cause, the step, strokes a round and their range', () => {
    expect(costHeadline([step('readShare', 0.4, 0.2, 0.6), step('lineTenth', 0.1)], CLEAR)).toBe(
      'Your reading costs you most: slope and green speed misread 10% less would save 0.40 strokes a round (0.20 to 0.60).',
    );
  });

  it('names two when they cannot be told apart, and none when nothing clearly saves', () => {
    expect(costHeadline([step('pacePoint', 0.31), step('lineTenth', 0.3)], { ...CLEAR, clear: false })).toBe(
      'Your pace and your start line cost you about alike: a pace off by 1 point of the distance less would save 0.31 strokes a round (0.29 to 0.33), a start line off by 0.1° less 0.30 strokes a round (0.28 to 0.32).',
    );
    expect(costHeadline([step('pacePoint', 0.31, -0.1, 0.7), step('lineTenth', 0.1, 0, 0.2)], CLEAR)).toMatch(
      /^None/,
    );
  });

  it('of many likely players says which of two with what chance, and never that it is certain', () => {
    const two = [step('pacePoint', 0.31, 0.1, 0.5), step('lineTenth', 0.3, 0.2, 0.4)];
    expect(costHeadline(two, { clear: false, chance: 0.55, players: 200 })).toBe(
      'Your pace or your start line costs you most, your pace with a chance of 55%: a pace off by 1 point of the distance less would save 0.31 strokes a round (0.10 to 0.50), a start line off by 0.1° less 0.30 strokes a round (0.20 to 0.40).',
    );
    expect(
      comparedWords(
        {
          first: 'paceShare',
          second: 'lineHalf',
          more: { value: 0.5, low: 0.3, high: 0.8 },
          chance: 1,
          players: 200,
        },
        true,
      ),
    ).toMatch(/with a chance of over 99%\.$/);
  });

  it('does not say that none saves where the likeliest to is in doubt and another is not', () => {
    const doubtful = [step('readHabit', 0.4, -0.1, 1.5), step('lineTenth', 0.3, 0.2, 0.4)];
    expect(costHeadline(doubtful, { clear: false, chance: 0.6, players: 200 })).toMatch(
      /^Your habit of reading or your start line costs you most, .* 60%: .*\(−0\.10 to 1\.50\), .*\(0\.20 to 0\.40\)\.$/,
    );
  });

  it('says whose errors they are, and what the ranges hold', () => {
    const fit = { source: 'own', day: '2026-11-26', answer: { putts: 300, practicePutts: 12 } } as const;
    expect(whoseWords(undefined, 1)).toMatch(/your errors are taken as they stand/);
    expect(olderCostWords(undefined, true)).toBe('Of your errors as they were before.');
    expect(olderCostWords(5, false)).toMatch(
      /^So far of the middle one of 5 players you may be; .* widen\.$/,
    );
    expect(whoseWords(fit, 200)).toMatch(
      /95 in 100 of 200 players .* from 312 recorded putts, fitted on Nov 26, 2026\./,
    );
    expect(whoseWords({ ...fit, source: 'demo' }, 200)).toMatch(/the invented player’s record/);
  });

  it('gives a part of it the range of the players, and none with one player', () => {
    expect(partWords(exactly(0.2))).toBe('0.20');
    expect(partWords({ value: 0.2, low: -0.1, high: 0.3 })).toBe('0.20 (−0.10 to 0.30)');
    const loss = { value: 25, low: 24.5, high: 26 };
    expect(lostInterval({ band: { from: 0, to: 1 }, holes: 1, putts: loss, benchmark: 24 })).toEqual({
      value: 1,
      low: 0.5,
      high: 2,
    });
  });

  it('says where putts are lost, clearly only where all of the range is a loss', () => {
    const lost = (low: number, high: number, value = (low + high) / 2): RoundCosts => ({
      mix: { first: [], holes: 0, own: 0 },
      putts: { value: 31 + value, low: 31 + low, high: 31 + high },
      bands: [
        {
          band: { from: 0, to: feetToMetres(6) },
          holes: 18,
          putts: { value: 31 + value, low: 31 + low, high: 31 + high },
          benchmark: 31,
        },
      ],
      steps: [],
    });
    expect(lostWords(lost(0.5, 0.9), 'Scratch', 'imperial')).toBe(
      '31.7 (31.5 to 31.9) putts on 18 holes, 0.70 (0.50 to 0.90) more than Scratch takes from there; most is lost under 6 ft: 0.70 (0.50 to 0.90).',
    );
    expect(lostWords(lost(-0.3, 0.5), 'Scratch', 'imperial')).toMatch(
      /nowhere clearly more than Scratch takes from there; if anywhere, under 6 ft: 0\.10 \(−0\.30 to 0\.50\)\.$/,
    );
    expect(lostWords(lost(-0.4, -0.4), 'Scratch', 'imperial')).toBe(
      '30.6 putts on 18 holes: nowhere more than Scratch takes from there.',
    );
  });

  it('never gives a range narrower than what the engine may be off, but for nothing at all', () => {
    expect(honest(exactly(0.3))).toEqual({ value: 0.3, low: 0.3 - ENGINE_ERROR, high: 0.3 + ENGINE_ERROR });
    expect(savedWords(exactly(0))).toBe('0.00');
    expect(savedWords({ value: 0.1, low: -0.2, high: 0.4 })).toBe('0.10 (−0.20 to 0.40)');
  });

  it('says whose first putts they are', () => {
    expect(mixWords({ first: [], holes: 0, own: 0 }, false)).toMatch(/no hole is recorded yet/);
    expect(mixWords({ first: [], holes: 36, own: 0.4 }, false)).toBe(
      'First putts: your own from 36 holes make 40% of the mix; a stated mix (common practice, no source) the rest, until 90 holes are recorded.',
    );
    expect(mixWords({ first: [], holes: 180, own: 1 }, true)).toBe(
      'First putts: the invented player’s, from 180 holes.',
    );
  });
});

describe('one step against another', () => {
  const compared = (more: Interval, chance: number, players = 1): ComparedSteps => ({
    first: 'paceShare',
    second: 'lineHalf',
    more,
    chance,
    players,
  });

  it('is yes or no with strokes, range and chance, read from the first step', () => {
    expect(comparedWords(compared({ value: -1.1, low: -1.4, high: -0.7 }, 0.01, 200), true)).toBe(
      'No: pace 10% better saves 1.10 strokes a round less than a start line off by half a degree less (0.70 to 1.40), with a chance of 99%.',
    );
    expect(comparedWords(compared(exactly(0.5), 1), true)).toBe(
      'Yes: pace 10% better saves 0.50 strokes a round more than a start line off by half a degree less (0.48 to 0.52).',
    );
  });

  it('is clear only beyond the engine’s own error and beyond one chance in twenty', () => {
    expect(isClear(compared(exactly(0.5), 1))).toBe(true);
    expect(isClear(compared(exactly(ENGINE_ERROR / 2), 1))).toBe(false);
    expect(isClear(compared({ value: 0.5, low: -0.1, high: 1 }, 0.9, 50))).toBe(false);
    expect(isClear(compared({ value: -0.5, low: -1, high: -0.1 }, 0.01, 50))).toBe(true);
    expect(comparedWords(compared({ value: 0.1, low: -0.3, high: 0.5 }, 0.6, 50), false)).toMatch(
      /^Cannot tell: .* differ by 0\.10 strokes a round \(−0\.30 to 0\.50\), with a chance of 60%\.$/,
    );
  });
});

describe('“hit them firmer”', () => {
  const row = (feet: number, direction: FirmerRow['direction'], firm: number, die = -0.05): FirmerRow => {
    const figures = (inches: number) => ({
      pace: inchesToMetres(inches),
      holed: 0.5,
      threePutt: 0.01,
      expectedPutts: 1.5,
    });
    return {
      length: feetToMetres(feet),
      slope: 0.02,
      direction,
      paces: { die: figures(6), usual: figures(17), firm: figures(30) },
      firm: exactly(firm),
      die: exactly(die),
      chance: firm > 0 ? 1 : 0,
      verdict: firm > 0 ? 'gains' : 'costs',
      on: undefined,
    };
  };

  it('says where it holds and where it costs most, with putts', () => {
    const rows = [
      row(5, 'uphill', 0.02),
      row(8, 'uphill', 0.01),
      row(15, 'sidehill', -0.03),
      row(5, 'any', 0.5),
    ];
    expect(firmerWords(rows, 'imperial')).toBe(
      'Firmer (30 in past in the place of 17 in) holds for you uphill from 5 ft to 8 ft on 2% (up to 0.02 putts). Elsewhere it costs most from 15 ft sidehill on 2%: 0.03 putts.',
    );
  });

  it('says that it holds nowhere, and between what it costs', () => {
    expect(firmerWords([row(5, 'uphill', -0.02), row(12, 'downhill', -0.09)], 'imperial')).toBe(
      'Firmer (30 in past in the place of 17 in) holds for you nowhere here: it costs from 0.02 putts (5 ft uphill on 2%) to 0.09 (12 ft downhill on 2%).',
    );
    expect(firmerWords([], 'imperial')).toMatch(/too steep/);
  });

  it('gives the range of many likely players with every size, as a cost where it costs', () => {
    const wide = (from: FirmerRow, low: number, high: number): FirmerRow => ({
      ...from,
      firm: { value: from.firm.value, low, high },
    });
    const [gain, cost] = [
      wide(row(5, 'uphill', 0.02), 0.01, 0.03),
      wide(row(8, 'downhill', -0.09), -0.12, -0.07),
    ];
    expect(firmerWords([gain, cost], 'imperial')).toMatch(
      /\(up to 0\.02 putts; 0\.01 to 0\.03\)\. Elsewhere it costs most from 8 ft downhill on 2%: 0\.09 \(0\.07 to 0\.12\) putts\.$/,
    );
    expect(firmerWords([cost], 'imperial')).toMatch(/0\.09 putts \(8 ft downhill on 2%; 0\.07 to 0\.12\)/);
  });

  it('says the same of dying it in', () => {
    expect(dieWords([row(5, 'uphill', -0.02, -0.08), row(20, 'uphill', -0.02, 0.01)], 'imperial')).toBe(
      'Dying it in (6 in) gains most from 20 ft uphill on 2%: 0.01 putts; it costs most from 5 ft uphill on 2%: 0.08.',
    );
  });
});
