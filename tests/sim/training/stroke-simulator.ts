/**
 * Strokes one by one, to hold expected scores against: a sight and errors drawn, the line found anew on the plane as seen, each
 * ball rolled for good on the true one and judged by where its path went (MODEL.md section 3).
 * It shares lines and rolls with the engine, which have their own oracles (tests/sim/read, tests/sim/roll), and nothing of the odds,
 * the gates, the zones or the tallies.
 */
import { BALL_RADIUS, GRAVITY, ROLLING_FACTOR, STIMP_SPEED } from '../../../sim/constants.ts';
import { seededRandom } from '../../../sim/random.ts';
import { readPutt } from '../../../sim/read/line.ts';
import { planeLines } from '../../../sim/read/plane-line.ts';
import { rollBall } from '../../../sim/roll/roll.ts';
import { planeSurface } from '../../../sim/surface/plane.ts';
import type { Line, Player, Point, Putt } from '../../../sim/types.ts';

export interface Stroke {
  readonly holed: boolean;
  /** Rest relative to the hole or mark, along the line ball to hole and to its left, m. */
  readonly past: number;
  readonly aside: number;
  readonly path: Float64Array;
}

/** What a player sees wrongly on one putt, or on the balls of a station that share a read. */
export interface Sight {
  /** Added to the gradient seen, m per m. */
  readonly tilt: Point;
  /** Green speed seen, share of the true one. */
  readonly speed: number;
}

export interface Simulator {
  /** A sight drawn by this player's errors. */
  see(): Sight;
  /** @param sight left out: drawn */
  strike(sight?: Sight): Stroke;
  /** On the true ground. */
  readonly line: Line;
}

/** @param covered a mark: every ball rolls on */
export function simulator(
  putt: Putt,
  { pace, player, seed, covered = false }: { pace: number; player: Player; seed: string; covered?: boolean },
): Simulator {
  const { surface } = putt;
  if (surface.kind !== 'plane' || putt.skid === true)
    throw new Error('expected a plane and no skid: lines as seen are found for those alone');
  const line = readPutt(putt, pace);
  if (line.status !== 'ok') throw new Error(line.reason);
  const random = seededRandom(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const length = Math.hypot(putt.hole.x - putt.ball.x, putt.hole.y - putt.ball.y);
  const toward = { x: (putt.hole.x - putt.ball.x) / length, y: (putt.hole.y - putt.ball.y) / length };
  const see = (): Sight => ({
    tilt: { x: player.slopeSd * normal(), y: player.slopeSd * normal() },
    speed: Math.max(0.2, 1 + player.speedSd * normal()),
  });
  const zero = Math.atan2(toward.y, toward.x);
  /** Start from the ball-to-hole line, and launch speed, meant on the plane as seen. */
  const meant = ({ tilt, speed }: Sight): { start: number; speed: number } => {
    const greenSpeed = speed * putt.greenSpeed;
    const uphill = {
      x: -(1 + player.readBias) * surface.slope * Math.cos(surface.downhill) + tilt.x,
      y: -(1 + player.readBias) * surface.slope * Math.sin(surface.downhill) + tilt.y,
    };
    // Never seen steeper than 0.9 of what holds a ball: a_f / (5/7 g).
    const steepest = (0.9 * STIMP_SPEED ** 2) / (2 * greenSpeed * ROLLING_FACTOR * GRAVITY);
    const seen = planeSurface({
      slope: Math.min(Math.hypot(uphill.x, uphill.y), steepest),
      downhill: Math.atan2(-uphill.y, -uphill.x),
    });
    const found = planeLines({ ...putt, surface: seen, greenSpeed })?.lineAt(pace);
    if (found === undefined) throw new Error(`no line as seen for a pace of ${pace}`);
    const start = found.heading - zero;
    return { start: Math.atan2(Math.sin(start), Math.cos(start)), speed: found.speed };
  };
  return {
    line,
    see,
    strike(sight = see()) {
      const { start, speed } = meant(sight);
      const share = Math.max(1e-6, 1 + player.paceBias + player.paceSd * normal());
      const roll = rollBall(putt, start + player.lineSd * normal(), speed * Math.sqrt(share), {
        covered,
      });
      const rest = roll.rest ?? { x: Number.NaN, y: Number.NaN };
      const x = rest.x - putt.hole.x;
      const y = rest.y - putt.hole.y;
      return {
        holed: roll.status === 'holed',
        past: x * toward.x + y * toward.y,
        aside: toward.x * y - toward.y * x,
        path: roll.path,
      };
    },
  };
}

/** Where a path is so far from its first point, and which way it goes there. */
export function gateOn(path: Float64Array, distance: number): { middle: Point; along: Point } {
  for (let i = 3; i < path.length; i += 3) {
    const here = Math.hypot(path[i] - path[0], path[i + 1] - path[1]);
    if (here < distance) continue;
    const before = Math.hypot(path[i - 3] - path[0], path[i - 2] - path[1]);
    const share = (distance - before) / (here - before);
    const step = { x: path[i] - path[i - 3], y: path[i + 1] - path[i - 2] };
    const size = Math.hypot(step.x, step.y);
    return {
      middle: { x: path[i - 3] + share * step.x, y: path[i - 2] + share * step.y },
      along: { x: step.x / size, y: step.y / size },
    };
  }
  throw new Error('the path ends before the gate');
}

/** Does the ball's path cross the line between the posts with its radius to spare? */
export function throughGate(
  path: Float64Array,
  { middle, along }: ReturnType<typeof gateOn>,
  width: number,
): boolean {
  const before = (i: number): number => (path[i] - middle.x) * along.x + (path[i + 1] - middle.y) * along.y;
  const aside = (i: number): number => (path[i + 1] - middle.y) * along.x - (path[i] - middle.x) * along.y;
  for (let i = 3; i < path.length; i += 3) {
    if (before(i) < 0) continue;
    const share = before(i - 3) / (before(i - 3) - before(i));
    return Math.abs(aside(i - 3) + share * (aside(i) - aside(i - 3))) <= width / 2 - BALL_RADIUS;
  }
  return false;
}
