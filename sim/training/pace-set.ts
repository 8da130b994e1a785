/**
 * "Die or firm here?": questions, and what a choice costs.
 *
 * Answers for: the putts of a set, the cost of a choice in putts, a set summed up. Leaves out: expected putts themselves (odds/), whose
 * errors they are of. The cost is what the chosen pace takes more than the other: next to nothing where the two are nearly alike, so
 * that nobody is marked wrong for a coin's toss.
 * A set stays on two greens, of one slope and speed each: what a miss costs is worked out once for a green (odds/next-putts.ts).
 */

import { seededRandom } from '../random.ts';
import { readPutt } from '../read/line.ts';
import { type Estimate, meanInterval } from '../statistics/mean-interval.ts';
import { clockToBearing, feetToMetres, inchesToMetres } from '../units.ts';
import { type Random, shuffle, within } from './draw.ts';
import type { Range } from './drill.ts';
import { type Judged, judge, type Question, surfaceOfGround } from './putt-question.ts';
import { SET_SIZE } from './question.ts';

/** Six inches and thirty, m past: die and firm, in round numbers. */
const DIE = inchesToMetres(6);
const FIRM = inchesToMetres(30);

const GREENS = 2;
const SLOPE: Range = [0.01, 0.03];
const GREEN_SPEED: Range = [feetToMetres(8.5), feetToMetres(11.5)];
/** From the shortest that one thinks about to where nobody means to hole it. */
const LENGTH: Range = [feetToMetres(3), feetToMetres(25)];
const MOST_DRAWS = 200;
/** The fall line runs down the page; the map turns it. */
const DOWNHILL = -Math.PI / 2;

export type PaceChoice = 'die' | 'firm';

/** Expected putts at each pace. */
export type PuttsByPace = Readonly<Record<PaceChoice, number>>;

function drawPutt(green: { readonly slope: number; readonly greenSpeed: number }, random: Random): Judged {
  const { slope, greenSpeed } = green;
  const ground = { kind: 'plane', slope, downhill: DOWNHILL } as const;
  const surface = surfaceOfGround(ground);
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    // Even in the logarithm: most decisions are about short putts.
    const length = Math.exp(within([Math.log(LENGTH[0]), Math.log(LENGTH[1])], random));
    const bearing = clockToBearing(within([0, 12], random), DOWNHILL);
    const ball = { x: length * Math.cos(bearing), y: length * Math.sin(bearing) };
    const found = judge({ ground, surface, ball, hole: { x: 0, y: 0 }, greenSpeed, pace: DIE });
    if (
      found !== undefined &&
      readPutt({ surface, greenSpeed, ball, hole: found.hole, capture: 'rim' }, FIRM).status === 'ok'
    )
      return { ...found, firmPace: FIRM };
  }
  throw new RangeError(
    `Got no putt with both paces in ${MOST_DRAWS} draws, expected one: make the slopes gentler.`,
  );
}

/** A set of ten on two greens, in mixed order: the same seed gives the same set. */
export function makePaceSet(seed: number | string, size = SET_SIZE): Question[] {
  const random = seededRandom(`die or firm ${seed}`);
  const greens = Array.from({ length: GREENS }, () => ({
    slope: within(SLOPE, random),
    greenSpeed: within(GREEN_SPEED, random),
  }));
  const order = shuffle(
    Array.from({ length: size }, (_unused, index) => index % GREENS),
    random,
  );
  return order.map((group, index) => ({
    ...drawPutt(greens[group], random),
    number: index + 1,
    group,
  }));
}

/** Putts more than the other pace takes, 0 or more. */
export const paceCost = (chosen: PaceChoice, putts: PuttsByPace): number =>
  Math.max(0, putts[chosen] - Math.min(putts.die, putts.firm));

export interface PaceAnswer {
  readonly chosen: PaceChoice;
  /** undefined while not worked out. */
  readonly putts?: PuttsByPace | undefined;
}

export interface PaceSummary {
  /** Answers whose cost is known. */
  readonly count: number;
  /** Given away per putt by the player's choices; without a margin while all of them cost the same, such as nothing. */
  readonly cost: Estimate;
  /** By the same pace everywhere. */
  readonly alwaysDie: number;
  readonly alwaysFirm: number;
  /** What a tossed coin gives away. */
  readonly coin: number;
  /** How often the choice was the better pace. */
  readonly better: number;
}

/** @returns undefined when no cost is known */
export function summarizePaces(answers: readonly PaceAnswer[]): PaceSummary | undefined {
  const known = answers.flatMap(({ chosen, putts }) => (putts === undefined ? [] : [{ chosen, putts }]));
  const mean = meanInterval(known.map(({ chosen, putts }) => paceCost(chosen, putts)));
  if (mean === undefined) return undefined;
  // Two choices that cost nothing are too few, not exact.
  const cost =
    mean.low === mean.high
      ? { ...mean, low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }
      : mean;
  const meanOf = (choice: PaceChoice): number =>
    known.reduce((sum, { putts }) => sum + paceCost(choice, putts), 0) / known.length;
  const [alwaysDie, alwaysFirm] = [meanOf('die'), meanOf('firm')];
  return {
    count: known.length,
    cost,
    alwaysDie,
    alwaysFirm,
    coin: (alwaysDie + alwaysFirm) / 2,
    better: known.filter(({ chosen, putts }) => paceCost(chosen, putts) === 0).length,
  };
}
