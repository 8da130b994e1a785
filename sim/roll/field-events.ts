/**
 * What happens on the way: the rim, the closest pass by the hole, the edge of the surface.
 *
 * Answers for: finding these on one piece of path after another (a step or the finish), each as a bracketed root on the
 * piece's own curve. Leaves out: rolling, capture. A piece is short (field-step.ts), so it passes the hole at most once.
 *
 * In its last millimetres a ball turns straight downhill, whatever its line was. Taken at its word there, a ball left short
 * below the hole would "pass" it while turning, and the offset of its last direction would jump as the start line turns.
 * So once it has lost nearly all its launch speed, passing is judged by the direction it had at that moment (tests: "changes
 * the side of its miss once").
 */
import { HOLE_RADIUS } from '../constants.ts';
import type { Bounds } from '../surface/field.ts';
import { DIRECTION_X, DIRECTION_Y, type Segment, SPEED, STATE_SIZE, TIME, X, Y } from './field-step.ts';
import type { Pass } from './roller.ts';

/** Places of events are solved to this, m: a hundred-thousandth of the 0.1 mm asked of a rest point. */
const EVENT_TOLERANCE = 1e-9;
const MOST_ROOT_STEPS = 60;
/** Share of the launch speed below which the line of travel no longer follows the turn; 0.25% of a level roll is left. */
const SETTLED_SHARE = 0.05;

/** What a root is sought of; each is negative before the event and positive after, in metres. */
const PASSING = 0;
const ENTERING = 1;
const LEAVING = 2;
const SETTLING = 3;
type Quantity = typeof PASSING | typeof ENTERING | typeof LEAVING | typeof SETTLING;

/** How the line of travel is told: by the ball's direction, by the one kept, or not asked any more. */
const FOLLOWING = 0;
const SETTLED = 1;
const PASSED = 2;

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
  const knee = new Float64Array(STATE_SIZE);
  // Kept direction x, y; speed at which it is kept; nearest pass so far, m.
  const keep = new Float64Array(4);
  let travel = FOLLOWING;

  const apart = (s: Float64Array): number => {
    const dx = s[X] - holeX;
    const dy = s[Y] - holeY;
    return Math.sqrt(dx * dx + dy * dy);
  };
  const directionX = (s: Float64Array): number => (travel === SETTLED ? keep[0] : s[DIRECTION_X]);
  const directionY = (s: Float64Array): number => (travel === SETTLED ? keep[1] : s[DIRECTION_Y]);
  /** Way still to go to the nearest point of the line of travel, negated. */
  const along = (s: Float64Array): number => (s[X] - holeX) * directionX(s) + (s[Y] - holeY) * directionY(s);
  const outside = (s: Float64Array): number => Math.max(minX - s[X], s[X] - maxX, minY - s[Y], s[Y] - maxY);
  const measure = (quantity: Quantity, s: Float64Array): number => {
    if (quantity === PASSING) return along(s);
    if (quantity === ENTERING) return HOLE_RADIUS - apart(s);
    return quantity === LEAVING ? outside(s) : keep[2] - s[SPEED];
  };

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

  /** Keep this pass if it is the nearest so far. Offset of the hole from the line of travel: positive to the left. */
  const noteMiss = (s: Float64Array, speed: number, out: Pass): void => {
    const distance = apart(s);
    if (distance >= keep[3]) return;
    keep[3] = distance;
    const dx = directionX(s);
    const dy = directionY(s);
    out.miss = dx * (holeY - s[Y]) - dy * (holeX - s[X]);
    out.missSpeed = speed;
    out.missHeading = Math.atan2(dy, dx);
    out.missTime = s[TIME];
  };
  const noteRim = (s: Float64Array, out: Pass): void => {
    out.met = true;
    out.rimSpeed = s[SPEED];
    out.rimOffset = s[DIRECTION_X] * (holeY - s[Y]) - s[DIRECTION_Y] * (holeX - s[X]);
  };

  const begin = (state: Float64Array, out: Pass): void => {
    last.set(state);
    travel = FOLLOWING;
    keep[2] = SETTLED_SHARE * state[SPEED];
    keep[3] = Number.POSITIVE_INFINITY;
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

  /** Closest pass and rim on the stretch from state `a` at fraction `from` to state `b` at fraction `to`. */
  const scan = (
    segment: Segment,
    from: number,
    a: Float64Array,
    to: number,
    b: Float64Array,
    out: Pass,
  ): void => {
    let inside = apart(b) < HOLE_RADIUS ? to : -1;
    if (travel !== PASSED && along(a) < 0 && along(b) >= 0) {
      const pass = rootOf(segment, PASSING, from, to);
      segment.at(pass, probe);
      noteMiss(probe, probe[SPEED], out);
      if (apart(probe) < HOLE_RADIUS) inside = pass;
    }
    if (out.met || inside < 0) return;
    segment.at(rootOf(segment, ENTERING, from, inside), probe);
    noteRim(probe, out);
  };

  const look = (segment: Segment, bulge: number, out: Pass): number => {
    first.set(last);
    segment.at(1, last);
    const edge = edgeOf(segment, bulge);
    if (edge < 1) segment.at(edge, last);
    const settled = last[SPEED] < keep[2];
    if (travel === FOLLOWING && settled) {
      if (along(first) >= 0) {
        // The hole is behind already: the way the ball turns at the end says nothing more about it.
        travel = PASSED;
        scan(segment, 0, first, edge, last, out);
        return edge;
      }
      const bend = rootOf(segment, SETTLING, 0, edge);
      segment.at(bend, knee);
      scan(segment, 0, first, bend, knee, out);
      keep[0] = knee[DIRECTION_X];
      keep[1] = knee[DIRECTION_Y];
      travel = SETTLED;
      scan(segment, bend, knee, edge, last, out);
      return edge;
    }
    if (travel !== FOLLOWING && !settled) {
      // It gathers speed again: the turn was no end after all. Where it turned may be the nearest it came; the turn itself
      // is not asked for a pass.
      if (travel === SETTLED && along(first) < 0) noteMiss(first, 0, out);
      travel = PASSED;
      scan(segment, 0, first, edge, last, out);
      travel = FOLLOWING;
      return edge;
    }
    scan(segment, 0, first, edge, last, out);
    return edge;
  };

  const end = (out: Pass): void => {
    if (travel !== PASSED && along(last) < 0) noteMiss(last, 0, out);
  };

  return { begin, look, end, last };
}
