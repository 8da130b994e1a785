/** Answered questions of aim with the day they were answered on, as summaries and progress take them. */
import { localDay } from './day.ts';
import { answeredOf, type KeptSet } from './schema.ts';

export const datedReads = (set: KeptSet) =>
  answeredOf(set, 'aim').map((read) => ({ ...read, day: localDay(read.answeredAt) }));
