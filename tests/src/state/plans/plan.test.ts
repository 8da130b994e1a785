/** What a person may change in a plan, and what comes back from the device. Oracle: the calendar, and what a change leaves alone. */
import { describe, expect, it } from 'vitest';
import { puttingDrill } from '../../../../drills/putting-drills.ts';
import { BENCHMARKS, type StepId, timeShares } from '../../../../sim/index.ts';
import { movedSince } from '../../../../src/screens/week/moved.ts';
import { movedHeadline, weekHeadline } from '../../../../src/screens/week/words.ts';
import {
  insteadOf,
  isTouched,
  moveSession,
  refillSession,
  scoreAgain,
  spreadDays,
  swapItem,
  testedIn,
  tickItem,
} from '../../../../src/state/plans/plan.ts';
import { resultsOf } from '../../../../src/state/plans/planResults.ts';
import { addDays, daysBetween } from '../../../../src/store/day.ts';
import type { Plan } from '../../../../src/store/planSchema.ts';
import { planSchema } from '../../../../src/store/planSchema.ts';
import { START, samplePlan } from '../../../support/weekPlan.ts';

const minutesOf = ({ items }: Plan['sessions'][number]): number =>
  items.reduce((sum, { minutes }) => sum + minutes, 0);

describe('days', () => {
  it('are counted by the calendar: leap days, ends of years, and days on which clocks change', () => {
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    // The last Sunday in March and in October: 23 and 25 hours long in Europe.
    expect(addDays('2026-03-28', 2)).toBe('2026-03-30');
    expect(addDays('2026-10-24', 2)).toBe('2026-10-26');
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
  });

  it('of sessions lie apart within the week', () => {
    expect(spreadDays(START, 2)).toEqual(['2026-11-26', '2026-11-29']);
    expect(spreadDays(START, 3)).toEqual(['2026-11-26', '2026-11-28', '2026-11-30']);
  });
});

describe('a plan from costs with the doubt of a fitted player', () => {
  // Ranges as wide as nine putts leave them, one of them from below nothing.
  const ranged = (
    error: 'line' | 'pace' | 'read',
    step: StepId,
    value: number,
    low: number,
    high: number,
  ) => ({
    error,
    step,
    saved: { value, low, high },
  });
  const doubtful = samplePlan({
    costs: [
      ranged('read', 'readHabit', 0.33, -0.13, 1.58),
      ranged('pace', 'pacePoint', 0.3, 0.26, 0.44),
      ranged('line', 'lineTenth', 0.28, 0.21, 0.36),
    ],
  });

  it('shares the time evenly among errors that cannot be told apart, says so, and is kept', () => {
    const shares = timeShares(doubtful.costs);
    for (const { share, together } of shares) {
      expect(share).toBeCloseTo(1 / 3, 12);
      expect(together).toHaveLength(3);
    }
    expect(weekHeadline(doubtful)).toMatch(
      /^Your habit of reading, your pace and your start line cannot be told apart in what they cost, 0\.33 strokes a round \(−0\.13 to 1\.58\)/,
    );
    expect(planSchema.safeParse(doubtful).success).toBe(true);
  });
});

