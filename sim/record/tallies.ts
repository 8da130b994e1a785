/**
 * Putts tried and holed, with the day they belong to. Answers for: rounds and practice sets as tallies, the putts of a day together.
 * Leaves out: bands for showing (distance-bands.ts), what is made of them (curve-posterior.ts).
 */
import type { StruckPutt } from './played-holes.ts';
import type { PracticeSet } from './record.ts';

/** So many putts from one distance, on one day. */
export interface HoledTally {
  /** Putts of one day share what is good or bad of it: a round's id, or the day of practice. */
  readonly day: string;
  /** m */
  readonly distance: number;
  readonly tries: number;
  readonly holed: number;
}

/** Putts of rounds and practice sets as tallies; every round is a day of its own. */
export const talliesOf = (struck: readonly StruckPutt[], sets: readonly PracticeSet[] = []): HoledTally[] => [
  ...struck.map(({ putt: { roundId, distance, holed } }) => ({
    day: roundId,
    distance,
    tries: 1,
    holed: holed ? 1 : 0,
  })),
  ...sets.map(({ day, distance, attempts, holed }) => ({ day, distance, tries: attempts, holed })),
];

/** The tallies day by day, in the order in which the days first come. */
export function byDay(tallies: readonly HoledTally[]): HoledTally[][] {
  const days = new Map<string, HoledTally[]>();
  for (const tally of tallies) {
    const day = days.get(tally.day);
    if (day === undefined) days.set(tally.day, [tally]);
    else day.push(tally);
  }
  return [...days.values()];
}
