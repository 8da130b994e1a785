/**
 * The week's plan: laws that hold whatever the costs, sessions and seed. Oracle: the rule as its header states it, checked by counting
 * minutes in the finished plan; nothing here is copied from a plan.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PUTTING_DRILLS, puttingDrill } from '../../../drills/putting-drills.ts';
import {
  drillsInstead,
  ENGINE_ERROR,
  type ErrorCost,
  errorCosts,
  minutesByError,
  planWeek,
  type ReadingSet,
  STEPS,
  type StepCost,
  TEST_AGAIN,
  timeShares,
  WEEK_ERRORS,
  type WeekQuestion,
  type WeekSession,
} from '../../../sim/index.ts';

const READING: readonly ReadingSet[] = [
  { id: 'adaptive', trains: 'read', minutes: 6 },
  { id: 'what-slope', trains: 'read', minutes: 5 },
  { id: 'die-or-firm', trains: 'choice', minutes: 5 },
];

const cost = (error: ErrorCost['error'], value: number, margin = 0): ErrorCost => ({
  error,
  step: 'lineTenth',
  saved: { value, low: value - margin, high: value + margin },
});

const anyCosts: fc.Arbitrary<ErrorCost[]> = fc
  .tuple(
    ...WEEK_ERRORS.map((error) =>
      fc
        .tuple(fc.double({ min: -0.05, max: 0.6, noNaN: true }), fc.double({ min: 0, max: 0.3, noNaN: true }))
        .map(([value, margin]) => cost(error, value, margin)),
    ),
  )
  .map((costs) => [...costs]);

const anySession = (ground: fc.Arbitrary<WeekSession['ground']>): fc.Arbitrary<WeekSession> =>
  fc.record({ day: fc.integer({ min: 0, max: 6 }), minutes: fc.integer({ min: 10, max: 120 }), ground });
const GROUNDS = fc.constantFrom('grass' as const, 'carpet' as const);
const anyQuestion = (ground: fc.Arbitrary<WeekSession['ground']> = GROUNDS): fc.Arbitrary<WeekQuestion> =>
  fc.record({
    costs: anyCosts,
    sessions: fc.array(anySession(ground), { minLength: 2, maxLength: 3 }),
    drills: fc.constant(PUTTING_DRILLS),
    reading: fc.constant(READING),
    choosePace: fc.boolean(),
    seed: fc.integer(),
  });

const total = (items: readonly { readonly minutes: number }[]): number =>
  items.reduce((sum, { minutes }) => sum + minutes, 0);

describe('how time is shared out', () => {
  it('goes by strokes saved where the intervals lie apart', () => {
    const shares = timeShares([cost('line', 0.1), cost('pace', 0.3), cost('read', 0.2)]);
    expect(shares.map(({ error }) => error)).toEqual(['pace', 'read', 'line']);
    // 0.3, 0.2 and 0.1 of 0.6.
    [1 / 2, 1 / 3, 1 / 6].forEach((share, i) => {
      expect(shares[i].share).toBeCloseTo(share, 12);
    });
  });

  it('is even among errors whose intervals overlap, and leaves the others theirs', () => {
    const shares = timeShares([cost('line', 0.05), cost('pace', 0.3, 0.1), cost('read', 0.25, 0.1)]);
    [0.275 / 0.6, 0.275 / 0.6, 0.05 / 0.6].forEach((share, i) => {
      expect(shares[i].share).toBeCloseTo(share, 12);
    });
    expect(shares.map(({ together }) => together)).toEqual([['pace', 'read'], ['pace', 'read'], ['line']]);
  });

  it('counts savings nearer than twice the engine’s own error as one', () => {
    const apart = (by: number): number =>
      timeShares([cost('line', 0.3), cost('pace', 0.3 - by), cost('read', 0)])[0].together.length;
    expect(apart(1.9 * ENGINE_ERROR)).toBe(2);
    expect(apart(2.1 * ENGINE_ERROR)).toBe(1);
  });

  it('gives nothing to what saves nothing, and even parts where nothing saves anything', () => {
    expect(
      timeShares([cost('line', 0), cost('pace', 0.3), cost('read', -0.1)]).map((one) => one.share),
    ).toEqual([1, 0, 0]);
    expect(timeShares(WEEK_ERRORS.map((error) => cost(error, 0))).map(({ share }) => share)).toEqual([
      1 / 3,
      1 / 3,
      1 / 3,
    ]);
  });

  it('always makes one, and never gives a dearer error less', () => {
    fc.assert(
      fc.property(anyCosts, (costs) => {
        const shares = timeShares(costs);
        expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
        shares.slice(1).forEach(({ share }, i) => {
          expect(share).toBeLessThanOrEqual(shares[i].share + 1e-12);
        });
      }),
    );
  });

  it('takes for each error the distance within reach, and refuses steps without it', () => {
    const saved = (step: StepCost['step'], value: number): StepCost => ({
      step,
      saved: { value, low: value, high: value },
      byBand: [],
    });
    const steps = STEPS.map((step) =>
      saved(step, step === 'readReach' ? 0.5 : step === 'bestPace' ? 0.9 : 0.1),
    );
    expect(errorCosts(steps)[0]).toMatchObject({ error: 'read', step: 'readReach' });
    expect(() => errorCosts(steps.filter(({ step }) => step !== 'lineReach'))).toThrow(
      /Got no saving for the line/,
    );
  });
});

describe('the plan of a week', () => {
  it('fits every session, on its ground, without doing anything twice in one', () => {
    fc.assert(
      fc.property(anyQuestion(), (question) => {
        for (const { items, minutes, ground } of planWeek(question).sessions) {
          expect(total(items)).toBeLessThanOrEqual(minutes);
          expect(new Set(items.map(({ activity }) => activity)).size).toBe(items.length);
          for (const { kind, activity } of items)
            if (kind === 'drill') expect([ground, 'both']).toContain(puttingDrill(activity)?.ground);
        }
      }),
    );
  });

  it('never gives a cheaper error more minutes than a dearer one', () => {
    fc.assert(
      fc.property(anyQuestion(), (question) => {
        const minutes = minutesByError(planWeek(question).sessions);
        for (const dear of question.costs)
          for (const cheap of question.costs)
            if (dear.saved.value > cheap.saved.value)
              expect(minutes[dear.error]).toBeGreaterThanOrEqual(minutes[cheap.error] - 1e-9);
      }),
    );
  });

  it('is the same for the same question, and fills a week of carpet with what a carpet allows', () => {
    fc.assert(
      fc.property(anyQuestion(fc.constant('carpet')), (question) => {
        const plan = planWeek(question);
        expect(planWeek(question)).toEqual(plan);
        for (const { items } of plan.sessions)
          for (const { kind, activity } of items)
            if (kind === 'drill') expect(puttingDrill(activity)?.ground).not.toBe('grass');
      }),
    );
  });

  it('tests a drill of the plan first thing in its session, and again a fortnight later', () => {
    fc.assert(
      fc.property(anyQuestion(), (question) => {
        const { sessions, test } = planWeek(question);
        const drills = sessions.flatMap(({ items }) => items.filter(({ kind }) => kind === 'drill'));
        expect(test === undefined).toBe(drills.length === 0);
        if (test === undefined) return;
        expect(test.item).toBe(0);
        expect(sessions[test.session].items[0].kind).toBe('drill');
        expect(test.againOn).toBe(sessions[test.session].day + TEST_AGAIN);
        expect(TEST_AGAIN).toBe(14);
      }),
    );
  });

  const THREE: readonly WeekSession[] = [
    { day: 0, minutes: 40, ground: 'grass' },
    { day: 2, minutes: 40, ground: 'carpet' },
    { day: 4, minutes: 40, ground: 'grass' },
  ];
  const plan = (costs: readonly ErrorCost[], more: Partial<WeekQuestion> = {}) =>
    planWeek({ costs, sessions: THREE, drills: PUTTING_DRILLS, reading: READING, seed: 1, ...more });

  it('leaves no time at the end of the week that a drill could have had without breaking a rule', () => {
    fc.assert(
      fc.property(anyQuestion(), (question) => {
        const { sessions, shares } = planWeek(question);
        const last = sessions[sessions.length - 1];
        const left = last.minutes - total(last.items);
        const given = minutesByError(sessions);
        const worth = (error: string): number =>
          question.costs.find((one) => one.error === error)?.saved.value ?? Number.NaN;
        for (const drill of PUTTING_DRILLS) {
          if (drill.minutes > left || ![last.ground, 'both'].includes(drill.ground)) continue;
          if (last.items.some(({ activity }) => activity === drill.id)) continue;
          const { trains, minutes } = drill;
          // A drill for all three keeps every order: none may be left over.
          if (trains === 'mixed') expect.fail(`${drill.id} would have fitted in`);
          else if (shares.some(({ error, share }) => error === trains && share > 0))
            expect(
              WEEK_ERRORS.some(
                (other) => worth(other) > worth(trains) && given[trains] + minutes > given[other],
              ),
              drill.id,
            ).toBe(true);
        }
      }),
    );
  });

  it('does no drill more than twice in three sessions', () => {
    for (let seed = 0; seed < 60; seed++) {
      const { sessions } = plan([cost('line', 0.2), cost('pace', 0.25), cost('read', 0.21)], { seed });
      const drills = sessions.flatMap(({ items }) => items).filter(({ kind }) => kind === 'drill');
      for (const { activity } of drills)
        expect(drills.filter((other) => other.activity === activity).length).toBeLessThanOrEqual(2);
    }
  });

  it('spends most on an error that alone costs, whichever it is', () => {
    for (const error of WEEK_ERRORS) {
      const minutes = minutesByError(
        plan(WEEK_ERRORS.map((one) => cost(one, one === error ? 0.4 : 0.02))).sessions,
      );
      for (const other of WEEK_ERRORS)
        if (other !== error) expect(minutes[error]).toBeGreaterThan(minutes[other]);
    }
  });

  it('has one set of choosing paces where the best pace saves strokes, and none otherwise', () => {
    const sets = (choosePace: boolean): number =>
      plan([cost('line', 0.1), cost('pace', 0.2), cost('read', 0.3)], { choosePace }).sessions.flatMap(
        ({ items }) => items.filter(({ trains }) => trains === 'choice'),
      ).length;
    expect([sets(true), sets(false)]).toEqual([1, 0]);
  });

  it('leaves sessions alone that are to stay, and plans the others round them', () => {
    const costs = [cost('line', 0.1), cost('pace', 0.2), cost('read', 0.3)];
    const first = plan(costs);
    const again = planWeek({
      costs,
      sessions: [THREE[0], { ...THREE[1], minutes: 20 }, THREE[2]],
      drills: PUTTING_DRILLS,
      reading: READING,
      seed: 2,
      kept: new Map([0, 2].map((i) => [i, first.sessions[i].items])),
    });
    const names = (items: readonly { readonly activity: string }[]): string[] =>
      items.map(({ activity }) => activity).sort();
    for (const i of [0, 2]) expect(names(again.sessions[i].items)).toEqual(names(first.sessions[i].items));
    expect(total(again.sessions[1].items)).toBeLessThanOrEqual(20);
  });

  it('says which drills train the same on the same ground in the time there is', () => {
    const instead = drillsInstead(PUTTING_DRILLS, { trains: 'line', ground: 'carpet', minutes: 8 });
    expect(instead.map(({ id }) => id).sort()).toEqual(['carpet-gate', 'carpet-gate-run', 'start-gate']);
  });

  it('refuses a session outside the week, or of a length nobody practises', () => {
    const session =
      (change: Partial<WeekSession>): (() => unknown) =>
      () =>
        plan([cost('line', 1)], { sessions: [{ ...THREE[0], ...change }] });
    expect(session({ day: 7 })).toThrow(/expected a whole number from 0 to 6/);
    expect(session({ minutes: 5 })).toThrow(/expected 10 to 120/);
    expect(() => plan([cost('line', 1)], { sessions: [] })).toThrow(/Got no sessions/);
  });
});
