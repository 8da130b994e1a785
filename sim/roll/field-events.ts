/**
 * What happens on the way: the rim, the closest pass by the hole, the edge of the surface.
 *
 * Answers for: finding these on one piece of path after another (a step or the finish), each as a bracketed root on the
 * piece's own curve. Leaves out: rolling, capture. A piece is short (field-step.ts), so it passes the hole at most once.
 */
import { HOLE_RADIUS } from '../constants.ts';
import type { Bounds } from '../surface/field.ts';
import { DIRECTION_X, DIRECTION_Y, type Segment, SPEED, STATE_SIZE, TIME, X, Y } from './field-step.ts';
import type { Pass } from './roller.ts';

/** Places of events are solved to this, m: a hundred-thousandth of the 0.1 mm asked of a rest point. */
const EVENT_TOLERANCE = 1e-9;
const MOST_ROOT_STEPS = 60;

/** What a root is sought of; each is negative before the event and positive after, in metres. */
const PASSING = 0;
const ENTERING = 1;
const LEAVING = 2;
type Quantity = typeof PASSING | typeof ENTERING | typeof LEAVING;

export interface Watch {
  /** Start with the state at the strike; `out` receives what is met. */
  begin(state: Float64Array, out: Pass): void;
  /** Look at one piece. Returns the share of it rolled before the edge: 1 when the ball stays on. */
  look(segment: Segment, bulge: number, out: Pass): number;
  /** No more pieces: settle the closest pass of a ball that never got there. */
  end(out: Pass): void;
  /** State at the end of the last piece looked at. */
  readonly last: Float64Array;
}

export function makeWatch(hole: { readonly x: number; readonly y: number }, bounds: Bounds): Watch {
  const { minX, minY, maxX, maxY } = bounds;
  const holeX = hole.x;
  const holeY = hole.y;
  const first = new Float64Array(STATE_SIZE);
  const last = new Float64Array(STATE_SIZE);
  const probe = new Float64Array(STATE_SIZE);
  const closest = new Float64Array(1);

  const apart = (s: Float64Array): number => {
    const dx = s[X] - holeX;
    const dy = s[Y] - holeY;
    return Math.sqrt(dx * dx + dy * dy);
  };
  /** Way still to go to the nearest point of the line of travel, negated. */
  const along = (s: Float64Array): number =>
    (s[X] - holeX) * s[DIRECTION_X] + (s[Y] - holeY) * s[DIRECTION_Y];
  /** Offset of the hole from the line of travel, positive to the left. */
  const offset = (s: Float64Array): number =>
    s[DIRECTION_X] * (holeY - s[Y]) - s[DIRECTION_Y] * (holeX - s[X]);
  const outside = (s: Float64Array): number => Math.max(minX - s[X], s[X] - maxX, minY - s[Y], s[Y] - maxY);
  const measure = (quantity: Quantity, s: Float64Array): number =>
    quantity === PASSING ? along(s) : quantity === ENTERING ? HOLE_RADIUS - apart(s) : outside(s);

  /** Root between fractions low (negative there) and high (positive): secant kept in its bracket (Illinois). */
  const rootOf = (segment: Segment, quantity: Quantity, low: number, high: number): number => {
    let a = low;
    let b = high;
    segment.at(a, probe);
    let fa = measure(quantity, probe);
    segment.at(b, probe);
    let fb = measure(quantity, probe);
    let side = 0;
    let root = b;
    for (let i = 0; i < MOST_ROOT_STEPS; i++) {
      root = fb === fa ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
      // Rounding, or a quantity that jumps, can push the secant out of its bracket.
      if (!(root > a && root < b)) root = (a + b) / 2;
      segment.at(root, probe);
      const f = measure(quantity, probe);
      if (Math.abs(f) < EVENT_TOLERANCE || b - a < 1e-14) break;
      if (f < 0) {
        a = root;
        fa = f;
        if (side < 0) fb /= 2;
        side = -1;
      } else {
        b = root;
        fb = f;
        if (side > 0) fa /= 2;
        side = 1;
      }
    }
    return root;
  };

  const noteMiss = (s: Float64Array, speed: number, out: Pass): void => {
    closest[0] = apart(s);
    out.miss = offset(s);
    out.missSpeed = speed;
    out.missHeading = Math.atan2(s[DIRECTION_Y], s[DIRECTION_X]);
    out.missTime = s[TIME];
  };
  const noteRim = (s: Float64Array, out: Pass): void => {
    out.met = true;
    out.rimSpeed = s[SPEED];
    out.rimOffset = offset(s);
  };

  const begin = (state: Float64Array, out: Pass): void => {
    last.set(state);
    closest[0] = Number.POSITIVE_INFINITY;
    out.met = false;
    out.rimSpeed = 0;
    out.rimOffset = 0;
    if (along(state) >= 0) noteMiss(state, state[SPEED], out);
    if (apart(state) < HOLE_RADIUS) noteRim(state, out);
  };

  /** First fraction at which the ball is off the surface; 1 when it stays. */
  const edgeOf = (segment: Segment, bulge: number): number => {
    const out = outside(last);
    // The path between the ends strays from the chord by at most `bulge`.
    if (out < -bulge) return 1;
    let before = 0;
    for (let i = 1; i <= 4; i++) {
      segment.at(i / 4, probe);
      if (outside(probe) > 0) return rootOf(segment, LEAVING, before, i / 4);
      before = i / 4;
    }
    return 1;
  };

  const look = (segment: Segment, bulge: number, out: Pass): number => {
    first.set(last);
    segment.at(1, last);
    const edge = edgeOf(segment, bulge);
    if (edge < 1) segment.at(edge, last);
    let pass = -1;
    if (along(first) < 0 && along(last) >= 0) {
      pass = rootOf(segment, PASSING, 0, edge);
      segment.at(pass, probe);
      if (apart(probe) < closest[0]) noteMiss(probe, probe[SPEED], out);
    }
    if (!out.met) {
      let inside = -1;
      if (apart(last) < HOLE_RADIUS) inside = edge;
      if (pass >= 0) {
        segment.at(pass, probe);
        if (apart(probe) < HOLE_RADIUS) inside = pass;
      }
      if (inside >= 0) {
        segment.at(rootOf(segment, ENTERING, 0, inside), probe);
        noteRim(probe, out);
      }
    }
    return edge;
  };

  const end = (out: Pass): void => {
    if (along(last) < 0 && apart(last) < closest[0]) noteMiss(last, 0, out);
  };

  return { begin, look, end, last };
}
