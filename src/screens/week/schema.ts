/**
 * The shape of a kept plan, checked strictly whenever one is loaded. Answers for: shape and limits. Leaves out: where it is kept
 * (kept.ts), what changes it (plan.ts). Days are the device's, YYYY-MM-DD; lengths m; minutes whole.
 */
import * as z from 'zod';
import { SESSION_MINUTES, STEPS, TRAINED, WEEK_ERRORS } from '../../../sim/index.ts';

/** No compiled checks: the page's content policy forbids making code from text, and asking for it logs an error. */
z.config({ jitless: true });

const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .refine((text) => !Number.isNaN(Date.parse(`${text}T00:00:00Z`)), 'expected a day of the calendar');
const id = z.string().min(1).max(60);
const score = z.number().int().min(0).max(1000);
const finite = z.number();

/** What the engine expects of a drill, or why it cannot say. */
const expectedSchema = z.union([
  z.strictObject({
    mean: finite,
    low: finite,
    high: finite,
    sd: z.number().min(0),
    /** A score as good as this passes, and the chance of it now. */
    mark: finite,
    chance: z.number().min(0).max(1),
    /** Repetitions that tell a step of improvement; left out: more than can be counted. */
    repetitions: z.number().int().min(1).optional(),
  }),
  z.strictObject({ cannot: z.string().min(1).max(400) }),
]);

const itemSchema = z.strictObject({
  id,
  kind: z.enum(['drill', 'reading']),
  activity: z.string().min(1).max(60),
  trains: z.enum([...TRAINED, 'choice']),
  minutes: z.number().int().min(1).max(60),
  why: z.enum(['dearest', 'together', 'next', 'all', 'choice']),
  expected: expectedSchema.optional(),
  doneOn: day.optional(),
  score: score.optional(),
});

const sessionSchema = z.strictObject({
  id,
  day,
  minutes: z.number().int().min(SESSION_MINUTES.min).max(SESSION_MINUTES.max),
  ground: z.enum(['grass', 'carpet']),
  items: z.array(itemSchema).max(20),
});

const speed = z.number().min(0.5).max(6);

const planSchema = z.strictObject({
  id,
  madeOn: day,
  /** First day of the week. */
  start: day,
  /** Goes up with every change: a calendar takes the newest. */
  revision: z.number().int().min(0),
  costs: z
    .array(
      z.strictObject({
        error: z.enum(WEEK_ERRORS),
        step: z.enum(STEPS),
        saved: z.strictObject({ value: finite, low: finite, high: finite }),
      }),
    )
    .length(WEEK_ERRORS.length),
  choosePace: z.boolean(),
  /** Whose record the first putts were taken from, and how much of them is its own. */
  source: z.enum(['own', 'demo']),
  holes: z.number().int().min(0),
  own: z.number().min(0).max(1),
  grass: z.strictObject({ greenSpeed: speed, slope: z.number().min(0).max(0.1) }),
  carpet: z.strictObject({ greenSpeed: speed }),
  sessions: z.array(sessionSchema).min(1).max(3),
  test: z
    .strictObject({
      session: id,
      item: id,
      againOn: day,
      again: z.strictObject({ day, score }).optional(),
    })
    .optional(),
});

/** Earlier plans kept. */
export const MOST_EARLIER = 52;

export const keptPlansSchema = z.strictObject({
  version: z.literal(1),
  current: planSchema.optional(),
  /** Newest first. */
  earlier: z.array(planSchema).max(MOST_EARLIER),
});

export type Expected = Readonly<z.infer<typeof expectedSchema>>;
export type Plan = Readonly<z.infer<typeof planSchema>>;
export type PlanSession = Plan['sessions'][number];
export type PlanItem = PlanSession['items'][number];
export type KeptPlans = Readonly<z.infer<typeof keptPlansSchema>>;
