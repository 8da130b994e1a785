/**
 * Which starts drop at which speed: for every launch energy s = v^2 (m^2/s^2) the interval of start angles that is holed.
 *
 * Answers for: `front`, the softest energy with which any start drops (the oval of resting places of that energy just
 * touches the hole); `top`, the firmest (the ball crosses the middle at the fastest speed that drops); the two edges
 * between them, solved at nodes and interpolated; and the start that crosses the middle for firmer balls, which tells a
 * miss on the left from one on the right. Nodes stand in t, with s = front + (top - front)(1 - cos pi t)/2, because the
 * interval opens and closes as a square root, which t straightens. Does not depend on the player.
 * Leaves out: a second interval of the same energy (a ball that comes round a swale): on a plane that holds the ball there
 * is none; on other ground it is not looked for, and tests/sim/odds compares with plain rolling.
 */
import { HOLE_RADIUS } from '../constants.ts';
import { captureRule } from '../hole/capture.ts';
import { type CentreLine, centreHeading, foldAngle, type LineWalk } from '../read/line.ts';
import { bearingOf } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import { clearanceOf } from './clearance.ts';

export interface DropWindow {
  /** Energies v^2 (m^2/s^2) between which some start drops. */
  readonly front: number;
  readonly top: number;
  /** Energies at which its width bends sharply, rising: front, top, and two about where balls begin to rest beyond the hole. */
  readonly cuts: readonly number[];
  /** Start angles (radians from ball->hole) that drop at this energy: fills `out` [low, high]; false when none does. */
  edgesAt(energy: number, out: Float64Array): boolean;
  /** The start that parts misses on the left from misses on the right at this energy, radians from ball->hole. */
  middleAt(energy: number): number;
}

/** Edges are solved to this clearance, m: a five-thousandth of the hole's radius, so of holed %. */
const EDGE_TOLERANCE = 1e-5;
/** Energies beyond `top` at which the crossing start is solved, as shares of the way to the firmest ball asked for. */
const BEYOND = [0.15, 0.5, 1];

/** Shares of the window between which, on slopes from 0 to 6%, resting in the hole gives way to arriving slowly enough. */
const SETTLING = [0.03, 0.08];

interface Tip {
  readonly heading: number;
  readonly energy: number;
}

/** A paced line to begin from: any that surely drops. */
const beginning = (walk: LineWalk): CentreLine | undefined => {
  for (const pace of [0.3, 0.15, 0.5, 0.05, 1]) {
    const line = walk.lineAt(pace);
    if (line !== undefined) return line;
  }
  return undefined;
};

/**
 * Softest energy that drops. Newton on the resting place: the point of the oval of resting places nearest to the hole is
 * moved onto the hole's rim circle.
 */
function frontOf(walk: LineWalk, from: CentreLine): Tip | undefined {
  const { roller } = walk.search;
  const pass = newPass();
  let heading = from.heading;
  let energy = from.speed ** 2;
  const turn = 1e-4;
  for (let step = 0; step < 40; step++) {
    roller.pass(heading, Math.sqrt(energy), pass);
    if (pass.status !== 'atRest') return undefined;
    const x = pass.restX;
    const y = pass.restY;
    roller.pass(heading + turn, Math.sqrt(energy), pass);
    const alongX = (pass.restX - x) / turn;
    const alongY = (pass.restY - y) / turn;
    const more = energy * 1e-4;
    roller.pass(heading, Math.sqrt(energy + more), pass);
    const outX = (pass.restX - x) / more;
    const outY = (pass.restY - y) / more;
    const area = alongX * outY - alongY * outX;
    const along = Math.hypot(alongX, alongY);
    if (area === 0 || along === 0) return undefined;
    // Unit normal of the oval, pointing the way it grows.
    const side = area > 0 ? 1 : -1;
    const normalX = (-alongY / along) * side;
    const normalY = (alongX / along) * side;
    const goX = roller.hole.x - HOLE_RADIUS * normalX - x;
    const goY = roller.hole.y - HOLE_RADIUS * normalY - y;
    const turnBy = (goX * outY - goY * outX) / area;
    const addBy = (alongX * goY - alongY * goX) / area;
    heading += Math.max(-0.15, Math.min(0.15, turnBy));
    energy += Math.max(-energy / 3, Math.min(energy / 3, addBy));
    if (Math.hypot(goX, goY) < 1e-7) return { heading, energy };
  }
  return undefined;
}

/** Firmest energy that drops: the centre line arrives at the rule's fastest. s - (rim speed)^2 hardly changes, so few steps. */
function topOf(walk: LineWalk, from: CentreLine, fastest: number): Tip | undefined {
  const { roller } = walk.search;
  const pass = newPass();
  let heading = from.heading;
  let energy = from.speed ** 2;
  for (let step = 0; step < 30; step++) {
    roller.pass(heading, Math.sqrt(energy), pass);
    const lacking = fastest ** 2 - pass.rimSpeed ** 2;
    if (pass.met && Math.abs(lacking) < 1e-9) return { heading, energy };
    energy += lacking;
    const found = centreHeading(walk.search, heading, Math.sqrt(energy));
    if (found === undefined) return undefined;
    heading = found;
  }
  return undefined;
}

