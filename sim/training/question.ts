/**
 * Questions for reading practice: from a drill and a seed to a set of putts, each with its true aim.
 *
 * Answers for: drawing, keeping groups together, turning down putts that cannot be asked, and what kind of putt each is.
 * Leaves out: what was answered (scoring.ts), storing. A question is plain data: a green is kept as its seed.
 */
import { checkPutt } from '../check.ts';
import { seededRandom } from '../random.ts';
import { readPutt } from '../read/line.ts';
import { generateGreen } from '../surface/generated.ts';
import { pinSpots } from '../surface/pins.ts';
import { planeSurface } from '../surface/plane.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { BreakWay, Climb, HeightSample, Point, Putt, Surface } from '../types.ts';
import { clockToBearing, degreesToRadians } from '../units.ts';
import type { Range, ReadDrill } from './drill.ts';

/** Putts in a set. */
export const SET_SIZE = 10;
/** A start line further off than this is not a read anyone practises, radians. */
const WIDEST_START = degreesToRadians(40);
/** Draws before a drill is called impossible; most drills need one or two. */
const MOST_DRAWS = 200;
/** Draws on one green before another is made: a green costs far more than a putt. */
const DRAWS_PER_GREEN = 25;
/** Hole positions looked for on a green. */
const PINS = 6;
/** The ball keeps this far from the edge of a green, m. */
const FROM_EDGE = 0.5;
/** Aims nearer the centre than this break neither way, m (half an inch). */
const STRAIGHT = 0.0127;
/** Rise to the hole per metre below which a putt counts as level. */
const LEVEL = 0.005;
/** Where gentle ends and steep begins, rise over run. */
const STEEP = 0.02;
/** Ground steeper than this anywhere on the line is no putt one meets, rise over run: a hole is cut on under 3%. */
const STEEPEST = 0.05;
/** Places along the line at which the ground's slope is looked up. */
const LOOKS = 17;

/** Ground as plain data, small enough to store. */
export type Ground =
  | { readonly kind: 'plane'; readonly slope: number; readonly downhill: number }
  | { readonly kind: 'green'; readonly seed: string };

export type Steepness = 'gentle' | 'steep';

export interface Question {
  /** 1 to the size of the set. */
  readonly number: number;
  /** Questions with the same group are one putt varied. */
  readonly group: number;
  readonly ground: Ground;
  readonly ball: Point;
  readonly hole: Point;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  /** Called pace, m past the covered hole. */
  readonly pace: number;
  /** m */
  readonly length: number;
  /** Mean slope of the ground along the line, rise over run. */
  readonly slope: number;
  /** True aim offset, m, positive left. */
  readonly trueAim: number;
  readonly direction: BreakWay;
  readonly climb: Climb;
  readonly steepness: Steepness;
}

/** The surface of a question. */
export const surfaceOfGround = (ground: Ground): Surface =>
  ground.kind === 'plane'
    ? planeSurface({ slope: ground.slope, downhill: ground.downhill })
    : generateGreen({ seed: ground.seed });

/** A question as a putt the engine can read and roll; the hole as it is. */
export const puttOfQuestion = (question: Question, surface = surfaceOfGround(question.ground)): Putt => ({
  surface,
  greenSpeed: question.greenSpeed,
  ball: question.ball,
  hole: question.hole,
  capture: 'rim',
});

interface Spot {
  readonly ground: Ground;
  readonly surface: Surface;
  readonly ball: Point;
  readonly hole: Point;
}

interface Variant extends Spot {
  readonly greenSpeed: number;
  readonly pace: number;
}

type Random = () => number;

const within = ([low, high]: Range, random: Random): number => low + (high - low) * random();
const oneOf = <Item>(items: readonly Item[], random: Random): Item =>
  items[Math.min(items.length - 1, Math.floor(random() * items.length))];

/** Fisher-Yates, in place. */
const shuffle = <Item>(items: Item[], random: Random): Item[] => {
  for (let i = items.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [items[i], items[j]] = [items[j], items[i]];
  }
  return items;
};

/** On a plane the hole is the origin and the putt runs straight up the page: the fall line turns instead. */
function planeSpot(slope: number, clock: number, length: number): Spot {
  const downhill = -Math.PI / 2 - clockToBearing(clock, 0);
  const ground = { kind: 'plane', slope, downhill } as const;
  return { ground, surface: surfaceOfGround(ground), ball: { x: 0, y: -length }, hole: { x: 0, y: 0 } };
}

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

/** Mean slope along the line and rise to the hole per metre; undefined: the line leaves the surface, or crosses ground too steep. */
function groundAlong({ surface, ball, hole }: Spot): { slope: number; rise: number } | undefined {
  let sum = 0;
  let first = 0;
  for (let i = 0; i < LOOKS; i++) {
    const share = i / (LOOKS - 1);
    if (
      !sampleSurface(surface, ball.x + share * (hole.x - ball.x), ball.y + share * (hole.y - ball.y), sample)
    )
      return undefined;
    const slope = Math.hypot(sample.gradientX, sample.gradientY);
    if (slope > STEEPEST) return undefined;
    sum += slope;
    if (i === 0) first = sample.height;
  }
  return { slope: sum / LOOKS, rise: (sample.height - first) / Math.hypot(hole.x - ball.x, hole.y - ball.y) };
}

type Judged = Omit<Question, 'number' | 'group'>;

/** The variant as a question, or undefined when it cannot be asked: no line, a start too wide, ground outside the drill. */
function judge(variant: Variant, drill: ReadDrill): Judged | undefined {
  const { ground, ball, hole, greenSpeed, pace, surface } = variant;
  const along = groundAlong(variant);
  if (along === undefined) return undefined;
  const { slope, rise } = along;
  if (ground.kind === 'green' && (slope < drill.slope[0] || slope > drill.slope[1])) return undefined;
  const putt = { surface, greenSpeed, ball, hole, capture: 'rim' } as const;
  if (checkPutt(putt) !== undefined) return undefined;
  const read = readPutt(putt, pace);
  if (read.status !== 'ok' || read.aimOffset === undefined || Math.abs(read.start) > WIDEST_START)
    return undefined;
  const trueAim = read.aimOffset;
  return {
    ground,
    ball,
    hole,
    greenSpeed,
    pace,
    length: Math.hypot(hole.x - ball.x, hole.y - ball.y),
    slope,
    trueAim,
    // Aim left of the hole: the ball comes back from left to right.
    direction: Math.abs(trueAim) < STRAIGHT ? 'straight' : trueAim > 0 ? 'leftToRight' : 'rightToLeft',
    climb: rise > LEVEL ? 'up' : rise < -LEVEL ? 'down' : 'level',
    steepness: slope < STEEP ? 'gentle' : 'steep',
  };
}

function makeGroup(drill: ReadDrill, seed: string): Judged[] {
  const random = seededRandom(seed);
  let green: Green | undefined;
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    if (drill.surface === 'green' && draw % DRAWS_PER_GREEN === 0)
      green = makeGreen(`${seed} ${draw / DRAWS_PER_GREEN}`);
    const variants = drawGroup(drill, green, random);
    if (variants === undefined) continue;
    const judged = variants.map((variant) => judge(variant, drill));
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
