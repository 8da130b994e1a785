/**
 * From a record to what the likelihood is a product of. Answers for: which strokes count, the ground each may have had by its
 * words, putts of one practice set on one ground. Leaves out: strokes (recorded-strokes.ts), players (likelihood.ts).
 *
 * - Putts of kind 'putt' count, each on a ground of its own. Shorter than SHORTEST or longer than LONGEST: passed over.
 * - A practice set is so many putts from one spot: its ground is not known, but the same for all. On carpet it is level.
 * - Of a set's misses those counted high or low say so; of the others nothing but that they missed is known. Short and past are
 *   a second count of the same misses; it is taken as independent of the first.
 */

import type { PracticeSet, RecordedPutt, RecordedRound } from '../record.ts';
import type { Ground, Grounds } from './grounds.ts';
import type { MeasuredStrokes } from './measured-strokes.ts';
import type { Spot } from './player-strokes.ts';
import {
  type Answers,
  type LikelySpot,
  type Outcome,
  type RecordedStrokes,
  recordedStrokes,
  type StrokesWanted,
} from './recorded-strokes.ts';
import {
  aimSd,
  countedSide,
  type GroundWords,
  NO_WORDS,
  paceOf,
  riseSd,
  slopeSdOf,
  type WrittenMiss,
  wordsShare,
  writtenSide,
} from './words.ts';

/** A record to fit. */
export interface FitRecord {
  readonly putts: readonly RecordedPutt[];
  readonly sets?: readonly PracticeSet[];
  /** Their green speeds count; a putt whose round is not among them has none. */
  readonly rounds?: readonly RecordedRound[];
  /** Balls rolled through gates and to targets. */
  readonly strokes?: MeasuredStrokes;
}

/** Nearer, m, nobody misses (a touch more than the hole's own radius and the ball's); farther, nobody putts. */
const SHORTEST = 0.15;
const LONGEST = 30;
/** A ground that the words make so unlikely, beside the likeliest, is not looked at. */
const UNLIKELY = 0.01;

/** Spots of which something was said, as many as have any chance of it: their chances of the words are what an outcome is given. */
export interface SaidOf {
  readonly spots: readonly { readonly index: number; readonly share: number; readonly words: GroundWords }[];
}

/** Outcomes with how often each came: chance = sum over grounds of share x product of chance^count. */
export interface Recorded {
  /** Of each ground: one when it is averaged over within the outcomes. */
  readonly shares: readonly number[];
  /** Ground by ground, outcomes in turn. */
  readonly outcomes: readonly (readonly RecordedStrokes[])[];
  readonly counts: readonly number[];
  readonly said: SaidOf | undefined;
}

export interface OutcomeOptions extends StrokesWanted {
  readonly grounds: Grounds;
  /** All putts on level ground, whatever was said. */
  readonly level: boolean;
}

/** All spots that a record speaks of, each once: a player's strokes are worked out once for all of them. */
export class Spots {
  readonly all: Spot[] = [];
  private readonly places = new Map<Ground, Map<number | undefined, number>>();

  indexOf(ground: Ground, pace: number | undefined): number {
    let ofGround = this.places.get(ground);
    if (ofGround === undefined) {
      ofGround = new Map();
      this.places.set(ground, ofGround);
    }
    let place = ofGround.get(pace);
    if (place === undefined) {
      place = this.all.length;
      ofGround.set(pace, place);
      this.all.push({ ground, pace, lines: ground.lines });
    }
    return place;
  }
}

type Words = Pick<RecordedPutt, 'climb' | 'breaks' | 'slopeFelt' | 'paceMeant'>;

const breaksOf = (breaks: Words['breaks'], turned: boolean): GroundWords['breaks'] =>
  breaks === undefined || breaks === 'straight' ? breaks : turned ? 'lowSide' : 'highSide';

/** Chance of words on a ground that may be misread by so much, for choosing which to look at. */
function roughShare(ground: Spot['ground'], words: GroundWords, misread: number): number {
  const { rise, across, aimOffset, aimByAcross } = ground;
  return wordsShare(words, {
    rise,
    riseSd: riseSd(misread),
    slope: Math.hypot(rise, across),
    slopeSd: slopeSdOf(misread),
    aim: aimOffset,
    aimSd: aimSd(aimByAcross * misread),
  });
}

/** Misread by so much beside the words' own softness, rise over run: most that words are said of. */
const MISREAD = 0.006;

