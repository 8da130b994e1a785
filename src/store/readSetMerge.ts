/**
 * Two versions of one read set made one: of two open tabs, of a write made good later, of a file and the one here. Leaves out: shapes
 * (schema.ts), keeping (readSets.ts).
 */
import type { Passed } from './gate.ts';
import { same } from './same.ts';
import type { KeptAnswer, KeptSet } from './schema.ts';

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

/** A set of a file and the one here. */
export const mergeFound = (here: KeptSet, found: KeptSet): Passed<KeptSet> =>
  isSameSet(here, found)
    ? { ok: true, kept: mergeSets(here, found) }
    : {
        ok: false,
        problem: 'Got the id of a reading set that is here with other questions, expected the same ones.',
      };
