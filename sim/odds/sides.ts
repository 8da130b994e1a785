/**
 * On which side of the hole a ball passes, without rolling it: the starts and energies that cross the hole's middle form a
 * curve, from the softest ball that gets there to an endlessly hard one aimed straight at the hole; left of that curve is
 * left of the hole. The curve is solved at a few paces and followed between them in 1/s, the measure of break.
 */
import type { LineWalk } from '../read/line.ts';
import { startOf } from '../roll/roll.ts';

export interface Sides {
  /** Choose the start (radians from ball->hole) that `left` answers for. */
  aim(start: number): void;
  /** Does a ball of this energy (m^2/s^2) pass with the hole on its right? */
  left(energy: number): boolean;
}

export function sidesOf(walk: LineWalk): Sides {
  const starts: number[] = [];
  const softness: number[] = [];
  for (const line of [...walk.curve()].reverse()) {
    starts.push(startOf(walk.putt, line.heading));
    softness.push(1 / line.speed ** 2);
  }
  starts.push(0);
  softness.push(0);
  // Where the curve crosses the chosen start, as 1/s; and the side of an endlessly hard ball.
  const crossings = new Float64Array(starts.length);
  let count = 0;
  let hardLeft = false;
  return {
    aim(start) {
      count = 0;
      hardLeft = start > 0;
      for (let i = 1; i < starts.length; i++) {
        const [a, b] = [starts[i - 1] - start, starts[i] - start];
        if (a > 0 === b > 0) continue;
        crossings[count++] = softness[i - 1] + (a / (a - b)) * (softness[i] - softness[i - 1]);
      }
    },
    left(energy) {
      let left = hardLeft;
      for (let i = 0; i < count; i++) if (crossings[i] < 1 / energy) left = !left;
      return left;
    },
  };
}
