/**
 * Rolls and lines on a plane by odex 2.0.4 at 1e-12: an independent solver, for tests.
 *
 * Answers for: where a ball rests, when, how it passes the hole and crosses its rim; the line for a pace, found by its own shooting.
 * The equation of motion (MODEL.md section 1) is solved in lambda, dt = (|v| / a_f) d(lambda): dx/d(lambda) = |v| v / a_f,
 * dv/d(lambda) = -v - |v| K, K = (5/7) g grad h / a_f. That is smooth down to rest, where the speed has died away
 * exponentially, so rest needs no event. From the engine only constants and types; no closed form, no engine roll or read.
 * The line: at slope 0 it is the straight one, exactly; the slope is then raised to the asked one in steps, each step
 * corrected by Newton's method on (path crosses the hole centre, rest lies the pace from it). Following the line up from
 * level ground also says which of two lines is the direct one, without asking the engine.
 */
import { createRequire } from 'node:module';
import { GRAVITY, HOLE_RADIUS, ROLLING_FACTOR, STIMP_SPEED } from '../../sim/constants.ts';
import type { Point } from '../../sim/types.ts';
import { feetToMetres } from '../../sim/units.ts';
import { type Gradient, gradientOf } from './oracle-roll.ts';

/** By its path: the bench runs in tsx, which would follow tsconfig's `paths` for 'odex' to the stub of its types. */
const { Solver } = createRequire(import.meta.url)(
  '../../node_modules/odex/src/odex.js',
) as typeof import('odex');

export interface PlanePutt {
  /** Rise over run. */
  readonly slope: number;
  /** Radians from +x. */
  readonly downhill: number;
  /** m. */
  readonly greenSpeed: number;
  readonly ball: Point;
  readonly hole: Point;
  /** Other ground than a plane; `slope` is then only its steepest. */
  readonly gradient?: Gradient;
}

/** a_f of MODEL.md section 1, m/s^2. */
export const frictionAt = (greenSpeed: number): number => STIMP_SPEED ** 2 / (2 * greenSpeed);

/** (5/7) g slope / a_f: at 1 the slope no longer holds a ball. */
export const steepnessOf = ({ slope, greenSpeed }: Pick<PlanePutt, 'slope' | 'greenSpeed'>): number =>
  (ROLLING_FACTOR * GRAVITY * slope) / frictionAt(greenSpeed);

/** A putt of the promised range: slope 0-6%, green speed 7-14 ft, 2-60 ft from every side; the bearing hole -> ball, rad. */
export function randomPutt(random: () => number): { putt: PlanePutt; bearing: number; length: number } {
  const bearing = 2 * Math.PI * random();
  const length = feetToMetres(2 + 58 * random());
  const putt = {
    slope: 0.06 * random(),
    downhill: 2 * Math.PI * random(),
    greenSpeed: feetToMetres(7 + 7 * random()),
    ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) },
    hole: { x: 0, y: 0 },
  };
  return { putt, bearing, length };
}

export interface OdexRoll {
  readonly rest: Point;
  /** s. */
  readonly time: number;
  /** The nearest of its passes of the hole (ground that barely holds a ball can bring it past again); undefined when it stops before any. */
  readonly pass: Meeting | undefined;
  /** First crossing of the rim circle by the ball's centre; undefined when there is none. */
  readonly rim: Meeting | undefined;
}

/** The ball at one moment near the hole. */
export interface Meeting {
  /** Distance of the line of travel from the hole centre, m, positive: hole centre to the left. */
  readonly offset: number;
  /** m/s. */
  readonly speed: number;
  /** Radians from +x. */
  readonly heading: number;
  /** s. */
  readonly time: number;
  /** lambda: -ln of the share of the launch speed left on level ground. */
  readonly progress: number;
}

/** Rounding of the last direction, at e^-40 of the launch speed, still leaves the rest to 1e-15 m. */
const LAST = 40;

/** Roll with the hole covered. heading: radians from +x; speed: m/s. */
export function odexRoll(putt: PlanePutt, heading: number, speed: number, tolerance = 1e-12): OdexRoll {
  const { ball, hole } = putt;
  const friction = frictionAt(putt.greenSpeed);
  const steepness = steepnessOf(putt);
  const pull = (ROLLING_FACTOR * GRAVITY) / friction;
  const gradient = putt.gradient ?? gradientOf({ kind: 'plane', slope: putt.slope, downhill: putt.downhill });
  const g = new Float64Array(2);
  const solver = new Solver(5);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.denseOutput = true;
  solver.maxSteps = 100_000;
  let pass: Meeting | undefined;
  let rim: Meeting | undefined;
  let ahead = true;
  const along = (s: number[]): number => (s[0] - hole.x) * s[2] + (s[1] - hole.y) * s[3];
  const inside = (s: number[]): number => HOLE_RADIUS - Math.hypot(s[0] - hole.x, s[1] - hole.y);
  type Dense = (lambda: number) => number[];
  /** Where `event` turns from negative to positive between two progresses. */
  const meet = (at: Dense, event: (s: number[]) => number, from: number, to: number): Meeting => {
    let [low, high] = [from, to];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (event(at(middle)) < 0) low = middle;
      else high = middle;
    }
    const [x, y, vx, vy, time] = at(high);
    const v = Math.hypot(vx, vy);
    return {
      offset: (vx * (hole.y - y) - vy * (hole.x - x)) / v,
      speed: v,
      heading: Math.atan2(vy, vx),
      time,
      progress: high,
    };
  };
  const { y: end, outcome } = solver.solve(
    (_lambda, [x, y, vx, vy]) => {
      const v = Math.hypot(vx, vy);
      gradient(x, y, g);
      return [
        (v * vx) / friction,
        (v * vy) / friction,
        -vx - v * pull * g[0],
        -vy - v * pull * g[1],
        v / friction,
      ];
    },
    0,
    [ball.x, ball.y, speed * Math.cos(heading), speed * Math.sin(heading), 0],
    LAST / (1 - steepness),
    (_step, from, to, state, dense) => {
      if (dense === undefined || from === to) return undefined;
      const at: Dense = (lambda) => [0, 1, 2, 3, 4].map((component) => dense(component, lambda));
      const now = along(state) >= 0;
      const passed = now && ahead ? meet(at, along, from, to) : undefined;
      ahead = !now;
      if (passed !== undefined && (pass === undefined || Math.abs(passed.offset) < Math.abs(pass.offset)))
        pass = passed;
      // A step may cross the whole hole: look at its closest pass too.
      if (rim === undefined) {
        const look = passed?.progress ?? to;
        if (inside(at(look)) >= 0) rim = meet(at, inside, from, look);
      }
      return undefined;
    },
  );
  if (outcome === 1) throw new Error('odex ran out of steps');
  return { rest: { x: end[0], y: end[1] }, time: end[4], pass, rim };
}

