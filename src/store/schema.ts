/**
 * The shape of every read set kept on this device, strict: nothing passes in either direction that is not written here.
 * SI units, times in milliseconds since 1970. Leaves out: where records are kept (database.ts).
 */
import * as z from 'zod';
import type { Question } from '../../sim/index.ts';
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
}) satisfies z.ZodType<Question>;

const answerSchema = z.strictObject({
  /** Of the question it answers. */
  number: z.number().int().min(1).max(100),
  /** m, positive left. */
  aim: metres,
  answeredAt: momentSchema,
  /** Chances of holing from this aim and the true one; absent until worked out. */
  holedAtAim: share.optional(),
  holedAtTrue: share.optional(),
});

export const readSetSchema = z
  .strictObject({
    id: z.string().min(8).max(64),
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
      answers.every(({ number }) => questions.some((question) => question.number === number)) &&
      new Set(answers.map(({ number }) => number)).size === answers.length,
    'expected each answer to belong to one question, and each question to have one answer at most',
  );

export type KeptAnswer = Readonly<z.infer<typeof answerSchema>>;
export type KeptSet = Readonly<z.infer<typeof readSetSchema>>;

export const isFinished = (set: KeptSet): boolean => set.answers.length === set.questions.length;
