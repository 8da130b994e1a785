/**
 * A ball rolled the plain way: Runge & Kutta's fourth-order method with a fixed step in time. The oracle's wheels.
 *
 * Answers for: where a ball comes to rest with the hole covered, how it passes the hole, how it meets the rim. Shares no
 * code with the engine but constants, types and, for fields only, `sampleSurface`. Leaves out: speed, cleverness.
 * Between two steps the path is taken as straight: on 4% at 8 ms it is 3 micrometres from that.
 */
import { GRAVITY, HOLE_RADIUS, LONGEST_ROLL, ROLLING_FACTOR, STIMP_SPEED } from '../../sim/constants.ts';
import { sampleSurface } from '../../sim/surface/sample.ts';
import type { FieldSurface, HeightSample, Point, Putt, Surface } from '../../sim/types.ts';

/** The plain step, s. */
export const PLAIN_STEP = 0.001;
/** Eight times longer, s, for the many rolls of stored values and live checks: moves no rest by 0.2 mm, as odds.test says. */
export const LONG_STEP = 0.008;

/** Uphill gradient (m per m) at x, y into out[0], out[1]; false off the surface. */
export type Gradient = (x: number, y: number, out: Float64Array) => boolean;

const evenOf = (surface: Surface): Point | undefined =>
  surface.kind === 'plane'
    ? {
        x: -surface.slope * Math.cos(surface.downhill),
        y: -surface.slope * Math.sin(surface.downhill),
      }
    : undefined;

export function gradientOf(surface: Surface): Gradient {
  if (surface.kind === 'field') return tabulated(surface);
  const even = evenOf(surface) as Point;
  return (_x, _y, out) => {
    out[0] = even.x;
    out[1] = even.y;
    return true;
  };
}

/** Nodes of the table of a field's gradient, m. The shortest swell of a generated green is 5 m long, slopes on it below 1%
 *  change by less than 1e-6 between what is on the straight line from node to node and what is true. */
const TABLE_SPACING = 0.05;

/** `sampleSurface` once on a fine grid, straight between its nodes: ten times faster than asking it at every step. */
function tabulated(surface: FieldSurface): Gradient {
  const { origin, spacing, columns, rows } = surface;
  const width = (columns - 1) * spacing;
  const depth = (rows - 1) * spacing;
  const across = Math.ceil(width / TABLE_SPACING);
  const along = Math.ceil(depth / TABLE_SPACING);
  const stride = across + 1;
  const table = new Float64Array(2 * stride * (along + 1));
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  for (let j = 0; j <= along; j++)
    for (let i = 0; i <= across; i++) {
      // A hair inside, so that rounding does not put the last node off the surface.
      const x = origin.x + Math.min((i / across) * width, width - 1e-9);
      const y = origin.y + Math.min((j / along) * depth, depth - 1e-9);
      if (!sampleSurface(surface, x, y, sample)) throw new Error(`no ground at ${x}, ${y}`);
      table[2 * (j * stride + i)] = sample.gradientX;
      table[2 * (j * stride + i) + 1] = sample.gradientY;
    }
  return (x, y, out) => {
    const u = ((x - origin.x) / width) * across;
    const v = ((y - origin.y) / depth) * along;
    if (!(u >= 0 && v >= 0 && u < across && v < along)) return false;
    const i = Math.floor(u);
    const j = Math.floor(v);
    const fx = u - i;
    const fy = v - j;
    const at = 2 * (j * stride + i);
    const above = at + 2 * stride;
    const lower = (1 - fx) * (1 - fy);
    const right = fx * (1 - fy);
    const upper = (1 - fx) * fy;
    const corner = fx * fy;
    out[0] = lower * table[at] + right * table[at + 2] + upper * table[above] + corner * table[above + 2];
    out[1] =
      lower * table[at + 1] + right * table[at + 3] + upper * table[above + 1] + corner * table[above + 3];
    return true;
  };
}

/**
 * What stays the same from roll to roll: the true ground (`settingOf`) or the ground as a player sees it (oracle-seen.ts).
 * The ball rolls on the gradient `share` times the ground's, plus the tilt.
 */
export interface Setting {
  readonly gradient: Gradient;
  /** The gradient of a plane, the same everywhere; undefined on a field. */
  readonly even: Point | undefined;
  /** 1 on the true ground. */
  readonly share: number;
  /** m per m, uphill; 0 on the true ground. */
  readonly tiltX: number;
  readonly tiltY: number;
  /** a_f, m/s^2. */
  readonly friction: number;
  readonly hole: Point;
  /** s. */
  readonly step: number;
  /** Share of gravity at work, 1 for a true roll; below 1 on the way from level ground (oracle-line.ts). */
  readonly pull: number;
}

