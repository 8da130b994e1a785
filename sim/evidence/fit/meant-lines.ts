/**
 * The line a player means on one ground, for any habit of reading and any pace, with what a misread slope or green speed does to
 * it: numbers from which player-strokes.ts makes the spread of strokes. Answers for: the same lines as read/reading.ts, by parabolas
 * through three habits and three paces. Leaves out: players.
 *
 * Energy and sweep (start x energy) are what bends least with slope, speed and pace (odds/meant.ts says why); energy is very
 * nearly linear in the pace, so all is read in the root of the pace, sweep too.
 */
import { Reading } from '../../read/reading.ts';
import type { Putt } from '../../types.ts';

/** What is kept of a line: energy and sweep, and by slope along, slope across (to the high side), green speed and pace. */
export const LINE_NUMBERS = 10;
export const ENERGY = 0;
export const SWEEP = 1;
/** Then pairs of both by each. */
export const BY_ALONG = 2;
export const BY_ACROSS = 4;
export const BY_SPEED = 6;
export const BY_PACE = 8;

/** Habits of reading and roots of paces (m) that are solved. */
const HABITS = [-0.6, 0, 0.6];
const ROOT_PACES = [0.38, 0.66, 1.02];
/** Steps of the differences: rise over run, share, share. */
const SLOPE_STEP = 0.004;
const SPEED_STEP = 0.04;
const PACE_STEP = 0.15;

/** Weights of a parabola through three places, into `out`. */
function parabola([a, b, c]: readonly number[], x: number, out: Float64Array): void {
  out[0] = ((x - b) * (x - c)) / ((a - b) * (a - c));
  out[1] = ((x - a) * (x - c)) / ((b - a) * (b - c));
  out[2] = ((x - a) * (x - b)) / ((c - a) * (c - b));
}
const byHabit = new Float64Array(3);
const byPace = new Float64Array(3);

/** Lines of one ground: at(habit, pace) in LINE_NUMBERS. */
export class MeantLines {
  private readonly solved: Float64Array;

  private constructor(solved: Float64Array) {
    this.solved = solved;
  }

  /** @param high 1: the high side is the left @returns undefined where one of them has no line */
  static of(putt: Putt, high: 1 | -1): MeantLines | undefined {
    const solved = new Float64Array(HABITS.length * ROOT_PACES.length * LINE_NUMBERS);
    let at = 0;
    for (const readBias of HABITS) {
      const reading = new Reading(putt, { readBias });
      for (const root of ROOT_PACES) {
        const numbers = lineNumbers(reading, root * root, high);
        if (numbers === undefined) return undefined;
        solved.set(numbers, at);
        at += LINE_NUMBERS;
      }
    }
    return new MeantLines(solved);
  }

  /** @param pace m past */
  at(readBias: number, pace: number, out: Float64Array): void {
    parabola(HABITS, readBias, byHabit);
    parabola(ROOT_PACES, Math.sqrt(pace), byPace);
    out.fill(0);
    let from = 0;
    for (let h = 0; h < 3; h++)
      for (let p = 0; p < 3; p++) {
        const weight = byHabit[h] * byPace[p];
        for (let i = 0; i < LINE_NUMBERS; i++) out[i] += weight * this.solved[from++];
      }
  }
}

function lineNumbers(reading: Reading, pace: number, high: 1 | -1): number[] | undefined {
  const plain = { along: 0, across: 0, speed: 1 };
  const lines = reading.linesFor(pace);
  const middle = lines?.(plain);
  if (lines === undefined || middle === undefined) return undefined;
  const numbers = [middle.energy, high * middle.start * middle.energy];
  const by = (
    up: typeof middle | undefined,
    down: typeof middle | undefined,
    step: number,
  ): readonly [number, number] => {
    const [to, from] = [up ?? middle, down ?? middle];
    const width = step * ((up ? 1 : 0) + (down ? 1 : 0)) || 1;
    return [
      (to.energy - from.energy) / width,
      (high * (to.start * to.energy - from.start * from.energy)) / width,
    ];
  };
  numbers.push(
    ...by(lines({ ...plain, along: SLOPE_STEP }), lines({ ...plain, along: -SLOPE_STEP }), SLOPE_STEP),
    ...by(
      lines({ ...plain, across: high * SLOPE_STEP }),
      lines({ ...plain, across: -high * SLOPE_STEP }),
      SLOPE_STEP,
    ),
    ...by(lines({ ...plain, speed: 1 + SPEED_STEP }), lines({ ...plain, speed: 1 - SPEED_STEP }), SPEED_STEP),
    ...by(
      reading.linesFor(pace * (1 + PACE_STEP))?.(plain),
      reading.linesFor(pace * (1 - PACE_STEP))?.(plain),
      PACE_STEP,
    ),
  );
  return numbers;
}
