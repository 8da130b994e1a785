/** One question as makeReadSet could ask it, for tests of what is done with questions. Its true aim is round, not solved. */
import type { Question } from '../../sim/index.ts';

/** Ten feet, near enough, across a 2% slope that falls to the right; true aim 30 cm left. */
export const sampleQuestion = (changes: Partial<Question> = {}): Question => ({
  number: 1,
  group: 0,
  ground: { kind: 'plane', slope: 0.02, downhill: 0 },
  ball: { x: 0, y: -3 },
  hole: { x: 0, y: 0 },
  greenSpeed: 3,
  pace: 0.3,
  length: 3,
  slope: 0.02,
  trueAim: 0.3,
  direction: 'leftToRight',
  climb: 'level',
  steepness: 'steep',
  ...changes,
});
