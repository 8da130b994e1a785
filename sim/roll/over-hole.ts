/**
 * The way of a single ball over the hole, for the eye: a lip-out round the rim, by direct calculation (hole/rim-motion.ts).
 * Answers for: turning that calculation to the green. Leaves out: whether it drops (hole/), the roll before and after.
 */
import { HOLE_RADIUS } from '../constants.ts';
import type { LeavingBall } from '../hole/leave.ts';
import { traceRim } from '../hole/rim-motion.ts';
import { gradientAt } from '../surface/sample.ts';
import type { Point, Putt } from '../types.ts';
import type { Pass } from './roller.ts';

export interface WayOverHole {
  /** x, y, t triples (m, m, s); time from the crossing of the rim circle. */
  readonly path: Float64Array;
  readonly leaving: LeavingBall;
}

/** Corners nearer in time than this are left out, s: the calculation takes hundreds of steps. */
const BETWEEN_CORNERS = 0.004;

/**
 * @param pass of a ball that lips out
 * @param leaving how the rule says it leaves: taken where the direct calculation, near the edge of dropping, says otherwise
 */
export function wayOverHole(pass: Pass, { surface, hole }: Putt, leaving: LeavingBall): WayOverHole {
  const gradient = gradientAt(surface, hole) ?? { x: 0, y: 0 };
  const { missHeading: heading, rimSpeed: speed, rimOffset: offset } = pass;
  const alongX = Math.cos(heading);
  const alongY = Math.sin(heading);
  const onGreen = (x: number, y: number): Point => ({
    x: hole.x + x * alongX - y * alongY,
    y: hole.y + x * alongY + y * alongX,
  });
  const slope = Math.hypot(gradient.x, gradient.y);
  const downhill = Math.atan2(-gradient.y, -gradient.x) - heading;
  const { outcome, path } = traceRim({ speed, offset, slope, downhill });
  if (outcome.status !== 'out') {
    const entry = onGreen(-Math.sqrt(Math.max(0, HOLE_RADIUS ** 2 - offset ** 2)), -offset);
    const [x, y] = [hole.x + leaving.x, hole.y + leaving.y];
    const time = Math.hypot(x - entry.x, y - entry.y) / Math.max(speed, leaving.speed);
    return { path: Float64Array.of(entry.x, entry.y, 0, x, y, time), leaving };
  }
  const corners: number[] = [];
  let told = Number.NEGATIVE_INFINITY;
  const corner = (x: number, y: number, time: number): void => {
    const place = onGreen(x, y);
    corners.push(place.x, place.y, time);
    told = time;
  };
  for (let i = 0; i < path.length; i += 4)
    if (path[i + 3] - told >= BETWEEN_CORNERS && path[i + 3] < outcome.time)
      corner(path[i], path[i + 1], path[i + 3]);
  corner(outcome.x, outcome.y, outcome.time);
  const end = onGreen(outcome.x, outcome.y);
  return {
    path: Float64Array.from(corners),
    leaving: {
      x: end.x - hole.x,
      y: end.y - hole.y,
      heading: heading + outcome.turn,
      speed: outcome.speed,
    },
  };
}
