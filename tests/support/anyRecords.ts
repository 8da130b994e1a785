/**
 * Any records the gate lets pass, for fast-check. Rounds as the app writes them: strokes of a hole numbered from 1. Leaves out: fields (drawn
 * from the shapes: anyOfSchema.ts).
 */
import fc from 'fast-check';
import { type PracticeSet, READ_TASKS, type RecordedPutt, type RecordedRound } from '../../sim/index.ts';
import { type AnyMeasured, type KeptMeasurement, toKeep } from '../../src/store/measurementSchema.ts';
import type { Plan } from '../../src/store/planSchema.ts';
import {
  drillResultSchema,
  GROUNDS,
  type KeptResult,
  practiceSchema,
  puttSchema,
  roundSchema,
} from '../../src/store/recordSchema.ts';
import type { RecordsNow } from '../../src/store/recordsNow.ts';
import type { KeptAnswer, KeptSet } from '../../src/store/schema.ts';
import {
  type AnyRecord,
  type RecordOf,
  TABLE_NAMES,
  TABLES,
  type TableName,
} from '../../src/store/tables.ts';
import { anyDay, anyName, anyOfSchema, tidy } from './anyOfSchema.ts';
import { nowWith } from './imports.ts';
import { answer, set } from './sampleSet.ts';
import { samplePlan } from './weekPlan.ts';

const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
const oneOf = <Value>(values: readonly Value[]) => fc.constantFrom(...values);
const name = anyName.filter((text) => roundSchema.shape.course.safeParse(text).success && text !== '');
const moment = fc.oneof(fc.integer({ min: 0, max: 2e12 }), fc.constantFrom(0, 253_402_300_799_999));
const day = anyDay;

/** Of a record that gets its own place later. */
const anywhere = fc.constant('x'.repeat(8));
const puttBody = anyOfSchema<RecordedPutt>(puttSchema, {
  given: { id: anywhere, roundId: anywhere, hole: fc.constant(1), stroke: fc.constant(1) },
  mend: ({ miss, ...putt }) => {
    const holed = putt.holed && putt.kind !== 'conceded';
    return holed || putt.kind === 'conceded'
      ? { ...putt, holed }
      : { ...putt, holed, miss: miss ?? { leave: 1 } };
  },
});
const roundBody = anyOfSchema<RecordedRound>(roundSchema, {
  given: {
    id: anywhere,
    endedAt: moment,
    withoutPutt: fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 4 }),
  },
});

/** A round and putts for some of its holes; ids end in the number given, so that several rounds go together. */
const anyRound = (number: number): fc.Arbitrary<{ round: RecordedRound; putts: RecordedPutt[] }> =>
  fc
    .tuple(
      fc.oneof(fc.constant('round-'), fc.constantFrom('=round-', '"round,-', "'+round-", '__proto__')),
      roundBody,
      fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.array(puttBody, { minLength: 1, maxLength: 3 })), {
        maxLength: 4,
      }),
    )
    .map(([prefix, body, holes]) => {
      const id = `${prefix}${String(number).padStart(3, '0')}`;
      const played = [...new Map(holes)];
      return {
        round: { ...body, id },
        putts: played.flatMap(([hole, putts]) =>
          putts.map((putt, index) => ({
            ...putt,
            id: `${id}-${hole}-${index + 1}`,
            roundId: id,
            hole,
            stroke: index + 1,
          })),
        ),
      };
    });

/** One answer of each kind of question. */
const answerOf = {
  aim: (number: number, value: number): KeptAnswer => answer(number, value),
  paces: (number: number, value: number): KeptAnswer => ({
    kind: 'paces',
    number,
    chosen: value < 0 ? 'die' : 'firm',
    answeredAt: number,
    ...(number === 2 ? {} : { putts: { die: 1.5, firm: 1.5 + Math.abs(value) / 10 } }),
  }),
  slope: (number: number, value: number): KeptAnswer => ({
    kind: 'slope',
    number,
    // The smallest numbers divided come to minus zero.
    total: Math.abs(value) / 20,
    along: value / 20 + 0,
    answeredAt: number,
  }),
};

