/**
 * The player whose putts come nearest to a published record. Fitted: the start line and the pace error (for a record that
 * says nothing of three-putts the start line alone). Held: the share of the direction error that reading makes, which holing
 * records cannot tell from the start line's; no habit of reading or pace, because a player who picks the best pace makes up
 * for it. Takes a minute for each record. Leaves out: the record and its weights (misfit.ts).
 */
import { NEXT_PUTT_PACE } from '../constants.ts';
import { HANDICAPS } from '../player/handicap.ts';
import { type Found, findLeast } from '../player/nelder-mead.ts';
import type { PublishedPlayer } from '../player/published.ts';
import type { Player } from '../types.ts';
import { degreesToRadians, feetToMetres } from '../units.ts';
import { compareWithRecord, MIX_OF, misfitOf } from './misfit.ts';
import { type Mix, startAngleOf } from './mix.ts';

/**
 * Share of the direction error's variance that comes from reading: Karlsen & Nilsson 2008, reading 60%, technique 34%, surface 6%
 * (abstract read; that they are shares of variance is our reading of it). Taken to hold at 10 ft over the mix.
 */
export const READING_SHARE = 0.6;
const SHARE_HOLDS_AT = feetToMetres(10);

/** The player of this start line and pace error, whose reading makes its share of the direction error on this mix. */
export function playerWithShare(
  mix: Mix,
  lineSd: number,
  paceSd: number,
  readingShare = READING_SHARE,
): Player {
  const angle = startAngleOf(mix, SHARE_HOLDS_AT, NEXT_PUTT_PACE);
  const readSd = (lineSd * Math.sqrt(readingShare / (1 - readingShare))) / angle;
  return { lineSd, paceSd, readSd, readBias: 0, paceBias: 0 };
}

export interface PlayerFit {
  readonly status: Found['status'];
  readonly player: Player;
  readonly misfit: number;
}

/** Where a search begins, and its first steps: degrees and share. */
const START: Readonly<Record<PublishedPlayer, readonly [number, number]>> = {
  tour: [1, 0.09],
  scratch: [1.2, 0.1],
  averaging90: [1.6, 0.12],
};
const STEPS = [0.1, 0.01];
/** Share of a first step: a few thousandths of the answer, finer than presets are written. */
const TOLERANCE = 0.05;

export interface FitOptions {
  /** Share of the direction error's variance at 10 ft that comes from reading. */
  readonly readingShare?: number;
  /** A pace error to be held instead of fitted, share of the distance. */
  readonly paceSd?: number;
}

/** The player nearest to a record. */
export function fitPlayer(record: PublishedPlayer, options: FitOptions = {}): PlayerFit {
  const { readingShare, paceSd } = options;
  const free = paceSd === undefined ? 2 : 1;
  const playerAt = (numbers: readonly number[]): Player =>
    playerWithShare(MIX_OF[record], degreesToRadians(numbers[0]), paceSd ?? numbers[1], readingShare);
  const { status, at, misfit } = findLeast({
    misfit: (numbers) =>
      numbers.every((number) => number > 0)
        ? misfitOf(compareWithRecord(record, playerAt(numbers), 'fitted'))
        : Number.POSITIVE_INFINITY,
    start: START[record].slice(0, free),
    steps: STEPS.slice(0, free),
    tolerance: TOLERANCE,
    mostTries: 60,
  });
  return { status, player: playerAt(at), misfit };
}

/**
 * The pace error held for scratch, whose record is five holed shares, one of them odd (14% from 20 ft, the tour 15%; taken at
 * its word it makes a scratch player's pace better than a professional's): on a straight line by handicap.
 */
export function scratchPaceSd(tour: Player, averaging90: Player): number {
  const share = (HANDICAPS.scratch - HANDICAPS.tour) / (HANDICAPS.averaging90 - HANDICAPS.tour);
  return tour.paceSd + share * (averaging90.paceSd - tour.paceSd);
}
