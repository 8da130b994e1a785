/**
 * The one gate: everything read from or written to the device, or out of a file, passes it. Leaves out: the shapes (schema.ts,
 * recordSchema.ts).
 */
import type * as z from 'zod';
import { passesQuickly } from './quickGate.ts';
import { same } from './same.ts';
import type { KeptAnswer, KeptSet } from './schema.ts';

export type Passed<Kept> =
  | { readonly ok: true; readonly kept: Kept }
  | { readonly ok: false; readonly problem: string };

/** A record as found, judged; never throws. */
export const pass = <Kept>(schema: z.ZodType<Kept>, found: unknown): Passed<Kept> => {
  if (passesQuickly(schema, found)) return { ok: true, kept: found };
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

/** Whether two versions of one set can be made one: alike but for what grows, and the same question under each number. */
export const isSameSet = (one: KeptSet, other: KeptSet): boolean =>
  same({ ...one, questions: [], answers: [] }, { ...other, questions: [], answers: [] }) &&
  one.questions.every((question) => {
    const twin = other.questions.find(({ number }) => number === question.number);
    return twin === undefined || same(twin, question);
  });

/** What was worked out after the answer was given. */
const isWorkedOut = (answer: KeptAnswer): boolean =>
  answer.kind === 'aim'
    ? answer.holedAtAim !== undefined
    : answer.kind === 'paces' && answer.putts !== undefined;

/** The same answer, whatever was worked out about it. */
const isSameAnswer = (one: KeptAnswer, other: KeptAnswer): boolean =>
  (one.kind === 'aim' && other.kind === 'aim' && one.aim === other.aim) ||
  (one.kind === 'paces' && other.kind === 'paces' && one.chosen === other.chosen);

/**
 * Two versions of one set made one: every answer of both, the first given wins, and what it cost is added when known.
 * Two open tabs, or a write that failed and is made good later, then lose nothing. An adaptive set that two tabs took different
 * ways keeps the way of the first: an answer to a question that is not in it has nothing to belong to.
 */
export const mergeSets = (kept: KeptSet, later: KeptSet): KeptSet => {
  const questions = new Map(kept.questions.map((question) => [question.number, question]));
  for (const question of later.questions)
    if (!questions.has(question.number)) questions.set(question.number, question);
  const answers = new Map(kept.answers.map((answer) => [answer.number, answer]));
  for (const answer of later.answers) {
    const before = answers.get(answer.number);
    const asked = later.questions.find(({ number }) => number === answer.number);
    if (!same(asked, questions.get(answer.number))) continue;
    if (before === undefined || (!isWorkedOut(before) && isSameAnswer(before, answer)))
      answers.set(answer.number, answer);
  }
  const inOrder = <One extends { readonly number: number }>(ones: Map<number, One>): One[] =>
    [...ones.values()].sort((a, b) => a.number - b.number);
  return { ...kept, questions: inOrder(questions), answers: inOrder(answers) };
};
