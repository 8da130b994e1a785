/**
 * The part of the green on the map, and the aim a place on it means. The hole is straight above the ball, as the person
 * stands. Before the commitment the view depends on length, pace and the person's own aim alone, so that it gives nothing
 * away; afterwards it grows until the answer is in it. Leaves out: pixels (scene/camera.ts).
 */
import type { Point } from '../../../sim/index.ts';
import type { Viewport } from '../../scene/model.ts';

/** Shown behind the ball and least shown past the hole: shares of the length, and least in metres. */
const BEHIND = 0.1;
const BEHIND_LEAST = 0.2;
const PAST = 0.18;
/** Shown past the hole beyond the called pace, m. */
const PAST_PACE = 0.3;
/** Least half-width: a share of the length, and metres beyond. */
const BESIDE = 0.28;
const BESIDE_LEAST = 0.25;
/** Room round a spot that must be seen, share of the view's longer half. */
const ROUND_SPOT = 0.12;
/** A ball that runs off does not shrink the putt: spots count up to this share of the length beyond the usual view. */
const FARTHEST = 0.6;

export interface Room {
  /** Of the map without its margin, CSS pixels. */
  readonly width: number;
  readonly height: number;
}

export interface ViewRequest {
  readonly ball: Point;
  readonly hole: Point;
  /** Called pace, m. */
  readonly pace: number;
  /** What else must be seen: aims and, after the commitment, resting places. */
  readonly spots: readonly Point[];
  readonly room: Room;
}

/** Direction from ball to hole, and across it to the left. */
const directionsOf = (ball: Point, hole: Point) => {
  const length = Math.hypot(hole.x - ball.x, hole.y - ball.y);
  const ahead = { x: (hole.x - ball.x) / length, y: (hole.y - ball.y) / length };
  return { length, ahead, left: { x: -ahead.y, y: ahead.x } };
};

/** The view for a putt, ball below and hole above. */
export const fitView = ({ ball, hole, pace, spots, room }: ViewRequest): Viewport => {
  const { length, ahead, left } = directionsOf(ball, hole);
  const limit = FARTHEST * length;
  let from = -Math.max(BEHIND * length, BEHIND_LEAST);
  let to = length + Math.max(PAST * length, pace + PAST_PACE);
  let half = BESIDE * length + BESIDE_LEAST;
  const usual = { from, to };
  const around = ROUND_SPOT * (to - from) * 0.5;
  for (const { x, y } of spots) {
    const along = (x - ball.x) * ahead.x + (y - ball.y) * ahead.y;
    const across = Math.abs((x - ball.x) * left.x + (y - ball.y) * left.y);
    from = Math.min(from, Math.max(along - around, usual.from - limit));
    to = Math.max(to, Math.min(along + around, usual.to + limit));
    // Sideways nothing is cut off: an aim one has typed must be seen, however far off it is.
    half = Math.max(half, across + around);
  }
  const width = Math.max(room.width, 1);
  const height = Math.max(room.height, 1);
  const scale = Math.min(height / (to - from), width / (2 * half));
  const middle = (from + to) / 2;
  return {
    centre: { x: ball.x + middle * ahead.x, y: ball.y + middle * ahead.y },
    metresAcross: Math.min(width, height) / scale,
    up: Math.atan2(ahead.y, ahead.x),
  };
};

/** Where a start line with this aim offset (m, positive left) passes the hole. */
export const aimSpot = (ball: Point, hole: Point, aim: number): Point => {
  const { left } = directionsOf(ball, hole);
  return { x: hole.x + aim * left.x, y: hole.y + aim * left.y };
};

/** The aim offset (m, positive left) of a place beside the hole: only its distance across the putt counts. */
export const aimAt = (ball: Point, hole: Point, { x, y }: Point): number => {
  const { left } = directionsOf(ball, hole);
  return (x - hole.x) * left.x + (y - hole.y) * left.y;
};
