/**
 * The map's frame: the ball at the bottom, the hole straight above it, as the person stands. Metres to pixels and back.
 * Depends on nothing that gives the answer away: the same length and pace always give the same frame.
 */
import type { Point } from '../../../sim/index.ts';

/** Shown behind the ball and least shown past the hole, as shares of the length. */
const BEHIND = 0.12;
const PAST = 0.2;
/** Shown past the hole beyond the called pace, m. */
const PAST_PACE = 0.25;
/** Least half-width, as a share of the length and in metres beyond. */
const BESIDE = 0.42;
const BESIDE_LEAST = 0.3;

export interface View {
  readonly width: number;
  readonly height: number;
  /** Pixels per metre. */
  readonly scale: number;
  /** Length of the putt, m. */
  readonly length: number;
  /** Half the shown width, m. */
  readonly half: number;
  /** Shown range along the putt, m from the ball. */
  readonly from: number;
  readonly to: number;
  /** Ground to pixels. */
  toPixels(point: Point): Point;
  /** Across (m, positive right) and along (m from the ball) to the ground. */
  toGround(across: number, along: number): Point;
  /** Across and along to pixels. */
  place(across: number, along: number): Point;
  /** Pixels to across and along. */
  unplace(x: number, y: number): { readonly across: number; readonly along: number };
}

export interface ViewOptions {
  readonly ball: Point;
  readonly hole: Point;
  /** Called pace, m. */
  readonly pace: number;
  /** Size of the drawing, pixels. */
  readonly width: number;
  readonly height: number;
}

export const makeView = ({ ball, hole, pace, width, height }: ViewOptions): View => {
  const length = Math.hypot(hole.x - ball.x, hole.y - ball.y);
  const ahead = { x: (hole.x - ball.x) / length, y: (hole.y - ball.y) / length };
  const behind = Math.max(BEHIND * length, 0.15);
  const past = Math.max(PAST * length, pace + PAST_PACE);
  const scale = Math.min(height / (behind + length + past), width / (2 * (BESIDE * length + BESIDE_LEAST)));
  // Where the width decides, the spare height goes to both ends alike.
  const spare = (height / scale - (behind + length + past)) / 2;
  const from = -behind - spare;
  const to = from + height / scale;
  const place = (across: number, along: number): Point => ({
    x: width / 2 + across * scale,
    y: (to - along) * scale,
  });
  return {
    width,
    height,
    scale,
    length,
    half: width / (2 * scale),
    from,
    to,
    place,
    unplace: (x, y) => ({ across: (x - width / 2) / scale, along: to - y / scale }),
    toGround: (across, along) => ({
      x: ball.x + along * ahead.x + across * ahead.y,
      y: ball.y + along * ahead.y - across * ahead.x,
    }),
    toPixels: ({ x, y }) =>
      place((x - ball.x) * ahead.y - (y - ball.y) * ahead.x, (x - ball.x) * ahead.x + (y - ball.y) * ahead.y),
  };
};

/** An aim offset (m, positive left) from a place on the map: where the line from the ball through it passes the hole. */
export const aimThrough = (view: View, across: number, along: number): number => {
  // Near the ball a pixel would swing the line wildly: below a quarter of the way the place counts as if it were there.
  const reach = Math.max(along, view.length / 4);
  const offset = (-across * view.length) / reach;
  return Math.max(-view.half, Math.min(view.half, offset));
};
