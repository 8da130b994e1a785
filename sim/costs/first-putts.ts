/**
 * From how far a player's first putts are: what turns putts per putt into strokes per round.
 *
 * Answers for: the mix of a record, and a stated one where the record is short. Leaves out: what is made of it (round-costs.ts).
 * Only the first putt from the green of each hole counts (played-holes.ts), chipped close or not; holes without one take no putts.
 */
import type { PlayedHole } from '../record/played-holes.ts';
import { feetToMetres } from '../units.ts';

export interface FirstPuttMix {
  /** Ball to hole, m, with the share of holes first putted from there; the shares make one. */
  readonly first: readonly { readonly length: number; readonly share: number }[];
  /** Holes of the record that went in. */
  readonly holes: number;
  /** What part of the mix is the record's own, 0 to 1; the rest is the stated one. */
  readonly own: number;
}

/**
 * A single-digit golfer's first putts, feet and per cent of holes. Common practice, no source: some ten greens hit in a round, most of
 * them from 12 to 35 ft, the rest chipped and pitched to within 10 ft; eight putts a round from 8 to 25 ft. A player of handicap 6
 * takes 32 putts a round from there (our engine), between the tour's 29 and the 33 of who averages 90 (Broadie, second-hand).
 */
const STATED: readonly (readonly [feet: number, perCent: number])[] = [
  [2, 6],
  [4, 9],
  [6, 9],
  [8, 9],
  [10, 8],
  [13, 10],
  [16, 9],
  [20, 11],
  [25, 10],
  [31, 8],
  [38, 6],
  [48, 5],
];

export const STATED_FIRST_PUTTS: FirstPuttMix = {
  first: STATED.map(([feet, perCent]) => ({ length: feetToMetres(feet), share: perCent / 100 })),
  holes: 0,
  own: 0,
};

/** Holes from which a record stands alone: five rounds. With fewer, the stated mix makes up what is missing. Ours. */
export const HOLES_TO_STAND_ALONE = 90;

/** @param holes of the record, in any order */
export function firstPuttMix(holes: readonly PlayedHole[]): FirstPuttMix {
  const count = holes.length;
  if (count === 0) return STATED_FIRST_PUTTS;
  const own = Math.min(1, count / HOLES_TO_STAND_ALONE);
  const counts = new Map<number, number>();
  for (const { first } of holes) counts.set(first.distance, (counts.get(first.distance) ?? 0) + 1);
  const first = [...counts]
    .map(([length, times]) => ({ length, share: (own * times) / count }))
    .concat(
      own < 1
        ? STATED_FIRST_PUTTS.first.map(({ length, share }) => ({ length, share: (1 - own) * share }))
        : [],
    )
    .sort((a, b) => a.length - b.length);
  return { first, holes: count, own };
}
