/**
 * What narrowed a preset's family, as settings keep it: days and figures of gates, balls to targets and slopes named, so that it is worked out
 * anew each time. Answers for: the gate for what is found in storage, when two sittings are one. Leaves out: Bayes' rule (sim/costs).
 */
import * as z from 'zod';
import { BALL_RADIUS, type Sitting } from '../../sim/index.ts';
import { same } from '../store/same.ts';

/** More than anybody does. */
const MOST_SITTINGS = 50;
const MOST_RESULTS = 200;
/** No slope and no distance is off by more, and no gate is farther or wider, share, rise over run and m. */
const MOST_OFF = 3;
const FARTHEST = 30;

const some = <Shape extends z.ZodType>(shape: Shape) => z.array(shape).min(1).max(MOST_RESULTS);
const slope = z.number().min(-1).max(1);

const resultSchema = z.discriminatedUnion('kind', [
  z
    .object({
      kind: z.literal('gate'),
      width: z
        .number()
        .min(2 * BALL_RADIUS + 1e-6)
        .max(FARTHEST),
      distance: z.number().min(1e-3).max(FARTHEST),
      passed: z.number().min(0),
      tries: z.number().min(1).max(1e4),
    })
    .refine(({ passed, tries }) => passed <= tries),
  z.object({ kind: z.literal('ladder'), errors: some(z.number().min(-MOST_OFF).max(MOST_OFF)) }),
  z.object({ kind: z.literal('readingSet'), slopes: some(z.object({ named: slope, true: slope })) }),
]);
/** All of it or nothing: half a measurement is none. */
const sittingSchema = z.object({
  day: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  results: some(resultSchema),
});

/** What can be read of it; a sitting of which anything cannot be read is left out. */
export const sittingsOf = (value: unknown): Sitting[] => {
  const { data = [] } = some(z.unknown()).safeParse(value);
  return data.slice(0, MOST_SITTINGS).flatMap((one) => sittingSchema.safeParse(one).data ?? []);
};

/** The same figures of the same day: a measurement is kept once a day, and counts once. */
export const sameSitting = (one: Sitting, other: Sitting): boolean => same(one, other);

/**
 * Whether one stands in the place of another: balls counted on the same day, corrected or gone on with since. Counted twice they would
 * narrow twice. Every set of slopes is its own.
 */
export const replaces = (one: Sitting, other: Sitting): boolean => {
  const [kind] = one.results.map((result) => result.kind);
  return (
    one.day === other.day && kind !== 'readingSet' && other.results.some((result) => result.kind === kind)
  );
};