/**
 * The window of one putt.
 * @param walk lines of the putt
 * @param nodes how many energies to solve: 32 keeps the edges within 0.02 mm on a plane
 * @param firmest largest energy that will be asked of `middleAt`, m^2/s^2
 * @returns undefined when nothing drops from here, or the ground cannot be followed
 */
export function dropWindow(walk: LineWalk, nodes: number, firmest: number): DropWindow | undefined {
  const line = beginning(walk);
  if (line === undefined) return undefined;
  const { roller } = walk.search;
  const rule = captureRule(walk.putt.capture);
  const zero = bearingOf(walk.putt);
  const pass = newPass();
  const frontTip = frontOf(walk, line);
  const topTip = topOf(walk, line, rule.fastestDrop(0));
  if (frontTip === undefined || topTip === undefined || !(topTip.energy > frontTip.energy)) return undefined;
  const front = frontTip.energy;
  const span = topTip.energy - front;
  const energyAt = (t: number): number => front + (span * (1 - Math.cos(Math.PI * t))) / 2;
  const nodeAt = (energy: number): number =>
    Math.acos(Math.max(-1, Math.min(1, 1 - (2 * (energy - front)) / span))) / Math.PI;

  const clearance = (heading: number, energy: number): number =>
    clearanceOf(roller, rule, roller.pass(heading, Math.sqrt(energy), pass));

  /** Edge on one side of a start that drops: bracket from a guess, then a secant kept in its bracket (Illinois). */
  const edgeFrom = (inside: number, guess: number, side: 1 | -1, energy: number): number => {
    let near = inside;
    let far = side * (guess - inside) > 0 ? guess : inside + side * 1e-3;
    let nearGap = Number.NaN;
    let farGap = clearance(far, energy);
    let step = Math.max(Math.abs(far - near) / 20, 1e-5);
    if (farGap > 0) {
      while (farGap > 0) {
        near = far;
        nearGap = farGap;
        far += side * step;
        step *= 2;
        if (step > 3) return near;
        farGap = clearance(far, energy);
      }
    } else {
      while (side * (far - near) > step) {
        const back = far - side * step;
        const gap = clearance(back, energy);
        if (gap > 0) {
          near = back;
          nearGap = gap;
          break;
        }
        far = back;
        farGap = gap;
        step *= 2;
      }
    }
    if (Number.isNaN(nearGap)) nearGap = clearance(near, energy);
    let stuck = 0;
    for (let i = 0; i < 40; i++) {
      let at = (near * farGap - far * nearGap) / (farGap - nearGap);
      // A jump of the clearance outside the rim can pin the secant to an end: then halve.
      if (!(side * (at - near) > 0 && side * (far - at) > 0) || i % 8 === 7) at = (near + far) / 2;
      const gap = clearance(at, energy);
      if (Math.abs(gap) < EDGE_TOLERANCE || Math.abs(far - near) < 1e-9) return at;
      if (gap > 0) {
        near = at;
        nearGap = gap;
        if (stuck > 0) farGap /= 2;
        stuck = 1;
      } else {
        far = at;
        farGap = gap;
        if (stuck < 0) nearGap /= 2;
        stuck = -1;
      }
    }
    return near;
  };

  /**
   * Edge close to a good guess: a secant from the slope at the edge before. Gives up (undefined) as soon as it is not
   * plainly converging; `slopes` keeps the slope for the next edge on this side.
   */
  const slopes = new Float64Array(2);
  const edgeNear = (guess: number, side: 1 | -1, energy: number): number | undefined => {
    const slot = side > 0 ? 1 : 0;
    let slope = slopes[slot];
    if (slope * side >= 0) return undefined;
    let at = guess;
    let gap = clearance(at, energy);
    for (let i = 0; i < 4; i++) {
      if (Math.abs(gap) < EDGE_TOLERANCE) return at;
      const next = at - gap / slope;
      const nextGap = clearance(next, energy);
      if (!(Math.abs(nextGap) < Math.abs(gap) / 2)) return undefined;
      slope = (nextGap - gap) / (next - at);
      if (slope * side >= 0) return undefined;
      slopes[slot] = slope;
      at = next;
      gap = nextGap;
    }
    return Math.abs(gap) < EDGE_TOLERANCE ? at : undefined;
  };

  const lows = new Float64Array(nodes + 1);
  const highs = new Float64Array(nodes + 1);
  lows[0] = highs[0] = foldAngle(frontTip.heading - zero);
  lows[nodes] = highs[nodes] = foldAngle(topTip.heading - zero);
  const seed = Math.max(1, Math.min(nodes - 1, Math.round(nodeAt(line.speed ** 2) * nodes)));
  const solveFrom = (i: number, inside: number, lowGuess: number, highGuess: number): boolean => {
    const energy = energyAt(i / nodes);
    const drop = clearance(zero + inside, energy);
    if (!(drop > 0)) return false;
    lows[i] = edgeFrom(zero + inside, zero + lowGuess, -1, energy) - zero;
    highs[i] = edgeFrom(zero + inside, zero + highGuess, 1, energy) - zero;
    // From the middle, whose clearance is largest, to nothing at the edges.
    slopes[0] = drop / Math.max(inside - lows[i], 1e-6);
    slopes[1] = -drop / Math.max(highs[i] - inside, 1e-6);
    return true;
  };
  /** March from the seed to one end, guessing each interval from the three before it and the tip at the end. */
  const march = (step: 1 | -1): void => {
    const end = step > 0 ? nodes : 0;
    for (let i = seed + step; i !== end; i += step) {
      const done = Math.abs(i - seed);
      const ahead = (values: Float64Array): number => {
        const [a, b, c] = [values[i - step], values[i - 2 * step], values[i - 3 * step]];
        return done >= 3 ? 3 * a - 3 * b + c : done === 2 ? 2 * a - b : a;
      };
      const lowGuess = ahead(lows);
      const highGuess = ahead(highs);
      const energy = energyAt(i / nodes);
      const low = edgeNear(zero + lowGuess, -1, energy);
      const high = low === undefined ? undefined : edgeNear(zero + highGuess, 1, energy);
      if (low !== undefined && high !== undefined && high > low) {
        lows[i] = low - zero;
        highs[i] = high - zero;
        continue;
      }
      const middle = (lows[i - step] + highs[i - step]) / 2;
      const towardsTip = middle + ((lows[end] + highs[end]) / 2 - middle) / Math.abs(end - i + step);
      if (solveFrom(i, (lowGuess + highGuess) / 2, lowGuess, highGuess)) continue;
      if (solveFrom(i, towardsTip, lowGuess, highGuess) || solveFrom(i, middle, lowGuess, highGuess))
        continue;
      lows[i] = highs[i] = towardsTip;
    }
  };
  const lineStart = foldAngle(line.heading - zero);
  if (!solveFrom(seed, lineStart, lineStart, lineStart)) {
    // The node's energy differs from the line's: let the crossing start of that energy stand in.
    const heading = centreHeading(walk.search, line.heading, Math.sqrt(energyAt(seed / nodes)));
    const inside = heading === undefined ? lineStart : foldAngle(heading - zero);
    if (!solveFrom(seed, inside, inside, inside)) return undefined;
  }
  const atSeed = Float64Array.from(slopes);
  march(-1);
  slopes.set(atSeed);
  march(1);

  const beyond = crossingStarts(walk, topTip, firmest, zero);
  const position = { first: 0, w: new Float64Array(4) };
  const placeAt = (energy: number): void => lagrange(nodeAt(energy) * nodes, nodes, position);
  const read = (values: Float64Array): number => {
    const { first, w } = position;
    return (
      w[0] * values[first] + w[1] * values[first + 1] + w[2] * values[first + 2] + w[3] * values[first + 3]
    );
  };
  return {
    front,
    top: topTip.energy,
    cuts: [0, ...SETTLING, 1].map((share) => front + share * span),
    edgesAt(energy, out) {
      if (!(energy > front && energy < topTip.energy)) return false;
      placeAt(energy);
      out[0] = read(lows);
      out[1] = read(highs);
      return out[1] > out[0];
    },
    middleAt(energy) {
      if (energy <= front) return lows[0];
      if (energy >= topTip.energy) return beyond(energy);
      placeAt(energy);
      return (read(lows) + read(highs)) / 2;
    },
  };
}

