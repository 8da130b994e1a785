/**
 * The line on a plane for a ball that skids first: no rolls.
 *
 * As in plane-line.ts: the whole path, slide and roll, keeps its shape and grows as v^2. So a line is named by how far
 * along its path the hole lies: at each progress the start angle is the one whose path points to the hole there, then
 * v^2 = L / |P| and the pace is L |D - P| / |P|, P and D being place and rest for each unit of v^2 (roll/slide.ts). A hole
 * may lie on the slide, when a short putt is struck firmly. Both searches are secants kept in a bracket.
 * Leaves out: planes too steep to hold a ball, where nothing rests.
 */
import { steepnessOf } from '../roll/plane.ts';
import { skidShape } from '../roll/slide.ts';
import type { PlaneSurface, Putt } from '../types.ts';
import type { CentreLine } from './centre.ts';

/** Headings are solved to this, radians. */
const ANGLE_TOLERANCE = 1e-13;
/** Relative error left in pace. */
const PACE_TOLERANCE = 1e-12;
const MOST_STEPS = 100;
/** First step of a secant. */
const NUDGE = 1e-4;

export interface SkidLine extends CentreLine {
  /** Angles tried. */
  rolls: number;
}

export interface SkidLines {
  /** The line for a pace, m past the covered hole, > 0. */
  lineAt(pace: number): SkidLine | undefined;
}

interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly guess: number;
  readonly tolerance: number;
}

/** Root of a rising function. */
function rootOf(f: (at: number) => number, { low, high, guess, tolerance }: Bracket): number {
  let from = low;
  let to = high;
  let at = guess;
  let last = Number.NaN;
  let lastValue = Number.NaN;
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = f(at);
    if (Math.abs(value) < tolerance) return at;
    if (value < 0) from = at;
    else to = at;
    let next = Number.isNaN(last)
      ? at - Math.sign(value) * NUDGE
      : at - (value * (at - last)) / (value - lastValue);
    if (!(next > from && next < to)) next = to === Number.POSITIVE_INFINITY ? 2 * at + 1 : (from + to) / 2;
    if (next === at) return at;
    last = at;
    lastValue = value;
    at = next;
  }
  return at;
}

/** Lines of one putt; undefined when the plane does not hold a ball. */
export function skidLines({
  surface,
  greenSpeed,
  ball,
  hole,
}: Putt & { readonly surface: PlaneSurface }): SkidLines | undefined {
  const kappa = steepnessOf(surface, greenSpeed);
  if (!(kappa < 1)) return undefined;
  const across =
    (hole.y - ball.y) * Math.cos(surface.downhill) - (hole.x - ball.x) * Math.sin(surface.downhill);
  const down =
    (hole.x - ball.x) * Math.cos(surface.downhill) + (hole.y - ball.y) * Math.sin(surface.downhill);
  const length = Math.hypot(across, down);
  // Mirrored so that the hole lies at 0 to pi from downhill.
  const side = across < 0 ? -1 : 1;
  const toHole = Math.atan2(Math.abs(across), down);
  const shape = skidShape({ ...surface, downhill: 0 }, greenSpeed);

  let tried = 0;
  let angle = toHole;
  /** Turn the start until the path points to the hole at this progress. */
  const aimAt = (progress: number): void => {
    const off = (alpha: number): number => {
      tried++;
      shape.aim(alpha);
      shape.look(progress);
      return Math.atan2(shape.y, shape.x) - toHole;
    };
    angle = rootOf(off, { low: 0, high: Math.PI, guess: angle, tolerance: ANGLE_TOLERANCE });
  };
  const gone = (): number => Math.hypot(shape.x, shape.y);
  const left = (): number => Math.hypot(shape.restX - shape.x, shape.restY - shape.y);
  const lineHere = (): SkidLine => ({
    heading: surface.downhill + side * angle,
    speed: Math.sqrt(length / gone()),
    pace: (length * left()) / gone(),
    rolls: tried,
  });

  const lineAt = (pace: number): SkidLine | undefined => {
    if (!(pace > 0)) return undefined;
    tried = 0;
    angle = toHole;
    // Nearly straight in the progress of a roll, as in plane-line.ts.
    const wanted = Math.log1p(length / pace);
    const over = (progress: number): number => {
      aimAt(progress);
      return Math.log1p(gone() / left()) - wanted;
    };
    const atRolling = over(1);
    const rise = 2 - 2 * kappa * Math.cos(toHole);
    const where =
      atRolling < 0
        ? { low: 1, high: Number.POSITIVE_INFINITY, guess: 1 - atRolling / rise }
        : { low: 0, high: 1, guess: 1 - atRolling / (atRolling + wanted) };
    rootOf(over, { ...where, tolerance: PACE_TOLERANCE });
    return lineHere();
  };

  return { lineAt };
}
