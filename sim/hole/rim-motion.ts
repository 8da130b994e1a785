/**
 * One rigid ball through the hole, by direct calculation (MODEL.md section 2): from the moment its centre crosses the rim
 * circle until it is in the hole for good or back on the green.
 *
 * Answers for: the order of phases - pivoting on the rim and running along the wall, rolling or slipping; flight; impacts -
 * and what came of it. Leaves out: grass inside the rim circle, the flagstick, a rim that gives. The odds use the table
 * made from this (rim-table.ts), not this.
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import {
  accelerate,
  collide,
  energyOf,
  examine,
  gravityOn,
  HOLE_DEPTH,
  newContact,
  place,
  pushContact,
  pushSlip,
  type Region,
  type RimMaterial,
  SPIN,
  STATE_SIZE,
  STICK_SHARE,
  settle,
  VELOCITY,
} from './rim-contact.ts';
import { FLOOR_HEIGHT, flyToContact } from './rim-flight.ts';
import { makeRimStepper } from './rim-step.ts';

/** Turf and the earth under it: guesses, and MODEL.md says what they move. Restitution: 0.51 in slow bounces on turf (a formula of
 *  Penner's; memory), and 0.5 drops a ball dead centre at the published 1.6 m/s. Friction: a ball sliding on turf, about 0.4
 *  (memory). */
export const TURF: RimMaterial = { restitution: 0.5, friction: 0.4 };

/** A ball as its centre crosses the rim circle, rolling without slip or side spin. */
export interface RimArrival {
  /** m/s, above 0. */
  readonly speed: number;
  /** b, m, positive: hole centre to the left of the line of travel; less than HOLE_RADIUS either way. */
  readonly offset: number;
  /** Tilt of the green at the hole, rise over run; default 0. */
  readonly slope?: number;
  /** Direction in which the green falls, radians from the direction of travel, positive to the left. */
  readonly downhill?: number;
}

/** The ball's centre never below the green (rim), or below it and out again (hole): Hogan & Antali 2025. 'hop': never below
 *  it, and back on the green out of the air. */
export type LipOutKind = 'rim' | 'hole' | 'hop';

export type RimOutcome =
  | { readonly status: 'holed'; readonly time: number; readonly lowest: number }
  | {
      readonly status: 'out';
      readonly kind: LipOutKind;
      /** Where it is back on the green, m from the hole centre: x along the line of arrival, y to its left. */
      readonly x: number;
      readonly y: number;
      /** Turn of its direction, radians, positive to the left, not wrapped. */
      readonly turn: number;
      /** Rolling speed once it slips no more, m/s. */
      readonly speed: number;
      /** s since the crossing. */
      readonly time: number;
      /** Lowest height of its centre above the green, m. */
      readonly lowest: number;
    }
  | { readonly status: 'failed'; readonly reason: string };

/** The phases a watcher sees. 'impact': just after one. */
export type RimPhase = 'rolling' | 'slipping' | 'flight' | 'impact';

export interface RimOptions {
  readonly material?: RimMaterial;
  /** Error allowed per step, m, m/s and r w; default 1e-9. */
  readonly tolerance?: number;
  /** Called after each step with the state (laid out as in rim-contact.ts; do not keep it) and the time, s. */
  readonly watch?: (state: Float64Array, time: number, phase: RimPhase) => void;
}

const TOLERANCE = 1e-9;
/** Steps of all phases together; an ordinary ball takes a few hundred. */
const MOST_STEPS = 20_000;
/** First and longest step in contact, s; the longest keeps the direction of travel followed well under half a turn. */
const FIRST_STEP = 1e-4;
const LONGEST_STEP = 4e-3;
/** Below this step the error is taken as it is, s: slip that changes direction on the spot. */
const SHORTEST_STEP = 1e-11;
/** Slower than this a ball's slip ends, m/s, if friction can hold it: costs 1e-11 J/kg. */
const STICKS = 1e-5;
/** Slower than this along the normal a bouncing ball stays, m/s. */
const STAYS = 1e-4;
/** Without slip the motion round the wall, and over its lip, is periodic on a level green (one degree of freedom is left when
 *  the two invariants of rolling are used; Littlewood 1953 for the wall): a ball that turns back downwards twice, without
 *  having slipped or left the wall in between, never comes out. On a tilted green taken over. */
const CRESTS = 2;
/** Slip takes energy from this motion: so many crests in a row, none above the last, and it is taken to stay in. Told apart
 *  only where friction is far above turf's: balls that slip a little at each bob for seconds. */
const SLIPPING_CRESTS = 4;
/** A crest this much above the last is no higher, m: crests are read off the parabola through the step that holds them. */
const SAME_CREST = 1e-5;
/** Halvings that find an event inside a step. */
const HALVINGS = 45;
const SAFETY = 0.9;
const MOST_GROWTH = 4;
const MOST_SHRINKING = 0.2;

/**
 * Follows one ball.
 * @returns 'failed' with a sentence for arrivals that are no arrivals, and when the bound on work is met
 */