/** Start that crosses the hole's middle, for balls too firm to drop: linear between nodes in 1/s, the measure of break. */
function crossingStarts(walk: LineWalk, top: Tip, firmest: number, zero: number): (energy: number) => number {
  const energies = [top.energy];
  const starts = [foldAngle(top.heading - zero)];
  let { heading } = top;
  for (const share of firmest > top.energy ? BEYOND : []) {
    const energy = top.energy + share * (firmest - top.energy);
    const found = centreHeading(walk.search, heading, Math.sqrt(energy));
    if (found === undefined) break;
    heading = found;
    energies.push(energy);
    starts.push(foldAngle(heading - zero));
  }
  return (energy) => {
    let i = 1;
    while (i < energies.length - 1 && energies[i] < energy) i++;
    if (i >= energies.length) return starts[starts.length - 1];
    const share = Math.min(1, (1 / energies[i - 1] - 1 / energy) / (1 / energies[i - 1] - 1 / energies[i]));
    return starts[i - 1] + share * (starts[i] - starts[i - 1]);
  };
}

/** Weights of the cubic through the four nodes about `at`, 0 <= at <= last; last >= 3. */
export function lagrange(at: number, last: number, out: { first: number; w: Float64Array }): void {
  const first = Math.max(0, Math.min(last - 3, Math.floor(at) - 1));
  const u = at - first;
  out.first = first;
  out.w[0] = (-(u - 1) * (u - 2) * (u - 3)) / 6;
  out.w[1] = (u * (u - 2) * (u - 3)) / 2;
  out.w[2] = (-u * (u - 1) * (u - 3)) / 2;
  out.w[3] = (u * (u - 1) * (u - 2)) / 6;
}
