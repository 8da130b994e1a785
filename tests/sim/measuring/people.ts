/** People who measure, for tests: the engine's rolls as somebody with a tape and a watch would see them. */
import { planeSurface, rollBall } from '../../../sim/index.ts';

export interface GroundUnderTest {
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  /** Share. */
  readonly slope: number;
  /** From straight uphill to the line of the rolls, radians. */
  readonly turn: number;
}

/**
 * One roll on a tilted plane, with a mark on the ground and a tape: the straight distance from where the ball came past the mark
 * to where it lies, and how long that took.
 * @param back rolled the other way along the same line
 * @param mark m from the start
 */
export function rollOnGround(
  { greenSpeed, slope, turn }: GroundUnderTest,
  { speed, back = false, mark = 0 }: { speed: number; back?: boolean; mark?: number },
): { distance: number; seconds: number } {
  const heading = Math.PI / 2 + turn + (back ? Math.PI : 0);
  const ball = { x: 0, y: 0 };
  const { path, rest, time } = rollBall(
    {
      surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
      greenSpeed,
      ball,
      // Only gives the direction: covered, and out of reach.
      hole: { x: 30 * Math.cos(heading), y: 30 * Math.sin(heading) },
      capture: 'simple',
    },
    0,
    speed,
    { covered: true },
  );
  if (rest === undefined)
    throw new Error('this ball never stops: the test asks for a slope that is too steep');
  for (let i = 3; i < path.length; i += 3) {
    const along = (at: number): number => path[at] * Math.cos(heading) + path[at + 1] * Math.sin(heading);
    if (along(i) < mark) continue;
    const share = (mark - along(i - 3)) / (along(i) - along(i - 3));
    const at = (of: number): number => path[i - 3 + of] + share * (path[i + of] - path[i - 3 + of]);
    return { distance: Math.hypot(rest.x - at(0), rest.y - at(1)), seconds: time - at(2) };
  }
  throw new Error('this ball did not reach the mark');
}

/** Share of intervals that hold the truth. */
export function coverage(
  runs: number,
  truth: number,
  interval: (run: number) => { readonly low: number; readonly high: number },
): number {
  let covered = 0;
  for (let run = 0; run < runs; run++) {
    const { low, high } = interval(run);
    if (low <= truth && truth <= high) covered++;
  }
  return covered / runs;
}
