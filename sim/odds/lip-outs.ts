/**
 * Rests of missed balls that touch the hole on their way: they leave it in another direction and slower.
 *
 * Wraps the rests of a covered hole. How a ball of any start and energy meets the rim is not rolled but read off the lines
 * through the hole's centre (`LineWalk.curve`): at each of them two more balls are rolled, to the left and to the right, and
 * offset, speed and direction at the rim follow in between, as quadratics across and cubics along.
 * Leaves out: the rim (hole/), where a ball rolls to from there (landing.ts), who drops (drop-region.ts).
 */
import { HOLE_RADIUS } from '../constants.ts';
import { type CaptureRule, captureRule } from '../hole/capture.ts';
import { type Arrival, leaveHole, newLeavingBall } from '../hole/leave.ts';
import type { LineWalk } from '../read/line.ts';
import { bearingOf, foldAngle, lengthOf, startOf } from '../roll/roll.ts';
import { newPass, type Pass } from '../roll/roller.ts';
import { sampleSurface } from '../surface/sample.ts';
import { monotoneCubic } from './interpolation.ts';
import { landingFrom } from './landing.ts';
import { type RestRange, type Rests, restsOf } from './rests.ts';

/** Where the two balls beside each line should meet the hole, hole radii either side: near the rim, yet on it. */
const ASIDE = 0.9;
/** They are aimed again when they meet it farther from there than this share: ground gathers paths, or spreads them. */
const ASTRAY = 0.15;
/** Turned farther off a line than this many times those balls, nothing touches the rim. */
const BEYOND = 1.4;
const MOST_STEPS = 30;
/** A line is found between its neighbours to this share of the way. */
const CLOSE = 1e-4;
/** Secants for the line at which balls begin to touch: to a few thousandths of the way between two lines. */
const EDGE_STEPS = 6;

/** How balls of one line and its neighbours meet the rim, by number of the line (0, 1, 2 ...). */
interface Meetings {
  readonly last: number;
  energy(at: number): number;
  start(at: number): number;
  /** By how much the two balls beside it are turned off it, radians. */
  aside(at: number): number;
  /** Signed offset at the rim, m, of the ball left of the line and of the one right of it. */
  readonly offset: readonly [left: (at: number) => number, right: (at: number) => number];
  /** Squared speed there, m^2/s^2, and direction, radians from the ball-to-hole line: left, middle, right. */
  readonly energyThere: readonly ((at: number) => number)[];
  readonly going: readonly ((at: number) => number)[];
}

/** Rests of the misses of one putt: those of a covered hole, but for the balls that touch it where the rule knows of them. */
export function missRests(walk: LineWalk, range: RestRange): Rests {
  const rests = restsOf(walk.putt, range);
  const rule = captureRule(walk.putt.capture);
  if (rule.leave === undefined) return rests;
  const meetings = meetingsOf(walk);
  return meetings === undefined ? rests : opened(walk, rule, rests, meetings);
}

