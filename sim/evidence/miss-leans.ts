/**
 * The leans of recorded misses: high or low, left or right, short or past.
 *
 * Answers for: which misses count for which lean, over a round or a whole record. Leaves out: the rule of the verdict (lean.ts).
 * High and low are told of putts that break, left and right of those that do not; a miss on line or without a word counts for
 * neither. Only kind 'putt' counts.
 */
import { PUBLISHED_FIGURES, type PublishedPlayer } from '../player/published.ts';
import type { RecordedPutt } from '../record/record.ts';
import { judgeLean, type Lean } from './lean.ts';

/** The first named is the `first` way of its lean. */
export type LeanKind = 'highLow' | 'leftRight' | 'shortPast';
export const LEAN_KINDS: readonly LeanKind[] = ['highLow', 'leftRight', 'shortPast'];

export type MissLeans = Readonly<Record<LeanKind, Lean>>;

export interface MissLeansOptions {
  /** Share of misses that stay short without any fault; default a half, as a plain yardstick and not as what is usual. */
  readonly expectedShort?: number;
  /** How many times these leans are looked at: rounds, filters; default 1. Each time counts for three leans. */
  readonly times?: number;
}

/** Judges the three leans of these putts. Putts that are holed, or not of kind 'putt', are passed over. */
export function leansOf(putts: readonly RecordedPutt[], options: MissLeansOptions = {}): MissLeans {
  const { expectedShort = 0.5, times = 1 } = options;
  const misses = putts.flatMap(({ kind, miss }) => (kind === 'putt' && miss ? [miss] : []));
  const sides = (way: 'high' | 'low' | 'left' | 'right'): number =>
    misses.filter(({ side }) => side === way).length;
  const reaches = (way: 'short' | 'past'): number => misses.filter(({ reach }) => reach === way).length;
  const looks = LEAN_KINDS.length * times;
  return {
    highLow: judgeLean({ first: sides('high'), second: sides('low') }, { looks }),
    leftRight: judgeLean({ first: sides('left'), second: sides('right') }, { looks }),
    shortPast: judgeLean(
      { first: reaches('short'), second: reaches('past') },
      { looks, expectedShare: expectedShort },
    ),
  };
}

/** Length for which the share short is published, feet. */
const PUBLISHED_AT = 10;

/**
 * Share of misses from 10 ft that stay short by published records: short / (1 - holed) (Broadie 2020 and 2014; derived). The tour's is
 * 12%, that of a golfer averaging 90 is 21%: who plays to finish past the hole misses past.
 * @returns undefined where no such figure is published (scratch)
 */
export function publishedShortOfMisses(player: PublishedPlayer): number | undefined {
  const figure = (what: 'short' | 'holed'): number | undefined =>
    PUBLISHED_FIGURES.find(
      (row) =>
        row.player === player && row.what === what && row.feet === PUBLISHED_AT && row.on === undefined,
    )?.value;
  const [short, holed] = [figure('short'), figure('holed')];
  return short === undefined || holed === undefined ? undefined : short / (1 - holed);
}
