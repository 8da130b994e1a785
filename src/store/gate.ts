/**
 * The one gate: everything read from or written to the device, or out of a file, passes it. Leaves out: the shapes (schema.ts,
 * recordSchema.ts).
 * A putt takes zod about 5 microseconds (half a second for 100,000, Node 20, 2026-11-29), without code made from text, which the page's
 * content policy forbids. Closures made of the schema's own description took a third of that; they went, because whatever judges many
 * records does so in slices, and no page waits for them.
 */
import type * as z from 'zod';
import { atOnce, each, type Work } from './work.ts';

export type Passed<Kept> =
  | { readonly ok: true; readonly kept: Kept }
  | { readonly ok: false; readonly problem: string };

/** A record as found, judged; never throws. */
export const pass = <Kept>(schema: z.ZodType<Kept>, found: unknown): Passed<Kept> => {
  const result = schema.safeParse(found);
  if (result.success) return { ok: true, kept: result.data };
  const [first] = result.error.issues;
  const place = first.path.length > 0 ? first.path.join('.') : 'the record';
  return { ok: false, problem: `${place}: ${first.message}` };
};

/** A record about to be written: one that does not pass is our own mistake, and is said so before anything is touched. */
export const mustPass = <Kept>(schema: z.ZodType<Kept>, found: unknown): Kept => {
  const result = pass(schema, found);
  if (!result.ok)
    throw new Error(
      `Got a record that cannot be kept (${result.problem}), expected one made by this program.`,
    );
  return result.kept;
};

/** Those that pass, and those that do not as they were found; in pieces, because there may be a hundred thousand. */
export function* passEach<Kept>(
  schema: z.ZodType<Kept>,
  found: readonly unknown[],
  share?: readonly [number, number],
): Work<{ readonly kept: readonly Kept[]; readonly unreadable: readonly unknown[] }> {
  const kept: Kept[] = [];
  const unreadable: unknown[] = [];
  yield* each(
    found,
    (one) => {
      const result = pass(schema, one);
      if (result.ok) kept.push(result.kept);
      else unreadable.push(one);
    },
    share,
  );
  return { kept, unreadable };
}

/** A few at once: those that pass, and how many do not. */
export const passAll = <Kept>(
  schema: z.ZodType<Kept>,
  found: readonly unknown[],
): { readonly kept: readonly Kept[]; readonly unreadable: number } => {
  const { kept, unreadable } = atOnce(passEach(schema, found));
  return { kept, unreadable: unreadable.length };
};
