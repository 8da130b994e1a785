/**
 * What the typed rows give: each form's entries as the engine takes them, and its answer as plain data that can be kept.
 * Answers for: which rows are whole, which cells are wrong and why. Leaves out: words (src/text), taking over (uses.ts).
 */
import {
  degreesToRadians,
  fallByLevel,
  type GateRun,
  type LevelPair,
  type MeasuredGreen,
  type MeasuredPlayer,
  measureGreenSpeed,
  type PaceRoll,
  paceControl,
  type RollWay,
  rampSlowings,
  slopeByLevel,
  startLine,
  stepLength,
  timedSlowings,
} from '../../../sim/index.ts';
import { formatLength, formatShort, type Units } from '../../text/format.ts';
import type { Cell, Draft, Row } from './drafts.ts';
import { type CellSpec, type FormId, type FormSpec, formOf, parseCell } from './forms.ts';

export interface Circumstances {
  /** YYYY-MM-DD */
  readonly day: string;
  /** The person's step, m; undefined: not measured. */
  readonly step: number | undefined;
}

export interface Outcome {
  readonly kept: MeasuredGreen | MeasuredPlayer | undefined;
  /** Rows with something in them that are not whole or not right. */
  readonly leftOut: number;
}

/** Which cells of the rows a form asks for, by its choices. */
export const rowCellsOf = (form: FormSpec, { choices }: Draft): readonly CellSpec[] =>
  form.rowCells.filter(
    ({ key }) =>
      (key !== 'seconds' || choices.by === 'timed') && (key !== 'beside' || choices.sides === 'yes'),
  );
export const rowChoicesOf = (form: FormSpec, { choices }: Draft): FormSpec['rowChoices'] =>
  form.rowChoices.filter(
    ({ key }) =>
      (key !== 'direction' || choices.directions === 'two') && (key !== 'side' || choices.sides === 'yes'),
  );
export const cellsOf = (form: FormSpec, { choices }: Draft): readonly CellSpec[] =>
  form.cells.filter(({ key }) => key !== 'height' || choices.by === 'ramp');

/** A cell's text as it stands in the units now in use: converted when it is good, as typed when it is not. */
export const shownText = (spec: CellSpec, cell: Cell | undefined, units: Units, step?: number): string => {
  if (cell === undefined) return '';
  if (cell.units === units || spec.kind === 'quantity') return cell.text;
  const parsed = parseCell(spec, cell.text, cell.units, step);
  if (!parsed.ok) return cell.text;
  const format = spec.kind === 'long' ? formatLength : formatShort;
  return format(parsed.value, units).replace(/ .*/, '');
};

const isEmpty = (cell: Cell | undefined): boolean => cell === undefined || cell.text.trim() === '';

/** What is wrong with a cell; an empty one is not wrong, only not there yet. */
export const problemOf = (spec: CellSpec, cell: Cell | undefined, step?: number): string | undefined => {
  if (cell === undefined || isEmpty(cell)) return undefined;
  const parsed = parseCell(spec, cell.text, cell.units, step);
  return parsed.ok ? undefined : parsed.problem;
};

/** More clean passes than balls is the one thing that two good cells can get wrong together. */
export const rowProblem = (id: FormId, row: Row): string | undefined => {
  if (id !== 'startLine') return undefined;
  const [tries, passes] = ['tries', 'passes'].map((key) => Number(row.cells[key]?.text ?? Number.NaN));
  return passes > tries
    ? `Got ${passes} clean passes of ${tries} balls, expected no more passes than balls. Mend one of the two.`
    : undefined;
};

interface Filled {
  readonly row: Row;
  readonly value: Readonly<Record<string, number>>;
}

