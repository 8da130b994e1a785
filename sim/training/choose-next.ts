/**
 * The next question of an adaptive set: of the kind this player reads worst, or of which least is known, as hard as suits.
 *
 * Answers for: the choice, the same for the same answers and seed. Leaves out: the model of the eye (reader-model.ts), how hard
 * (staircase.ts), what counts as a hit (hit.ts).
 * Rule, in this order:
 * 1. Mixed, and nothing left out: a kind asked twice running is not asked a third time; one not asked in seven questions is asked
 *    now. Random order helps what is kept of practice, though it looks worse on the day (Shea & Morgan, J. Exp. Psychol. 5,
 *    179, 1979, memory).
 * 2. Of the combinations of kinds that leaves, those with the largest error of a player drawn at random from the posterior come
 *    first (Thompson, Biometrika 25, 285, 1933; Chapelle & Li 2011; memory). Drawn anew each time, a little-known kind is sometimes
 *    thought bad and looked at; no bonus has to be tuned, as an upper confidence bound would need, and the draws mix by themselves.
 * 3. The first of them in which a putt of the wanted difficulty turns up; or the nearest to it in the first few.
 */
import { seededRandom } from '../random.ts';
import { feetToMetres, inchesToMetres } from '../units.ts';
import { type Random, within } from './draw.ts';
import type { Range } from './drill.ts';
import { difficultyOf, isHit } from './hit.ts';
import { IS_OF_KIND, type PuttReadKind, SORTS } from './kinds.ts';
import { climbOf, type Judged, judge, planeSpot } from './putt-question.ts';
import { drawReader, fitReader, type SeenRead } from './reader-model.ts';
import { wantedDifficulty } from './staircase.ts';

/** A kind asked so many times running rests. */
const RUNNING = 2;
/** A kind that so many questions have left out is due. */
export const LEFT_OUT = 7;
/** Newest reads that are learnt from: an eye of a year ago says little of today's. */
const MOST_READS = 200;
/** Combinations looked through, and putts drawn in each. */
const MOST_CELLS = 8;
const DRAWS = 8;
/** Draws of a putt's numbers before its combination is given up: numbers are cheap, lines are not. */
const MOST_DRAWS = 400;
/** Near enough to the difficulty wanted, in its logarithm. */
const NEAR = 0.2;

/** What the putts are drawn from; within these every combination of kinds has putts. */
const RANGES: Readonly<Record<'gentle' | 'steep' | 'short' | 'middle' | 'long' | 'slow' | 'fast', Range>> = {
  gentle: [0.006, 0.0199],
  steep: [0.02, 0.035],
  short: [0.9, feetToMetres(7.9)],
  middle: [feetToMetres(8.1), feetToMetres(19.9)],
  long: [feetToMetres(20.1), feetToMetres(45)],
  slow: [feetToMetres(8), feetToMetres(9.9)],
  fast: [feetToMetres(10.1), feetToMetres(12)],
};
const PACES = { die: inchesToMetres(6), firm: inchesToMetres(18) };

type Cell = { readonly [One in keyof typeof SORTS]: (typeof SORTS)[One][number] };

const CELLS: readonly Cell[] = SORTS.direction.flatMap((direction) =>
  SORTS.climb.flatMap((climb) =>
    SORTS.steepness.flatMap((steepness) =>
      SORTS.length.flatMap((length) =>
        SORTS.greenSpeed.flatMap((greenSpeed) =>
          SORTS.pace.map((pace) => ({ direction, climb, steepness, length, greenSpeed, pace })),
        ),
      ),
    ),
  ),
);

/** Kinds that may be asked now: of each sort all but the one that must rest, or only the one that is due. */
function allowedKinds(asked: readonly SeenRead['question'][]): Set<PuttReadKind> {
  const last = asked.slice(-RUNNING);
  const recent = asked.slice(-LEFT_OUT);
  const isDue = (kind: PuttReadKind): boolean =>
    asked.length >= LEFT_OUT && !recent.some((question) => IS_OF_KIND[kind](question));
  const rests = (kind: PuttReadKind): boolean =>
    last.length === RUNNING && last.every((question) => IS_OF_KIND[kind](question));
  return new Set(
    Object.values(SORTS).flatMap((kinds: readonly PuttReadKind[]) => {
      const due = kinds.filter(isDue);
      return due.length > 0 ? due.slice(0, 1) : kinds.filter((kind) => !rests(kind));
    }),
  );
}

/** Whether a ball at this hour of a plane has a putt of that direction and climb; 12 lies straight uphill of the hole. */
const isSoPlaced = ({ direction, climb }: Cell, slope: number, clock: number): boolean => {
  const rise = -slope * Math.cos((clock / 6) * Math.PI);
  return direction === (clock < 6 ? 'rightToLeft' : 'leftToRight') && climb === climbOf(rise);
};

/** A putt of these kinds; undefined: none in many draws, or none that can be asked. */
function drawPutt(cell: Cell, random: Random): Judged | undefined {
  const kinds = Object.values(cell);
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const slope = within(RANGES[cell.steepness], random);
    const clock = within([0, 12], random);
    if (!isSoPlaced(cell, slope, clock)) continue;
    const length = within(RANGES[cell.length], random);
    const greenSpeed = within(RANGES[cell.greenSpeed], random);
    const found = judge({ ...planeSpot(slope, clock, length), greenSpeed, pace: PACES[cell.pace] });
    return found !== undefined && kinds.every((kind) => IS_OF_KIND[kind](found)) ? found : undefined;
  }
  return undefined;
}

/** Combinations of kinds that may be asked, worst or least known first. */
function cellsInOrder(reads: readonly SeenRead[], asked: readonly SeenRead[], random: Random): Cell[] {
  const reader = drawReader(fitReader(reads.slice(-MOST_READS)), random);
  const allowed = allowedKinds(asked.map(({ question }) => question));
  return CELLS.filter((cell) => Object.values(cell).every((kind) => allowed.has(kind)))
    .map((cell) => ({ cell, error: reader.errorOf(Object.values(cell)) }))
    .sort((one, other) => other.error - one.error)
    .map(({ cell }) => cell);
}

export interface ChooseOptions {
  /** Reads that were not of adaptive sets, oldest first: the eye is learnt from them too, the difficulty is not. */
  readonly earlier?: readonly SeenRead[];
}

/**
 * The next question.
 * @param answers of all adaptive sets so far, oldest first
 * @throws RangeError when nothing can be asked, which no answers bring about
 */
export function chooseNext(
  answers: readonly SeenRead[],
  { earlier = [] }: ChooseOptions,
  seed: number | string,
): Judged {
  const random = seededRandom(`adaptive ${seed} ${answers.length}`);
  const hits = answers.flatMap(({ question, aim }) => isHit(question, aim) ?? []);
  const wanted = Math.log(wantedDifficulty(hits));
  let nearest: { readonly question: Judged; readonly away: number } | undefined;
  let looked = 0;
  for (const cell of cellsInOrder([...earlier, ...answers], answers, random)) {
    if (looked === MOST_CELLS && nearest !== undefined) break;
    looked += 1;
    for (let draw = 0; draw < DRAWS; draw++) {
      const question = drawPutt(cell, random);
      const difficulty = question && difficultyOf(question);
      if (question === undefined || difficulty === undefined) continue;
      const away = Math.abs(Math.log(difficulty) - wanted);
      if (nearest === undefined || away < nearest.away) nearest = { question, away };
      if (away < NEAR) return question;
    }
  }
  if (nearest === undefined)
    throw new RangeError('Got no putt that can be asked, expected one: widen the ranges of chooseNext.');
  return nearest.question;
}
