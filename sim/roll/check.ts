/**
 * Is this a putt the engine can answer for? Answers for: one sentence that says what was got, what was expected and how to
 * mend it. Leaves out: the shape of a request (src/cli), text the person typed (src/text).
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { HeightSample, Point, Putt } from '../types.ts';
import { metresToFeet } from '../units.ts';
import { steepestHold } from './plane.ts';

/** Green speeds that exist: mown greens read 4.5 to 15 ft; slower is carpet or fringe. */
const SLOWEST_FT = 3;
const FASTEST_FT = 20;
/** Longest putt worth a question, m (about 130 ft). */
const LONGEST = 40;

const say = (got: string, expected: string, mend: string): string =>
  `Got ${got}; expected ${expected}. ${mend}`;
const place = ({ x, y }: Point): string => `(${x}, ${y})`;
const finite = ({ x, y }: Point): boolean => Number.isFinite(x) && Number.isFinite(y);

/** @returns the first problem as a sentence, or undefined when the putt can be judged. Does not throw. */
export function checkPutt(putt: Putt): string | undefined {
  const { surface, greenSpeed, ball, hole } = putt;
  if (!finite(ball) || !finite(hole))
    return say(
      `ball ${place(ball)} and hole ${place(hole)}`,
      'finite positions in metres',
      'Put both back on the green.',
    );
  const feet = metresToFeet(greenSpeed);
  if (!(feet >= SLOWEST_FT && feet <= FASTEST_FT))
    return say(
      `a green speed of ${Number.isFinite(feet) ? feet.toFixed(1) : String(feet)} ft`,
      `${SLOWEST_FT} to ${FASTEST_FT} ft`,
      'Ordinary greens are 7 to 12 ft.',
    );
  const length = Math.hypot(hole.x - ball.x, hole.y - ball.y);
  if (length < HOLE_RADIUS + BALL_RADIUS)
    return say(
      `a putt of ${metresToFeet(length).toFixed(2)} ft`,
      'a ball that lies outside the hole',
      `Move the ball at least ${metresToFeet(HOLE_RADIUS + BALL_RADIUS).toFixed(2)} ft from the hole's centre.`,
    );
  if (length > LONGEST)
    return say(
      `a putt of ${metresToFeet(length).toFixed(0)} ft`,
      `at most ${metresToFeet(LONGEST).toFixed(0)} ft`,
      'Move the ball closer.',
    );
  const ground: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  for (const [name, point] of [
    ['ball', ball],
    ['hole', hole],
  ] as const) {
    if (!sampleSurface(surface, point.x, point.y, ground))
      return say(
        `a ${name} at ${place(point)} m`,
        'a place on the green',
        `Move the ${name} inside the edge of the green.`,
      );
    const slope = Math.hypot(ground.gradientX, ground.gradientY);
    if (!Number.isFinite(slope))
      return say('a slope that is not a number', 'a slope in percent', 'Type the slope again.');
    if (name === 'hole' && slope >= steepestHold(greenSpeed))
      return say(
        `a slope of ${(100 * slope).toFixed(1)}% at the hole with a green speed of ${feet.toFixed(1)} ft`,
        `under ${(100 * steepestHold(greenSpeed)).toFixed(1)}%, or no ball stays at rest there`,
        'Choose a gentler slope or a slower green.',
      );
  }
  return undefined;
}
