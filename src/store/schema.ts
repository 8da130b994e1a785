/**
 * The shape of every read set kept on this device, strict: nothing passes in either direction that is not written here.
 * SI units, times in milliseconds since 1970. Leaves out: where records are kept (database.ts).
 * A set holds questions of one kind. aim: where does one aim at the called pace; paces: die or firm; slope: how steep is it.
 * An adaptive set grows while it is answered: it has fewer questions than its size until the last one is asked.
 */
import * as z from 'zod';
import { type Question, READ_TASKS } from '../../sim/index.ts';
import { daySchema, momentSchema } from './recordSchema.ts';

const metres = z.number().min(-1000).max(1000);
const share = z.number().min(0).max(1);
const point = z.strictObject({ x: metres, y: metres });

const questionSchema = z.strictObject({
  number: z.number().int().min(1).max(100),
  group: z.number().int().min(0).max(100),
  ground: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('plane'), slope: z.number().min(0).max(0.15), downhill: z.number() }),
    z.strictObject({ kind: z.literal('green'), seed: z.string().min(1).max(200) }),
  ]),
  ball: point,
  hole: point,
  greenSpeed: z.number().min(0.5).max(10),
  pace: z.number().min(0).max(3),
  length: z.number().min(0.1).max(100),
  slope: share,
  trueAim: metres,
  direction: z.enum(['leftToRight', 'rightToLeft', 'straight']),
  climb: z.enum(['up', 'down', 'level']),
  steepness: z.enum(['gentle', 'steep']),
  /** Aims that count as a hit; absent on questions of before. */
  hitAims: z.strictObject({ low: metres, high: metres }).optional(),
  /** The firmer of the two paces, where the question is which one. */
  firmPace: z.number().min(0).max(3).optional(),
}) satisfies z.ZodType<Question>;

/** Of the question it answers. */
const number = z.number().int().min(1).max(100);
/** Putts to hole out, on average. */
const putts = z.number().min(1).max(20);

const answerSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('aim'),
    number,
    /** m, positive left. */
    aim: metres,
    answeredAt: momentSchema,
    /** Chances of holing from this aim and the true one; absent until worked out. */
    holedAtAim: share.optional(),
    holedAtTrue: share.optional(),
  }),
  z.strictObject({
    kind: z.literal('paces'),
    number,
    chosen: z.enum(['die', 'firm']),
    answeredAt: momentSchema,
    /** Expected putts at each pace, with the player's errors of that day; absent until worked out. */
    putts: z.strictObject({ die: putts, firm: putts }).optional(),
  }),
  z.strictObject({
    kind: z.literal('slope'),
    number,
    /** Rise over run: of the ground as a whole, and along the line, positive uphill. */
    total: z.number().min(0).max(0.2),
    along: z.number().min(-0.2).max(0.2),
    answeredAt: momentSchema,
  }),
]);

export const readSetSchema = z
  .strictObject({
    id: z.string().min(8).max(64),
    kind: z.enum(READ_TASKS),
    /** When the truth is shown: after each question, or at the end. */
    feedback: z.enum(['each', 'end']),
    /** Questions of the whole set. */
    size: z.number().int().min(1).max(100),
    drillId: z.string().min(1).max(64),
    /** Kept beside the id, so that a set can be named when its drill is gone. */
    drillName: z.string().min(1).max(80),
    seed: z.string().min(1).max(64),
    startedAt: momentSchema,
    /** Calendar day it was begun on. */
    day: daySchema,
    questions: z.array(questionSchema).min(1).max(100),
    answers: z.array(answerSchema).max(100),
  })
  .refine(
    ({ questions, answers }) =>
      answers.every((answer) => questions.some((question) => question.number === answer.number)) &&
      new Set(answers.map((answer) => answer.number)).size === answers.length,
    'expected each answer to belong to one question, and each question to have one answer at most',
  )
  .refine(({ kind, answers }) => answers.every((answer) => answer.kind === kind), {
    path: ['answers'],
    error: 'expected answers of the same kind as the set',
  })
  .refine(({ size, questions }) => questions.length <= size, {
    path: ['size'],
    error: 'expected at least as many as there are questions',
  })
  .refine(
    ({ kind, questions }) => kind !== 'paces' || questions.every(({ firmPace }) => firmPace !== undefined),
    {
      path: ['questions'],
      error: 'expected two paces where the question is which one',
    },
  );

export type KeptAnswer = Readonly<z.infer<typeof answerSchema>>;
export type KeptAnswerOf<Kind extends KeptAnswer['kind']> = Extract<KeptAnswer, { readonly kind: Kind }>;
export type KeptSet = Readonly<z.infer<typeof readSetSchema>>;

export const isFinished = ({ answers, size }: KeptSet): boolean => answers.length >= size;

/** Answers of a kind with their questions, in the order of the set. */
export const answeredOf = <Kind extends KeptAnswer['kind']>(
  { questions, answers }: KeptSet,
  kind: Kind,
): (KeptAnswerOf<Kind> & { readonly question: Question })[] =>
  answers.flatMap((answer) => {
    const question = questions.find((one) => one.number === answer.number);
    return question === undefined || answer.kind !== kind
      ? []
      : [{ ...(answer as KeptAnswerOf<Kind>), question }];
  });
