/**
 * A set of reads summed up: the bias of each kind of putt, with its interval.
 *
 * Answers for: which kinds there are and which reads belong to each. Leaves out: the estimator (evidence/reading-bias.ts),
 * words. A kind with too few reads is kept and says so; only a kind without any read is left out.
 */
import { meanInterval } from '../evidence/mean-interval.ts';
import { type ReadingBias, readingBias } from '../evidence/reading-bias.ts';
import { feetToMetres } from '../units.ts';
import type { Question } from './question.ts';

/** Lengths at which short ends and long begins, m: inside them one means to hole it, beyond to leave it dead. */
const SHORT_BELOW = feetToMetres(8);
const LONG_FROM = feetToMetres(20);

export interface ReadAnswer {
  readonly question: Question;
  /** The person's aim offset, m, positive left. */
  readonly aim: number;
  /** Chance of holing from that aim and from the true one, without read error; undefined while not worked out. */
  readonly holedAtAim?: number | undefined;
  readonly holedAtTrue?: number | undefined;
}

export type ReadKind =
  | 'all'
  | 'leftToRight'
  | 'rightToLeft'
  | 'up'
  | 'level'
  | 'down'
  | 'gentle'
  | 'steep'
  | 'short'
  | 'middle'
  | 'long';

export interface KindSummary {
  readonly kind: ReadKind;
  readonly count: number;
  /** undefined: only dead straight putts. */
  readonly bias: ReadingBias | undefined;
}

export interface ReadSummary {
  /** All first, then in the order of ReadKind; kinds without a read are left out. */
  readonly kinds: readonly KindSummary[];
  /** Mean size of the error whatever its sign, m. */
  readonly meanError: number;
  /** Mean loss of holed chance per putt, share; undefined when none is worked out. */
  readonly meanCost: number | undefined;
}

const MEMBERS: Readonly<Record<ReadKind, (question: Question) => boolean>> = {
  all: () => true,
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
};

/** Sums up answered reads. @returns undefined when there are none */
export function summarizeReads(answers: readonly ReadAnswer[]): ReadSummary | undefined {
  if (answers.length === 0) return undefined;
  const kinds = (Object.keys(MEMBERS) as ReadKind[]).flatMap((kind): KindSummary[] => {
    const members = answers.filter(({ question }) => MEMBERS[kind](question));
    if (members.length === 0) return [];
    const bias = readingBias(members.map(({ question, aim }) => ({ trueAim: question.trueAim, aim })));
    return [{ kind, count: members.length, bias }];
  });
  const errors = answers.map(({ question, aim }) => Math.abs(aim - question.trueAim));
  const costs = answers.flatMap(({ holedAtAim, holedAtTrue }) =>
    holedAtAim === undefined || holedAtTrue === undefined ? [] : [holedAtTrue - holedAtAim],
  );
  return { kinds, meanError: meanInterval(errors)?.value ?? 0, meanCost: meanInterval(costs)?.value };
}