export interface OdexLine {
  readonly heading: number;
  readonly speed: number;
  readonly roll: OdexRoll;
  /** What is left unsolved, m: offset at the hole and error of the pace. */
  readonly residual: number;
}

interface Shot {
  heading: number;
  /** Square of the launch speed: distances are nearly linear in it. */
  energy: number;
}

/** Newton's method from a guess; undefined when it does not settle. `close` is in metres. */
export function shootFrom(
  putt: PlanePutt,
  pace: number,
  guess: Shot,
  { tolerance, close }: { tolerance: number; close: number },
): OdexLine | undefined {
  const { hole } = putt;
  let shot = guess;
  const errors = ({ heading, energy }: Shot): { roll: OdexRoll; off: number; over: number } | undefined => {
    if (!(energy > 0)) return undefined;
    const roll = odexRoll(putt, heading, Math.sqrt(energy), tolerance);
    if (roll.pass === undefined) return undefined;
    return {
      roll,
      off: roll.pass.offset,
      over: Math.hypot(roll.rest.x - hole.x, roll.rest.y - hole.y) - pace,
    };
  };
  let now = errors(shot);
  for (let step = 0; now !== undefined && step < 12; step++) {
    const size = Math.hypot(now.off, now.over);
    if (size < close)
      return { heading: shot.heading, speed: Math.sqrt(shot.energy), roll: now.roll, residual: size };
    const turn = 1e-6;
    const push = 1e-6 * shot.energy;
    const turned = errors({ heading: shot.heading + turn, energy: shot.energy });
    const pushed = errors({ heading: shot.heading, energy: shot.energy + push });
    if (turned === undefined || pushed === undefined) return undefined;
    const a = (turned.off - now.off) / turn;
    const b = (pushed.off - now.off) / push;
    const c = (turned.over - now.over) / turn;
    const d = (pushed.over - now.over) / push;
    const determinant = a * d - b * c;
    const byHeading = (-now.off * d + now.over * b) / determinant;
    const byEnergy = (-now.over * a + now.off * c) / determinant;
    let next: ReturnType<typeof errors>;
    for (let share = 1; share > 0.05; share /= 2) {
      const tried = { heading: shot.heading + share * byHeading, energy: shot.energy + share * byEnergy };
      next = errors(tried);
      if (next !== undefined && Math.hypot(next.off, next.over) < size) {
        shot = tried;
        break;
      }
      next = undefined;
    }
    now = next;
  }
  return undefined;
}

/** The direct line for a pace (m past the covered hole); undefined when it cannot be followed up from level ground. */
export function odexLine(putt: PlanePutt, pace: number): OdexLine | undefined {
  const { ball, hole } = putt;
  const length = Math.hypot(hole.x - ball.x, hole.y - ball.y);
  let shot: Shot = {
    heading: Math.atan2(hole.y - ball.y, hole.x - ball.x),
    energy: 2 * frictionAt(putt.greenSpeed) * (length + pace),
  };
  let before: { slope: number; shot: Shot } | undefined;
  let slope = 0;
  let step = putt.slope / 2;
  while (slope < putt.slope) {
    if (step < putt.slope / 500) return undefined;
    const target = Math.min(putt.slope, slope + step);
    // Straight on from the last two solutions.
    const ahead = before === undefined ? 0 : (target - slope) / (slope - before.slope);
    const guess: Shot =
      before === undefined
        ? shot
        : {
            heading: shot.heading + ahead * (shot.heading - before.shot.heading),
            energy: shot.energy + ahead * (shot.energy - before.shot.energy),
          };
    const found = shootFrom({ ...putt, slope: target }, pace, guess, { tolerance: 1e-9, close: 1e-5 });
    // A line that turns by more than 0.3 rad at once may be another line.
    if (found === undefined || Math.abs(found.heading - shot.heading) > 0.3) {
      step /= 2;
      continue;
    }
    before = { slope, shot };
    slope = target;
    shot = { heading: found.heading, energy: found.speed ** 2 };
    step *= 1.5;
  }
  return shootFrom(putt, pace, shot, { tolerance: 1e-12, close: 1e-8 });
}