export const settingOf = (putt: Putt, step: number): Setting => ({
  gradient: gradientOf(putt.surface),
  even: evenOf(putt.surface),
  share: 1,
  tiltX: 0,
  tiltY: 0,
  friction: STIMP_SPEED ** 2 / (2 * putt.greenSpeed),
  hole: putt.hole,
  step,
  pull: 1,
});

export interface PlainRoll {
  status: 'atRest' | 'dropped' | 'lost';
  x: number;
  y: number;
  /** Signed offset at the first closest pass of the hole, m, positive: hole centre to the left; of the last direction when the ball stopped before. */
  offset: number;
  /** Did it get as far as a closest pass? */
  passed: boolean;
  /** Did it touch the hole and leave it again? */
  lipped: boolean;
}

export const newPlainRoll = (): PlainRoll => ({
  status: 'lost',
  x: 0,
  y: 0,
  offset: 0,
  passed: false,
  lipped: false,
});

/** How a ball leaves the hole again, along the line it came on: place, m, turn to the left, radians, speed, m/s. */
export interface Leaving {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly speed: number;
}

/** What becomes of a ball that meets the rim: it drops, rolls on as if nothing were there, or leaves. speed m/s; offset m. */
export type Capture = (speed: number, offset: number) => boolean | Leaving;

const COVERED: Capture = () => false;
/** A ball slower than this many steps' braking is finished on a straight line: at 4 ms that is under 0.1 mm. */
const LAST_STEPS = 4;
/** Below this speed, m/s, the direction of a ball that will stop short is no longer taken down: it hooks downhill. */
const CREEP = 0.05;

const g = new Float64Array(2);
/** Place and velocity x, y, vx, vy before a step, and after it. In arrays: numbers passed as arguments are boxed one by one. */
const before = new Float64Array(4);
const after = new Float64Array(4);

/** Gradient of the ground rolled on into `g`; false off the surface. */
function slopeAt(setting: Setting, x: number, y: number): boolean {
  if (!setting.gradient(x, y, g)) return false;
  g[0] = setting.share * g[0] + setting.tiltX;
  g[1] = setting.share * g[1] + setting.tiltY;
  return true;
}

/** One step of Runge & Kutta from `before` to `after`; false off the surface. */
function advance(setting: Setting): boolean {
  const { step, friction, even } = setting;
  const x = before[0];
  const y = before[1];
  const vx = before[2];
  const vy = before[3];
  const half = step / 2;
  const pull = setting.pull * ROLLING_FACTOR * GRAVITY;
  // A plane's gradient is asked for once: each asking costs as much as the rest of a stage.
  if (!slopeAt(setting, x, y)) return false;
  let px = pull * g[0];
  let py = pull * g[1];
  let brake = friction / Math.sqrt(vx * vx + vy * vy);
  const ax1 = -brake * vx - px;
  const ay1 = -brake * vy - py;
  const vx2 = vx + half * ax1;
  const vy2 = vy + half * ay1;
  if (even === undefined) {
    if (!slopeAt(setting, x + half * vx, y + half * vy)) return false;
    px = pull * g[0];
    py = pull * g[1];
  }
  brake = friction / Math.sqrt(vx2 * vx2 + vy2 * vy2);
  const ax2 = -brake * vx2 - px;
  const ay2 = -brake * vy2 - py;
  const vx3 = vx + half * ax2;
  const vy3 = vy + half * ay2;
  if (even === undefined) {
    if (!slopeAt(setting, x + half * vx2, y + half * vy2)) return false;
    px = pull * g[0];
    py = pull * g[1];
  }
  brake = friction / Math.sqrt(vx3 * vx3 + vy3 * vy3);
  const ax3 = -brake * vx3 - px;
  const ay3 = -brake * vy3 - py;
  const vx4 = vx + step * ax3;
  const vy4 = vy + step * ay3;
  if (even === undefined) {
    if (!slopeAt(setting, x + step * vx3, y + step * vy3)) return false;
    px = pull * g[0];
    py = pull * g[1];
  }
  brake = friction / Math.sqrt(vx4 * vx4 + vy4 * vy4);
  after[0] = x + (step / 6) * (vx + 2 * vx2 + 2 * vx3 + vx4);
  after[1] = y + (step / 6) * (vy + 2 * vy2 + 2 * vy3 + vy4);
  after[2] = vx + (step / 6) * (ax1 + 2 * ax2 + 2 * ax3 - brake * vx4 - px);
  after[3] = vy + (step / 6) * (ay1 + 2 * ay2 + 2 * ay3 - brake * vy4 - py);
  return true;
}

/**
 * Roll one ball.
 * @param heading radians from +x
 * @param speed launch speed, m/s
 * @param capture asked once, as the ball's centre first crosses the rim circle; default: the hole is covered
 */
