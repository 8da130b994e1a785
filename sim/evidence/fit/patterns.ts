/**
 * What one recorded outcome says of a player: which cells of error it may have come from, and how much each counts. Answers for:
 * the pattern of an outcome over all grounds that its words allow, and its chance for a player. Leaves out: the record's own
 * shapes (outcomes.ts).
 *
 * A pattern has rows (an aim of error-shares.ts and a cell of start error) with weights over cells of pace error. What grounds of
 * like aim say is added up once, when the pattern is made: a player's chance of the outcome is then a short sum, whatever the
 * number of grounds behind it. A ground whose aim lies between two of the grid's takes part in both, in proportion.
 */
import {
  AIMS,
  type Answer,
  aimsAbout,
  type ErrorShares,
  fillShares,
  newErrorShares,
  PACES,
  STARTS,
  UNASKED,
} from './error-shares.ts';
import type { HoledCells, Strokes } from './strokes.ts';
import { type MissChance, missChance, type WrittenMiss } from './words.ts';

/** What is known of one stroke's end. */
export type Outcome = 'holed' | WrittenMiss;

export interface Pattern {
  readonly startAnswer: Answer;
  readonly paceAnswer: Answer;
  /** Rows: aim x STARTS + start; where each begins in `cell`, one more than rows. */
  readonly row: Uint16Array;
  readonly begins: Uint32Array;
  readonly cell: Uint8Array;
  readonly weight: Float32Array;
}

/** Share of an outcome's chance for a player of about twice the usual errors that may be left out: the lightest cells. */
const LEFT_OUT = 0.02;
const WIDE = (() => {
  const shares = newErrorShares();
  const player = { lineSd: 0.045, paceSd: 0.2, readSd: 0.9, readBias: 0, paceBias: 0 };
  fillShares(player, { start: 1, pace: 1 }, { start: false, pace: false }, shares);
  return { starts: shares.starts[UNASKED], paces: shares.paces[UNASKED] };
})();

const ROWS = AIMS.length * STARTS;
// Filled and emptied by one pattern at a time.
const sums = new Float64Array(ROWS * PACES);

/** Adds what one ground says. */
function addStrokes(strokes: Strokes, share: number, outcome: 'holed' | MissChance): void {
  const { first, part } = aimsAbout(strokes.aim);
  const cellsPerAim = STARTS * PACES;
  const near = first * cellsPerAim;
  const far = near + cellsPerAim;
  const nearShare = share * (1 - part);
  const farShare = share * part;
  const add = (cells: HoledCells, i: number, chance: number): void => {
    const weight = chance * cells.part[i];
    sums[near + cells.cell[i]] += nearShare * weight;
    sums[far + cells.cell[i]] += farShare * weight;
  };
  if (outcome === 'holed') {
    for (let i = 0; i < strokes.holed.count; i++) add(strokes.holed, i, 1);
    return;
  }
  const { nearest, farthest } = outcome;
  const { missed } = strokes;
  for (let i = 0; i < missed.count; i++) {
    const leave = missed.leave[i];
    if (leave < nearest || leave > farthest) continue;
    add(missed, i, outcome.of(missed.beside[i], missed.along[i], leave));
  }
}

export interface PatternOptions {
  readonly startAnswer?: Answer;
  readonly paceAnswer?: Answer;
}

/** @param grounds with the chance of each, at least one */
export function patternOf(
  grounds: readonly { readonly strokes: Strokes; readonly share: number }[],
  outcome: Outcome,
  { startAnswer = UNASKED, paceAnswer = UNASKED }: PatternOptions = {},
): Pattern {
  const written = outcome === 'holed' ? outcome : missChance(outcome);
  let lowest = AIMS.length;
  let highest = 0;
  for (const { strokes, share } of grounds) {
    addStrokes(strokes, share, written);
    const { first } = aimsAbout(strokes.aim);
    lowest = Math.min(lowest, first);
    highest = Math.max(highest, first + 1);
  }
  const [from, to] = [lowest * STARTS, Math.min(ROWS, (highest + 1) * STARTS)];
  let total = 0;
  let count = 0;
  for (let row = from; row < to; row++)
    for (let j = 0; j < PACES; j++) {
      const sum = sums[row * PACES + j];
      if (sum === 0) continue;
      total += sum * WIDE.starts[row] * WIDE.paces[j];
      count++;
    }
  const least = (LEFT_OUT * total) / count;
  const rows: number[] = [];
  const begins: number[] = [];
  const cells: number[] = [];
  const weights: number[] = [];
  for (let row = from; row < to; row++) {
    const begin = cells.length;
    for (let j = 0; j < PACES; j++) {
      const weight = sums[row * PACES + j];
      if (!(weight * WIDE.starts[row] * WIDE.paces[j] > least)) continue;
      cells.push(j);
      weights.push(weight);
    }
    if (cells.length === begin) continue;
    rows.push(row);
    begins.push(begin);
  }
  begins.push(cells.length);
  sums.fill(0, from * PACES, to * PACES);
  return {
    startAnswer,
    paceAnswer,
    row: Uint16Array.from(rows),
    begins: Uint32Array.from(begins),
    cell: Uint8Array.from(cells),
    weight: Float32Array.from(weights),
  };
}

/** Starts rarer than this add nothing to a chance that a stray putt (likelihood.ts) would not. */
const LEAST_SHARE = 1e-7;

/** Chance of the outcome for the player whose shares these are. */
export function chanceOf(
  { startAnswer, paceAnswer, row, begins, cell, weight }: Pattern,
  shares: ErrorShares,
): number {
  const starts = shares.starts[startAnswer];
  const paces = shares.paces[paceAnswer];
  let sum = 0;
  for (let r = 0; r < row.length; r++) {
    const share = starts[row[r]];
    if (share < LEAST_SHARE) continue;
    let inner = 0;
    for (let k = begins[r]; k < begins[r + 1]; k++) inner += weight[k] * paces[cell[k]];
    sum += share * inner;
  }
  return sum;
}
