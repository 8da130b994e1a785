/**
 * Scores of a plan among the scores of drills: what each becomes, once, and which count as the test and which as its repetition.
 * Oracle: the calendar, and the plan as it was written down by hand.
 */
import { describe, expect, it } from 'vitest';
import { puttingDrill } from '../../../../drills/putting-drills.ts';
import { testScores } from '../../../../src/screens/week/testScores.ts';
import { scoreAgain, scoreItem, swapItem, testedIn, tickItem } from '../../../../src/state/plans/plan.ts';
import { resultsOf } from '../../../../src/state/plans/planResults.ts';
import { addDays } from '../../../../src/store/day.ts';
import type { Plan } from '../../../../src/store/planSchema.ts';
import { AGAIN, scoreId } from '../../../../src/store/planScores.ts';
import { drillResultSchema, type KeptResult } from '../../../../src/store/recordSchema.ts';
import { START, samplePlan } from '../../../support/weekPlan.ts';

const at = (day: string): number => Date.parse(`${day}T12:00:00Z`);
const plan = samplePlan();
const tested = testedIn(plan);
if (tested === undefined) throw new Error('no test in the sample');
const { item, session } = tested;
const drill = puttingDrill(item.activity);
if (drill === undefined) throw new Error('no drill in the sample');
/** A drill of the other session. */
const other = plan.sessions
  .filter(({ id }) => id !== session.id)
  .flatMap((one) => one.items.map((it) => ({ session: one, item: it })))
  .find(({ item: { kind } }) => kind === 'drill');
if (other === undefined) throw new Error('no other drill in the sample');

describe('scores of a plan', () => {
  it('are records the gate lets pass, of the drill, its version, the ground, and the green speed of the plan', () => {
    const scored = scoreItem(scoreItem(plan, item.id, 7), other.item.id, 9);
    const results = resultsOf(scored, [], at('2026-12-02'));
    expect(results).toHaveLength(2);
    for (const one of results) expect(drillResultSchema.safeParse(one).error).toBeUndefined();
    const first = results.find(({ id }) => id === scoreId(plan.id, item.id));
    expect(first).toEqual({
      id: scoreId(plan.id, item.id),
      day: session.day,
      recordedAt: at('2026-12-02'),
      drillId: item.activity,
      version: drill.version,
      ground: session.ground,
      greenSpeed: session.ground === 'grass' ? 2.9 : 3.05,
      score: 7,
    });
    expect(results.find(({ score }) => score === 9)?.ground).toBe(other.session.ground);
  });

  it('are of the day of the tick, else of the session’s day, and never of a day to come', () => {
    const later = other.session.day;
    const dayOf = (scored: Plan, today: string, before: KeptResult[] = []): string =>
      resultsOf(scored, before, at(today))[0].day;
    const scored = scoreItem(plan, other.item.id, 5);
    expect(dayOf(scored, addDays(later, 3))).toBe(later);
    expect(dayOf(scored, START)).toBe(START);
    const ticked = tickItem(scored, other.item.id, addDays(later, 1));
    expect(dayOf(ticked, addDays(later, 3))).toBe(addDays(later, 1));
    // Once written down, another day on which the plan is looked at changes nothing.
    const before = resultsOf(scored, [], at(START));
    expect(resultsOf(scored, before, at(addDays(START, 9)))).toEqual(before);
  });

  it('change in place, go with their score, and come with no reading set', () => {
    const first = resultsOf(scoreItem(plan, item.id, 7), [], at(START));
    const changed = resultsOf(scoreItem(plan, item.id, 8), first, at(addDays(START, 1)));
    expect(changed).toEqual([{ ...first[0], score: 8 }]);
    expect(resultsOf(scoreItem(plan, item.id, undefined), first, at(START))).toEqual([]);
    const set = plan.sessions.flatMap(({ items }) => items).find(({ kind }) => kind === 'reading');
    expect(set).toBeDefined();
    expect(resultsOf(scoreItem(plan, set?.id ?? '', 7), [], at(START))).toEqual([]);
    // A drill that no version knows any more has no version to be compared by: its score stays in the plan.
    const gone = scoreItem(swapItem(plan, item.id, { id: 'long-gone', name: '', minutes: 5 }), item.id, 7);
    expect(resultsOf(gone, [], at(START))).toEqual([]);
  });

  it('have the repetition of the test among them, on the test’s ground and its own day', () => {
    const again = scoreAgain(plan, { day: '2026-12-10', score: 6 });
    expect(resultsOf(again, [], at('2026-12-11'))).toMatchObject([
      {
        id: scoreId(plan.id, AGAIN),
        day: '2026-12-10',
        drillId: item.activity,
        ground: session.ground,
        score: 6,
      },
    ]);
  });
});

describe('test and repetition', () => {
  const result = (change: Partial<KeptResult>): KeptResult => ({
    id: 'typed-in-practise',
    day: START,
    recordedAt: 1,
    drillId: item.activity,
    version: drill.version,
    ground: session.ground,
    score: 5,
    ...change,
  });
  const due = plan.test?.againOn ?? '';
  const idsOf = (results: readonly KeptResult[]): string[] => results.map(({ id }) => id);

  it('take scores entered elsewhere: up to the test’s day, from the repetition’s day on, none between', () => {
    const scores = [
      result({ id: 'month-before', day: addDays(session.day, -30) }),
      result({ id: 'same-day-as-the-test', day: session.day }),
      result({ id: 'day-after', day: addDays(session.day, 1) }),
      result({ id: 'day-before-due', day: addDays(due, -1) }),
      result({ id: 'day-it-is-due', day: due }),
      result({ id: 'week-later', day: addDays(due, 7) }),
    ];
    const found = testScores(plan, scores);
    expect(idsOf(found?.test ?? [])).toEqual(['month-before', 'same-day-as-the-test']);
    expect(idsOf(found?.between ?? [])).toEqual(['day-after', 'day-before-due']);
    expect(idsOf(found?.again ?? [])).toEqual(['day-it-is-due', 'week-later']);
  });

  it('know the plan’s own two scores by their ids, on one day too, and count each once', () => {
    const both = scoreAgain(scoreItem(plan, item.id, 5), { day: session.day, score: 6 });
    const found = testScores(both, resultsOf(both, [], at(session.day)));
    expect(found?.test.map(({ score }) => score)).toEqual([5]);
    expect(found?.again.map(({ score }) => score)).toEqual([6]);
    expect(found?.between).toEqual([]);
  });

  it('leave out another drill, ground or version, and what the drill cannot give', () => {
    const unlike = [
      result({ drillId: 'another-drill' }),
      result({ ground: session.ground === 'grass' ? 'carpet' : 'grass' }),
      result({ version: drill.version + 1 }),
      result({ score: 1000 }),
    ];
    const found = testScores(plan, unlike);
    expect([found?.test, found?.again, found?.between]).toEqual([[], [], []]);
  });
});
