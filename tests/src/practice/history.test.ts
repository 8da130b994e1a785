/** What the scores of a drill say: like with like, test and retest, and what is left out, with why. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { puttingDrill } from '../../../drills/putting-drills.ts';
import type { DrillExpectation, PuttingDrill } from '../../../sim/index.ts';
import { changeSentences, judgedWords } from '../../../src/screens/practice/words.ts';
import { historyOf } from '../../../src/state/likeScores.ts';
import type { KeptResult } from '../../../src/store/recordSchema.ts';

const drill = puttingDrill('start-gate') as PuttingDrill;
/** Twenty throws of a coin: its odds are known to everybody. */
const COIN: DrillExpectation = {
  status: 'ok',
  drillId: 'start-gate',
  version: drill.version,
  ground: { kind: 'grass', greenSpeed: 3, slope: 0.02 },
  better: 'higher',
  chances: Float64Array.from({ length: 21 }, (_, hits) => jstat.binomial.pdf(hits, 20, 0.5)),
  mean: 10,
  sd: Math.sqrt(5),
  low: 7,
  high: 13,
  meanBetter: 12,
  mark: { score: 12, chanceNow: 0.25, chanceBetter: 0.6 },
  repetitions: { count: 3, by: 'counted', total: 33 },
  stations: [],
};
let number = 0;
const result = (score: number, change: Partial<KeptResult> = {}): KeptResult => ({
  id: `result-${String(++number).padStart(4, '0')}`,
  day: '2026-05-02',
  recordedAt: number,
  drillId: drill.id,
  version: drill.version,
  ground: 'grass',
  score,
  ...change,
});
const of = (
  results: readonly KeptResult[],
  more: { retestFrom?: string; expectation?: DrillExpectation } = {},
) => historyOf({ drill, results, kind: 'grass', expectation: COIN, ...more });

describe('scores of a drill', () => {
  it('say nothing when there is one, and of two how often chance makes such a total', () => {
    const one = of([result(12)]);
    expect(one.judged?.verdict).toBe('oneScore');
    expect(one.retest).toBeUndefined();
    expect(judgedWords(one.judged as never)).toMatch(/^One score alone tells nothing/);
    const two = of([result(13), result(9)]);
    // jstat: 22 or more heads of 40.
    expect(two.judged?.chanceAsGood).toBeCloseTo(1 - jstat.binomial.cdf(21, 40, 0.5), 9);
    expect(two.judged?.verdict).toBe('asExpected');
    expect(two.rows.map(({ passed }) => passed)).toEqual([true, false]);
  });

  it('are judged only on ground like that of the expectation: a foot faster is another', () => {
    const known = of([result(13, { greenSpeed: 3.3048 }), result(9, { greenSpeed: 3.1 }), result(8)]);
    expect(known.judged?.passed).toHaveLength(2);
    expect(known.rows[0].passed).toBeUndefined();
    // All are compared as test and retest, whose sentence says that the ground was faster.
    expect(known.counts).toEqual({ before: 2, after: 1 });
    const sentences = changeSentences(known.change as never, known.counts);
    expect(sentences.at(-1)).toMatch(/^The ground was 0\.7 ft faster at the retest/);
  });

  it('are compared as the share of strokes, newest against the others, or from where the person says', () => {
    const results = [result(14), result(8)];
    const { change, counts, retest } = of(results);
    expect(retest).toBe(results[0]);
    expect(counts).toEqual({ before: 1, after: 1 });
    // Wilson's intervals 21.9 to 61.3% and 48.1 to 85.5%, put together as Newcombe 1998 (method 10): by hand, to a tenth of a point.
    expect(change?.value).toBeCloseTo(0.3, 9);
    expect(change?.low).toBeCloseTo(-0.006, 3);
    expect(change?.high).toBeCloseTo(0.538, 3);
    expect(change?.verdict).toBe('cannotTell');
    const four = [result(14), result(15), result(9), result(8)];
    expect(of(four).counts).toEqual({ before: 3, after: 1 });
    const moved = of(four, { retestFrom: four[1].id });
    expect(moved.counts).toEqual({ before: 2, after: 2 });
    // 29 of 40 against 17 of 40.
    expect(moved.change?.value).toBeCloseTo(0.3, 9);
    expect(of(four, { retestFrom: four[3].id }).counts).toEqual({ before: 3, after: 1 });
  });

  it('of another ground or version are not compared, and it is said why', () => {
    const carpet = of([result(14), result(9), result(17, { ground: 'carpet' })]);
    expect(carpet.counts).toEqual({ before: 1, after: 1 });
    expect(carpet.unlike).toMatchObject({
      count: 1,
      reason: expect.stringMatching(/^Got scores on grass and on carpet/),
    });
    const old = of([result(14), result(9, { version: drill.version + 1 })]);
    expect(old.change).toBeUndefined();
    expect(old.unlike?.reason).toMatch(/whose set-up or scoring differ/);
    expect(old.rows).toHaveLength(2);
  });

  it('that the drill cannot give are left out and counted, and no other drill is among them', () => {
    const found = of([result(21), result(14), result(3, { drillId: 'soft-and-firm' })]);
    expect(found).toMatchObject({ impossible: 1, unlike: undefined, retest: undefined });
    expect(found.judged?.passed).toEqual([true]);
    expect(found.rows).toHaveLength(2);
  });

  it('are listed without a verdict while the expected score is another drill’s or being worked out', () => {
    const results = [result(14), result(9)];
    for (const expectation of [undefined, { ...COIN, drillId: 'soft-and-firm' }]) {
      const found = historyOf({ drill, results, kind: 'grass', expectation });
      expect(found.judged).toBeUndefined();
      expect(found.rows.map(({ passed }) => passed)).toEqual([undefined, undefined]);
      expect(found.change?.unit).toBe('share');
    }
  });
});
