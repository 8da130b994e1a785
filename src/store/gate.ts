/** The one gate: everything read from or written to the device passes it. Leaves out: the shapes (schema.ts). */
import { type KeptSet, readSetSchema } from './schema.ts';

export type Passed =
  | { readonly ok: true; readonly set: KeptSet }
  | { readonly ok: false; readonly problem: string };

/** A record as found, judged; never throws. */
export const passSet = (found: unknown): Passed => {
  const result = readSetSchema.safeParse(found);
  if (result.success) return { ok: true, set: result.data };
  const [first] = result.error.issues;
  const place = first.path.length > 0 ? first.path.join('.') : 'the record';
  return { ok: false, problem: `${place}: ${first.message}` };
};

/**
 * Two versions of one set made one: every answer of both, the first given wins, and what it cost is added when known.
 * Two open tabs, or a write that failed and is made good later, then lose nothing.
 */
export const mergeSets = (kept: KeptSet, later: KeptSet): KeptSet => {
  const answers = new Map(kept.answers.map((answer) => [answer.number, answer]));
  for (const answer of later.answers) {
    const before = answers.get(answer.number);
    if (before === undefined) answers.set(answer.number, answer);
    else if (before.holedAtAim === undefined && before.aim === answer.aim) answers.set(answer.number, answer);
  }
  return { ...kept, answers: [...answers.values()].sort((a, b) => a.number - b.number) };
};