const anySet = (number: number): fc.Arbitrary<KeptSet> =>
  fc
    .record({
      startedAt: moment,
      day,
      drillName: name,
      kind: oneOf(READ_TASKS),
      feedback: oneOf(['each', 'end'] as const),
      // An adaptive set has not all of its questions yet.
      size: fc.integer({ min: 3, max: 10 }),
      answered: fc.subarray([1, 2, 3]),
      value: fc.double({ min: -3, max: 3, noNaN: true }),
    })
    .map(({ answered, value, kind, ...body }) =>
      set({
        ...body,
        kind,
        id: `set-${String(number).padStart(4, '0')}`,
        questions: set().questions.map((question) => ({
          ...question,
          ...(kind === 'paces' ? { firmPace: 0.75 } : {}),
        })),
        // Minus zero does not survive JSON, nor does it say anything else than zero.
        answers: answered.map((one) => answerOf[kind](one, value + 0)),
      }),
    );

const some = <Value>(of: (number: number) => fc.Arbitrary<Value>, most: number): fc.Arbitrary<Value[]> =>
  fc
    .integer({ min: 0, max: most })
    .chain((count) =>
      count === 0
        ? fc.constant([])
        : fc.tuple(...Array.from({ length: count }, (_unused, index) => of(index))),
    ) as fc.Arbitrary<Value[]>;

export const anyPractice = (number: number): fc.Arbitrary<PracticeSet> =>
  anyOfSchema<PracticeSet>(practiceSchema, {
    given: {
      id: fc.constant(`practice-${number}`),
      // Counts that fit together are drawn rarely.
      misses: maybe(
        fc
          .record({ high: maybe(fc.constant(0)), low: fc.constant(0), past: maybe(fc.constant(0)) })
          .map(tidy),
      ),
    },
    mend: (set) => ({ ...set, holed: Math.min(set.holed, set.attempts) }),
  });

const anyResult = (number: number): fc.Arbitrary<KeptResult> =>
  anyOfSchema<KeptResult>(drillResultSchema, {
    given: {
      id: fc.constant(`drill-result-${number}`),
      drillId: fc.constantFrom('start-gate', 'constructor', 'no-longer-there'),
    },
  });

const size = fc.double({ min: 0, max: 60, noNaN: true });
/** Ends that are not known stand for infinite ones, as the engine gives them. */
const ends = fc
  .record({
    value: size,
    low: fc.oneof(size, fc.constant(-Infinity)),
    high: fc.oneof(size, fc.constant(Infinity)),
  })
  .map((one) => ({ ...one, low: one.low + 0 }));
const count = fc.integer({ min: 0, max: 60 });
const way = fc.constantFrom('there' as const, 'back' as const);
const spread = fc.record({ sd: ends, bias: ends, count });
const speed = fc.record({
  greenSpeed: ends,
  slope: maybe(ends),
  readings: fc.record({ there: size, back: size }, { requiredKeys: [] }),
  rolls: count,
  scatter: size,
  marginWithTwoMore: fc.oneof(size, fc.constant(Infinity)),
  marginAtBest: size,
});
const pairs = fc.array(fc.record({ facing: size, turned: size }), { maxLength: 3 });
const ground = oneOf(GROUNDS);

