/**
 * What an answer cost, added to it once it is known. Answers for: one piece of work after the other, begun early where it is long,
 * made good later where the page was closed too soon. Leaves out: the work itself (worker/reading.ts), when the truth is shown.
 */
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Player, Putt, PuttsByPace, Question } from '../../../sim/index.ts';
import { answeredOf, type KeptAnswer, type KeptSet } from '../../store/schema.ts';
import type { AimCost } from '../../worker/reading.ts';
import { type Asked, askedOf } from './asked.ts';
import type { Keeping } from './keeping.ts';

export interface CostWorld {
  /** Rejects when it cannot be worked out: the answer stands without it. */
  costOf(putt: Putt, pace: number, player: Player, aim: number): Promise<AimCost>;
  /** Expected putts at the two paces of a question; rejects like costOf. */
  puttsOf(question: Question, player: Player): Promise<PuttsByPace>;
  player(): Player;
}

export interface WorkingOut {
  /** Whether the last cost could not be worked out. */
  readonly costProblem: ReadonlySignal<boolean>;
  /** Begins what a question will need, so that it is there with the answer. */
  begin(asked: Asked): void;
  workOut(asked: Asked, answer: KeptAnswer): void;
  /** What was left undone when the page was closed too soon. */
  catchUp(set: KeptSet): void;
}

export const createWorkingOut = (
  world: CostWorld,
  { keep, newest }: Pick<Keeping, 'keep' | 'newest'>,
): WorkingOut => {
  const costProblem = signal(false);

  // One at a time: a newer question must not take the place of an older one's cost.
  let costs = Promise.resolve();
  const addToAnswer = (set: KeptSet, number: number, cost: () => Promise<object>): void => {
    costs = costs.then(async () => {
      try {
        const found = await cost();
        const now = newest(set);
        costProblem.value = false;
        if (now.answers.some((one) => one.number === number))
          await keep({
            ...now,
            answers: now.answers.map((one) => (one.number === number ? { ...one, ...found } : one)),
          });
      } catch {
        costProblem.value = true;
      }
    });
  };

  /** Putts at both paces of the questions that were asked, begun as soon as they are: a green takes seconds. */
  const putts = new Map<string, Promise<PuttsByPace>>();
  const workOutPutts = ({ set, question }: Pick<Asked, 'set' | 'question'>): Promise<PuttsByPace> => {
    const key = `${set.id} ${question.number}`;
    const begun = putts.get(key) ?? world.puttsOf(question, world.player());
    begun.catch(() => putts.delete(key));
    putts.set(key, begun);
    return begun;
  };

  const workOut = ({ set, question, putt }: Asked, answer: KeptAnswer): void => {
    const { number } = answer;
    if (answer.kind === 'aim')
      addToAnswer(set, number, () => world.costOf(putt, question.pace, world.player(), answer.aim));
    if (answer.kind === 'paces')
      addToAnswer(set, number, async () => ({ putts: await workOutPutts({ set, question }) }));
  };

  /** What was left undone when the page was closed too soon. */
  const catchUp = (set: KeptSet): void => {
    for (const answer of answeredOf(set, 'paces'))
      if (answer.putts === undefined) workOut(askedOf(set, answer.question), answer);
  };

  return {
    costProblem,
    begin: (asked) => void workOutPutts(asked),
    workOut,
    catchUp,
  };
};
