/**
 * An invented player on invented courses: two dozen rounds over five months, practice and reading sets, the same each time for the
 * same last day. Two rounds are written out, because their kind is what the review has to explain: a nine in which nothing longer
 * than a tap-in dropped and strokes were gained all the same, and a round with none of six from 12 to 20 ft.
 * Leaves out: how a putt goes (demoPlayer.ts), where these records are kept (state/recordSource.ts).
 */
import { readDrill } from '../../drills/index.ts';
import {
  type BreakWay,
  type Climb,
  feetToMetres,
  makeReadSet,
  metresToFeet,
  type PracticeSet,
  type Question,
  type RecordedPutt,
  type RecordedRound,
  seededRandom,
} from '../../sim/index.ts';
import { firstPutt, normal, type Random, strike } from './demoPlayer.ts';
import { BREAK_WAYS, CLIMBS, PACES_MEANT, SLOPES_FELT } from './recordSchema.ts';
import type { KeptSet } from './schema.ts';

/** Other tables are looked at among the own records only. */
export interface Demo {
  readonly rounds: readonly RecordedRound[];
  readonly putts: readonly RecordedPutt[];
  readonly practice: readonly PracticeSet[];
  readonly readSets: readonly KeptSet[];
}

const SEED = 'the invented player';
const ROUNDS = 24;
/** Days from the first round to the last: five months. */
const SPAN = 150;
const DAY = 86_400_000;
const MINUTE = 60_000;

const COURSES = [
  { course: 'Nonesuch Heath (invented)', greenSpeed: 10 },
  { course: 'Farthing Moor (invented)', greenSpeed: 9 },
  { course: 'Old Kiln Nine (invented)', greenSpeed: 8.5 },
] as const;

/** Which rounds are written out, counted from 0. */
const NOTHING_DROPPED = 17;
const NONE_OF_SIX = 20;
/** First putt and what it left, ft, holed with the second: far first putts, so that two putts are good. */
const TAP_INS: readonly (readonly [first: number, leave: number])[] = [
  [42, 2],
  [36, 1.5],
  [51, 2.5],
  [38, 1],
  [47, 2],
  [58, 2.5],
  [34, 1],
  [44, 1.5],
  [40, 2],
];
/** First putts of the round with none of six from 12 to 20 ft. */
const SIX_MISSED: readonly number[] = [14, 5, 27, 17, 31, 12, 8, 3, 38, 19, 24, 6, 15, 4, 29, 13, 9, 45];
const isOneOfSix = (feet: number): boolean => feet >= 12 && feet <= 20;

const oneOf = <Item>(items: readonly Item[], random: Random): Item =>
  items[Math.floor(items.length * random())];
const sometimes = <Value>(share: number, random: Random, value: Value): Value | undefined =>
  random() < share ? value : undefined;

const dayBefore = (lastDay: string, days: number): string =>
  new Date(Date.parse(`${lastDay}T00:00:00Z`) - days * DAY).toISOString().slice(0, 10);
const momentOf = (day: string, minutes: number): number => Date.parse(`${day}T09:00:00Z`) + minutes * MINUTE;

/** Fields that are not there must be missing, not undefined: that is how records are written. */
const tidy = <Kept extends object>(record: Kept): Kept =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Kept;

interface HoleRequest {
  readonly round: RecordedRound;
  readonly number: number;
  readonly hole: number;
  /** First putt, ft. */
  readonly feet: number;
  readonly random: Random;
  /** A first putt that is known to miss. */
  readonly missed?: boolean;
}

/** One hole, putted out. */
const playHole = ({ round, number, hole, feet, random, missed = false }: HoleRequest): RecordedPutt[] => {
  const putts: RecordedPutt[] = [];
  const climb: Climb = oneOf(CLIMBS, random);
  const breaks: BreakWay = random() < 0.15 ? 'straight' : oneOf(BREAK_WAYS.slice(0, 2), random);
  for (let left = feet, stroke = 1; left > 0; stroke += 1) {
    const first = stroke === 1;
    let struck = strike(left, first ? breaks : undefined, random);
    while (first && missed && struck.holed) struck = strike(left, breaks, random);
    // After three the next is given: nobody writes down a seventh.
    const conceded = stroke > 3 || (!first && left <= 1 && random() < 0.06);
    const about = first
      ? {
          climb,
          breaks,
          slopeFelt: sometimes(0.5, random, oneOf(SLOPES_FELT, random)),
          paceMeant: sometimes(0.5, random, oneOf(PACES_MEANT, random)),
          startedAsMeant: sometimes(0.4, random, random() < 0.7),
          paceAsMeant: sometimes(0.4, random, random() < 0.6),
        }
      : {};
    putts.push(
      tidy({
        id: `demo-putt-${number}-${hole}-${stroke}`,
        roundId: round.id,
        hole,
        stroke,
        kind: conceded ? 'conceded' : 'putt',
        distance: feetToMetres(left),
        ...about,
        holed: !conceded && struck.holed,
        miss: conceded || struck.holed ? undefined : struck.miss,
        recordedAt: round.startedAt + (12 * hole + stroke) * MINUTE,
      }),
    );
    left = conceded || struck.holed ? 0 : metresToFeet(struck.miss.leave);
  }
  return putts;
};

