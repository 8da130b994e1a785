/**
 * What a read drill is: the ranges its putts are drawn from and what the person is told. The data live in drills/ and
 * pass a strict schema there. Leaves out: drawing the putts (question.ts).
 */

/** From the first to the second number, both included. */
export type Range = readonly [low: number, high: number];

/**
 * Which putts belong together, one after the other in shuffled order:
 * none - each putt on its own; leftAndRight - the mirrored putt; upAndDown - the same putt from below and from above the
 * hole; greenSpeeds - low, middle and high of the green speed range; paces - every called pace.
 */
export type DrillGroup = 'none' | 'leftAndRight' | 'upAndDown' | 'greenSpeeds' | 'paces';

/** What a reading question asks: where to aim, which of two paces, how steep it is. Kept in records for ever. */
export const READ_TASKS = ['aim', 'paces', 'slope'] as const;
export type ReadTask = (typeof READ_TASKS)[number];

export interface ReadDrill {
  /** Stable: kept in records for ever. */
  readonly id: string;
  readonly name: string;
  readonly purpose: string;
  /** Where the drill comes from, or "common practice, no source". */
  readonly source: string;
  readonly surface: 'plane' | 'green';
  /** m */
  readonly lengthM: Range;
  /** Rise over run: of the plane, or the mean along the line on a green. */
  readonly slope: Range;
  /** Where the ball may lie round the hole, hours; 12 straight uphill of it. A range may run past 12: [11.5, 12.5]. */
  readonly clock: readonly Range[];
  /** Stimpmeter reading, m. */
  readonly greenSpeedM: Range;
  /** Called paces, m past the covered hole. */
  readonly paceM: readonly number[];
  readonly group: DrillGroup;
  /** Numbers given with the question; the map itself is always there. */
  readonly shown: { readonly slope: boolean };
}
