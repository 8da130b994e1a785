/**
 * The whole green in words: which side to leave an approach on and what that is worth, what a place is like, the map for
 * whoever cannot see it. Data in, words out. Clock positions: 12:00 straight uphill of the hole.
 */
import type { ApproachSide, ApproachSides, Parted, PlaceValue } from '../../../sim/index.ts';
import { partWords, TEST_WORDS } from '../../text/family.ts';
import {
  formatClock,
  formatLength,
  formatPercent,
  formatPutts,
  formatShort,
  type Units,
} from '../../text/format.ts';
import { plural } from '../../text/phrases.ts';

/** Putts. Below this no side is worth aiming an approach at: one stroke in fifty approaches that end there. */
export const SIDE_MATTERS = 0.02;

const SIDES = [
  'above the hole',
  'above the hole to the right',
  'to the right of the hole',
  'below the hole to the right',
  'below the hole',
  'below the hole to the left',
  'to the left of the hole',
  'above the hole to the left',
] as const;

/** Where a clock position lies, as one looks uphill: eight sides of an hour and a half. */
export const sideWords = (clock: number): (typeof SIDES)[number] => SIDES[Math.round((clock % 12) / 1.5) % 8];

const apart = (one: number, two: number): number => {
  const hours = Math.abs(one - two) % 12;
  return Math.min(hours, 12 - hours);
};

const from = ({ expectedPutts, clock }: ApproachSide): string =>
  `${formatPutts(expectedPutts)} putts from ${formatClock(clock)}`;

/** Putts: as good as the same. On a plane every side has its mirror image. */
const SAME = 0.003;

/** The same with another side that is just as good or bad: "1.74 putts from 3:00 or 9:00". */
const fromAny = (side: ApproachSide, { sides }: ApproachSides): string => {
  const other = sides.find(
    ({ clock, expectedPutts }) =>
      apart(clock, side.clock) >= 3 && Math.abs(expectedPutts - side.expectedPutts) < SAME,
  );
  if (other === undefined) return from(side);
  const [first, second] = [side.clock, other.clock].sort((one, two) => one - two);
  return `${formatPutts(side.expectedPutts)} putts from ${formatClock(first)} or ${formatClock(second)}`;
};

/** The answer. The difference told is that of the two numbers told. */
export const sideHeadline = (found: ApproachSides, units: Units): string => {
  const { distance, best, worst, difference } = found;
  const least = fromAny(best, found);
  const most = fromAny(worst, found).replace(' putts', '');
  const length = formatLength(distance, units);
  const worth = Number(formatPutts(worst.expectedPutts)) - Number(formatPutts(best.expectedPutts));
  if (difference < SIDE_MATTERS) return `From ${length} the side hardly matters: ${least}, ${most} at worst.`;
  return `From ${length}, leave it ${sideWords(best.clock)}: ${least} against ${most}, worth ${formatPutts(worth)} putts.`;
};

/** Another side that is as good, and what the difference is made of. */
export const sideDetail = ({ sides, best, worst, difference }: ApproachSides): string => {
  if (difference < SIDE_MATTERS)
    return `You hole ${formatPercent(best.onePutt, 0)} from the best place and ${formatPercent(worst.onePutt, 0)} from the worst.`;
  const others = sides.filter(({ clock }) => apart(clock, best.clock) >= 3);
  const second = others.reduce<ApproachSide | undefined>(
    (least, side) => (least && least.expectedPutts <= side.expectedPutts ? least : side),
    undefined,
  );
  const asGood =
    second && second.expectedPutts - best.expectedPutts < SIDE_MATTERS
      ? `Hardly worse: ${sideWords(second.clock)}, ${from(second)}. `
      : '';
  return `${asGood}From the best place you hole ${formatPercent(best.onePutt, 0)} and need three or more ${formatPercent(best.threeOrMore)} of the time; from the worst ${formatPercent(worst.onePutt, 0)} and ${formatPercent(worst.threeOrMore)}.`;
};

/** A green speed other than thought: what the side is worth there, undefined where no ball would stop. */
export interface OtherSpeed {
  readonly name: 'slower' | 'faster';
  /** Putts, and hours of the best place. */
  readonly found: { readonly difference: number; readonly best: number } | undefined;
}

/** What a foot of green speed does to the answer. */
export const sideMargin = (best: ApproachSide, others: readonly OtherSpeed[]): string => {
  const worth = others.map(({ name, found }) =>
    found === undefined
      ? `a foot ${name} no ball would stop`
      : `${formatPutts(Math.max(0, found.difference))} putts a foot ${name}`,
  );
  const turned = others.filter(
    ({ found }) =>
      found !== undefined && found.difference >= SIDE_MATTERS && apart(found.best, best.clock) > 0.75,
  );
  const side =
    turned.length === 0
      ? 'The best place stays where it is.'
      : turned
          .map(({ name, found }) => `A foot ${name} the best place is ${formatClock(found?.best ?? 0)}.`)
          .join(' ');
  return `If the green speed is not as you think, the side is worth ${worth.join(', ')}. ${side}`;
};

