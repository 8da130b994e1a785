/** A player's errors in words: sentences for figures made by hand; what tells one record from another; where a chart puts things. */
import { describe, expect, it } from 'vitest';
import { degreesToRadians, ERRORS, startLine, type TapGain } from '../../../sim/index.ts';
import { placeErrors } from '../../../src/charts/errorsData.ts';
import { gapWords } from '../../../src/screens/errors/gapWords.ts';
import { digitsOf, passedOverBy } from '../../../src/screens/errors/question.ts';
import {
  allToldWords,
  bestTap,
  chanceWords,
  countedWords,
  errorRangeWords,
  errorSentence,
  errorsDetail,
  errorsHeadline,
  fitHint,
  fitName,
  grownWords,
  pairWords,
  passedOverWords,
  tapWords,
  toldWords,
} from '../../../src/text/errors.ts';
import {
  breakOfSlope,
  ERROR_HINTS,
  errorWords,
  PLAYER_ERRORS,
  typicalWords,
} from '../../../src/text/player.ts';
import { aFit, anError } from '../../support/aFit.ts';
import { recordedPutt } from '../../support/recordedPutts.ts';

const facts = (tooLittle: number, verdict: 'tooLittle' | 'tooMuch' | 'cannotTell', putts = 300) => ({
  readBias: { tooLittle, tooMuch: 1 - tooLittle, verdict },
  error: anError(verdict === 'tooMuch' ? 0.18 : -0.18, 0.12),
  putts,
  invented: false,
});

describe('an error', () => {
  it('is written in its unit, with its side where it has one', () => {
    expect(errorWords('lineSd', degreesToRadians(1.21))).toBe('1.21°');
    expect(errorWords('paceSd', 0.092)).toBe('9.2%');
    expect(errorWords('slopeSd', 0.0045)).toBe('0.45%');
    expect(errorWords('speedSd', 0.035)).toBe('3.5%');
    expect(errorWords('paceBias', -0.038)).toBe('3.8% short');
    expect(errorWords('readBias', 0.08)).toBe('8% too much');
    expect(errorWords('readBias', -0.001)).toBe('0%');
  });

  it('has a range that names a side once, smaller end first, or both sides', () => {
    expect(errorRangeWords('readBias', { low: -0.31, high: -0.06 })).toBe('6 to 31% too little');
    expect(errorRangeWords('paceBias', { low: 0.01, high: 0.045 })).toBe('1 to 4.5% long');
    expect(errorRangeWords('readBias', { low: -0.17, high: 0.09 })).toBe('17% too little to 9% too much');
    expect(errorRangeWords('readBias', { low: -0.17, high: 0.001 })).toBe('17% too little to 0%');
    expect(errorRangeWords('lineSd', { low: degreesToRadians(1.1), high: degreesToRadians(1.35) })).toBe(
      '1.10 to 1.35°',
    );
  });

  it('means something on the green, in the units of the page, and says how little the record tells', () => {
    const errors = {
      ...aFit().answer.errors,
      lineSd: anError(degreesToRadians(1), degreesToRadians(0.2), 0.05),
      paceBias: anError(0.01, 0.03, 0.4),
    };
    // tan 1 degree of 12 ft is 2.51 in, of 4 m 7.0 cm.
    expect(errorSentence('lineSd', errors, 'imperial')).toBe(
      'Two putts in three start within 1° of the aim, 2.5 in at 12 ft. The record says nothing yet of the error of start line.',
    );
    expect(errorSentence('lineSd', errors, 'metric')).toMatch(/7 cm at 4 m\./);
    expect(errorSentence('paceBias', errors, 'imperial')).toBe(
      'Whether putts are hit short of what is meant or past it is open: 2% short to 4% long. The record says only a little of the habit of pace so far.',
    );
    // 18% of 24 in.
    expect(errorSentence('readBias', errors, 'imperial')).toMatch(
      /18% too gentle: on a break of 24 in about 4\.3 in too little is played\./,
    );
    expect(allToldWords(errors)).toBeUndefined();
    // Of the green speed a record tells little: here it has told nearly all of that too.
    const told = { ...aFit().answer.errors, speedSd: anError(0.05, 0.02) };
    expect(allToldWords(told)).toMatch(/^Nearly all of each/);
    for (const name of ERRORS) expect(errorSentence(name, told, 'imperial')).not.toMatch(/record/);
    expect(toldWords({ told: 0.6 })).toBe('a good part');
  });
});

