/**
 * The line a player means on one plane, for any habit of reading and any pace, with what a misread slope or green speed does to
 * it: numbers from which player-strokes.ts makes the spread of strokes. Answers for: the lines of read/reading.ts, by table and by
 * parabolas through three habits and three paces. Leaves out: players.
 *
 * Energy and sweep (start x energy) are what bends least with slope, speed and pace (odds/meant.ts says why); energy is very
 * nearly linear in the pace, so all is read in the root of the pace, sweep too.
 */
import { type TableLine, tableLine } from './line-table.ts';

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
const HABITS = [-0.6, 0, 0.6] as const;
const ROOT_PACES = [0.38, 0.66, 1.02] as const;
/** Steps of the differences: rise over run, share, share. */
const SLOPE_STEP = 0.004;
const SPEED_STEP = 0.04;
const PACE_STEP = 0.15;

/** Weights of a parabola through three places: one player asks thousands of grounds at the same one. */
class Parabola {
  private x = Number.NaN;
  readonly weights = new Float64Array(3);

  constructor(private readonly places: readonly [number, number, number]) {}

  at(x: number): Float64Array {
    if (x === this.x) return this.weights;
    this.x = x;
    const { weights } = this;
    const [a, b, c] = this.places;
    weights[0] = ((x - b) * (x - c)) / ((a - b) * (a - c));
    weights[1] = ((x - a) * (x - c)) / ((b - a) * (b - c));
    weights[2] = ((x - a) * (x - b)) / ((c - a) * (c - b));
    return weights;
  }
}
const byHabit = new Parabola(HABITS);
const byPace = new Parabola(ROOT_PACES);

/** A plane as one putt lies on it. */
export interface PuttedPlane {
  /** m */
  readonly length: number;
  /** Rise per metre to the hole, and across it to the high side. */
  readonly rise: number;
  readonly across: number;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
}

/** Lines of one plane. */
export class MeantLines {
  /** Habit by habit, pace by pace. */
  readonly solved = new Float64Array(HABITS.length * ROOT_PACES.length * LINE_NUMBERS);

  constructor(plane: PuttedPlane) {
    let at = 0;
    for (const habit of HABITS)
      for (const root of ROOT_PACES) {
        fillNumbers(plane, habit, root * root, this.solved, at);
        at += LINE_NUMBERS;
      }
  }
}

/** The same at one pace after another: what hangs on the pace alone is kept while that stays. */
export class PacedLines {
  private readonly ofPace = new Float64Array(HABITS.length * LINE_NUMBERS);
  private pace = Number.NaN;

  constructor(private readonly lines: MeantLines) {}

  /** @param pace m past */
  at(readBias: number, pace: number, out: Float64Array): void {
    if (pace !== this.pace) this.setPace(pace);
    const w = byHabit.at(readBias);
    const { ofPace } = this;
    for (let i = 0; i < LINE_NUMBERS; i++)
      out[i] = w[0] * ofPace[i] + w[1] * ofPace[LINE_NUMBERS + i] + w[2] * ofPace[2 * LINE_NUMBERS + i];
  }

  private setPace(pace: number): void {
    this.pace = pace;
    const w = byPace.at(Math.sqrt(pace));
    const { solved } = this.lines;
    const { ofPace } = this;
    for (let h = 0; h < 3; h++)
      for (let i = 0; i < LINE_NUMBERS; i++) {
        const from = 3 * h * LINE_NUMBERS + i;
        ofPace[h * LINE_NUMBERS + i] =
          w[0] * solved[from] + w[1] * solved[from + LINE_NUMBERS] + w[2] * solved[from + 2 * LINE_NUMBERS];
      }
  }
}

const up: TableLine = { energy: 0, sweep: 0 };
const down: TableLine = { energy: 0, sweep: 0 };

function fillNumbers(plane: PuttedPlane, habit: number, pace: number, into: Float64Array, at: number): void {
  const { length, rise, across, greenSpeed } = plane;
  const seen = { length, pace, along: (1 + habit) * rise, across: (1 + habit) * across, greenSpeed };
  tableLine(seen, up);
  into[at] = up.energy;
  into[at + 1] = up.sweep;
  const by = (place: number, step: number, moved: (sign: number) => typeof seen): void => {
    tableLine(moved(1), up);
    tableLine(moved(-1), down);
    into[at + place] = (up.energy - down.energy) / (2 * step);
    into[at + place + 1] = (up.sweep - down.sweep) / (2 * step);
  };
  by(BY_ALONG, SLOPE_STEP, (sign) => ({ ...seen, along: seen.along + sign * SLOPE_STEP }));
  by(BY_ACROSS, SLOPE_STEP, (sign) => ({ ...seen, across: seen.across + sign * SLOPE_STEP }));
  by(BY_SPEED, SPEED_STEP, (sign) => ({ ...seen, greenSpeed: greenSpeed * (1 + sign * SPEED_STEP) }));
  by(BY_PACE, PACE_STEP, (sign) => ({ ...seen, pace: pace * (1 + sign * PACE_STEP) }));
}
