/**
 * Rests of missed balls that touch the hole on their way: they leave it in another direction and slower.
 *
 * Wraps the rests of a covered hole. How a ball of any start and energy meets the rim is not rolled but read off the lines
 * through the hole's centre (`LineWalk.curve`): at each of them two more balls are rolled, to the left and to the right, and
 * offset, speed and direction at the rim follow in between, as quadratics across and cubics along, on a table fine enough to
 * be read straight.
 * Leaves out: the rim (hole/), where a ball rolls to from there (landing.ts), who drops (drop-region.ts).
 */
import { HOLE_RADIUS } from '../constants.ts';
import { captureRule } from '../hole/capture.ts';
import { type Arrival, leaveHole, newLeavingBall } from '../hole/leave.ts';
import type { CaptureRule } from '../hole/rule.ts';
import { monotoneCubic } from '../maths/interpolation.ts';
import type { LineWalk } from '../read/line.ts';
import { bearingOf, foldAngle, lengthOf, startOf } from '../roll/roll.ts';
import { newPass, type Pass } from '../roll/roller.ts';
import { gradientAt } from '../surface/sample.ts';
import { landingFrom } from './landing.ts';
import { type RestRange, type Rests, restsOf } from './rests.ts';

/** Where the two balls beside each line should meet the hole, hole radii either side: near the rim, yet on it. */
const ASIDE = 0.9;
/** They are aimed again when they meet it farther from there than this share: ground gathers paths, or spreads them. */
const ASTRAY = 0.15;
/** Turned farther off a line than this many times those balls, nothing touches the rim. */
const BEYOND = 1.4;
/** Rows of the table from one line to the next; between rows all is taken as straight. */
const ROWS_BETWEEN = 8;

/** How balls meet the rim: a row for each of many lines through the hole's centre, firm first. */
interface Meetings {
  readonly rows: number;
  /** Launch energy of the line, m^2/s^2; its start, and by how much the balls beside it are turned off it, radians. */
  readonly energy: Float64Array;
  readonly start: Float64Array;
  readonly aside: Float64Array;
  /** Of the ball left of the line and of the one right of it: signed offset at the rim, m; on the line it is 0. */
  readonly offset: readonly [left: Float64Array, right: Float64Array];
  /** Left, middle, right: squared speed at the rim, m^2/s^2, and direction there, radians from the ball-to-hole line. */
  readonly energyThere: readonly Float64Array[];
  readonly going: readonly Float64Array[];
}

/** How one ball meets the rim: signed offset, m; squared speed, m^2/s^2; direction, radians from the ball-to-hole line. */
interface Meeting {
  offset: number;
  energyThere: number;
  going: number;
}

/** A ball of a row's energy that starts at `start` (radians from ball->hole): quadratics through the three rolled. */
function meetingAt(meetings: Meetings, row: number, start: number, out: Meeting): Meeting {
  const { offset, energyThere, going } = meetings;
  // Left is u = 1, middle 0, right -1.
  const u = (start - meetings.start[row]) / meetings.aside[row];
  const left = (u * (u + 1)) / 2;
  const middle = 1 - u * u;
  const right = (u * (u - 1)) / 2;
  // Far off, where the curve is no longer known, a straight line will do.
  out.offset =
    Math.abs(u) > BEYOND
      ? (u * (offset[0][row] - offset[1][row])) / 2
      : left * offset[0][row] + right * offset[1][row];
  out.energyThere = left * energyThere[0][row] + middle * energyThere[1][row] + right * energyThere[2][row];
  out.going = left * going[0][row] + middle * going[1][row] + right * going[2][row];
  return out;
}

/**
 * Rests of the misses of one putt: those of a covered hole, but for the balls that touch it where the rule knows of them.
 */
export function missRests(walk: LineWalk, range: () => RestRange): Rests {
  const rests = restsOf(walk.putt, range);
  const rule = captureRule(walk.putt.capture);
  if (rule.leave === undefined) return rests;
  const meetings = meetingsOf(walk);
  return meetings === undefined ? rests : opened(walk, rule, rests, meetings);
}

