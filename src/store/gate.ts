/**
 * The one gate: everything read from or written to the device, or out of a file, passes it. Leaves out: the shapes (schema.ts,
 * recordSchema.ts).
 */
import type * as z from 'zod';

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

/** Those that pass, and how many do not. */
export const passAll = <Kept>(
  schema: z.ZodType<Kept>,
  found: readonly unknown[],
): { readonly kept: Kept[]; readonly unreadable: number } => {
  const kept: Kept[] = [];
  for (const one of found) {
    const result = pass(schema, one);
    if (result.ok) kept.push(result.kept);
  }
  return { kept, unreadable: found.length - kept.length };
};
