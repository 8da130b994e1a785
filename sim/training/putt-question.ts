/**
 * One putt as a question: plain data, small enough to keep, with its true aim and what kind of putt it is.
 *
 * Answers for: whether a putt can be asked at all, and its kind. Leaves out: which putts belong together (question.ts,
 * choose-next.ts), what was answered (scoring.ts).
 */

import { readPutt } from '../read/line.ts';
import { checkPutt } from '../roll/check.ts';
import { generateGreen } from '../surface/generated.ts';
import { planeSurface } from '../surface/plane.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { Band, BreakWay, Climb, HeightSample, Point, Putt, Surface } from '../types.ts';
import { clockToBearing, degreesToRadians } from '../units.ts';
import type { Range } from './drill.ts';
import { hitAimsOf } from './hit.ts';

/** A start line further off than this is not a read anyone practises, radians. */
const WIDEST_START = degreesToRadians(40);
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

/** @param rise to the hole per metre */
export const climbOf = (rise: number): Climb => (rise > LEVEL ? 'up' : rise < -LEVEL ? 'down' : 'level');

/** Any slope a putt may have, rise over run. */
const ANY_SLOPE: Range = [0, 1];

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
  /** Aim offsets that count as a hit, m, positive left (hit.ts); missing on questions of records made before there were hits. */
  readonly hitAims?: Band | undefined;
  /** The firmer of two paces, m past, where the question is which one; `pace` is the softer then. */
  readonly firmPace?: number | undefined;
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

/** Where a putt is. */
export interface Spot {
  readonly ground: Ground;
  readonly surface: Surface;
  readonly ball: Point;
  readonly hole: Point;
}

/** A putt and how it is to be played. */
export interface Variant extends Spot {
  readonly greenSpeed: number;
  readonly pace: number;
}

/** On a plane the hole is the origin and the putt runs straight up the page: the fall line turns instead. */
export function planeSpot(slope: number, clock: number, length: number): Spot {
  const downhill = -Math.PI / 2 - clockToBearing(clock, 0);
  const ground = { kind: 'plane', slope, downhill } as const;
  return { ground, surface: surfaceOfGround(ground), ball: { x: 0, y: -length }, hole: { x: 0, y: 0 } };
}

const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };

/** Mean slope along the line and rise to the hole per metre; undefined: the line leaves the surface, or crosses ground too steep. */
export function groundAlong({ surface, ball, hole }: Spot): { slope: number; rise: number } | undefined {
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

/** A question before it has a place in a set. */
export type Judged = Omit<Question, 'number' | 'group'>;

/** The variant as a question, or undefined when it cannot be asked: no line, a start too wide, ground too steep or outside `slopes`. */
export function judge(variant: Variant, slopes: Range = ANY_SLOPE): Judged | undefined {
  const { ground, ball, hole, greenSpeed, pace, surface } = variant;
  const along = groundAlong(variant);
  if (along === undefined) return undefined;
  const { slope, rise } = along;
  if (slope < slopes[0] || slope > slopes[1]) return undefined;
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
    climb: climbOf(rise),
    steepness: slope < STEEP ? 'gentle' : 'steep',
    hitAims: hitAimsOf(trueAim, Math.hypot(hole.x - ball.x, hole.y - ball.y), read.startBand),
  };
}
