/**
 * What a player writes down of putts, as plain data: the words of the recording form and of everything that reads records.
 * Answers for: the shapes and what each field means. Leaves out: how records are kept (src/store) and what they tell (the
 * other files of this folder).
 * Lengths in metres; moments in milliseconds since 1970; days as the player's own calendar said, so that a round stays on
 * its Saturday in any time zone. A field that is not there was not recorded: it is never taken for a default.
 */
import type { BreakWay, Climb } from '../types.ts';

/**
 * putt: from on the green, holed out or missed. conceded: given by the opponent, never struck. offGreen: struck with the
 * putter from off the green. Only the first kind counts in statistics of putting.
 */
export type PuttKind = 'putt' | 'conceded' | 'offGreen';
/** A player's own word for the slope: not a number. */
export type SlopeFelt = 'gentle' | 'medium' | 'steep';
export type PaceMeant = 'die' | 'normal' | 'firm';
/**
 * On which side the ball passed the hole, or would have: not where it finished. high and low of a putt that breaks, left and
 * right of one that does not (as the player stands), or on line.
 */
export type MissSide = 'high' | 'low' | 'left' | 'right' | 'online';
/** Where the ball came to rest: before the hole or beyond it. */
export type MissReach = 'short' | 'past';

export interface RecordedMiss {
  readonly side?: MissSide;
  readonly reach?: MissReach;
  /** Hole to rest, m. */
  readonly leave: number;
}

/** What is known of a putt beside its distance; all optional. */
export interface PuttCircumstances {
  readonly climb?: Climb;
  readonly breaks?: BreakWay;
  readonly slopeFelt?: SlopeFelt;
  readonly paceMeant?: PaceMeant;
  readonly startedAsMeant?: boolean;
  readonly paceAsMeant?: boolean;
}

export interface RecordedPutt extends PuttCircumstances {
  readonly id: string;
  readonly roundId: string;
  /** 1 to 18. */
  readonly hole: number;
  /** Order on the hole, from 1, counting all kinds. */
  readonly stroke: number;
  readonly kind: PuttKind;
  /** Ball to hole before the stroke, m. */
  readonly distance: number;
  readonly holed: boolean;
  /** There exactly when the ball was struck and not holed. */
  readonly miss?: RecordedMiss;
  readonly recordedAt: number;
}

export interface RecordedRound {
  readonly id: string;
  /** Calendar day, YYYY-MM-DD. */
  readonly day: string;
  readonly startedAt: number;
  /** Missing while the round is open. */
  readonly endedAt?: number;
  readonly holes: 9 | 18;
  readonly course?: string;
  /** Stimpmeter reading, m, as far as the player knew it. */
  readonly greenSpeed?: number;
  /** Holes finished without a putter (holed from off the green, or picked up). */
  readonly withoutPutt: readonly number[];
}

export interface MissCounts {
  readonly high?: number;
  readonly low?: number;
  readonly short?: number;
  readonly past?: number;
}

/** So many putts from one distance, in practice. */
export interface PracticeSet {
  readonly id: string;
  readonly day: string;
  readonly recordedAt: number;
  /** m */
  readonly distance: number;
  readonly attempts: number;
  readonly holed: number;
  readonly misses?: MissCounts;
  readonly climb?: Climb;
  readonly breaks?: BreakWay;
  readonly ground: 'grass' | 'carpet';
  readonly note?: string;
}