describe('each of the six errors', () => {
  it('is explained in one sentence without a word of statistics, and says what players of each kind have', () => {
    for (const name of PLAYER_ERRORS)
      for (const units of ['imperial', 'metric'] as const) {
        const hint = ERROR_HINTS[name](units);
        expect(hint).toMatch(/\.$/);
        expect(hint).not.toMatch(/NaN|undefined|deviation|variance/);
      }
    expect(typicalWords('slopeSd')).toMatch(
      /^Typical: 0\.\d+% \(Tour\), 0\.\d+% \(Scratch\), .*0\.\d+% \(Averaging 90\)\.$/,
    );
    expect(typicalWords('readBias')).toBeUndefined();
  });

  it('of slope is worth the break that Newton’s law gives to first order in the slope', () => {
    // Across: du/dt = k s - a u/v with v = v0 - a t, so u = -(k s/a) v ln(v/v0); its integral up to the hole is the break. k = 5/7 g;
    // a = 1.83^2 / (2 S) for a green of S = 10 ft (the Stimpmeter's release speed); 12 ft, 17 in past.
    const [d, p, k, a] = [3.6576, 0.4318, (5 / 7) * 9.80665, 1.83 ** 2 / (2 * 3.048)];
    const [v0, v] = [Math.sqrt(2 * a * (d + p)), Math.sqrt(2 * a * p)];
    const first = ((k * 0.004) / a ** 2) * ((v ** 2 / 2) * Math.log(v / v0) - v ** 2 / 4 + v0 ** 2 / 4);
    // What is left out goes with the square of the slope: less than 1% of so gentle a break.
    expect(breakOfSlope(0.004, 'imperial') / first).toBeCloseTo(1, 2);
  });
});

describe('the answer', () => {
  it('is which side, with what chance, about how much and its range', () => {
    expect(errorsHeadline(facts(0.97, 'tooLittle'))).toBe(
      'You read too little break: chance 97%, about 18% of the slope too little (6 to 30%).',
    );
    expect(errorsHeadline({ ...facts(0.001, 'tooMuch'), invented: true })).toBe(
      'The invented player reads too much break: chance over 99%, about 18% of the slope too much (6 to 30%).',
    );
  });

  it('says that the record does not tell, with chance and range, and never that there is no bias', () => {
    expect(errorsHeadline({ ...facts(0.71, 'cannotTell'), error: anError(-0.04, 0.13) })).toBe(
      'This record does not tell whether you read too little break or too much: the chance of too little is 71%, and all slopes seen from 17% too little to 9% too much are possible.',
    );
  });

  it('of a few putts is that they say next to nothing', () => {
    expect(errorsHeadline(facts(0.99, 'tooLittle', 19))).toMatch(
      /^19 putts cannot tell what your errors are/,
    );
    expect(errorsHeadline(facts(0.99, 'tooLittle', 20))).toMatch(/^You read/);
    expect(errorsDetail(facts(0.7, 'cannotTell', 5), undefined)).toMatch(/some sixty putts/);
  });

  it('names one thing to practise, and the tap that would help', () => {
    const [tap] = aFit().answer.tellApart.taps;
    expect(errorsDetail(facts(0.99, 'tooLittle'), tap)).toMatch(
      /“Started as meant\?” tapped on each.*play more of it\.$/,
    );
    expect(errorsDetail(facts(0.01, 'tooMuch'), undefined)).toMatch(
      /putts that break\. .*play less of it\.$/,
    );
  });

  it('never calls a chance certain', () => {
    expect([1, 0.996, 0.99, 0.004].map(chanceWords)).toEqual(['over 99%', 'over 99%', '99%', 'under 1%']);
  });
});