/** Grounds that putts with these words may have had, but for what the words all but rule out. */
export function likelySpots(
  candidates: readonly Ground[],
  said: Words,
  list: Spots,
  misread = MISREAD,
): LikelySpot[] {
  const { climb, slopeFelt, breaks, paceMeant } = said;
  const ways = breaks === undefined || breaks === 'straight' ? [false] : [false, true];
  const weighed = candidates.flatMap((ground) =>
    ways.map((turned) => {
      const words: GroundWords = { climb, slopeFelt, breaks: breaksOf(breaks, turned) };
      return { ground, turned, words, chance: ground.share * roughShare(ground, words, misread) };
    }),
  );
  const likeliest = weighed.reduce((most, { chance }) => Math.max(most, chance), 0);
  const kept = weighed.filter(({ chance }) => chance > UNLIKELY * likeliest);
  const pace = paceMeant && paceOf(paceMeant);
  return kept.map(({ ground, turned, words }) => {
    const index = list.indexOf(ground, pace);
    return {
      ...list.all[index],
      index,
      words: climb === undefined && slopeFelt === undefined && breaks === undefined ? undefined : words,
      turned,
      strokes: ground.strokes(),
      share: ground.share,
    };
  });
}

/** How "as meant?" was answered of a putt. */
export const answersGiven = ({ startedAsMeant, paceAsMeant }: RecordedPutt): Answers => ({
  startedAsMeant,
  paceAsMeant,
});

/** What was written of the end of a putt, on ground high on the side of the word for its break or (turned) on the other. */
export const outcomeOf =
  ({ holed, miss, breaks }: RecordedPutt) =>
  (turned: boolean): Outcome => {
    if (holed) return 'holed';
    const { side, reach, leave } = miss ?? {};
    return {
      ...(side && { side: writtenSide(side, breaks, turned) }),
      ...(reach && { reach }),
      ...(leave !== undefined && { leave }),
    };
  };

/** Does this putt say anything of its player? */
export const counts = ({ kind, distance }: RecordedPutt): boolean =>
  kind === 'putt' && distance >= SHORTEST && distance <= LONGEST;

/** Where a recorded putt may have lain. */
export function spotsOfPutt(
  putt: RecordedPutt,
  { grounds, level }: OutcomeOptions,
  greenSpeed: number | undefined,
  list: Spots,
): LikelySpot[] {
  const candidates = grounds.of({ length: putt.distance, greenSpeed, level, exact: false });
  return likelySpots(candidates, level ? { paceMeant: putt.paceMeant } : putt, list);
}

/** @returns undefined where nothing was said */
export function saidOf(spots: readonly LikelySpot[]): SaidOf | undefined {
  const said = spots.flatMap(({ index, share, words }) => (words ? [{ index, share, words }] : []));
  return said.length > 0 ? { spots: said } : undefined;
}

/** @returns undefined when the putt has no ground on which a ball rests */
export function recordedPutt(
  putt: RecordedPutt,
  options: OutcomeOptions,
  greenSpeed: number | undefined,
  list: Spots,
): Recorded | undefined {
  const spots = spotsOfPutt(putt, options, greenSpeed, list);
  if (spots.length === 0) return undefined;
  const strokes = recordedStrokes(spots, outcomeOf(putt), options, answersGiven(putt));
  return { shares: [1], outcomes: [[strokes]], counts: [1], said: saidOf(spots) };
}

/** @returns undefined when the set says nothing */
export function recordedSet(set: PracticeSet, options: OutcomeOptions, list: Spots): Recorded | undefined {
  const { grounds, level } = options;
  const { distance: length, attempts, holed, misses = {} } = set;
  if (!(attempts > 0) || length < SHORTEST || length > LONGEST) return undefined;
  const isLevel = level || set.ground === 'carpet';
  const candidates = grounds.of({ length, level: isLevel, exact: true });
  // One ground spoken of after many putts: as it is.
  const likely = likelySpots(candidates, isLevel ? {} : set, list, 0).filter(({ turned }) => !turned);
  const chances = likely.map(({ ground, share, words = NO_WORDS }) => share * roughShare(ground, words, 0));
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  const missed = attempts - holed;
  const { high = 0, low = 0, short = 0, past = 0 } = misses;
  const tellSide = high + low > 0 && high + low <= missed;
  const tellReach = short + past > 0 && short + past <= missed;
  const any: WrittenMiss = {};
  const outcomes: (readonly [Outcome, number])[] = [
    ['holed', holed],
    [any, missed - (tellSide ? high + low : 0) - (tellReach ? short + past : 0)],
  ];
  if (tellSide) outcomes.push([{ side: countedSide('high') }, high], [{ side: countedSide('low') }, low]);
  if (tellReach) outcomes.push([{ reach: 'short' }, short], [{ reach: 'past' }, past]);
  const told = outcomes.filter(([, count]) => count !== 0);
  return {
    shares: chances.map((chance) => chance / total),
    // The share of each ground stays outside: it is one for all putts of the set, which may be many, so that every stroke counts.
    outcomes: likely.map((spot) =>
      told.map(([outcome]) =>
        recordedStrokes([{ ...spot, words: undefined, share: 1 }], () => outcome, {
          ...options,
          taken: EVERY,
        }),
      ),
    ),
    counts: told.map(([, count]) => count),
    said: undefined,
  };
}
const EVERY = Number.POSITIVE_INFINITY;
