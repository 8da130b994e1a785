/**
 * Players between the fitted ones, by handicap. Answers for: straight lines between anchors in each error, and a word where a
 * handicap lies outside them. Leaves out: handicaps from scores.
 */
import type { Player } from '../types.ts';
import { playerBy } from './errors.ts';
import { FITTED_FAMILIES, FITTED_PLAYERS } from './fitted.ts';
import { PUBLISHED_PLAYERS, type PublishedPlayer } from './published.ts';

/**
 * Which handicap each fitted player has, strokes, better than scratch negative; ours: tour professionals play to about +5
 * (common practice, no source); scratch is 0 by definition; who averages 90 on a par of 72 is 18 over, and a handicap counts
 * the better rounds only, about 2 less.
 */
export const HANDICAPS: Readonly<Record<PublishedPlayer, number>> = { tour: -5, scratch: 0, averaging90: 16 };

/** From better to worse. */
const ANCHORS = PUBLISHED_PLAYERS.map((record) => ({
  handicap: HANDICAPS[record],
  player: FITTED_PLAYERS[record],
  family: FITTED_FAMILIES[record],
}));

export interface HandicapPlayer {
  readonly player: Player;
  /** Players who hole alike, mostly stroke to mostly reading: each between those of the same lean. */
  readonly family: readonly Player[];
  /** The handicap taken, within the anchors. */
  readonly handicap: number;
  /** Why another handicap than the one asked for was taken; undefined: it was not. */
  readonly clamped: string | undefined;
  readonly source: string;
}

const written = (handicap: number): string => (handicap < 0 ? `+${-handicap}` : String(handicap));

/**
 * @param handicap strokes; better than scratch is negative: -5 for +5. Not a number counts as the worst anchor.
 * @returns the fitted player at an anchor, a straight line in each error between two
 */
export function playerOfHandicap(handicap: number): HandicapPlayer {
  const lowest = ANCHORS[0].handicap;
  const highest = ANCHORS[ANCHORS.length - 1].handicap;
  const taken = Number.isNaN(handicap) ? highest : Math.max(lowest, Math.min(highest, handicap));
  const clamped =
    taken === handicap
      ? undefined
      : Number.isNaN(handicap)
        ? `That is no handicap: ${written(taken)} was taken.`
        : `Records reach from ${written(lowest)} to ${written(highest)} only: ${written(taken)} was taken for ${written(handicap)}.`;
  const next = Math.max(
    1,
    ANCHORS.findIndex((anchor) => anchor.handicap >= taken),
  );
  const [better, worse] = [ANCHORS[next - 1], ANCHORS[next]];
  const share = (taken - better.handicap) / (worse.handicap - better.handicap);
  const between = (first: Player, second: Player): Player => {
    if (share === 0) return first;
    return share === 1 ? second : playerBy((name) => first[name] + share * (second[name] - first[name]));
  };
  return {
    player: between(better.player, worse.player),
    family: better.family.map((member, i) => between(member, worse.family[i])),
    handicap: taken,
    clamped,
    source: `Handicap ${written(taken)}: each error on a straight line between the fitted players of handicap ${written(better.handicap)} and ${written(worse.handicap)}. Interpolated, not a record.`,
  };
}
