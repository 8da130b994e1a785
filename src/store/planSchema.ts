/**
 * The shape of a kept plan of a week, checked strictly whenever one is loaded or written. Answers for: shape and limits. Leaves out:
 * where it is kept (plans.ts), what changes it (state/plans/plan.ts), how it is made (sim/training/week-plan.ts).
 * Days are the device's, YYYY-MM-DD; lengths m; minutes whole. The plan in hand is the one with the latest `madeAt`.
 */
import * as z from 'zod';
import { SESSION_MINUTES, STEPS, TRAINED, WEEK_ERRORS } from '../../sim/index.ts';
import { carried, count, daySchema, GROUNDS, idSchema, momentSchema, speed } from './recordSchema.ts';

/** Of a plan: with the id of an item behind it, it must still be an id of a record (planScores.ts). */
const planId = idSchema.max(36);
/** Of a session or an item, unique in its plan. */
const place = z
  .string()
  .min(1)
  .max(20)
  .refine((text) => carried(text) && text === text.trim(), 'expected whole characters without blanks around');
const words = (most: number) =>
  z.string().min(1).max(most).refine(carried, 'expected whole characters, and none that is zero');
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
  z.strictObject({ cannot: words(400) }),
]);

/** Drills and sets come and go with versions of the page: the gate asks for no name that is known here. */
const itemSchema = z.strictObject({
  id: place,
  kind: z.enum(['drill', 'reading']),
  activity: words(60),
  trains: z.enum([...TRAINED, 'choice']),
  minutes: z.number().int().min(1).max(60),
  why: z.enum(['dearest', 'together', 'next', 'all', 'choice']),
  expected: expectedSchema.optional(),
  doneOn: daySchema.optional(),
  score: count.optional(),
});

const sessionSchema = z.strictObject({
  id: place,
  day: daySchema,
  minutes: z.number().int().min(SESSION_MINUTES.min).max(SESSION_MINUTES.max),
  ground: z.enum(GROUNDS),
  items: z.array(itemSchema).max(20),
});

/** A plan as it was kept outside the records once, without its moment (state/plans/takeOver.ts). */
export const oldPlanSchema = z.strictObject({
  id: planId,
  madeOn: daySchema,
  /** First day of the week. */
  start: daySchema,
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
      session: place,
      item: place,
      againOn: daySchema,
      again: z.strictObject({ day: daySchema, score: count }).optional(),
    })
    .optional(),
});

export const planSchema = oldPlanSchema.extend({
  /** ms since 1970; later than that of every plan made before it on the device, whatever clocks say. */
  madeAt: momentSchema,
});

export type Expected = Readonly<z.infer<typeof expectedSchema>>;
export type OldPlan = Readonly<z.infer<typeof oldPlanSchema>>;
export type Plan = Readonly<z.infer<typeof planSchema>>;
export type PlanSession = Plan['sessions'][number];
export type PlanItem = PlanSession['items'][number];
