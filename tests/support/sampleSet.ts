/** A read set and its answers, for tests of what is done with them. */
import type { KeptAnswerOf, KeptSet } from '../../src/store/schema.ts';
import { sampleQuestion } from './sampleQuestion.ts';

export const answer = (number: number, aim = 0.2): KeptAnswerOf<'aim'> => ({
  kind: 'aim',
  number,
  aim,
  answeredAt: 1000 + number,
});

export const set = (changes: Partial<KeptSet> = {}): KeptSet => ({
  id: 'set-0001',
  kind: 'aim',
  feedback: 'each',
  size: 3,
  drillId: 'long-lag',
  drillName: 'Long lag',
  seed: 'abc',
  startedAt: 1000,
  day: '1970-01-01',
  questions: [1, 2, 3].map((number) => sampleQuestion({ number })),
  answers: [],
  ...changes,
});