/** Anything the measuring screen could give, infinite ends and all. */
export const anyMeasured: fc.Arbitrary<AnyMeasured> = fc.oneof(
  fc.record({
    day,
    ground,
    by: fc.constant('timedRolls' as const),
    rolls: fc.array(fc.record({ way, distance: size, seconds: size }), { maxLength: 3 }),
    result: speed,
  }),
  fc.record({
    day,
    ground,
    by: fc.constant('rampRolls' as const),
    height: size,
    rolls: fc.array(fc.record({ way, distance: size }), { maxLength: 3 }),
    result: speed,
  }),
  fc.record({
    day,
    ground,
    by: fc.constant('level' as const),
    pairs,
    result: fc.record({ slope: ends, zeroError: size, pairs: count, scatter: size }),
  }),
  fc.record({
    day,
    ground,
    by: fc.constant('levelBothWays' as const),
    forwards: pairs,
    left: pairs,
    result: fc.record({
      slope: ends,
      uphill: maybe(ends),
      forwards: ends,
      left: ends,
      pairs: count,
      scatter: size,
    }),
  }),
  fc.record({
    day,
    by: fc.constant('paceRolls' as const),
    rolls: fc.array(
      fc.record({ target: size, past: size, left: size }, { requiredKeys: ['target', 'past'] }),
      {
        maxLength: 3,
      },
    ),
    result: fc.record({ pace: spread, direction: maybe(spread), rolls: count, oneTarget: fc.boolean() }),
  }),
  fc.record({
    day,
    by: fc.constant('gates' as const),
    gates: fc.array(fc.record({ width: size, distance: size, passes: count, tries: count }), {
      minLength: 1,
      maxLength: 3,
    }),
    result: fc.record({
      value: maybe(size),
      low: size,
      high: fc.oneof(size, fc.constant(Infinity)),
      passes: count,
      tries: count,
    }),
  }),
  fc.record({
    day,
    by: fc.constant('walks' as const),
    walks: fc.array(fc.record({ length: size, steps: size }), { maxLength: 3 }),
    result: fc.record({ step: ends, walks: count }),
  }),
);

const anyMeasurement = (number: number): fc.Arbitrary<KeptMeasurement> =>
  fc
    .tuple(anyMeasured, moment)
    .map(([measured, recordedAt]) => toKeep(measured, { id: `measurement-${number}`, recordedAt }));

/** A plan that the screen made, with days, ticks and scores of any kind. */
const anyPlan = (number: number): fc.Arbitrary<Plan> =>
  fc
    .record({ madeAt: moment, day, score: maybe(fc.integer({ min: 0, max: 1000 })), words: name })
    .map(({ madeAt, day: start, score, words }) => {
      const plan = samplePlan({ id: `plan-of-a-week-${number}`, madeAt });
      return {
        ...plan,
        start,
        sessions: plan.sessions.map((session) => ({
          ...session,
          items: session.items.map((item) =>
            tidy({
              ...item,
              doneOn: score === undefined ? undefined : start,
              score,
              expected: { cannot: words },
            }),
          ),
        })),
      };
    });

type Makers = { readonly [Table in TableName]?: (number: number) => fc.Arbitrary<RecordOf[Table]> };
/** Tables whose records must fit together, or are more than fields; any other is drawn from its shape. */
const MAKERS: Makers = {
  practice: anyPractice,
  readSets: anySet,
  drillResults: anyResult,
  measurements: anyMeasurement,
  plans: anyPlan,
};

const anyTable = (table: TableName): fc.Arbitrary<AnyRecord[]> =>
  some<AnyRecord>(
    MAKERS[table] ??
      ((number) =>
        anyOfSchema<AnyRecord>(TABLES[table].schema, {
          given: { id: fc.constant(`${table}-number-${number}`) },
        })),
    3,
  );

/** A database in which every round has ended. */
export const anyRecords: fc.Arbitrary<RecordsNow> = fc
  .tuple(
    some(anyRound, 4),
    fc.record(
      Object.fromEntries(
        TABLE_NAMES.filter((table) => table !== 'rounds' && table !== 'putts').map((table) => [
          table,
          anyTable(table),
        ]),
      ),
    ),
  )
  .map(([rounds, others]) =>
    nowWith({
      ...others,
      rounds: rounds.map(({ round }) => round),
      putts: rounds.flatMap(({ putts }) => putts),
    }),
  );