/** The side asked of everybody the person may be (screens/green/family.ts). */
export interface AskedOfAll {
  readonly asked: number;
  readonly worth: { readonly low: number; readonly high: number };
  readonly turns:
    | { readonly on: Parted | undefined; readonly clock: number; readonly saves: number }
    | undefined;
}

/** Where: "below the hole (6:00)". */
const placeOf = (clock: number): string => `${sideWords(clock)} (${formatClock(clock)})`;

/** The answer where it turns on who one is; undefined: it does not, or serves nobody asked. */
export const sideTurns = (found: ApproachSides, { turns }: AskedOfAll, units: Units): string | undefined => {
  if (turns?.on === undefined) return undefined;
  const [served, others] = partWords(turns.on);
  return `From ${formatLength(found.distance, units)} it turns on your errors: leave it ${placeOf(found.best.clock)} if ${served}, ${placeOf(turns.clock)} if ${others}; ${TEST_WORDS[turns.on.test].words}.`;
};

/** Below the answer: whether it holds for all of them, or what it is for the middle one, and what the others save. */
export const sideForAll = (
  { asked, worth, turns }: AskedOfAll,
  found: ApproachSides,
  units: Units,
): string => {
  if (turns !== undefined) {
    const saves = `saves up to ${formatPutts(turns.saves)} putts over ${formatClock(found.best.clock)}`;
    if (turns.on === undefined)
      return `That is for the middle player alone: for all ${asked} asked about them, leaving it ${placeOf(turns.clock)} ${saves}.`;
    return `For the middle one, ${sideHeadline(found, units).replace(/^From/, 'from')} For the others ${formatClock(turns.clock)} ${saves}.`;
  }
  if (worth.high < SIDE_MATTERS) return `That holds for all ${asked} players asked: no side matters to any.`;
  const [low, high] = [formatPutts(Math.max(0, worth.low)), formatPutts(worth.high)];
  return `That holds for all ${asked} players asked: leaving it there rather than on the worst side is worth ${low === high ? low : `${low} to ${high}`} putts to them.`;
};

/** Who was asked, and how: below the sentence. @param of all who may be meant */
export const askedHow = (asked: number, of: number, who: string): string =>
  `Map and table are of the middle one of ${who}; the side was asked of ${asked < of ? `${asked} of them that span the others` : 'all of them'}, at this distance, by how their next putts differ.`;

/** As long as nobody else was asked. @param of all who may be meant */
export const sideOfMiddle = (of: number): string =>
  `So far of the middle one of ${plural(of, 'likely player')} alone.`;

/** How many places there are at all, where that is not all of them. @param all places looked at */
export const sidesMissing = (count: number, all: number): string | undefined =>
  count === all
    ? undefined
    : `At this distance ${count} of ${all} places round the hole are on the green; the others are left out.`;

export const noSides = (distance: number, units: Units): string =>
  `No place ${formatLength(distance, units)} from this hole can be putted from. Choose a shorter distance, or move the hole.`;

export interface AskedPlace {
  /** m, from the hole. */
  readonly length: number;
  /** hours */
  readonly clock: number;
  /** undefined: off the map, or no line from there. */
  readonly value: PlaceValue | undefined;
}

/** One place: expected putts, chances of one and of three or more, best pace. */
export const placeWords = ({ length, clock, value }: AskedPlace, units: Units): string => {
  const where = `${formatLength(length, units)} at ${formatClock(clock)}, ${sideWords(clock)}`;
  if (value === undefined) return `${where}: no putt can be worked out from here.`;
  return `${where}: ${formatPutts(value.expected)} putts; ${formatPercent(value.one)} holed, ${formatPercent(value.threeOrMore)} three putts or more; fewest putts stopping ${formatShort(value.pace, units)} past.`;
};

export interface DescribedGreen {
  /** The ground, such as "a plane of 2%". */
  readonly ground: string;
  readonly sides: ApproachSides | undefined;
  readonly place: AskedPlace;
  readonly units: Units;
}

export const describeGreen = ({ ground, sides, place, units }: DescribedGreen): string => {
  const round = sides
    ? ` Expected putts ${formatLength(sides.distance, units)} from the hole: best ${from(sides.best)}, worst ${from(sides.worst)}.`
    : '';
  return `${ground[0].toUpperCase()}${ground.slice(1)} with lines of equal expected putts round the hole.${round} The ball: ${placeWords(place, units)}`;
};
