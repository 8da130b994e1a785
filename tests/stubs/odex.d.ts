/**
 * Types of the part of odex 2.0.4 (an independent solver of differential equations) that tests use as an oracle. Written
 * by hand because the package ships its source, which does not compile under strict settings.
 */

/** Returns y' at (x, y). */
export type Derivative = (x: number, y: number[]) => number[];

/** Called after each step; returning false ends the integration. `dense` needs `denseOutput`. */
export type OutputFunction = (
  step: number,
  xOld: number,
  x: number,
  y: number[],
  dense?: (component: number, x: number) => number,
) => boolean | undefined;

export interface Solution {
  y: number[];
  /** 0 converged, 1 too many steps, 2 ended early by the output function. */
  outcome: 0 | 1 | 2;
  nStep: number;
  xEnd: number;
  nAccept: number;
  nReject: number;
  nEval: number;
}

export class Solver {
  /** @param size number of equations */
  constructor(size: number);
  denseOutput: boolean;
  maxSteps: number;
  initialStepSize: number;
  maxStepSize: number;
  relativeTolerance: number | number[];
  absoluteTolerance: number | number[];
  solve(derivative: Derivative, x: number, y0: number[], xEnd: number, output?: OutputFunction): Solution;
  /** An output function that calls back at every multiple of `spacing`; returning false ends the integration. */
  grid(spacing: number, output: (x: number, y: number[]) => boolean | undefined): OutputFunction;
}