function filledRows(
  id: FormId,
  draft: Draft,
  step: number | undefined,
): { whole: Filled[]; leftOut: number } {
  const specs = rowCellsOf(formOf(id), draft);
  const whole: Filled[] = [];
  let leftOut = 0;
  const above: Record<string, number> = {};
  for (const row of draft.rows) {
    const value: Record<string, number> = {};
    for (const spec of specs) {
      const cell = row.cells[spec.key];
      if (cell === undefined || isEmpty(cell)) {
        if (spec.asAbove && above[spec.key] !== undefined) value[spec.key] = above[spec.key];
        continue;
      }
      const parsed = parseCell(spec, cell.text, cell.units, step);
      if (!parsed.ok) continue;
      value[spec.key] = parsed.value;
      if (spec.asAbove) above[spec.key] = parsed.value;
    }
    const complete = specs.every(({ key }) => value[key] !== undefined) && rowProblem(id, row) === undefined;
    if (complete) whole.push({ row, value });
    // A target alone is a row prepared, not one in error.
    else if (specs.some(({ key, asAbove }) => !asAbove && !isEmpty(row.cells[key]))) leftOut++;
  }
  return { whole, leftOut };
}

/**
 * @param draft of the form; pure: the same draft gives the same outcome
 */
export function outcomeOf(id: FormId, draft: Draft, { day, step }: Circumstances): Outcome {
  const { whole, leftOut } = filledRows(id, draft, step);
  return { kept: whole.length === 0 ? undefined : MAKERS[id](whole, draft, day), leftOut };
}

type Maker = (rows: readonly Filled[], draft: Draft, day: string) => Outcome['kept'];

const MAKERS: Readonly<Record<FormId, Maker>> = {
  greenSpeed(rows, draft, day) {
    const ground = draft.choices.ground === 'carpet' ? 'carpet' : 'grass';
    const rolls = rows.map(({ row, value }) => ({
      way: row.choices.way as RollWay,
      distance: value.distance,
      seconds: value.seconds,
    }));
    if (draft.choices.by === 'timed') {
      const result = measureGreenSpeed(timedSlowings(rolls));
      return result && { day, ground, by: 'timedRolls', rolls, result };
    }
    const spec = formOf('greenSpeed').cells[0];
    const cell = draft.cells.height;
    const height = cell && parseCell(spec, cell.text, cell.units);
    if (!height?.ok) return undefined;
    const ramped = rolls.map(({ way, distance }) => ({ way, distance }));
    const result = measureGreenSpeed(rampSlowings(ramped, height.value));
    return result && { day, ground, by: 'rampRolls', height: height.value, rolls: ramped, result };
  },
  slope(rows, draft, day) {
    const pairs = (of: readonly Filled[]): LevelPair[] =>
      of.map(({ value }) => ({
        facing: degreesToRadians(value.facing),
        turned: degreesToRadians(value.turned),
      }));
    const ground = 'grass';
    if (draft.choices.directions === 'one') {
      const result = slopeByLevel(pairs(rows));
      return result && { day, ground, by: 'level', pairs: pairs(rows), result };
    }
    const along = (direction: string): LevelPair[] =>
      pairs(rows.filter(({ row }) => row.choices.direction === direction));
    const both = { forwards: along('forwards'), left: along('left') };
    const result = fallByLevel(both);
    return result && { day, ground, by: 'levelBothWays', ...both, result };
  },
  pace(rows, draft, day) {
    const rolls = rows.map(({ row, value }): PaceRoll => {
      const { target, off, beside } = value;
      // No ball stops farther short than it was from the target.
      const past = row.choices.reach === 'past' ? off : -Math.min(off, target);
      const side = row.choices.side === 'left' ? 1 : -1;
      return draft.choices.sides === 'yes' ? { target, past, left: side * beside } : { target, past };
    });
    const result = paceControl(rolls);
    return result && { day, by: 'paceRolls', rolls, result };
  },
  startLine(rows, _draft, day) {
    const gates = rows.map(
      ({ value: { width, distance, passes, tries } }): GateRun => ({ width, distance, passes, tries }),
    );
    const result = startLine(gates);
    return result && { day, by: 'gates', gates, result };
  },
  step(rows, _draft, day) {
    const walks = rows.map(({ value: { length, steps } }) => ({ length, steps }));
    const result = stepLength(walks);
    return result && { day, by: 'walks', walks, result };
  },
};
