/** Pass marks, single scores and retests: what may be said, and what not. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { puttingDrill } from '../../../drills/putting-drills.ts';
import { PRESETS } from '../../../sim/player/presets.ts';
import { seededRandom } from '../../../sim/random.ts';
import { shareDifference } from '../../../sim/statistics/share-difference.ts';
import { compareScores, type DrillResult, type ScoreChange } from '../../../sim/training/compare-scores.ts';
import { type DrillExpectation, expectedScore } from '../../../sim/training/drill-score.ts';
import { judgeScores } from '../../../sim/training/judge-scores.ts';
import { chanceAsGood, passMark, repetitionsApart } from '../../../sim/training/pass-mark.ts';
import type { PuttingDrill } from '../../../sim/training/putting-drill.ts';

const named = (id: string): PuttingDrill => {
  const drill = puttingDrill(id);
  if (drill === undefined) throw new Error(`no drill ${id}`);
  return drill;
};
const gate = named('carpet-gate');
const nine = named('nine-holes-one-ball');
const expectation = (() => {
  const found = expectedScore(gate, PRESETS[1].player, { kind: 'carpet', greenSpeed: 3.3 });
  if (found.status !== 'ok') throw new Error(found.reason);
  return found;
})();
const binomial = (tries: number, share: number): Float64Array =>
  Float64Array.from({ length: tries + 1 }, (_, k) => jstat.binomial.pdf(k, tries, share));

describe('a pass mark', () => {
  it('is the score that jstat’s binomial reaches nearest to three times in ten', () => {
    const { score, chanceNow, chanceBetter } = passMark(binomial(20, 0.6), binomial(20, 0.7), 'higher');
    const reach = (mark: number, share: number): number => 1 - jstat.binomial.cdf(mark - 1, 20, share);
    const marks = Array.from({ length: 21 }, (_, mark) => mark);
    const nearest = marks.toSorted(
      (a, b) => Math.abs(reach(a, 0.6) - 0.3) - Math.abs(reach(b, 0.6) - 0.3),
    )[0];
    expect(score).toBe(nearest);
    // jstat's cumulative binomial goes by the incomplete beta: ten places.
    expect(chanceNow).toBeCloseTo(reach(nearest, 0.6), 9);
    expect(chanceBetter).toBeCloseTo(reach(nearest, 0.7), 9);
  });

  it('turns round where fewer is better', () => {
    const chances = binomial(20, 0.6);
    const mirrored = chances.toReversed();
    const improved = binomial(20, 0.7);
    const high = passMark(chances, improved, 'higher');
    const low = passMark(mirrored, improved.toReversed(), 'lower');
    expect(low.score).toBe(20 - high.score);
    expect(low.chanceBetter).toBeCloseTo(high.chanceBetter, 12);
  });
});

describe('repetitions', () => {
  it('are the first whose binomial total has a mark at most 30% and at least 65% likely', () => {
    const { count, by, total } = repetitionsApart(binomial(20, 0.6), binomial(20, 0.65), 'higher');
    const apart = (times: number): number | undefined =>
      Array.from({ length: 20 * times + 1 }, (_, mark) => mark).find(
        (mark) =>
          1 - jstat.binomial.cdf(mark - 1, 20 * times, 0.6) <= 0.3 &&
          1 - jstat.binomial.cdf(mark - 1, 20 * times, 0.65) >= 0.65,
      );
    let first = 1;
    while (apart(first) === undefined) first++;
    expect({ count, by, total }).toEqual({ count: first, by: 'counted', total: apart(first) });
  });

  it('beyond sixty are estimated, near where the binomial total has them', () => {
    const { count, by } = repetitionsApart(binomial(10, 0.5), binomial(10, 0.515), 'higher');
    expect(by).toBe('estimated');
    // (0.524 + 0.385)^2 p (1 - p) / (tries x gain^2), textbook sample size for one share.
    expect(Math.abs(count / ((0.9097 ** 2 * 0.25) / (10 * 0.015 ** 2)) - 1)).toBeLessThan(0.02);
  });

  it('are without end where the score does not move', () => {
    expect(repetitionsApart(binomial(10, 0.5), binomial(10, 0.5), 'higher').count).toBe(Infinity);
  });
});

describe('scores beside the expectation', () => {
  it('of one time are never more than passed or not', () => {
    for (const score of [0, expectation.mark.score, 20]) {
      const { verdict, passed } = judgeScores([score], expectation);
      expect(verdict).toBe('oneScore');
      expect(passed).toEqual([score >= expectation.mark.score]);
    }
  });

  it('are called better or worse only beyond chance', () => {
    expect(judgeScores([20, 20, 20], expectation).verdict).toBe('betterThanExpected');
    expect(judgeScores([2, 3, 2], expectation).verdict).toBe('worseThanExpected');
    const usual = Math.round(expectation.mean);
    expect(judgeScores([usual, usual + 2, usual + 1], expectation).verdict).toBe('asExpected');
  });

  it('have the chance of a binomial total', () => {
    const share = expectation.mean / 20;
    const { chanceAsGood: good, chanceAsBad: bad, passesExpected } = judgeScores([14, 15], expectation);
    expect(good).toBeCloseTo(1 - jstat.binomial.cdf(28, 40, share), 8);
    expect(bad).toBeCloseTo(jstat.binomial.cdf(29, 40, share), 8);
    expect(passesExpected).toBeCloseTo(
      2 * chanceAsGood(expectation.chances, expectation.mark.score, 'higher'),
      12,
    );
  });

  it.each([[[]], [[21]], [[3.5]], [[-1]]])('%j are refused', (scores) => {
    expect(() => judgeScores(scores, expectation)).toThrow(RangeError);
  });
});

const results = (
  drill: PuttingDrill,
  scores: readonly number[],
  more: Partial<DrillResult> = {},
): DrillResult[] =>
  scores.map((score) => ({
    drillId: drill.id,
    version: drill.version,
    ground: drill.ground === 'carpet' ? 'carpet' : 'grass',
    score,
    ...more,
  }));
const change = (found: ReturnType<typeof compareScores>): ScoreChange => {
  if (found.status !== 'ok') throw new Error(found.reason);
  return found;
};

describe('test and retest', () => {
  it.each<[string, Partial<DrillResult>, RegExp]>([
    ['another drill', { drillId: 'start-gate' }, /start-gate/],
    ['another version', { version: 2 }, /versions 2 and 1/],
    ['another ground', { ground: 'grass' }, /grass and on carpet/],
  ])('turns down %s', (_name, other, words) => {
    const found = compareScores(gate, { before: results(gate, [12]), after: results(gate, [14], other) });
    expect(found).toMatchObject({ status: 'unlike', reason: expect.stringMatching(words) });
  });

  it('turns down a period without scores', () => {
    expect(compareScores(gate, { before: [], after: results(gate, [14]) }).status).toBe('unlike');
  });

  it('of counted strokes is a change of their share', () => {
    const found = change(
      compareScores(gate, { before: results(gate, [10, 12]), after: results(gate, [16, 17, 15]) }),
    );
    const { value, low, high } = shareDifference({ hits: 22, tries: 40 }, { hits: 48, tries: 60 });
    expect(found).toMatchObject({ unit: 'share', value, low, high, verdict: 'better' });
  });

  it('knows that fewer putts are better', () => {
    const [before, after] = [results(nine, [19, 20, 18, 20]), results(nine, [16, 15, 17, 16])];
    expect(change(compareScores(nine, { before, after })).verdict).toBe('better');
    expect(change(compareScores(nine, { before: after, after: before })).verdict).toBe('worse');
  });

  it('of one score each has no margin without the engine’s spread, and an honest one with it', () => {
    const periods = { before: results(nine, [18]), after: results(nine, [16]) };
    expect(change(compareScores(nine, periods))).toMatchObject({ low: -Infinity, verdict: 'cannotTell' });
    const { low, high, verdict } = change(compareScores(nine, periods, { expectedSd: 1.3 }));
    // -2 +- 1.96 x 1.3 x sqrt 2, the textbook interval for a known SD.
    expect(low).toBeCloseTo(-2 - 1.95996 * 1.3 * Math.SQRT2, 4);
    expect(high).toBeCloseTo(-2 + 1.95996 * 1.3 * Math.SQRT2, 4);
    expect(verdict).toBe('cannotTell');
  });

  it('tells how far the green speed moved', () => {
    const before = results(nine, [18, 17], { greenSpeed: 2.7 });
    const after = results(nine, [18, 17], { greenSpeed: 3.3 });
    expect(change(compareScores(nine, { before, after })).greenSpeedChange).toBeCloseTo(0.6, 12);
    expect(
      change(compareScores(nine, { before: results(nine, [18]), after })).greenSpeedChange,
    ).toBeUndefined();
  });

  it('holds no change in 95 of 100 retests of a player who did not change', () => {
    const random = seededRandom('retest');
    const draw = ({ chances }: DrillExpectation): number => {
      let left = random();
      let score = 0;
      while (left >= chances[score] && score < chances.length - 1) left -= chances[score++];
      return score;
    };
    const trials = 2000;
    let held = 0;
    for (let trial = 0; trial < trials; trial++) {
      const some = (): DrillResult[] =>
        results(gate, [draw(expectation), draw(expectation), draw(expectation)]);
      const { low, high } = change(compareScores(gate, { before: some(), after: some() }));
      if (low <= 0 && high >= 0) held++;
    }
    // 95%, with four standard errors of 2000 trials (2 points).
    expect(held / trials).toBeGreaterThan(0.93);
    expect(held / trials).toBeLessThan(0.97);
  });
});
