/**
 * The kinds of putts a read is judged by: six ways of sorting putts, each into two or three.
 *
 * Answers for: which kind a putt is of. Leaves out: what is said of a kind (summary.ts, reader-model.ts).
 */
import { feetToMetres, inchesToMetres } from '../units.ts';
import type { Question } from './putt-question.ts';

/** Lengths at which short ends and long begins, m: inside them one means to hole it, beyond to leave it dead. */
const SHORT_BELOW = feetToMetres(8);
const LONG_FROM = feetToMetres(20);
/** Green speed at which slow ends, Stimpmeter reading in m: 10 ft. */
const FAST_FROM = feetToMetres(10);
/** Pace at which dying it in ends, m past: between the 6 and the 12 inches of the drills. */
const FIRM_FROM = inchesToMetres(9);

/** Every way of sorting putts, and what it sorts them into. */
export const SORTS = {
  direction: ['leftToRight', 'rightToLeft'],
  climb: ['up', 'level', 'down'],
  steepness: ['gentle', 'steep'],
  length: ['short', 'middle', 'long'],
  greenSpeed: ['slow', 'fast'],
  pace: ['die', 'firm'],
} as const;

export type Sort = keyof typeof SORTS;
export type PuttReadKind = (typeof SORTS)[Sort][number];

/** Every kind, sort by sort. */
export const PUTT_READ_KINDS: readonly PuttReadKind[] = Object.values(SORTS).flat();

export const IS_OF_KIND: Readonly<
  Record<PuttReadKind, (question: Omit<Question, 'number' | 'group'>) => boolean>
> = {
  leftToRight: ({ direction }) => direction === 'leftToRight',
  rightToLeft: ({ direction }) => direction === 'rightToLeft',
  up: ({ climb }) => climb === 'up',
  level: ({ climb }) => climb === 'level',
  down: ({ climb }) => climb === 'down',
  gentle: ({ steepness }) => steepness === 'gentle',
  steep: ({ steepness }) => steepness === 'steep',
  short: ({ length }) => length < SHORT_BELOW,
  middle: ({ length }) => length >= SHORT_BELOW && length < LONG_FROM,
  long: ({ length }) => length >= LONG_FROM,
  slow: ({ greenSpeed }) => greenSpeed < FAST_FROM,
  fast: ({ greenSpeed }) => greenSpeed >= FAST_FROM,
  die: ({ pace }) => pace < FIRM_FROM,
  firm: ({ pace }) => pace >= FIRM_FROM,
};

/** The kinds a putt is of, one of each sort at most: a straight one has no direction. */
export const kindsOf = (question: Omit<Question, 'number' | 'group'>): PuttReadKind[] =>
  PUTT_READ_KINDS.filter((kind) => IS_OF_KIND[kind](question));
