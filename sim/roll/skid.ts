/**
 * A roller for a putt that skids first: the slide (slide.ts), then the roll of another roller from where the slide ends.
 *
 * Answers for: what of the hole and the edge is met on which stretch; the gradient that the slide feels. On a plane both
 * stretches are exact. On other ground the gradient is averaged over the time of the slide by Gauss-Legendre points, found by
 * going there and looking again; the error is in MODEL.md section 1. One look at the middle was dropped: off by 5 cm of a
 * 12 m putt. Leaves out: capture.
 */
import { fieldBounds, splineOf } from '../surface/field.ts';
import { splineGradient } from '../surface/spline.ts';
import type { FieldSurface, PlaneSurface } from '../types.ts';
import { makeWatch } from './field-events.ts';
import { DIRECTION_X, DIRECTION_Y, type GradientAt, SPEED, STATE_SIZE, TIME, X, Y } from './field-step.ts';
import { type MovableRoller, newPass, type Pass, type Roller } from './roller.ts';
import { gradientOfPlane, makeSlide } from './slide.ts';

/** Times the ground under the slide is looked at after the look at the ball, each time at these shares of it. */
const LOOKS = 2;
const OFF_MIDDLE = Math.sqrt(0.15);
/** Weights of the outer two points and of the middle one. */
const OUTER = 5 / 18;
const MIDDLE = 8 / 18;
/** Distance between traced points of the slide, m. */
const TRACE_SPACING = 0.015;

const ENDLESS = {
  minX: Number.NEGATIVE_INFINITY,
  minY: Number.NEGATIVE_INFINITY,
  maxX: Number.POSITIVE_INFINITY,
  maxY: Number.POSITIVE_INFINITY,
};

/** @param roller how it rolls on; it must not be used for anything else */
export function skidOnPlane(roller: MovableRoller, surface: PlaneSurface): Roller {
  const [gradientX, gradientY] = gradientOfPlane(surface);
  const gradientAt: GradientAt = (_place, out) => {
    out[0] = gradientX;
    out[1] = gradientY;
  };
  return skidRoller({ roller, gradientAt, bounds: ENDLESS, looks: 0 });
}

/** @param roller how it rolls on; it must not be used for anything else */
export function skidOnField(roller: MovableRoller, surface: FieldSurface): Roller {
  const spline = splineOf(surface);
  return skidRoller({
    roller,
    gradientAt: (place, out) => splineGradient(spline, place, out),
    bounds: fieldBounds(surface),
    looks: LOOKS,
  });
}

/** What the slide needs to know of the ground; tests put known ground here. */
export interface SkidOptions {
  readonly roller: MovableRoller;
  readonly gradientAt: GradientAt;
  readonly bounds: ReturnType<typeof fieldBounds>;
  /** How often the gradient is averaged anew over the slide; 0 for a plane. */
  readonly looks?: number;
}

export function skidRoller({ roller, gradientAt, bounds, looks = LOOKS }: SkidOptions): Roller {
  const { ball, hole } = roller;
  const slide = makeSlide();
  const watch = makeWatch(hole, bounds);
  const state = new Float64Array(STATE_SIZE);
  const early = new Float64Array(2);
  const middle = new Float64Array(2);
  const late = new Float64Array(2);
  const met = newPass();

  const strike = (heading: number, speed: number): void => {
    slide.begin(ball, heading, speed);
    state[X] = ball.x;
    state[Y] = ball.y;
    gradientAt(state, middle);
    slide.tilt(middle[0], middle[1]);
    for (let look = 0; look < looks; look++) {
      slide.at(0.5 - OFF_MIDDLE, state);
      gradientAt(state, early);
      slide.at(0.5, state);
      gradientAt(state, middle);
      slide.at(0.5 + OFF_MIDDLE, state);
      gradientAt(state, late);
      slide.tilt(
        OUTER * (early[0] + late[0]) + MIDDLE * middle[0],
        OUTER * (early[1] + late[1]) + MIDDLE * middle[1],
        2 * OUTER * OFF_MIDDLE * (early[0] - late[0]),
        2 * OUTER * OFF_MIDDLE * (early[1] - late[1]),
      );
    }
  };

  /** The slide alone, into `met`. Returns the share of it before the edge; `watch.last` is the state there. */
  const slideOn = (heading: number, speed: number): number => {
    strike(heading, speed);
    state[X] = ball.x;
    state[Y] = ball.y;
    state[DIRECTION_X] = Math.cos(heading);
    state[DIRECTION_Y] = Math.sin(heading);
    state[SPEED] = speed;
    state[TIME] = 0;
    met.missHeading = Number.NaN;
    watch.begin(state, met);
    slide.at(1, state);
    // A slide bends by far less than its length.
    return watch.look(slide, Math.hypot(state[X] - ball.x, state[Y] - ball.y), met);
  };
  const rollOn = (): number => {
    roller.startFrom(watch.last[X], watch.last[Y]);
    return Math.atan2(watch.last[DIRECTION_Y], watch.last[DIRECTION_X]);
  };

  const pass = (heading: number, speed: number, out: Pass): Pass => {
    if (slideOn(heading, speed) < 1) {
      watch.end(met);
      Object.assign(out, met);
      out.status = 'leftSurface';
      out.restX = watch.last[X];
      out.restY = watch.last[Y];
      out.time = watch.last[TIME];
      out.evaluations = 1 + 3 * looks;
      return out;
    }
    roller.pass(rollOn(), watch.last[SPEED], out);
    const slid = watch.last[TIME];
    if (met.met) {
      out.met = true;
      out.rimSpeed = met.rimSpeed;
      out.rimOffset = met.rimOffset;
    }
    if (passedNearer(out)) {
      out.miss = met.miss;
      out.missSpeed = met.missSpeed;
      out.missHeading = met.missHeading;
      out.missTime = met.missTime;
    } else out.missTime += slid;
    out.time += slid;
    out.evaluations += 1 + 3 * looks;
    return out;
  };
  /** Was the closest pass on the slide? Not where there was none, nor where the roll comes back nearer. */
  const passedNearer = (rolled: Pass): boolean => {
    if (Number.isNaN(met.missHeading)) return false;
    // The roll began beyond the hole and never came nearer again.
    if (rolled.missTime === 0) return true;
    const before = met.missTime === 0 ? Math.hypot(ball.x - hole.x, ball.y - hole.y) : Math.abs(met.miss);
    const after =
      rolled.missSpeed > 0 ? Math.abs(rolled.miss) : Math.hypot(rolled.restX - hole.x, rolled.restY - hole.y);
    return before <= after;
  };

  const trace = (heading: number, speed: number): Float64Array => {
    const share = slideOn(heading, speed);
    const slid = watch.last[TIME];
    const way = Math.hypot(watch.last[X] - ball.x, watch.last[Y] - ball.y);
    const count = Math.max(1, Math.ceil(way / TRACE_SPACING));
    const rolled = share < 1 ? undefined : roller.trace(rollOn(), watch.last[SPEED]);
    const path = new Float64Array(3 * (count + (rolled === undefined ? 1 : rolled.length / 3)));
    for (let i = 0; i <= count; i++) {
      slide.at((share * i) / count, state);
      path[3 * i] = state[X];
      path[3 * i + 1] = state[Y];
      path[3 * i + 2] = state[TIME];
    }
    if (rolled === undefined) return path;
    path.set(rolled, 3 * count);
    for (let i = 3 * count + 2; i < path.length; i += 3) path[i] += slid;
    return path;
  };

  return { ball, hole, pass, trace };
}