function opened(walk: LineWalk, rule: CaptureRule, rests: Rests, meetings: Meetings): Rests {
  const { putt } = walk;
  const zero = bearingOf(putt);
  const landing = landingFrom(putt);
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  sampleSurface(putt.surface, putt.hole.x, putt.hole.y, ground);
  const gradient = { x: ground.gradientX, y: ground.gradientY };
  const arrival: Arrival = { heading: 0, speed: 0, offset: 0 };
  const leaving = newLeavingBall();
  const { last } = meetings;
  const energies = Float64Array.from({ length: last + 1 }, (_, i) => meetings.energy(i));
  const starts = Float64Array.from({ length: last + 1 }, (_, i) => meetings.start(i));
  const asides = Float64Array.from({ length: last + 1 }, (_, i) => meetings.aside(i));
  let aimed = 0;
  // Lines between which the chosen start can touch the hole.
  let from = 0;
  let to = 0;
  const jumps = new Float64Array(4 * last);
  let jumpCount = 0;

  /** Number of the line of this energy between two neighbours. */
  const lineBetween = (low: number, energy: number): number => {
    const rising = energies[low + 1] > energies[low];
    let [a, b] = [low, low + 1];
    for (let i = 0; i < MOST_STEPS && b - a > CLOSE; i++) {
      const middle = (a + b) / 2;
      if (meetings.energy(middle) < energy === rising) a = middle;
      else b = middle;
    }
    return (a + b) / 2;
  };
  // Quadratics through left (u = 1), middle (0) and right (-1): their weights at the ball chosen.
  let left = 0;
  let middle = 0;
  let right = 0;
  /** Offset at the rim, m, of the ball of the chosen start beside this line. */
  const offsetAt = (at: number): number => {
    const u = (aimed - meetings.start(at)) / meetings.aside(at);
    left = (u * (u + 1)) / 2;
    middle = 1 - u * u;
    right = (u * (u - 1)) / 2;
    // Far off, where the curve is no longer known, a straight line will do.
    return Math.abs(u) > BEYOND
      ? (u * (meetings.offset[0](at) - meetings.offset[1](at))) / 2
      : left * meetings.offset[0](at) + right * meetings.offset[1](at);
  };
  /** Fills `leaving` for the ball beside this line; false when it does not touch. */
  const leaves = (at: number): boolean => {
    arrival.offset = offsetAt(at);
    if (!(Math.abs(arrival.offset) < HOLE_RADIUS)) return false;
    const [l, m, r] = meetings.energyThere;
    arrival.speed = Math.sqrt(Math.max(0, left * l(at) + middle * m(at) + right * r(at)));
    const [gl, gm, gr] = meetings.going;
    arrival.heading = zero + left * gl(at) + middle * gm(at) + right * gr(at);
    return leaveHole(rule, arrival, gradient, leaving);
  };

  /** Where between two neighbouring lines balls of the chosen start begin or end to touch the rim: a secant in its bracket. */
  const noteJumps = (line: number): void => {
    for (const edge of [HOLE_RADIUS, -HOLE_RADIUS]) {
      let [low, high] = [line, line + 1];
      let [below, above] = [offsetAt(low) - edge, offsetAt(high) - edge];
      if (below < 0 === above < 0) continue;
      for (let i = 0; i < EDGE_STEPS; i++) {
        const at = (low * above - high * below) / (above - below);
        const gap = offsetAt(at) - edge;
        if (gap < 0 === below < 0) {
          [low, below] = [at, gap];
          above /= 2;
        } else {
          [high, above] = [at, gap];
          below /= 2;
        }
      }
      jumps[jumpCount++] = meetings.energy((low + high) / 2);
    }
  };

  return {
    jumps,
    get jumpCount() {
      return jumpCount;
    },
    touched(softest, firmest, out) {
      out.low = Number.POSITIVE_INFINITY;
      out.high = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < last; i++) {
        if (
          Math.max(energies[i], energies[i + 1]) < softest ||
          Math.min(energies[i], energies[i + 1]) > firmest
        )
          continue;
        for (const line of [i, i + 1]) {
          out.low = Math.min(out.low, starts[line] - asides[line] / ASIDE);
          out.high = Math.max(out.high, starts[line] + asides[line] / ASIDE);
        }
      }
      return out.high > out.low;
    },
    aim(start) {
      rests.aim(start);
      aimed = start;
      from = last;
      to = 0;
      jumpCount = 0;
      for (let i = 0; i < last; i++) {
        const reach = BEYOND * Math.max(asides[i], asides[i + 1]);
        const low = Math.min(starts[i], starts[i + 1]) - reach;
        const high = Math.max(starts[i], starts[i + 1]) + reach;
        if (start < low || start > high) continue;
        from = Math.min(from, i);
        to = i + 1;
        noteJumps(i);
      }
    },
    at(energy, out) {
      for (let i = from; i < to; i++) {
        if (energy < energies[i] === energy < energies[i + 1]) continue;
        if (!leaves(lineBetween(i, energy))) continue;
        landing(leaving.heading, leaving.speed, out);
        out.x += leaving.x;
        out.y += leaving.y;
        out.lipped = true;
        return;
      }
      rests.at(energy, out);
    },
  };
}

function meetingsOf(walk: LineWalk): Meetings | undefined {
  const { putt } = walk;
  const zero = bearingOf(putt);
  const { roller } = walk.search;
  const columns: number[][] = Array.from({ length: 11 }, () => []);
  const passes: readonly Pass[] = [newPass(), newPass(), newPass()];
  const offsetOf = (pass: Pass): number => (pass.met ? pass.rimOffset : pass.miss);
  // What did for one line will nearly do for the next.
  let aside = (ASIDE * HOLE_RADIUS) / lengthOf(putt);
  for (const { heading, speed } of walk.curve()) {
    const roll = (): void => {
      passes.forEach((pass, i) => {
        roller.pass(heading + (1 - i) * aside, speed, pass);
      });
    };
    roll();
    const apart = Math.abs(offsetOf(passes[0]) - offsetOf(passes[2])) / (2 * ASIDE * HOLE_RADIUS);
    if (Math.abs(apart - 1) > ASTRAY) {
      aside /= Math.max(0.25, Math.min(4, apart));
      roll();
    }
    // A ball that does not get there has no direction there.
    if (passes.some((pass) => !(pass.missSpeed > 0))) continue;
    const speeds = passes.map((pass) => (pass.met ? pass.rimSpeed : pass.missSpeed) ** 2);
    const goings = passes.map((pass) => foldAngle(pass.missHeading - zero));
    const line = [speed ** 2, startOf(putt, heading), aside, offsetOf(passes[0]), offsetOf(passes[2])];
    [...line, ...speeds, ...goings].forEach((value, column) => {
      columns[column].push(value);
    });
  }
  const count = columns[0].length;
  if (count < 2) return undefined;
  const numbers = Float64Array.from({ length: count }, (_, i) => i);
  const [energy, start, turned, left, right, ...rest] = columns.map((column) =>
    monotoneCubic(numbers, Float64Array.from(column)),
  );
  return {
    last: count - 1,
    energy,
    start,
    aside: turned,
    offset: [left, right],
    energyThere: rest.slice(0, 3),
    going: rest.slice(3),
  };
}
