/**
 * Die it in or hit it firm, for a whole family of players: what each of them would gain, and whether they agree.
 *
 * Answers for: one verdict that sharpens as members come in, the middle one first. Leaves out: what parts the members (parted.ts), words.
 * Too small to matter: WORTH putts (firmer.ts). A side counts where more than AS_GOOD_AS_NOBODY (player/known.ts) of all likely members are on it.
 */
import { comparePaces } from '../odds/compare.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import { PLAYER_ERRORS } from '../player/errors.ts';
import { AS_GOOD_AS_NOBODY, type Member } from '../player/known.ts';
import type { Player, Putt } from '../types.ts';
import { WORTH } from './firmer.ts';
import { type Interval, intervalOf } from './intervals.ts';
import { momentsOf } from './likely.ts';
import { type Parted, parted } from './parted.ts';

/** die, firm: suits all, or is too close for the others. close: too close for all. turns: on who the player is. noLine: nobody can play both. */
export type DieOrFirmVerdict =
  | { readonly kind: 'die' | 'firm' }
  | { readonly kind: 'close' }
  | { readonly kind: 'noLine' }
  | {
      readonly kind: 'turns';
      /** First: whom dying it in suits; second: whom firm suits. */
      readonly on: Parted;
      /** Of the members told apart, the share whom firm suits. */
      readonly firm: number;
    };

export interface DieOrFirm {
  readonly verdict: DieOrFirmVerdict;
  /** Putts that firm takes more than die, over the members asked: central 95%; undefined with noLine. */
  readonly difference: Interval | undefined;
  /** Members asked so far, of how many. */
  readonly asked: number;
  readonly of: number;
  /** For how many those stand: more than `of` where not all are asked. */
  readonly all: number;
}

/** Squared distances between players, errors over their SD among the members. */
function placesOf(members: readonly Member[]) {
  const scales = PLAYER_ERRORS.map((error) => {
    const { mean, variance } = momentsOf(members, (player) => player[error]);
    return { error, mean, sd: Math.sqrt(variance) || 1 };
  });
  const places = members.map(({ player }) =>
    scales.map(({ error, mean, sd }) => (player[error] - mean) / sd),
  );
  const distance = (one: readonly number[], other?: readonly number[]): number =>
    one.reduce((sum, value, i) => sum + (value - (other?.[i] ?? 0)) ** 2, 0);
  return { places, distance };
}

/**
 * Members in the order in which they tell most: the middle one, then whoever is farthest from all asked before.
 * @param all weights 0 or more: nobody is asked for those of none
 * @param most how many; the weight of whoever is left over goes to the nearest of them
 */
export function inTellingOrder(all: readonly Member[], most = all.length): Member[] {
  const members = all.filter(({ weight }) => weight > 0);
  const { places, distance } = placesOf(members);
  const nearest = places.map((place) => distance(place));
  const order: number[] = [];
  let next = nearest.indexOf(Math.min(...nearest));
  const away = places.map(() => Number.POSITIVE_INFINITY);
  const standsIn = places.map(() => 0);
  while (order.length < Math.min(most, members.length)) {
    const asked = order.push(next) - 1;
    const last = next;
    away[last] = -1;
    standsIn[last] = asked;
    places.forEach((place, i) => {
      const far = distance(place, places[last]);
      if (!(far < away[i])) return;
      away[i] = far;
      standsIn[i] = asked;
    });
    next = away.indexOf(Math.max(...away));
  }
  const weights = order.map(() => 0);
  members.forEach(({ weight }, i) => {
    weights[standsIn[i]] += weight;
  });
  return order.map((i, at) => ({ player: members[i].player, weight: weights[at] }));
}

/**
 * An answer after each member, the middle one's first.
 * @param members weights 0 or more, one above 0
 * @param differenceOf putts that firm takes more than die; undefined where one of the two has no line
 * @param most members asked, those that span the others; default: all
 */
export function* dieOrFirmFor(
  members: readonly Member[],
  differenceOf: (player: Player) => number | undefined,
  most = members.length,
): Generator<DieOrFirm, void> {
  const likely = members.filter(({ weight }) => weight > 0).length;
  if (likely === 0) throw new Error('Got no member of any weight, expected at least one.');
  const played: { readonly member: Member; readonly difference: number }[] = [];
  let asked = 0;
  const order = inTellingOrder(members, most);
  for (const member of order) {
    const difference = differenceOf(member.player);
    asked++;
    if (difference !== undefined) played.push({ member, difference });
    yield { ...verdictOf(played), asked, of: order.length, all: likely };
  }
}

function verdictOf(
  played: readonly { readonly member: Member; readonly difference: number }[],
): Pick<DieOrFirm, 'verdict' | 'difference'> {
  if (played.length === 0) return { verdict: { kind: 'noLine' }, difference: undefined };
  const difference = intervalOf(
    Float64Array.from(played, (one) => one.difference),
    Float64Array.from(played, ({ member }) => member.weight),
  );
  const weightOf = (members: readonly Member[]): number =>
    members.reduce((sum, { weight }) => sum + weight, 0);
  const all = weightOf(played.map(({ member }) => member));
  const side = (suits: (putts: number) => boolean): Member[] => {
    const members = played.filter((one) => suits(one.difference)).map(({ member }) => member);
    return weightOf(members) > AS_GOOD_AS_NOBODY * all ? members : [];
  };
  const die = side((putts) => putts > WORTH);
  const firm = side((putts) => putts < -WORTH);
  const verdict = ((): DieOrFirmVerdict => {
    if (die.length > 0 && firm.length > 0)
      return {
        kind: 'turns',
        on: parted(die, firm),
        firm: weightOf(firm) / (weightOf(firm) + weightOf(die)),
      };
    if (die.length > 0) return { kind: 'die' };
    return firm.length > 0 ? { kind: 'firm' } : { kind: 'close' };
  })();
  return { verdict, difference };
}

/**
 * Putts that firm takes more than die on one putt, for any player.
 * @param tableOf next putts of a player on this ground; asked for player by player
 */
export function differenceOn(
  putt: Putt,
  { die, firm }: { readonly die: number; readonly firm: number },
  tableOf: (player: Player) => NextPutts,
): (player: Player) => number | undefined {
  return (player) => {
    const [soft, hard] = comparePaces(putt, [die, firm], player, tableOf(player), false).rows;
    return soft.odds && hard.odds && hard.odds.expectedPutts - soft.odds.expectedPutts;
  };
}
