/**
 * A set of reads summed up: the bias of each kind of putt, with its interval.
 *
 * Answers for: which kinds there are and which reads belong to each. Leaves out: the estimator (evidence/reading-bias.ts),
 * words. A kind with too few reads is kept and says so; only a kind without any read is left out.
 */

import { type ReadingBias, readingBias } from '../evidence/reading-bias.ts';
import { meanInterval } from '../statistics/mean-interval.ts';
import { IS_OF_KIND, PUTT_READ_KINDS, type PuttReadKind } from './kinds.ts';
import type { Question } from './putt-question.ts';

export interface ReadAnswer {
  readonly question: Question;
  /** Reads of the same day have the same. */
  readonly day: string;
  /** The person's aim offset, m, positive left. */
  readonly aim: number;
  /** Chance of holing from that aim and from the true one, without read error; undefined while not worked out. */
  readonly holedAtAim?: number | undefined;
  readonly holedAtTrue?: number | undefined;
}

export type ReadKind = 'all' | PuttReadKind;

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

const KINDS: readonly ReadKind[] = ['all', ...PUTT_READ_KINDS];

/** Sums up answered reads. @returns undefined when there are none */
export function summarizeReads(answers: readonly ReadAnswer[]): ReadSummary | undefined {
  if (answers.length === 0) return undefined;
  const kinds = KINDS.flatMap((kind): KindSummary[] => {
    const members = answers.filter(({ question }) => kind === 'all' || IS_OF_KIND[kind](question));
    if (members.length === 0) return [];
    const bias = readingBias(members.map(({ question: { trueAim }, aim, day }) => ({ trueAim, aim, day })));
    return [{ kind, count: members.length, bias }];
  });
  const errors = answers.map(({ question, aim }) => Math.abs(aim - question.trueAim));
  const costs = answers.flatMap(({ holedAtAim, holedAtTrue }) =>
    holedAtAim === undefined || holedAtTrue === undefined ? [] : [holedAtTrue - holedAtAim],
  );
  return { kinds, meanError: meanInterval(errors)?.value ?? 0, meanCost: meanInterval(costs)?.value };
}