describe('what is not told apart', () => {
  const [pair] = aFit().answer.tellApart.pairs;
  it('is said of two errors with the tap that parts them and by how much', () => {
    expect(pairWords(pair)).toBe(
      'More error of start line and less misreading of slope would explain this record as well: “Started as meant?” on every putt would part them best, and leave 35% less open between the two.',
    );
    expect(pairWords({ ...pair, tap: undefined, area: 1 })).toMatch(
      /no tap of the form .*only more putts\.$/,
    );
  });

  it('names the tap that narrows some error most, and none where none does', () => {
    const gain = (tap: TapGain['tap'], slopeSd: number): TapGain => ({
      tap,
      putts: 40,
      spread: { lineSd: 1, paceSd: 1, slopeSd, speedSd: 1, paceBias: 0.99, readBias: 0.94 },
    });
    expect(bestTap([gain('slopeFelt', 0.9), gain('startedAsMeant', 0.7)])?.tap).toBe('startedAsMeant');
    expect(
      bestTap([{ ...gain('side', 1), spread: { ...gain('side', 1).spread, readBias: 0.97 } }]),
    ).toBeUndefined();
    expect(tapWords(gain('startedAsMeant', 0.7))).toBe(
      '“Started as meant?”, on the 40 putts without it, would have narrowed the misreading of slope by 30%, the habit of reading by 6%.',
    );
    expect(tapWords(undefined)).toMatch(/^No tap/);
  });
});

describe('what it rests on', () => {
  it('is counted, what was passed over by its reason', () => {
    const putts = [
      recordedPutt({ kind: 'conceded' }),
      recordedPutt({ kind: 'offGreen' }),
      recordedPutt({ distance: 0.1 }),
      recordedPutt(),
    ];
    const counted = {
      putts: 1,
      practicePutts: 12,
      sets: 1,
      measuredStrokes: 0,
      ...passedOverBy({ putts }, 3),
    };
    expect(countedWords(counted)).toBe('Counted: 1 putt of rounds and 12 practice putts in 1 set.');
    expect(countedWords({ ...counted, measuredStrokes: 40 })).toBe(
      'Counted: 1 putt of rounds, 12 practice putts in 1 set, 40 balls rolled through gates and to targets.',
    );
    expect(passedOverWords(counted)).toBe(
      'Passed over: 1 conceded putt, 1 from off the green, 1 nearer than 15 cm (6 in) or farther than 30 m (98 ft).',
    );
    expect(passedOverWords({ ...counted, ...passedOverBy({ putts: [] }, 0) })).toBeUndefined();
  });

  it('is another record once a putt is corrected, a round has its green speed or the start line is measured, and the same after a round without', () => {
    const putt = recordedPutt();
    const round = {
      id: 'r1',
      day: '2026-05-02',
      startedAt: 1,
      endedAt: 2,
      holes: 18,
      withoutPutt: [],
    } as const;
    const all = { rounds: [round], putts: [putt], practice: [], measured: [], unreadable: 0 };
    const digits = digitsOf(all);
    // The pace one usually putts at is part of what a fit rests on; not said, a fit of before stays.
    expect(digitsOf(all, 0.43)).not.toBe(digits);
    expect(digitsOf(all, 0.43)).not.toBe(digitsOf(all, 0.76));
    expect(digitsOf(all, undefined)).toBe(digits);
    expect(digitsOf({ ...all, putts: [{ ...putt, distance: putt.distance + 0.1 }] })).not.toBe(digits);
    expect(digitsOf({ ...all, rounds: [{ ...round, greenSpeed: 3 }] })).not.toBe(digits);
    expect(digitsOf({ ...all, rounds: [round, { ...round, id: 'r2' }] })).toBe(digits);
    const gates = [{ width: 0.1, distance: 0.9, passes: 8, tries: 10 }];
    const result = startLine(gates);
    if (result === undefined) throw new Error('there were tries');
    expect(digitsOf({ ...all, measured: [{ day: '2026-05-02', by: 'gates', gates, result }] })).not.toBe(
      digits,
    );
  });

  it('has a name among the players to start from, and tells what has come since', () => {
    expect(fitName(aFit())).toBe('You, from your record (312 putts, Nov 26, 2026)');
    expect(fitName(aFit({ source: 'demo' }))).toBe('The invented player, from their record');
    expect(fitHint(aFit({ source: 'demo' }))).toMatch(/^An invented player’s errors, not yours\. /);
    expect(grownWords({ putts: 0, sets: 0 })).toBeUndefined();
    expect(grownWords({ putts: 36, sets: 1 })).toMatch(/^Recorded since: 36 putts and 1 practice set\./);
    expect(grownWords({ putts: -2, sets: 1 })).toMatch(/has changed since/);
  });
});

