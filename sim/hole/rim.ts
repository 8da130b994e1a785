/**
 * The capture rule of a rigid ball on the rim: when it drops, and how it leaves when it does not.
 *
 * Answers for: the rule of a level green, from the table, and the first-order effect of a tilt on a ball that leaves.
 * Leaves out: the effect of a tilt on what drops (about 1% of the speed at 3%, MODEL.md section 2); the small island of very
 * fast balls near dead centre that bounce off the back and drop.
 */
import { GRAVITY, HOLE_RADIUS, ROLLING_FACTOR } from '../constants.ts';
import { RIM_BOUNDARY, RIM_BOUNDARY_UNIT, RIM_LEAVE_UNITS, RIM_LEAVES } from './rim-data.ts';
import { makeRimTable, type TableLeave, VALUES } from './rim-table.ts';
import type { CaptureRule, LipOut } from './rule.ts';

const table = makeRimTable(
  Float64Array.from(RIM_BOUNDARY, (value) => value * RIM_BOUNDARY_UNIT),
  Float64Array.from(RIM_LEAVES, (value, i) => value * RIM_LEAVE_UNITS[i % VALUES]),
);

/** Below notice: a turn of 0.1 degrees, 2 mm at a metre, and no more than a thousandth of the speed lost. */
const NOTICED_TURN = 0.002;
const NOTICED_LOSS = 0.001;

const found: TableLeave = { turn: 0, bearing: 0, logDistance: 0, speedShare: 0 };

/** The rim rule; its `leave` allocates nothing. A ball no faster than the fastest drop leaves as one just faster. */
export const rimRule: CaptureRule = {
  name: 'rim',
  fastestDrop: table.fastestDrop,
  widestDrop: table.widestDrop,
  leave(speed: number, offset: number, out: LipOut): boolean {
    if (!(Math.abs(offset) < HOLE_RADIUS) || !(speed > 0)) return false;
    table.leave(speed, offset, found);
    const { turn, bearing, logDistance, speedShare } = found;
    if (Math.abs(turn) < NOTICED_TURN && 1 - speedShare < NOTICED_LOSS) return false;
    // The table holds the hole centre to the left; the other side is its mirror image.
    const side = offset < 0 ? -1 : 1;
    const distance = HOLE_RADIUS * Math.exp(logDistance);
    out.x = distance * Math.cos(turn + bearing);
    out.y = side * distance * Math.sin(turn + bearing);
    out.turn = side * turn;
    out.speed = speedShare * speed;
    return true;
  },
};

/**
 * Corrects a leave for a tilted green: rolling, a ball gains (10/7) g times the height it loses between entering the rim
 * circle and leaving it, in the square of its speed (derived; MODEL.md says how near that comes).
 * @param offset b of the arrival, m
 * @param gradient rise of the green per metre along the line of arrival (x) and to its left (y)
 * @param out changed in place; speed 0 when it could not climb so far
 */
export function tiltedLeave(
  offset: number,
  gradient: { readonly x: number; readonly y: number },
  out: LipOut,
): void {
  const entryX = -Math.sqrt(Math.max(0, HOLE_RADIUS ** 2 - offset ** 2));
  const climbed = gradient.x * (out.x - entryX) + gradient.y * (out.y + offset);
  out.speed = Math.sqrt(Math.max(0, out.speed ** 2 - 2 * ROLLING_FACTOR * GRAVITY * climbed));
}
