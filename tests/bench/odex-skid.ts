/**
 * A putt that skids first, by odex 2.0.4 at 1e-12: an independent solver, for tests.
 *
 * The slide is solved for velocity v and the speed w of the ball's surface by its spin (w = v when it rolls), from Newton's
 * two laws for a solid ball, and not for the slip, whose closed form the engine uses:
 *     dv/dt = -mu g u/|u| - g grad h          dw/dt = +(5/2) mu g u/|u|          u = v - w, w = 0 at the strike
 * (force mu m g at the contact, moment of inertia (2/5) m R^2). In sigma, dt = |u| / (mu g) d(sigma), that is smooth down
 * to the end of the slide, where u has died away exponentially. From there odexRoll. From the engine only constants, types.
 */
import { createRequire } from 'node:module';
import { GRAVITY, HOLE_RADIUS } from '../../sim/constants.ts';
import type { Point } from '../../sim/types.ts';
import { type OdexRoll, odexRoll, type PlanePutt } from './odex-plane.ts';
import { gradientOf } from './oracle-roll.ts';

/** By its path, for the reason in odex-plane.ts. */
const { Solver } = createRequire(import.meta.url)(
  '../../node_modules/odex/src/odex.js',
) as typeof import('odex');

/** Share of its weight with which a ball rubs (memory), written again: the engine's must be the same. */
const MU = 0.4;
/** e^-3.5 sigma: rounding. */
const LAST = 13;

interface SlideEnd {
  readonly place: Point;
  readonly heading: number;
  readonly speed: number;
  readonly time: number;
  /** How it passed the hole and crossed the rim while sliding, as in OdexRoll. */
  readonly pass: { readonly offset: number; readonly speed: number; readonly time: number } | undefined;
  readonly rim: { readonly offset: number; readonly speed: number } | undefined;
}

export function odexSlide(putt: PlanePutt, heading: number, speed: number, tolerance = 1e-12): SlideEnd {
  const { ball, hole } = putt;
  const gradient = putt.gradient ?? gradientOf({ kind: 'plane', slope: putt.slope, downhill: putt.downhill });
  const g = new Float64Array(2);
  const solver = new Solver(7);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.denseOutput = true;
  let pass: SlideEnd['pass'];
  let rim: SlideEnd['rim'];
  const along = (s: number[]): number => (s[0] - hole.x) * s[2] + (s[1] - hole.y) * s[3];
  const inside = (s: number[]): number => HOLE_RADIUS - Math.hypot(s[0] - hole.x, s[1] - hole.y);
  const { y: end } = solver.solve(
    (_sigma, [x, y, vx, vy, wx, wy]) => {
      const ux = vx - wx;
      const uy = vy - wy;
      const u = Math.hypot(ux, uy);
      gradient(x, y, g);
      const rate = u / (MU * GRAVITY);
      return [
        rate * vx,
        rate * vy,
        -ux - rate * GRAVITY * g[0],
        -uy - rate * GRAVITY * g[1],
        2.5 * ux,
        2.5 * uy,
        rate,
      ];
    },
    0,
    [ball.x, ball.y, speed * Math.cos(heading), speed * Math.sin(heading), 0, 0, 0],
    LAST,
    (_step, from, to, state, dense) => {
      if (dense === undefined || from === to) return undefined;
      const at = (sigma: number): number[] =>
        Array.from({ length: 7 }, (_, component) => dense(component, sigma));
      const meet = (event: (s: number[]) => number, low: number, high: number) => {
        for (let i = 0; i < 60; i++) {
          const middle = (low + high) / 2;
          if (event(at(middle)) < 0) low = middle;
          else high = middle;
        }
        const [x, y, vx, vy, , , time] = at(high);
        const v = Math.hypot(vx, vy);
        return { offset: (vx * (hole.y - y) - vy * (hole.x - x)) / v, speed: v, time, at: high };
      };
      let look = to;
      if (pass === undefined && along(at(from)) < 0 && along(state) >= 0) {
        const met = meet(along, from, to);
        pass = met;
        look = met.at;
      }
      if (rim === undefined && inside(at(from)) < 0 && inside(at(look)) >= 0) rim = meet(inside, from, look);
      return undefined;
    },
  );
  const [x, y, vx, vy, , , time] = end;
  return {
    place: { x, y },
    heading: Math.atan2(vy, vx),
    speed: Math.hypot(vx, vy),
    time,
    pass,
    rim,
  };
}

/** The whole putt, hole covered: what happens first counts for the rim, the slide's pass before the roll's. */
export function odexSkid(putt: PlanePutt, heading: number, speed: number): OdexRoll & { slide: SlideEnd } {
  const slide = odexSlide(putt, heading, speed);
  const roll = odexRoll({ ...putt, ball: slide.place }, slide.heading, slide.speed);
  return {
    slide,
    rest: roll.rest,
    time: slide.time + roll.time,
    pass: roll.pass && { ...roll.pass, time: slide.time + roll.pass.time },
    rim: roll.rim,
  };
}