describe('a plan in hand', () => {
  const plan = samplePlan();

  it('moves a session to another day, in order, and its test with the repetition two weeks after it', () => {
    const tested = testedIn(plan);
    const moved = moveSession(plan, tested?.session.id ?? '', '2026-12-01');
    expect(moved.sessions.map(({ day }) => day)).toEqual([...moved.sessions.map(({ day }) => day)].sort());
    expect(testedIn(moved)?.session.day).toBe('2026-12-01');
    expect(moved.test?.againOn).toBe('2026-12-15');
    expect(moved.revision).toBe(plan.revision + 1);
  });

  it('fills one session anew for its new minutes and ground, and leaves the other alone', () => {
    const [grass, carpet] = plan.sessions;
    const changed = refillSession(plan, grass.id, { minutes: 20, ground: 'carpet' });
    expect(changed.sessions[1]).toEqual(carpet);
    expect(minutesOf(changed.sessions[0])).toBeLessThanOrEqual(20);
    for (const { kind, activity } of changed.sessions[0].items)
      if (kind === 'drill') expect(puttingDrill(activity)?.ground).not.toBe('grass');
    if (changed.test) expect(testedIn(changed)).toBeDefined();
  });

  it('does not fill a session anew once something of it is done', () => {
    const [session] = plan.sessions;
    const done = tickItem(plan, session.items[0].id, START);
    expect(isTouched(done.sessions[0])).toBe(true);
    expect(refillSession(done, session.id, { minutes: 90 })).toBe(done);
    expect(isTouched(tickItem(done, session.items[0].id, undefined).sessions[0])).toBe(false);
  });

  it('offers in the place of a drill only what trains the same there in the time that is left', () => {
    for (const session of plan.sessions)
      for (const item of session.items.filter(({ kind }) => kind === 'drill'))
        for (const other of insteadOf(session, item)) {
          const drill = puttingDrill(other.id);
          expect(drill?.trains).toBe(item.trains);
          expect([session.ground, 'both']).toContain(drill?.ground);
          const swapped = swapItem(plan, item.id, other);
          const after = swapped.sessions.find(({ id }) => id === session.id);
          expect(after && minutesOf(after)).toBeLessThanOrEqual(session.minutes);
        }
  });

  it('forgets what was expected of a drill when another takes its place', () => {
    const session = plan.sessions[0];
    const [swap] = session.items
      .filter(({ kind }) => kind === 'drill')
      .flatMap((item) => insteadOf(session, item).map((other) => ({ item, other })))
      .filter(({ item, other }) => other.id !== item.activity);
    if (swap === undefined) throw new Error('no drill in the sample that another could stand for');
    const { item, other } = swap;
    const known = {
      ...plan,
      sessions: plan.sessions.map((one) => ({
        ...one,
        items: one.items.map((it) => ({ ...it, expected: { cannot: 'no' } })),
      })),
    };
    const swapped = swapItem(known, item.id, other).sessions[0].items.find(({ id }) => id === item.id);
    expect(swapped).toMatchObject({ activity: other.id, minutes: other.minutes });
    expect(swapped?.expected).toBeUndefined();
  });

  it('says in one sentence what costs most, by how much, what is done about it, and when the test is', () => {
    expect(weekHeadline(plan)).toMatch(
      /^Your reading costs most, 0\.30 strokes a round \(0\.28 to 0\.32\) for slope and green speed misread 10% less: .*this week; test on .*, again in two weeks\.$/,
    );
  });
});

describe('what moved since the plan', () => {
  it('says of an empty record that nothing can be said, and of two scores what they may and may not say', () => {
    const plan = samplePlan();
    const records = { rounds: [], putts: [], practice: [], measured: [], unreadable: 0 };
    const question = { records, readSets: [], results: [], benchmark: BENCHMARKS[0] };
    const nothing = movedSince({ ...question, plan });
    expect(nothing.every(({ change }) => change === undefined)).toBe(true);
    expect(movedHeadline(nothing)).toMatch(/^What moved\? Nothing can be said before/);

    const tested = testedIn(plan);
    const known = {
      ...plan,
      sessions: plan.sessions.map((session) => ({
        ...session,
        items: session.items.map((item) =>
          item.id === tested?.item.id
            ? { ...item, score: 5, expected: { mean: 5, low: 3, high: 7, sd: 1.5, mark: 6, chance: 0.3 } }
            : item,
        ),
      })),
    };
    const again = scoreAgain(known, { day: '2026-12-10', score: 6 });
    const results = resultsOf(again, [], Date.parse('2026-12-10T12:00:00Z'));
    const scored = movedSince({ ...question, plan: again, results });
    const test = scored.find(({ topic }) => topic === 'test');
    expect(test).toMatchObject({ verdict: 'cannotTell', before: 1, after: 1 });
    expect(test?.change).toBeDefined();
    expect(movedHeadline(scored)).toMatch(
      /cannot be told yet: the test changed by no more than chance makes/,
    );
  });
});
