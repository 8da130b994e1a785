/**
 * What is known of a miss beside its side: was it started, was it paced as meant?
 *
 * Answers for: counts only. A miss started and paced as meant leaves the read and the aim; one that was not leaves the stroke. Leaves
 * out: any verdict. These are the player's own words about himself, from a moment after the putt.
 */
import type { StruckPutt } from './played-holes.ts';

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
  const misses = struck.flatMap(({ putt }) => (putt.holed ? [] : [putt]));
  return MEANT_KINDS.map((kind) => {
    const inside = misses.filter(({ startedAsMeant, paceAsMeant }) => {
      if (kind === 'startOff') return startedAsMeant === false;
      if (kind === 'paceOff') return paceAsMeant === false;
      if (startedAsMeant === false || paceAsMeant === false) return false;
      const both = startedAsMeant === true && paceAsMeant === true;
      return both === (kind === 'strokeAsMeant');
    });
    const sides = (way: 'high' | 'low'): number => inside.filter(({ miss }) => miss?.side === way).length;
    const reaches = (way: 'short' | 'past'): number =>
      inside.filter(({ miss }) => miss?.reach === way).length;
    return {
      kind,
      misses: inside.length,
      high: sides('high'),
      low: sides('low'),
      short: reaches('short'),
      past: reaches('past'),
    };
  });
}