describe('the chart', () => {
  it('gives each row an axis of its own, from nothing or to both sides of it, and all of a range lies on it', () => {
    const row = { value: 1.2, low: 1, high: 1.4, beforeLow: 0.6, beforeHigh: 2.8, unit: '°', note: '1.2°' };
    const habit = { value: -8, low: -44, high: -2, beforeLow: -40, beforeHigh: 40, unit: '%', note: '' };
    const { rows, ticks, zeros } = placeErrors([
      { ...row, name: 'line' },
      { ...habit, name: 'habit' },
    ]);
    for (const { value, low, high, beforeLow, beforeHigh } of rows)
      for (const at of [value, low, high, beforeLow, beforeHigh]) {
        expect(at).toBeGreaterThanOrEqual(0);
        expect(at).toBeLessThanOrEqual(1);
      }
    expect(zeros).toEqual([{ name: 'habit', at: 0.5 }]);
    const of = (name: string) => ticks.filter((tick) => tick.name === name).map(({ label }) => label);
    expect(of('line')).toEqual(['0°', '1°', '2°']);
    expect(of('habit')).toEqual(['−40%', '−20%', '0%', '20%', '40%']);
    // By proportion: 1.2 lies as far along the axis as 1.2 ticks.
    const [zero, one] = ticks.filter(({ name }) => name === 'line');
    expect(rows[0].value).toBeCloseTo(zero.at + 1.2 * (one.at - zero.at), 12);
  });
});

describe('break named beside break played', () => {
  const share = (value: number, low: number, high: number) => ({ value, range: { low, high } });
  const both = { putts: 100, invented: false };
  it('are two numbers with their ranges and one sentence', () => {
    expect(
      gapWords({ ...both, named: share(-0.08, -0.14, -0.02), played: share(-0.2, -0.28, -0.12) }),
    ).toEqual({
      words:
        'You name 8% too little break (2 to 14%) and play 20% too little break (12 to 28%): you play farther off than you name, so it is less the eye than what becomes of the read: aim where you named, and see whether the ball starts there.',
      missing: undefined,
    });
    expect(gapWords({ ...both, named: share(-0.5, -0.6, -0.4), played: share(-0.1, -0.2, 0) }).words).toMatch(
      /^You name 50% too little break \(40 to 60%\) and play 10% too little break \(0 to 20%\): some of what you name wrong you make up for/,
    );
    expect(gapWords({ ...both, named: share(0.001, -0.1, 0.1), played: share(-0.1, -0.2, 0) }).words).toMatch(
      /^You name the right break on average \(10% too little to 10% too much\) .*cannot be told yet\.$/,
    );
  });
  it('never stand in for one another: what is missing is said to be', () => {
    const named = share(-0.08, -0.14, -0.02);
    const played = share(-0.2, -0.28, -0.12);
    expect(gapWords({ ...both, named: undefined, played })).toEqual({
      words: 'You play 20% too little break (12 to 28%); what you name is not known yet.',
      missing: 'named',
    });
    expect(gapWords({ ...both, named, played: undefined }).missing).toBe('played');
    // A fit of a few putts is what was thought beforehand.
    expect(gapWords({ named, played, putts: 10, invented: false }).missing).toBe('played');
    expect(gapWords({ named: undefined, played: undefined, putts: 0, invented: true }).missing).toBe('both');
  });
});