export function rollPlain(
  setting: Setting,
  ball: Point,
  heading: number,
  speed: number,
  out: PlainRoll,
  capture: Capture = COVERED,
): PlainRoll {
  const { hole, step, friction } = setting;
  const covered = capture === COVERED;
  let x = ball.x;
  let y = ball.y;
  let vx = speed * Math.cos(heading);
  let vy = speed * Math.sin(heading);
  let lastVx = vx;
  let lastVy = vy;
  let met = false;
  let along = -1;
  out.passed = false;
  out.lipped = false;
  out.status = 'lost';
  const slow = LAST_STEPS * friction * step;
  const steps = LONGEST_ROLL / step;
  for (let i = 0; i < steps && vx * vx + vy * vy > slow * slow; i++) {
    before[0] = x;
    before[1] = y;
    before[2] = vx;
    before[3] = vy;
    if (!advance(setting)) return out;
    const nextX = after[0];
    const nextY = after[1];
    const nextVx = after[2];
    const nextVy = after[3];
    const nextAlong = (nextX - hole.x) * nextVx + (nextY - hole.y) * nextVy;
    if (!out.passed && along < 0 && nextAlong >= 0) {
      const t = along / (along - nextAlong);
      const px = x + t * (nextX - x);
      const py = y + t * (nextY - y);
      const ux = vx + t * (nextVx - vx);
      const uy = vy + t * (nextVy - vy);
      out.passed = true;
      out.offset = (ux * (hole.y - py) - uy * (hole.x - px)) / Math.sqrt(ux * ux + uy * uy);
    }
    along = nextAlong;
    if (!covered && !met) {
      const t = firstInside(x - hole.x, y - hole.y, nextX - x, nextY - y);
      if (t >= 0) {
        met = true;
        const px = x + t * (nextX - x);
        const py = y + t * (nextY - y);
        const ux = vx + t * (nextVx - vx);
        const uy = vy + t * (nextVy - vy);
        const v = Math.sqrt(ux * ux + uy * uy);
        const offset = (ux * (hole.y - py) - uy * (hole.x - px)) / v;
        const becomes = capture(v, offset);
        if (becomes === true) {
          out.status = 'dropped';
          return out;
        }
        if (becomes !== false) {
          // Its roll begins anew where it leaves; it passed the hole on the side it met it, and is not judged again.
          out.lipped = true;
          if (!out.passed) {
            out.passed = true;
            out.offset = offset;
          }
          const [cx, sx] = [ux / v, uy / v];
          x = hole.x + becomes.x * cx - becomes.y * sx;
          y = hole.y + becomes.x * sx + becomes.y * cx;
          const rise = slopeAt(setting, hole.x, hole.y) ? g[0] * (x - px) + g[1] * (y - py) : 0;
          const pace = Math.sqrt(Math.max(0, becomes.speed ** 2 - 2 * ROLLING_FACTOR * GRAVITY * rise));
          vx = pace * (cx * Math.cos(becomes.turn) - sx * Math.sin(becomes.turn));
          vy = pace * (sx * Math.cos(becomes.turn) + cx * Math.sin(becomes.turn));
          continue;
        }
      }
    }
    x = nextX;
    y = nextY;
    vx = nextVx;
    vy = nextVy;
    if (vx * vx + vy * vy > CREEP * CREEP) {
      lastVx = vx;
      lastVy = vy;
    }
  }
  const v = Math.sqrt(vx * vx + vy * vy);
  if (v > slow) return out;
  if (v > 0 && slopeAt(setting, x, y)) {
    const uphill = (g[0] * vx + g[1] * vy) / v;
    const braking = friction + setting.pull * ROLLING_FACTOR * GRAVITY * uphill;
    // Ground that does not hold the ball: it would creep on.
    if (braking <= 0) return out;
    x += (vx * v) / (2 * braking);
    y += (vy * v) / (2 * braking);
  }
  out.x = x;
  out.y = y;
  out.status = !covered && (x - hole.x) ** 2 + (y - hole.y) ** 2 < HOLE_RADIUS ** 2 ? 'dropped' : 'atRest';
  if (!out.passed)
    out.offset = (lastVx * (hole.y - y) - lastVy * (hole.x - x)) / Math.sqrt(lastVx ** 2 + lastVy ** 2);
  return out;
}

/** Share of a straight piece (from px, py by dx, dy, seen from the hole) at which it enters the rim circle; -1: it does not. */
function firstInside(px: number, py: number, dx: number, dy: number): number {
  const a = dx * dx + dy * dy;
  const far = HOLE_RADIUS * HOLE_RADIUS;
  const d2 = px * px + py * py;
  // Cannot be reached within this piece.
  if (d2 > 2 * (far + a)) return -1;
  const b = px * dx + py * dy;
  const root = b * b - a * (d2 - far);
  if (root < 0 || b > 0) return -1;
  const t = (-b - Math.sqrt(root)) / a;
  return t >= 0 && t <= 1 ? t : -1;
}
