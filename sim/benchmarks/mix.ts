/**
 * The putts behind a published row: a record says how far, not on what. Answers for: a stated mix of slopes, directions and
 * green speeds on planes, and what a player makes of it at each length. Leaves out: what the record says (player/published),
 * how far the two differ (misfit.ts).
 *
 * The mix is ours, after common practice (no source): holes are cut where the ground falls 3% at most, tournament greens run
 * faster than a club's, and a ball comes from anywhere round the hole. On real greens a long putt crosses several slopes, so
 * that a plane makes long putts break more than they do.
 */
import { puttOdds } from '../odds/compare.ts';
import { prepareNextPutts } from '../odds/next-putts.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import type { CaptureName, Player, Putt } from '../types.ts';
import { feetToMetres } from '../units.ts';
import { BENCHMARK_CAPTURE, ballAt, greenOf, playedOf } from './putts.ts';

/** Slopes and green speeds spread evenly between two ends, every direction alike. */
export interface Mix {
  /** Rise over run. */
  readonly slopes: readonly [number, number];
  /** Stimpmeter readings, m. */
  readonly greenSpeeds: readonly [number, number];
}

export const TOUR_MIX: Mix = { slopes: [0.005, 0.03], greenSpeeds: [feetToMetres(9.5), feetToMetres(11.5)] };
export const CLUB_MIX: Mix = { slopes: [0.005, 0.03], greenSpeeds: [feetToMetres(8.5), feetToMetres(10.5)] };

/** How finely the mix is summed. */
export interface Fineness {
  /** Points in slope and in green speed: 1, 2 (Gauss), or more (evenly spaced). */
  readonly slopes: number;
  readonly greenSpeeds: number;
  /** Directions on one half of the clock; the other is its mirror image. */
  readonly directions: number;
}

/** Within 0.15 points of holed and 0.003 putts of a finer sum (tests/sim/benchmarks). */
const USUAL: Fineness = { slopes: 2, greenSpeeds: 1, directions: 6 };

/** Points that stand for an even spread between two ends, of equal weight. */
const pointsOf = ([low, high]: readonly [number, number], count: number): number[] => {
  const middle = (low + high) / 2;
  if (count === 2) return [-1, 1].map((side) => middle + (side * (high - low)) / (2 * Math.sqrt(3)));
  return Array.from({ length: count }, (_, i) => low + ((high - low) * (i + 0.5)) / count);
};

/** The greens of a mix, each of equal weight; the ball is nowhere yet. */
function greensOf(mix: Mix, fineness: Fineness, capture: CaptureName): Putt[] {
  return pointsOf(mix.slopes, fineness.slopes).flatMap((slope) =>
    pointsOf(mix.greenSpeeds, fineness.greenSpeeds).map((greenSpeed) => greenOf(slope, greenSpeed, capture)),
  );
}

/** Half the clock from just off straight below the hole to just off straight above, evenly. */
const around = (green: Putt, length: number, directions: number): Putt[] =>
  Array.from({ length: directions }, (_, i) => ballAt(green, length, (Math.PI * (i + 0.5)) / directions));

/** What a player makes of the mix at one length: means over its putts, shares of all putts. */
export interface MixRow {
  /** Ball to hole, m. */
  readonly length: number;
  /** Share of the mix that has a line; the means are over these. */
  readonly played: number;
  readonly holed: number;
  /** Holed of the third of the clock below the hole, less that of the third above. */
  readonly upLessDown: number;
  readonly short: number;
  readonly threePutt: number;
  readonly expectedPutts: number;
  /** Mean over the mix of each putt's median leave, m. */
  readonly leave: number;
  /** Mean pace, m past. */
  readonly pace: number;
}

export interface MixOptions {
  readonly mix: Mix;
  /** Ball to hole, m. */
  readonly lengths: readonly number[];
  readonly player: Player;
  readonly capture?: CaptureName;
  /** Pace played by habit, m past; missing: on each putt what players play of the best one (putts.ts). */
  readonly pace?: number;
  /** Tables of next putts at hand; missing: made. */
  readonly tableOf?: (green: Putt, player: Player) => NextPutts;
  readonly fineness?: Fineness;
}

/** Fields of a row that are means over putts. */
const SUMMED = ['holed', 'upLessDown', 'short', 'threePutt', 'expectedPutts', 'leave', 'pace'] as const;

/** 1 in the third of the clock below the hole, -1 in the one above, 0 beside it; `around` goes up from below. */
const sideOf = (direction: number, directions: number): number =>
  1 - Math.floor((3 * direction) / directions);

function playedAt(
  putt: Putt,
  pace: number | undefined,
  player: Player,
  table: NextPutts,
): ReturnType<typeof playedOf> {
  if (pace === undefined) return playedOf(putt, player, table);
  const odds = puttOdds(putt, pace, player, table);
  return odds.status === 'ok' ? { pace, odds } : undefined;
}

/** @returns one row for each length, in the order asked */
export function playMix(options: MixOptions): MixRow[] {
  const { mix, lengths, player, capture = BENCHMARK_CAPTURE, fineness = USUAL } = options;
  const { tableOf = prepareNextPutts } = options;
  const rows = lengths.map((length) => ({
    length,
    putts: 0,
    played: 0,
    holed: 0,
    upLessDown: 0,
    short: 0,
    threePutt: 0,
    expectedPutts: 0,
    leave: 0,
    pace: 0,
  }));
  for (const green of greensOf(mix, fineness, capture)) {
    const table = tableOf(green, player);
    for (const row of rows)
      for (const [i, putt] of around(green, row.length, fineness.directions).entries()) {
        row.putts++;
        const played = playedAt(putt, options.pace, player, table);
        if (played === undefined) continue;
        const { pace, odds } = played;
        row.played++;
        row.holed += odds.holed;
        row.upLessDown += 3 * odds.holed * sideOf(i, fineness.directions);
        row.short += odds.short;
        row.threePutt += odds.threePutt;
        row.expectedPutts += odds.expectedPutts;
        row.leave += odds.leaveMedian;
        row.pace += pace;
      }
  }
  return rows.map(({ putts, ...row }) => {
    for (const name of SUMMED) row[name] /= row.played;
    return { ...row, played: row.played / putts };
  });
}
