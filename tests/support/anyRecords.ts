/**
 * Any records the gate lets pass, for fast-check: every field at the ends of its range, names that files and spreadsheets find
 * hard. Rounds as the app writes them: strokes of a hole numbered from 1.
 */
import fc from 'fast-check';
import { type PracticeSet, READ_TASKS, type RecordedPutt, type RecordedRound } from '../../sim/index.ts';
import { type AnyMeasured, type KeptMeasurement, toKeep } from '../../src/store/measurementSchema.ts';
import type { Plan } from '../../src/store/planSchema.ts';
import {
  BREAK_WAYS,
  CLIMBS,
  GROUNDS,
  type KeptResult,
  LONGEST_PUTT,
  MISS_REACHES,
  MISS_SIDES,
  PACES_MEANT,
  PUTT_KINDS,
  practiceSchema,
  puttSchema,
  roundSchema,
  SHORTEST_PUTT,
  SLOPES_FELT,
} from '../../src/store/recordSchema.ts';
import type { RecordsNow } from '../../src/store/recordsNow.ts';
import { noRecords } from '../../src/store/recordsNow.ts';
import type { KeptAnswer, KeptSet } from '../../src/store/schema.ts';
import { answer, set } from './sampleSet.ts';
import { samplePlan } from './weekPlan.ts';

/** Names that break a careless writer: quotes, delimiters, line ends, formulas, markup, other scripts, prototype names. */
const HARD_NAMES = [
  '=1+1',
  "'=1+1",
  "''=x",
  "'t Zand",
  '+49 30',
  '-3',
  '@sum',
  'a, b; c\td',
  'two\nlines',
  'two\r\nlines',
  'a "quoted" name',
  '"',
  '<img src=x onerror=alert(1)>',
  '__proto__',
  'constructor',
  'Größe 北京 🏌️',
  '3,2',
  '0012',
  'null',
  '\ufeffmark inside? \ufeff!',
];
const name = fc
  .oneof(fc.constantFrom(...HARD_NAMES), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }))
  .map((text) => text.trim().slice(0, 80))
  .filter((text) => roundSchema.shape.course.safeParse(text).success && text !== '');
const moment = fc.oneof(fc.integer({ min: 0, max: 2e12 }), fc.constantFrom(0, 253_402_300_799_999));
const day = fc
  .date({ min: new Date('0001-01-01'), max: new Date('9999-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));
const length = fc.oneof(
  fc.double({ min: SHORTEST_PUTT, max: LONGEST_PUTT, noNaN: true }),
  fc.constantFrom(SHORTEST_PUTT, LONGEST_PUTT, 0.3048 * 3, 0.1 + 0.2),
);
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
const oneOf = <Value>(values: readonly Value[]) => fc.constantFrom(...values);

const tidy = <Kept extends object>(record: Kept): Kept =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Kept;

const puttBody = fc
  .record({
    kind: oneOf(PUTT_KINDS),
    distance: length,
    climb: maybe(oneOf(CLIMBS)),
    breaks: maybe(oneOf(BREAK_WAYS)),
    slopeFelt: maybe(oneOf(SLOPES_FELT)),
    paceMeant: maybe(oneOf(PACES_MEANT)),
    startedAsMeant: maybe(fc.boolean()),
    paceAsMeant: maybe(fc.boolean()),
    holed: fc.boolean(),
    miss: fc
      .record({ side: maybe(oneOf(MISS_SIDES)), reach: maybe(oneOf(MISS_REACHES)), leave: length })
      .map(tidy),
    recordedAt: moment,
  })
  .map((putt) => {
    const holed = putt.holed && putt.kind !== 'conceded';
    return tidy({ ...putt, holed, miss: holed || putt.kind === 'conceded' ? undefined : putt.miss });
  })
  .filter(
    (putt) =>
      puttSchema.safeParse({ ...putt, id: 'x'.repeat(8), roundId: 'y'.repeat(8), hole: 1, stroke: 1 })
        .success,
  );

const roundBody = fc
  .record({
    day,
    startedAt: moment,
    endedAt: moment,
    holes: fc.constantFrom(9 as const, 18 as const),
    course: maybe(name),
    greenSpeed: maybe(fc.double({ min: 0.5, max: 6, noNaN: true })),
    withoutPutt: fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 4 }),
  })
  .map(tidy);

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
        round: { id, ...body },
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

const practiceBody = fc
  .record({
    day,
    recordedAt: moment,
    distance: length,
    attempts: fc.integer({ min: 1, max: 1000 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    misses: maybe(
      fc.record({ high: maybe(fc.constant(0)), low: fc.constant(0), past: maybe(fc.constant(0)) }).map(tidy),
    ),
    climb: maybe(oneOf(CLIMBS)),
    breaks: maybe(oneOf(BREAK_WAYS)),
    ground: oneOf(GROUNDS),
    note: maybe(name),
  })
  .map(({ share, ...body }) => tidy({ ...body, holed: Math.floor(share * body.attempts) }))
  .filter((body) => practiceSchema.safeParse({ id: 'x'.repeat(8), ...body }).success);

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
    total: Math.abs(value) / 20,
    along: value / 20,
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

const byId = <Kept extends { readonly id: string }>(records: readonly Kept[]): Map<string, Kept> =>
  new Map(records.map((record) => [record.id, record]));

export const anyPractice = (number: number): fc.Arbitrary<PracticeSet> =>
  practiceBody.map((body) => ({ id: `practice-${number}`, ...body }));

const anyResult = (number: number): fc.Arbitrary<KeptResult> =>
  fc
    .record({
      day,
      recordedAt: moment,
      drillId: fc.constantFrom('start-gate', 'constructor', 'no-longer-there'),
      version: fc.integer({ min: 1, max: 99 }),
      ground: oneOf(GROUNDS),
      greenSpeed: maybe(fc.double({ min: 0.5, max: 6, noNaN: true })),
      score: fc.integer({ min: 0, max: 1000 }),
      note: maybe(name),
    })
    .map((body) => tidy({ id: `drill-result-${number}`, ...body }));

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

/** A database in which every round has ended. */
export const anyRecords: fc.Arbitrary<RecordsNow> = fc
  .tuple(
    some(anyRound, 4),
    some(anyPractice, 3),
    some(anySet, 2),
    some(anyResult, 2),
    some(anyMeasurement, 3),
    some(anyPlan, 2),
  )
  .map(([rounds, practice, sets, results, measurements, plans]) => ({
    ...noRecords(),
    rounds: byId(rounds.map(({ round }) => round)),
    putts: byId(rounds.flatMap(({ putts }) => putts)),
    practice: byId(practice),
    readSets: byId(sets),
    drillResults: byId(results),
    measurements: byId(measurements),
    plans: byId(plans),
  }));