/** A hole of the nine in which only tap-ins dropped. */
const tapInHole = (round: RecordedRound, number: number, hole: number): RecordedPutt[] => {
  const [first, leave] = TAP_INS[hole - 1];
  const common = { roundId: round.id, hole, kind: 'putt' } as const;
  const at = round.startedAt + 12 * hole * MINUTE;
  return [
    {
      ...common,
      id: `demo-putt-${number}-${hole}-1`,
      stroke: 1,
      distance: feetToMetres(first),
      breaks: hole % 2 === 0 ? 'leftToRight' : 'rightToLeft',
      holed: false,
      miss: {
        side: hole % 3 === 0 ? 'high' : 'low',
        reach: hole % 4 === 0 ? 'short' : 'past',
        leave: feetToMetres(leave),
      },
      recordedAt: at,
    },
    {
      ...common,
      id: `demo-putt-${number}-${hole}-2`,
      stroke: 2,
      distance: feetToMetres(leave),
      holed: true,
      recordedAt: at + MINUTE,
    },
  ];
};

const makeRound = (number: number, lastDay: string) => {
  const random = seededRandom(`${SEED} ${number}`);
  const nine = number === NOTHING_DROPPED || (number % 3 === 2 && number !== NONE_OF_SIX);
  const place = nine ? COURSES[2] : COURSES[number % 2];
  const day = dayBefore(lastDay, Math.round(((ROUNDS - 1 - number) * SPAN) / (ROUNDS - 1)));
  const holes = nine ? 9 : 18;
  const written = number === NOTHING_DROPPED || number === NONE_OF_SIX;
  // A hole now and then is holed from off the green, or picked up.
  const withoutPutt = !written && random() < 0.5 ? [1 + Math.floor(holes * random())] : [];
  const round: RecordedRound = {
    id: `demo-round-${number}`,
    day,
    startedAt: momentOf(day, 0),
    endedAt: momentOf(day, 14 * holes),
    holes,
    course: place.course,
    greenSpeed: feetToMetres(place.greenSpeed),
    withoutPutt,
  };
  const putts = Array.from({ length: holes }, (_unused, index) => index + 1)
    .filter((hole) => !withoutPutt.includes(hole))
    .flatMap((hole) => {
      if (number === NOTHING_DROPPED) return tapInHole(round, number, hole);
      const feet = number === NONE_OF_SIX ? SIX_MISSED[hole - 1] : firstPutt(random);
      const missed = number === NONE_OF_SIX && isOneOfSix(feet);
      return playHole({ round, number, hole, feet, random, missed });
    });
  return { round, putts };
};

/** Twenty or so putts from one distance, on a day between rounds. */
const makePractice = (number: number, lastDay: string): PracticeSet => {
  const random = seededRandom(`${SEED} practice ${number}`);
  const feet = oneOf([3, 4, 6, 8, 10, 15], random);
  const attempts = oneOf([10, 20, 20, 25], random);
  const carpet = random() < 0.3;
  const breaks: BreakWay = carpet ? 'straight' : oneOf(BREAK_WAYS, random);
  const missed = Array.from({ length: attempts }, () => strike(feet, breaks, random)).flatMap((struck) =>
    struck.holed ? [] : [struck.miss],
  );
  const count = (of: 'side' | 'reach', value: string): number =>
    missed.filter((miss) => miss[of] === value).length;
  const day = dayBefore(lastDay, 2 + number * 9);
  return tidy({
    id: `demo-practice-${number}`,
    day,
    recordedAt: momentOf(day, 600),
    distance: feetToMetres(feet),
    attempts,
    holed: attempts - missed.length,
    misses:
      breaks === 'straight'
        ? { short: count('reach', 'short'), past: count('reach', 'past') }
        : {
            high: count('side', 'high'),
            low: count('side', 'low'),
            short: count('reach', 'short'),
            past: count('reach', 'past'),
          },
    breaks,
    ground: carpet ? 'carpet' : 'grass',
    note: carpet ? 'Hall carpet' : undefined,
  });
};

/** Drills of the reading sets, planes all: a whole green takes a second to make. */
const DRILLS = [
  'pin-high-sidehill',
  'left-and-right',
  'up-and-down-pairs',
  'die-and-firm',
  'short-testers',
  'pin-high-sidehill',
] as const;

/** Sees 15% too little break, give or take 30% (ours, invented). */
const aimFor = ({ trueAim }: Question, random: Random): number => trueAim * (0.85 + 0.3 * normal(random));

const makeSet = (drillId: (typeof DRILLS)[number], number: number, lastDay: string): KeptSet | undefined => {
  const drill = readDrill(drillId);
  if (drill === undefined) return undefined;
  const seed = `demo-${number}`;
  const random = seededRandom(`${SEED} reading ${number}`);
  const day = dayBefore(lastDay, 5 + number * 24);
  const startedAt = momentOf(day, 660);
  const questions = makeReadSet(drill, seed);
  const answers = questions.map((question, index) => ({
    kind: 'aim' as const,
    number: question.number,
    aim: aimFor(question, random),
    answeredAt: startedAt + (index + 1) * MINUTE,
  }));
  return {
    id: `demo-reading-${number}`,
    kind: 'aim',
    feedback: 'each',
    size: questions.length,
    drillId,
    drillName: drill.name,
    seed,
    startedAt,
    day,
    questions,
    answers,
  };
};

/** @param lastDay day of the last round, YYYY-MM-DD */
export const makeDemo = (lastDay: string): Demo => {
  const rounds = Array.from({ length: ROUNDS }, (_unused, number) => makeRound(number, lastDay));
  return {
    rounds: rounds.map(({ round }) => round),
    putts: rounds.flatMap(({ putts }) => putts),
    practice: Array.from({ length: 16 }, (_unused, number) => makePractice(number, lastDay)),
    readSets: DRILLS.flatMap((id, number) => makeSet(id, number, lastDay) ?? []),
  };
};
