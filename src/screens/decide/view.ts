/**
 * Which part of the ground the map shows. Answers for: everything that counts is in view with room for its words, and the
 * view stays as it is while that holds, so that typing or a key does not make the map jump. Leaves out: pixels (scene/).
 */
import type { Point } from '../../../sim/index.ts';
import type { Viewport } from '../../scene/model.ts';
import { mapSize } from '../../scene/picture.ts';

export interface Room {
  /** CSS pixels of the whole map, its margin strip included. */
  readonly width: number;
  readonly height: number;
}

export interface View {
  readonly viewport: Viewport;
  readonly room: Room;
}

export interface ViewRequest {
  readonly ball: Point;
  readonly hole: Point;
  /** What else must be seen: aims, apexes, resting places. */
  readonly spots: readonly Point[];
  /** How far past the hole most misses of the firmer putt stop, m. */
  readonly past: number;
  readonly room: Room;
  readonly previous: View | undefined;
}

/** Room round what must be seen, for marks and words, pixels. */
const BESIDE = 44;
/** The view is drawn closer when what must be seen fills less than this share of it. */
const LEAST_FILLED = 0.55;
/** Smallest part of the ground shown, m: closer, one would not see where misses stop. */
const LEAST_ACROSS = 1.6;

/** Ground always shown round the hole, and most that is shown past it, m: a wild player must not shrink the putt away. */
const AROUND = 0.4;
const FARTHEST_PAST = 2.5;

interface Box {
  readonly low: Point;
  readonly high: Point;
}

const boxOf = ({ ball, hole, spots, past }: ViewRequest): Box => {
  const length = Math.hypot(hole.x - ball.x, hole.y - ball.y) || 1;
  const beyond = Math.min(past, FARTHEST_PAST) / length;
  const places = [
    ball,
    { x: hole.x + beyond * (hole.x - ball.x), y: hole.y + beyond * (hole.y - ball.y) },
    { x: hole.x - AROUND, y: hole.y - AROUND },
    { x: hole.x + AROUND, y: hole.y + AROUND },
    ...spots,
  ];
  const xs = places.map(({ x }) => x);
  const ys = places.map(({ y }) => y);
  return {
    low: { x: Math.min(...xs), y: Math.min(...ys) },
    high: { x: Math.max(...xs), y: Math.max(...ys) },
  };
};

/** The view for a putt. */
export const fitView = (request: ViewRequest): View => {
  const { room, previous } = request;
  const size = mapSize(room);
  const width = Math.max(size.width, 1);
  const height = Math.max(size.height, 1);
  const { low, high } = boxOf(request);
  const shorter = Math.min(width, height);
  const inner = (side: number): number => Math.max(side - 2 * BESIDE, side / 2);
  const metresPerPixel = Math.max(
    (high.x - low.x) / inner(width),
    (high.y - low.y) / inner(height),
    LEAST_ACROSS / shorter,
  );
  const across = metresPerPixel * shorter;
  if (previous && previous.room.width === room.width && previous.room.height === room.height) {
    const { centre, metresAcross } = previous.viewport;
    const perPixel = metresAcross / shorter;
    const halfWidth = (perPixel * (width - BESIDE)) / 2;
    const halfHeight = (perPixel * (height - BESIDE)) / 2;
    const fits =
      low.x >= centre.x - halfWidth &&
      high.x <= centre.x + halfWidth &&
      low.y >= centre.y - halfHeight &&
      high.y <= centre.y + halfHeight;
    if (fits && across >= LEAST_FILLED * metresAcross) return previous;
  }
  return {
    viewport: {
      centre: { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 },
      metresAcross: across,
    },
    room,
  };
};
