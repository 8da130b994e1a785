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

const PACES = ROOT_PACES.length;

/** Lines of one plane. */
export class MeantLines {
  /** Habit by habit, pace by pace. */
  readonly solved = new Float64Array(HABITS.length * PACES * LINE_NUMBERS);

  constructor(plane: PuttedPlane) {
    let at = 0;
    for (const habit of HABITS)
      for (const root of ROOT_PACES) {
        fillNumbers(plane, habit, root * root, this.solved, at);
        at += LINE_NUMBERS;
      }
  }

  /** Numbers for each habit at one pace, m past. */
  ofPace(pace: number): Float64Array {
    const w = byPace.at(Math.sqrt(pace));
    const { solved } = this;
    return Float64Array.from({ length: HABITS.length * LINE_NUMBERS }, (_, n) => {
      const from = PACES * LINE_NUMBERS * Math.floor(n / LINE_NUMBERS) + (n % LINE_NUMBERS);
      return (
        w[0] * solved[from] + w[1] * solved[from + LINE_NUMBERS] + w[2] * solved[from + 2 * LINE_NUMBERS]
      );
    });
  }

  /** @param pace m past */
  at(readBias: number, pace: number, out: Float64Array): void {
    const ofPace = this.ofPace(pace);
    const w = byHabit.at(readBias);
    for (let i = 0; i < LINE_NUMBERS; i++)
      out[i] = w[0] * ofPace[i] + w[1] * ofPace[LINE_NUMBERS + i] + w[2] * ofPace[2 * LINE_NUMBERS + i];
  }
}

/**
 * Lines of many planes, one pace or any, side by side: a fit goes through ten thousand of them for every player it looks at, and waits for
 * memory if they lie about.
 */
export class ManyLines {
  private readonly numbers: Float64Array;
  private readonly from: Uint32Array;
  private readonly wayOf = new Float64Array(HABITS.length * PACES);

  /** @param spots with the pace, m past; undefined: to be said when asked */
  constructor(
    private readonly spots: readonly { readonly lines: MeantLines; readonly pace: number | undefined }[],
  ) {
    const blocks = spots.map(({ lines, pace }) => (pace === undefined ? lines.solved : lines.ofPace(pace)));
    this.numbers = new Float64Array(blocks.reduce((sum, { length }) => sum + length, 0));
    this.from = new Uint32Array(blocks.length);
    let at = 0;
    blocks.forEach((block, k) => {
      this.from[k] = at;
      this.numbers.set(block, at);
      at += block.length;
    });
  }

  /** Says for which player the next ones are asked. @param pace m past, where none was said */
  of(readBias: number, pace: number): void {
    const habit = byHabit.at(readBias);
    const paced = byPace.at(Math.sqrt(pace));
    for (let h = 0; h < HABITS.length; h++)
      for (let p = 0; p < PACES; p++) this.wayOf[PACES * h + p] = habit[h] * paced[p];
    this.habit.set(habit);
  }
  private readonly habit = new Float64Array(HABITS.length);

  at(k: number, out: Float64Array): void {
    const { numbers } = this;
    const said = this.spots[k].pace !== undefined;
    const weights = said ? this.habit : this.wayOf;
    const from = this.from[k];
    for (let i = 0; i < LINE_NUMBERS; i++) {
      let sum = 0;
      for (let w = 0, at = from + i; w < weights.length; w++, at += LINE_NUMBERS)
        sum += weights[w] * numbers[at];
      out[i] = sum;
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
