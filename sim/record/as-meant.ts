/**
 * What is known of a miss beside its side: was it started, was it paced as meant?
 *
 * Answers for: counts only. A miss started and paced as meant leaves the read and the aim; one that was not leaves the stroke. Leaves
 * out: any verdict. These are the player's own words about himself, from a moment after the putt.
 */
import type { StruckPutt } from './played-holes.ts';
import type { RecordedPutt } from './record.ts';

/** strokeAsMeant: both asked and both yes; the others: said no of that one, whatever of the other; notTold: the rest. */
export const MEANT_KINDS = ['strokeAsMeant', 'startOff', 'paceOff', 'notTold'] as const;
export type MeantKind = (typeof MEANT_KINDS)[number];

export interface MeantCounts {
  readonly kind: MeantKind;
  readonly misses: number;
  readonly high: number;
  readonly low: number;
  readonly short: number;
  readonly past: number;
}

/** A miss of which both were off counts for both. @param struck putts of rounds; those holed are passed over */
export function missesAsMeant(struck: readonly StruckPutt[]): MeantCounts[] {
  const counts = MEANT_KINDS.map((kind) => ({ kind, misses: 0, high: 0, low: 0, short: 0, past: 0 }));
  const [asMeant, startOff, paceOff, notTold] = counts;
  const add = (count: (typeof counts)[number], { miss }: RecordedPutt): void => {
    count.misses++;
    if (miss?.side === 'high') count.high++;
    if (miss?.side === 'low') count.low++;
    if (miss?.reach === 'short') count.short++;
    if (miss?.reach === 'past') count.past++;
  };
  for (const { putt } of struck) {
    if (putt.holed) continue;
    const { startedAsMeant: start, paceAsMeant: pace } = putt;
    if (start === false) add(startOff, putt);
    if (pace === false) add(paceOff, putt);
    if (start === false || pace === false) continue;
    add(start === true && pace === true ? asMeant : notTold, putt);
  }
  return counts;
}