function opened(walk: LineWalk, rule: CaptureRule, rests: Rests, meetings: Meetings): Rests {
  const { putt } = walk;
  const zero = bearingOf(putt);
  // A local: asked of every row of every start.
  const rim = HOLE_RADIUS;
  const landing = landingFrom(putt);
  const gradient = gradientAt(putt.surface, putt.hole) ?? { x: 0, y: 0 };
  const arrival: Arrival = { heading: 0, speed: 0, offset: 0 };
  const leaving = newLeavingBall();
  const { rows, energy: energies, start: starts, aside: asides } = meetings;
  const met: Meeting = { offset: 0, energyThere: 0, going: 0 };
  // How balls of the chosen start meet the rim, for the rows that they can touch it from.
  const offsets = new Float64Array(rows);
  const speeds = new Float64Array(rows);
  const headings = new Float64Array(rows);
  let from = 0;
  let to = -1;
  let softest = 0;
  let firmest = 0;
  const jumps = new Float64Array(2 * rows);
  let jumpCount = 0;

  const meet = (start: number, row: number): void => {
    meetingAt(meetings, row, start, met);
    offsets[row] = met.offset;
    speeds[row] = met.energyThere;
    headings[row] = met.going;
  };

  return {
    jumps,
    get jumpCount() {
      return jumpCount;
    },
    touched(low, high, out) {
      out.low = Number.POSITIVE_INFINITY;
      out.high = Number.NEGATIVE_INFINITY;
      for (let row = 0; row < rows; row++) {
        if (energies[row] < low || energies[row] > high) continue;
        out.low = Math.min(out.low, starts[row] - asides[row] / ASIDE);
        out.high = Math.max(out.high, starts[row] + asides[row] / ASIDE);
      }
      return out.high > out.low;
    },
    aim(start) {
      rests.aim(start);
      from = rows;
      to = -1;
      for (let row = 0; row < rows; row++) {
        if (Math.abs(start - starts[row]) > BEYOND * asides[row]) continue;
        if (from === rows) from = Math.max(0, row - 1);
        to = Math.min(rows - 1, row + 1);
      }
      jumpCount = 0;
      softest = Number.POSITIVE_INFINITY;
      firmest = 0;
      for (let row = from; row <= to; row++) {
        meet(start, row);
        softest = Math.min(softest, energies[row]);
        firmest = Math.max(firmest, energies[row]);
        if (row === from) continue;
        // Where balls begin or end to touch the rim.
        for (let side = -1; side <= 1; side += 2) {
          const before = offsets[row - 1] - side * rim;
          const after = offsets[row] - side * rim;
          if (before < 0 !== after < 0)
            jumps[jumpCount++] =
              energies[row - 1] + (before / (before - after)) * (energies[row] - energies[row - 1]);
        }
      }
    },
    at(energy, out) {
      for (let row = from + 1; row <= to && energy >= softest && energy <= firmest; row++) {
        const a = energies[row - 1];
        const b = energies[row];
        if (energy < a === energy < b) continue;
        const share = (energy - a) / (b - a);
        arrival.offset = offsets[row - 1] + share * (offsets[row] - offsets[row - 1]);
        if (!(Math.abs(arrival.offset) < rim)) continue;
        arrival.speed = Math.sqrt(Math.max(0, speeds[row - 1] + share * (speeds[row] - speeds[row - 1])));
        arrival.heading = zero + headings[row - 1] + share * (headings[row] - headings[row - 1]);
        if (!leaveHole(rule, arrival, gradient, leaving)) continue;
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

/** @returns undefined where fewer than two lines reach the hole */
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
    const energyThere = passes.map((pass) => (pass.met ? pass.rimSpeed : pass.missSpeed) ** 2);
    const going = passes.map((pass) => foldAngle(pass.missHeading - zero));
    const line = [speed ** 2, startOf(putt, heading), aside, offsetOf(passes[0]), offsetOf(passes[2])];
    [...line, ...energyThere, ...going].forEach((value, column) => {
      columns[column].push(value);
    });
  }
  const count = columns[0].length;
  if (count < 2) return undefined;
  const numbers = Float64Array.from({ length: count }, (_, i) => i);
  const rows = (count - 1) * ROWS_BETWEEN + 1;
  const [energy, start, turned, left, right, ...rest] = columns.map((column) => {
    const curve = monotoneCubic(numbers, Float64Array.from(column));
    return Float64Array.from({ length: rows }, (_, row) => curve(row / ROWS_BETWEEN));
  });
  return {
    rows,
    energy,
    start,
    aside: turned,
    offset: [left, right],
    energyThere: rest.slice(0, 3),
    going: rest.slice(3),
  };
}
