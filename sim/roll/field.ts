/**
 * A ball on smooth ground given as heights: one quick pass, one full trace.
 *
 * Answers for: steps with error control (field-step.ts) until the closed form can finish (field-finish.ts), events on the
 * way (field-events.ts), and how the roll ended. Leaves out: capture; bumps between the nodes. Nothing is allocated by a
 * pass; a roller is not re-entrant.
 */
import { GRAVITY, LONGEST_ROLL, ROLLING_FACTOR } from '../constants.ts';
import { fieldBounds, splineOf } from '../surface/field.ts';
import { splineGradient } from '../surface/spline.ts';
import type { FieldSurface, Point } from '../types.ts';
import { makeWatch } from './field-events.ts';
import { FINISH_REACH, makeFinish, STANDSTILL } from './field-finish.ts';
import {
  DIRECTION_X,
  DIRECTION_Y,
  type GradientAt,
  makeStepper,
  type Segment,
  SPEED,
  STATE_SIZE,
  TIME,
  X,
  Y,
} from './field-step.ts';
import { frictionOf } from './plane.ts';
import { type MovableRoller, newPass, type Pass } from './roller.ts';

/** Cells a step may cross: the stages of a step look at least every half of it, and a wiggle of the grid is 4 cells wide. */
const CELLS_PER_STEP = 3;
/** A roll of more steps than this is given up as never stopping: bounds the work. A 20 m putt takes about a hundred at
 *  10 cm; what takes thousands is a ball creeping at a tenth of a millimetre a second on ground that just fails to hold it. */
const MOST_STEPS = 4000;
/** Distance between traced points, m. */
const TRACE_SPACING = 0.015;

/** Roller for a field; see Roller. */
export function fieldRoller(
  surface: FieldSurface,
  greenSpeed: number,
  ball: Point,
  hole: Point,
): MovableRoller {
  const spline = splineOf(surface);
  return roughRoller({
    gradientAt: (place, out) => splineGradient(spline, place, out),
    bounds: fieldBounds(surface),
    cell: surface.spacing,
    finishReach: FINISH_REACH,
    greenSpeed,
    ball,
    hole,
  });
}

/** What the roller needs to know of the ground; tests put known ground here. */
export interface GroundOptions {
  readonly gradientAt: GradientAt;
  readonly bounds: ReturnType<typeof fieldBounds>;
  /** Size of the smallest feature of the ground, m. */
  readonly cell: number;
  /** Longest way finished in closed form, m. */
  readonly finishReach: number;
  /** Divides the error allowed per step; default 1. */
  readonly tighter?: number;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  readonly ball: Point;
  readonly hole: Point;
}

/** Roller for any ground with a smooth gradient. */
export function roughRoller(options: GroundOptions): MovableRoller {
  const { gradientAt, bounds, cell, ball, hole } = options;
  const friction = frictionOf(options.greenSpeed);
  const stepper = makeStepper({
    gradientAt,
    friction,
    longestReach: CELLS_PER_STEP * cell,
    tighter: options.tighter,
  });
  const finish = makeFinish({ gradientAt, friction, reach: Math.min(options.finishReach, cell) });
  const watch = makeWatch(hole, bounds);
  const start = new Float64Array(STATE_SIZE);
  const gradient = new Float64Array(2);
  const { current } = stepper;
  start[X] = ball.x;
  start[Y] = ball.y;
  const startFrom = (x: number, y: number): void => {
    start[X] = x;
    start[Y] = y;
  };

  /** A ball that came to a stand where the ground does not hold it sets off downhill. */
  const turnDownhill = (): void => {
    gradientAt(current, gradient);
    const size = Math.hypot(gradient[0], gradient[1]);
    stepper.redirect((-STANDSTILL * gradient[0]) / size, (-STANDSTILL * gradient[1]) / size);
  };
  const standsOnSteepGround = (): boolean => {
    if (current[2] * current[2] + current[3] * current[3] >= STANDSTILL * STANDSTILL) return false;
    gradientAt(current, gradient);
    return ROLLING_FACTOR * GRAVITY * Math.hypot(gradient[0], gradient[1]) > friction;
  };

  /** Roll; `onPiece` (tracing only) sees each piece and the share of it that was rolled. */
  const roll = (
    heading: number,
    speed: number,
    out: Pass,
    onPiece?: (segment: Segment, share: number) => void,
  ): Pass => {
    start[DIRECTION_X] = Math.cos(heading);
    start[DIRECTION_Y] = Math.sin(heading);
    start[SPEED] = speed;
    start[TIME] = 0;
    stepper.begin(start[X], start[Y], speed * start[DIRECTION_X], speed * start[DIRECTION_Y]);
    watch.begin(start, out);
    out.status = 'neverStops';
    for (let step = 0; step < MOST_STEPS; step++) {
      const finishes = finish.tryFinish(current);
      let bulge = options.finishReach;
      if (!finishes) {
        if (standsOnSteepGround()) turnDownhill();
        const before = current[6];
        stepper.advance();
        const h = current[6] - before;
        bulge = h * h * (Math.abs(current[4]) + Math.abs(current[5]) + friction);
      }
      const segment: Segment = finishes ? finish : stepper;
      const share = watch.look(segment, bulge, out);
      onPiece?.(segment, share);
      if (share < 1) {
        out.status = 'leftSurface';
        break;
      }
      if (finishes) {
        out.status = 'atRest';
        break;
      }
      if (current[6] > LONGEST_ROLL) break;
    }
    watch.end(out);
    out.restX = watch.last[X];
    out.restY = watch.last[Y];
    out.time = watch.last[TIME];
    out.evaluations = stepper.evaluations();
    return out;
  };

  const trace = (heading: number, speed: number): Float64Array => {
    const points: number[] = [start[X], start[Y], 0];
    const state = new Float64Array(STATE_SIZE);
    roll(heading, speed, newPass(), (segment, share) => {
      const [fromX, fromY] = [points[points.length - 3], points[points.length - 2]];
      segment.at(share, state);
      const chord = Math.hypot(state[X] - fromX, state[Y] - fromY);
      const count = Math.max(1, Math.ceil(chord / TRACE_SPACING));
      for (let i = 1; i <= count; i++) {
        segment.at((share * i) / count, state);
        points.push(state[X], state[Y], state[TIME]);
      }
    });
    return Float64Array.from(points);
  };

  return { ball, hole, pass: (heading, speed, out) => roll(heading, speed, out), trace, startFrom };
}
