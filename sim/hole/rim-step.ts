/**
 * One step of the embedded Runge-Kutta pair 5(4) of Dormand & Prince 1980 for a state of nine numbers (rim-contact.ts).
 * Answers for: the step and its error. Leaves out: events, which phase it is. The steppers of roll/ are for a ball on the
 * green, of second order and with another error norm.
 */
import { BALL_RADIUS } from '../constants.ts';
import { SPIN, STATE_SIZE } from './rim-contact.ts';

/** Writes the time derivative of a state. */
export type Derivative = (state: Float64Array, out: Float64Array) => void;

const STAGES = 7;
/** Coefficients a_ij, row by row; the last row is also the solution of order 5. */
const A: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
/** Order 5 minus order 4. */
const E: readonly number[] = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

export interface RimStepper {
  /** Step `h` seconds on from `from`, into `to`. @returns the error made, in m and m/s (spin as r w), the largest of the nine */
  step(derivative: Derivative, from: Float64Array, h: number, to: Float64Array): number;
}

/** A stepper with its own memory. */
export function makeRimStepper(): RimStepper {
  const slopes = Array.from({ length: STAGES }, () => new Float64Array(STATE_SIZE));
  const stage = new Float64Array(STATE_SIZE);
  return {
    step(derivative, from, h, to) {
      derivative(from, slopes[0]);
      for (let s = 1; s < STAGES; s++) {
        const row = A[s];
        const at = s === STAGES - 1 ? to : stage;
        for (let i = 0; i < STATE_SIZE; i++) {
          let sum = 0;
          for (let j = 0; j < s; j++) sum += row[j] * slopes[j][i];
          at[i] = from[i] + h * sum;
        }
        derivative(at, slopes[s]);
      }
      let worst = 0;
      for (let i = 0; i < STATE_SIZE; i++) {
        let sum = 0;
        for (let s = 0; s < STAGES; s++) sum += E[s] * slopes[s][i];
        worst = Math.max(worst, Math.abs(h * sum) * (i < SPIN ? 1 : BALL_RADIUS));
      }
      return worst;
    },
  };
}