export function rimMotion(arrival: RimArrival, options: RimOptions = {}): RimOutcome {
  const { speed, offset, slope = 0, downhill = 0 } = arrival;
  if (!(speed > 0 && speed < 100)) return { status: 'failed', reason: 'The ball does not arrive.' };
  if (!(Math.abs(offset) < HOLE_RADIUS))
    return { status: 'failed', reason: 'The ball passes outside the rim.' };
  return makeRide(gravityOn(slope, downhill), options).run(speed, offset);
}

function makeRide(gravity: Float64Array, options: RimOptions) {
  const { material = TURF, tolerance = TOLERANCE, watch } = options;
  const stepper = makeRimStepper();
  const contact = newContact();
  const state = new Float64Array(STATE_SIZE);
  const next = new Float64Array(STATE_SIZE);
  const normal = new Float64Array(3);
  const slip = new Float64Array(3);
  /** Below this a ball cannot reach the green again: its potential at the lowest point of the rim circle. */
  const needed = -Math.hypot(gravity[0], gravity[1]) * HOLE_RADIUS;
  let region: Region = 'rim';
  let slips = false;
  let time = 0;
  let steps = 0;
  let lowest = BALL_RADIUS;
  let turn = 0;
  let headingX = 1;
  let headingY = 0;

  const derivative = (at: Float64Array, out: Float64Array): void => {
    examine(at, region, gravity, contact);
    accelerate(at, gravity, { contact, slips, friction: material.friction }, out);
  };

  /** Follows the direction of travel. */
  const note = (phase: RimPhase): void => {
    steps++;
    lowest = Math.min(lowest, state[2]);
    const size = Math.hypot(state[3], state[4]);
    if (size > 1e-9) {
      const [x, y] = [state[3] / size, state[4] / size];
      turn += Math.atan2(headingX * y - headingY * x, headingX * x + headingY * y);
      headingX = x;
      headingY = y;
    }
    watch?.(state, time, phase);
  };

  /** Positive while the phase lasts. */
  const lasting = (at: Float64Array): number => {
    examine(at, region, gravity, contact);
    const spare = material.friction * contact.press - contact.gripSize;
    const place = region === 'rim' ? Math.min(at[2], HOLE_RADIUS - Math.hypot(at[0], at[1])) : -at[2];
    const floor = at[2] - FLOOR_HEIGHT;
    const holds = slips ? (spare > 0 ? contact.slipSpeed - STICKS : 1) : spare;
    return Math.min(contact.press, place, floor, holds);
  };

  /** From a contact just made or changed: rolls or slips on; false: it leaves. */
  const grips = (): boolean => {
    examine(state, region, gravity, contact);
    if (!(contact.press > 0)) return false;
    const spare = material.friction * contact.press - contact.gripSize;
    slips = !(contact.slipSpeed <= STICKS && spare > 0);
    if (slips && contact.slipSpeed <= STICKS) {
      // Slip starts against the grip that was asked for. Given as a push at the contact it costs 1e-10 J/kg.
      const size = -2 * STICKS * STICK_SHARE * (contact.gripSize > 0 ? 1 / contact.gripSize : 0);
      const [gx, gy, gz] = contact.grip;
      pushContact(state, contact.normal, size * gx, size * gy, size * gz);
    }
    settle(state, region, !slips, normal);
    return true;
  };

  /** Rides rim or wall until something ends it. */
  const ride = (): 'flight' | 'out' | 'floor' | 'limit' | 'holed' => {
    let h = FIRST_STEP;
    let crests = 0;
    let crest = Number.POSITIVE_INFINITY;
    let slipped = false;
    while (steps < MOST_STEPS) {
      const error = stepper.step(derivative, state, h, next);
      const growth = SAFETY * (tolerance / Math.max(error, 1e-30)) ** 0.2;
      if ((error > tolerance || Number.isNaN(error)) && h > SHORTEST_STEP) {
        h *= Number.isNaN(growth) ? MOST_SHRINKING : Math.max(MOST_SHRINKING, growth);
        continue;
      }
      const wasH = h;
      const rise = state[VELOCITY + 2];
      const height = state[2];
      let used = h;
      const ended = lasting(next) < 0;
      if (ended) {
        let low = 0;
        for (let i = 0; i < HALVINGS && used - low > 1e-13; i++) {
          const middle = (low + used) / 2;
          stepper.step(derivative, state, middle, next);
          if (lasting(next) < 0) used = middle;
          else low = middle;
        }
        stepper.step(derivative, state, used, next);
      }
      // Judged before the state is put back on the rim.
      const out = ended && region === 'rim' && Math.hypot(next[0], next[1]) > HOLE_RADIUS;
      state.set(next);
      settle(state, region, !slips, normal);
      time += used;
      note(slips ? 'slipping' : 'rolling');
      if (out) return 'out';
      if (energyOf(state, gravity) < needed) return 'holed';
      if (slips) slipped = true;
      if (rise > 0 && state[VELOCITY + 2] <= 0) {
        const top = height + (used * rise * rise) / (2 * (rise - state[VELOCITY + 2]));
        crests = top <= crest + SAME_CREST ? crests + 1 : 1;
        crest = top;
        if (crests >= (slipped ? SLIPPING_CRESTS : CRESTS)) return 'holed';
        slipped = false;
      }
      h = Math.min(LONGEST_STEP, wasH * Math.min(MOST_GROWTH, growth));
      if (!ended) continue;
      if (state[2] <= FLOOR_HEIGHT) return 'floor';
      region = state[2] > 0 ? 'rim' : 'wall';
      if (slips) {
        examine(state, region, gravity, contact);
        const spare = material.friction * contact.press - contact.gripSize;
        if (spare > 0 && contact.slipSpeed <= STICKS) pushSlip(state, contact.normal, 1, slip);
      }
      if (!grips()) return 'flight';
      h = FIRST_STEP;
    }
    return 'limit';
  };

  /** Back on the green: ends the slip there. True when it stays out; else it has rolled back to the rim. */
  const landed = (): boolean => {
    normal.fill(0);
    normal[2] = 1;
    state[5] = 0;
    // What turf does to the slip is a push at the contact: the spin about it is kept, 5/7 of V and 2/7 of the rest remain.
    pushSlip(state, normal, Number.POSITIVE_INFINITY, slip);
    note('impact');
    const [x, y, , vx, vy] = state;
    const v = Math.hypot(vx, vy);
    const along = (x * vx + y * vy) / v;
    const aside = (x * vy - y * vx) / v;
    if (!(v > 0) || along >= 0 || Math.abs(aside) >= HOLE_RADIUS) return true;
    const way = -along - Math.sqrt(HOLE_RADIUS ** 2 - aside ** 2);
    state[0] += (way * vx) / v;
    state[1] += (way * vy) / v;
    state[2] = BALL_RADIUS;
    time += way / v;
    region = 'rim';
    return false;
  };

  /** Flies to the next contact and through it. */
  const hop = (): 'ride' | 'flight' | 'landed' | 'holed' | 'limit' => {
    if (steps >= MOST_STEPS) return 'limit';
    const began = time;
    const after = flyToContact(state, gravity, watch && ((at, t) => watch(at, began + t, 'flight')));
    time = began + after;
    const rho = Math.hypot(state[0], state[1]);
    if (state[2] <= FLOOR_HEIGHT + 1e-9) return onFloor();
    if (rho >= HOLE_RADIUS) return 'landed';
    region = state[2] > 0 ? 'rim' : 'wall';
    place(state, region, normal);
    const leaves = collide(state, normal, material, slip);
    note('impact');
    if (energyOf(state, gravity) < needed) return 'holed';
    return leaves < STAYS && grips() ? 'ride' : 'flight';
  };

  /** On the floor: holed unless the rebound alone could lift the centre back to the green. */
  const onFloor = (): 'holed' | 'flight' => {
    normal.fill(0);
    normal[2] = 1;
    const rebound = collide(state, normal, material, slip);
    note('impact');
    return rebound * rebound < -2 * gravity[2] * (HOLE_DEPTH - BALL_RADIUS) ? 'holed' : 'flight';
  };

  const outcome = (how: 'rim' | 'hop'): RimOutcome => ({
    status: 'out',
    kind: lowest < 0 ? 'hole' : how,
    x: state[0],
    y: state[1],
    turn,
    speed: Math.hypot(state[3], state[4]),
    time,
    lowest,
  });

  const run = (speed: number, offset: number): RimOutcome => {
    state[0] = -Math.sqrt(HOLE_RADIUS ** 2 - offset ** 2);
    state[1] = -offset;
    state[2] = BALL_RADIUS;
    state[3] = speed;
    state[SPIN + 1] = speed / BALL_RADIUS;
    watch?.(state, 0, 'rolling');
    let now: ReturnType<typeof ride> | ReturnType<typeof hop> = grips() ? 'ride' : 'flight';
    for (;;) {
      if (now === 'ride') now = ride();
      else if (now === 'flight') now = hop();
      else if (now === 'floor') now = onFloor();
      else if (now === 'holed') return { status: 'holed', time, lowest };
      else if (now === 'limit')
        return { status: 'failed', reason: `The ball is still moving after ${MOST_STEPS} steps.` };
      else {
        if (landed()) return outcome(now === 'out' ? 'rim' : 'hop');
        now = grips() ? 'ride' : 'flight';
      }
    }
  };
  return { run };
}

/** One ball drawn: its outcome and its way as x, y, z, t quadruples (m, m, m, s). */
export function traceRim(
  arrival: RimArrival,
  options: Omit<RimOptions, 'watch'> = {},
): { readonly outcome: RimOutcome; readonly path: Float64Array } {
  const path: number[] = [];
  const outcome = rimMotion(arrival, {
    ...options,
    watch: (state, time) => path.push(state[0], state[1], state[2], time),
  });
  return { outcome, path: Float64Array.from(path) };
}
