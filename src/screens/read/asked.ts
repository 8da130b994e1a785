/** What the person is at: a set, a question of it, an answer, and what was read before. Leaves out: the order of things (session.ts). */
import { type Putt, puttOfQuestion, type Question, type SeenRead } from '../../../sim/index.ts';
import { isAdaptive } from '../../state/readOffers.ts';
import { answeredOf, type KeptAnswer, type KeptSet } from '../../store/schema.ts';
import type { Revealed } from './reveal.ts';

export interface Asked {
  readonly set: KeptSet;
  readonly question: Question;
  readonly putt: Putt;
}

/** When the truth is shown. */
export type Feedback = KeptSet['feedback'];

export type Stage =
  | { readonly kind: 'choosing' }
  | ({ readonly kind: 'asking' } & Asked)
  | ({ readonly kind: 'revealed'; readonly revealed: Revealed } & Asked)
  | { readonly kind: 'summary'; readonly set: KeptSet };

/** Reads of earlier, oldest first: those of adaptive sets, and all others. */
export interface Seen {
  readonly adaptive: readonly SeenRead[];
  readonly others: readonly SeenRead[];
}

export const answerTo = (set: KeptSet, question: Question): KeptAnswer | undefined =>
  set.answers.find(({ number }) => number === question.number);

/** What the page may learn the player's eye from. */
export const seenIn = (sets: readonly KeptSet[]): Seen => {
  const readsOf = (some: readonly KeptSet[]): SeenRead[] =>
    some.flatMap((set) => answeredOf(set, 'aim')).sort((a, b) => a.answeredAt - b.answeredAt);
  return {
    adaptive: readsOf(sets.filter(({ drillId }) => isAdaptive({ id: drillId }))),
    others: readsOf(sets.filter(({ drillId }) => !isAdaptive({ id: drillId }))),
  };
};

export const askedOf = (set: KeptSet, question: Question): Asked => ({
  set,
  question,
  putt: puttOfQuestion(question),
});
