/**
 * How often a ball rolls through a gate on its line.
 *
 * Answers for: the share that passes every gate clear of its posts. Leaves out: balls that touch a post and go through.
 * A gate stands square across the meant line where that is so far from the ball. For each pace the starts that pass it are those
 * between two roots, so the share of starts is exact; paces are summed over equally spaced normal points. On level
 * ground it is 2 Phi(c / (d lineSd)) - 1, c the room on either side, half the width less the ball's radius (derived; d sin for d tan).
 */
import { BALL_RADIUS } from '../constants.ts';
import { normalCdf, normalPoints } from '../maths/normal.ts';
import { LineWalk } from '../read/line.ts';
import { bearingOf, rollerFor, startOf } from '../roll/roll.ts';
import { newPass, type Roller } from '../roll/roller.ts';
import type { NoLine, Player, Point, Putt } from '../types.ts';
import { newStarts, Strokes, UNSEEN } from './stroke-errors.ts';

export interface Gate {
  /** Between the posts, m; above a ball's width. */
  readonly widthM: number;
  /** Ball to gate, m. */
  readonly fromBallM: number;
}

/** A start that passes at so much aside is found to a thousandth of this, m. */
const CLOSE = 1e-5;
const MOST_STEPS = 12;
/** A player without a start error still needs a bell to be asked for, radians. */
const LEAST_SD = 1e-9;

const pass = newPass();

/** How far right of the gate's middle the ball passes, m; undefined: it stops before. */
function passesAt(roller: Roller, heading: number, speed: number): number | undefined {
  roller.pass(heading, speed, pass);
  return pass.missSpeed > 0 ? pass.miss : undefined;
}

/** The heading near `guess` at which the ball passes `aside` right of the middle; undefined: it does not get there. */
function headingAt(
  roller: Roller,
  aside: number,
  { from, guess, speed }: { readonly from: number; readonly guess: number; readonly speed: number },
): number | undefined {
  let [first, second] = [from, guess];
  let before = passesAt(roller, first, speed);
  for (let step = 0; step < MOST_STEPS; step++) {
    const now = passesAt(roller, second, speed);
    if (before === undefined || now === undefined) return undefined;
    if (Math.abs(now - aside) < CLOSE / 1000 || now === before) return second;
    const next = second + ((aside - now) * (second - first)) / (now - before);
    [first, before, second] = [second, now, next];
  }
  return second;
}

/** Where a path (x, y, t triples) is so far from the ball. */
function pointOn(path: Float64Array, ball: Point, distance: number): Point | undefined {
  let last = 0;
  for (let i = 3; i < path.length; i += 3) {
    const here = Math.hypot(path[i] - ball.x, path[i + 1] - ball.y);
    if (here >= distance) {
      const share = (distance - last) / (here - last);
      return {
        x: path[i - 3] + share * (path[i] - path[i - 3]),
        y: path[i - 2] + share * (path[i + 1] - path[i - 2]),
      };
    }
    last = here;
  }
  return undefined;
}

/**
 * @param pace m past the covered hole, above 0: the pace meant, for whose line the gates stand
 * @returns share of putts through every gate, 0 to 1; NoLine when this pace has no line
 * @throws RangeError for a gate that no ball fits through, or that stands beyond the roll
 */
export function gateShare(putt: Putt, pace: number, player: Player, gates: readonly Gate[]): number | NoLine {
  const walk = new LineWalk(putt);
  const line = walk.lineAt(pace);
  if (line === undefined) return { status: 'noLine', reason: walk.whyNot(pace) };
  const path = rollerFor(putt).trace(line.heading, line.speed);
  const posts = gates.map(({ widthM, fromBallM }) => {
    const middle = pointOn(path, putt.ball, fromBallM);
    const room = widthM / 2 - BALL_RADIUS;
    if (middle === undefined || room <= 0)
      throw new RangeError(
        `Got a gate ${widthM} m wide, ${fromBallM} m from the ball; expected one wider than ${2 * BALL_RADIUS} m that the ball reaches. Widen it or put it nearer.`,
      );
    return { roller: rollerFor({ ...putt, hole: middle }), room, fromBallM };
  });
  const strokes = new Strokes(putt, player).at(pace);
  if (strokes === undefined) return { status: 'noLine', reason: UNSEEN };
  const zero = bearingOf(putt);
  const given = newStarts(strokes.curves);
  let passed = 0;
  for (const { value: score, share } of normalPoints(1)) {
    const energy = strokes.energyAt(score);
    strokes.startsAt(energy, given);
    const speed = Math.sqrt(energy);
    let right = Number.NEGATIVE_INFINITY;
    let left = Number.POSITIVE_INFINITY;
    for (const { roller, room, fromBallM } of posts) {
      const turn = room / fromBallM;
      const edge = (side: 1 | -1): number | undefined =>
        headingAt(roller, side * room, {
          from: line.heading,
          guess: line.heading - side * turn,
          speed,
        });
      const [rightmost, leftmost] = [edge(1), edge(-1)];
      // It stops before the gate.
      if (rightmost === undefined || leftmost === undefined) {
        left = Number.NEGATIVE_INFINITY;
        continue;
      }
      right = Math.max(right, rightmost - zero);
      left = Math.min(left, leftmost - zero);
    }
    if (!(left > right)) continue;
    // Counted near the line, whichever way round the bearing was folded.
    const fold = line.heading - zero - startOf(putt, line.heading);
    for (let k = 0; k < strokes.curves; k++) {
      const middle = fold + given.means[k];
      const sd = Math.max(given.sds[k], LEAST_SD);
      passed +=
        share * given.shares[k] * (normalCdf((left - middle) / sd) - normalCdf((right - middle) / sd));
    }
  }
  return passed;
}
