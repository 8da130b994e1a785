/**
 * Questions for reading practice: from a drill and a seed to a set of putts, each with its true aim.
 *
 * Answers for: drawing, keeping groups together, drawing again what cannot be asked. Leaves out: what a question is
 * (putt-question.ts), what was answered (scoring.ts), sets that follow the player (choose-next.ts).
 */
import { seededRandom } from '../random.ts';
import { pinSpots } from '../surface/pins.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { HeightSample, Point, Surface } from '../types.ts';
import { clockToBearing } from '../units.ts';
import { oneOf, type Random, shuffle, within } from './draw.ts';
import type { ReadDrill } from './drill.ts';
import {
  type Ground,
  type Judged,
  judge,
  planeSpot,
  type Question,
  type Spot,
  surfaceOfGround,
  type Variant,
} from './putt-question.ts';

/** Putts in a set. */
export const SET_SIZE = 10;
/** Draws before a drill is called impossible; most drills need one or two. */
const MOST_DRAWS = 200;
/** Draws on one green before another is made: a green costs far more than a putt. */
const DRAWS_PER_GREEN = 25;
/** Hole positions looked for on a green. */
const PINS = 6;
/** The ball keeps this far from the edge of a green, m. */
const FROM_EDGE = 0.5;

interface Green {
  readonly ground: Ground;
  readonly surface: Surface;
  readonly pins: readonly Point[];
}

const makeGreen = (seed: string): Green => {
  const ground = { kind: 'green', seed } as const;
  const surface = surfaceOfGround(ground);
  return { ground, surface, pins: pinSpots(surface, PINS, seed) };
};

const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };

/** undefined: the ball would lie off the green, or the ground has no fall line there. */
function greenSpot({ ground, surface, pins }: Green, drill: ReadDrill, random: Random): Spot | undefined {
  const hole = oneOf(pins, random);
  const clock = within(oneOf(drill.clock, random), random);
  const length = within(drill.lengthM, random);
  if (hole === undefined || !sampleSurface(surface, hole.x, hole.y, sample)) return undefined;
  const bearing = clockToBearing(clock, Math.atan2(-sample.gradientY, -sample.gradientX));
  const ball = { x: hole.x + length * Math.cos(bearing), y: hole.y + length * Math.sin(bearing) };
  for (const [dx, dy] of [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ])
    if (!sampleSurface(surface, ball.x + dx * FROM_EDGE, ball.y + dy * FROM_EDGE, sample)) return undefined;
  return { ground, surface, ball, hole };
}

/** One draw of a whole group, in asking order; undefined: draw again. */
function drawGroup(drill: ReadDrill, green: Green | undefined, random: Random): Variant[] | undefined {
  const greenSpeed = within(drill.greenSpeedM, random);
  const pace = oneOf(drill.paceM, random);
  const spots: Spot[] = [];
  if (green === undefined) {
    const slope = within(drill.slope, random);
    const clock = within(oneOf(drill.clock, random), random) % 12;
    const length = within(drill.lengthM, random);
    spots.push(planeSpot(slope, clock, length));
    if (drill.group === 'leftAndRight') spots.push(planeSpot(slope, (12 - clock) % 12, length));
    if (drill.group === 'upAndDown') spots.push(planeSpot(slope, (18 - clock) % 12, length));
  } else {
    const spot = greenSpot(green, drill, random);
    if (spot === undefined) return undefined;
    spots.push(spot);
  }
  const [slow, fast] = drill.greenSpeedM;
  const variants = spots.flatMap((spot): Variant[] => {
    if (drill.group === 'greenSpeeds')
      return [slow, (slow + fast) / 2, fast].map((speed) => ({ ...spot, greenSpeed: speed, pace }));
    if (drill.group === 'paces') return drill.paceM.map((called) => ({ ...spot, greenSpeed, pace: called }));
    return [{ ...spot, greenSpeed, pace }];
  });
  return shuffle(variants, random);
}

function makeGroup(drill: ReadDrill, seed: string): Judged[] {
  const random = seededRandom(seed);
  // A plane has the slope it was drawn with; along a line over a green it is what it is.
  const slopes = drill.surface === 'green' ? drill.slope : undefined;
  let green: Green | undefined;
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    if (drill.surface === 'green' && draw % DRAWS_PER_GREEN === 0)
      green = makeGreen(`${seed} ${draw / DRAWS_PER_GREEN}`);
    const variants = drawGroup(drill, green, random);
    if (variants === undefined) continue;
    const judged = variants.map((variant) => judge(variant, slopes));
    if (judged.every((question) => question !== undefined)) return judged;
  }
  throw new RangeError(
    `Got no putt that can be asked from drill "${drill.id}" in ${MOST_DRAWS} draws, expected at least one: widen its ranges, or make them gentler.`,
  );
}

/**
 * A set of questions: the same drill and seed give the same set everywhere. Groups stay whole as long as they fit; what
 * is left over is filled with single putts of the same drill.
 * @throws RangeError when the drill's ranges hold no putt that can be asked
 */
export function makeReadSet(drill: ReadDrill, seed: number | string, size = SET_SIZE): Question[] {
  const questions: Question[] = [];
  for (let group = 0; questions.length < size; group++) {
    const judged = makeGroup(drill, `${drill.id} ${seed} ${group}`);
    const room = size - questions.length;
    const taken = judged.length <= room ? judged : judged.slice(0, 1);
    for (const question of taken) questions.push({ ...question, number: questions.length + 1, group });
  }
  return questions;
}
