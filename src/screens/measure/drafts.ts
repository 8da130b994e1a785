/**
 * What has been typed into the measuring forms, kept for the visit (state/kept.ts) as it was typed, good or bad, so that leaving
 * the screen or reloading loses nothing. What is found there is believed only as far as it is what we would have written.
 * Answers for: rows, choices, undo. Leaves out: what the texts mean (forms.ts, work.ts).
 */
import { effect, signal } from '@preact/signals';
import * as z from 'zod';
import { forVisit, keptValue } from '../../state/kept.ts';
import type { Units } from '../../text/format.ts';
import { FORM_IDS, type FormId, type FormSpec, formOf } from './forms.ts';

/** A typed text and the units in use when it was typed: 8 typed in feet stays 8 ft when the units change. */
export interface Cell {
  readonly text: string;
  readonly units: Units;
}
export interface Row {
  readonly key: number;
  readonly cells: Readonly<Record<string, Cell>>;
  readonly choices: Readonly<Record<string, string>>;
}
export interface Draft {
  readonly cells: Readonly<Record<string, Cell>>;
  readonly choices: Readonly<Record<string, string>>;
  readonly rows: readonly Row[];
}
export type Drafts = Readonly<Record<FormId, Draft>>;

export interface MeasureState {
  readonly form: FormId;
  readonly drafts: Drafts;
}

/** Longest text of a cell and most rows of a form that are kept: far beyond any honest entry. */
const LONGEST_TEXT = 60;
export const MOST_ROWS = 60;

const firstOf = (choices: FormSpec['choices']): Record<string, string> =>
  Object.fromEntries(choices.map(({ key, options }) => [key, options[0].value]));

export const emptyDraft = (id: FormId): Draft => {
  const form = formOf(id);
  return {
    cells: {},
    choices: firstOf(form.choices),
    rows: form.beginsWith.map((choices, key) => ({
      key,
      cells: {},
      choices: { ...firstOf(form.rowChoices), ...choices },
    })),
  };
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const loadCells = (value: unknown, specs: FormSpec['cells']): Record<string, Cell> => {
  const cells: Record<string, Cell> = {};
  if (!isRecord(value)) return cells;
  for (const { key } of specs) {
    const cell = value[key];
    if (!isRecord(cell) || typeof cell.text !== 'string' || cell.text.length > LONGEST_TEXT) continue;
    cells[key] = { text: cell.text, units: cell.units === 'metric' ? 'metric' : 'imperial' };
  }
  return cells;
};

const loadChoices = (value: unknown, specs: FormSpec['choices']): Record<string, string> => {
  const choices = firstOf(specs);
  if (!isRecord(value)) return choices;
  for (const { key, options } of specs) {
    const found = options.find((option) => option.value === value[key]);
    if (found) choices[key] = found.value;
  }
  return choices;
};

const loadDraft = (id: FormId, value: unknown): Draft => {
  if (!isRecord(value) || !Array.isArray(value.rows) || value.rows.length > MOST_ROWS) return emptyDraft(id);
  const form = formOf(id);
  return {
    cells: loadCells(value.cells, form.cells),
    choices: loadChoices(value.choices, form.choices),
    rows: value.rows.filter(isRecord).map((row, key) => ({
      key,
      cells: loadCells(row.cells, form.rowCells),
      choices: loadChoices(row.choices, form.rowChoices),
    })),
  };
};

/** What is kept; whatever is missing or wrong begins empty. */
const loadState = (found: unknown): MeasureState => {
  const state = isRecord(found) ? found : {};
  const drafts = isRecord(state.drafts) ? state.drafts : {};
  return {
    form: FORM_IDS.find((id) => id === state.form) ?? FORM_IDS[0],
    drafts: Object.fromEntries(FORM_IDS.map((id) => [id, loadDraft(id, drafts[id])])) as Record<
      FormId,
      Draft
    >,
  };
};

const kept = keptValue<MeasureState>({
  key: 'borrow.measure.1',
  place: forVisit,
  schema: z.unknown().transform(loadState),
  otherwise: () => loadState(undefined),
});
/** Reads a stored text. */
export const parseState = kept.parse;

export const state = signal(kept.load());

/** The draft before the last row or all of them were taken away. */
export const undoable = signal<{ readonly form: FormId; readonly draft: Draft } | undefined>(undefined);

/** Starts keeping the drafts; returns the function that stops it. */
export const keepDrafts = (): (() => void) => effect(() => void kept.save(state.value));

export const chooseForm = (form: FormId): void => {
  state.value = { ...state.peek(), form };
};

const change = (id: FormId, to: (draft: Draft) => Draft): void => {
  const { form, drafts } = state.peek();
  state.value = { form, drafts: { ...drafts, [id]: to(drafts[id]) } };
};

/** @param row key of the row; undefined: of the form */
export const typeCell = (id: FormId, row: number | undefined, key: string, cell: Cell): void => {
  const kept = { ...cell, text: cell.text.slice(0, LONGEST_TEXT) };
  change(id, (draft) =>
    row === undefined
      ? { ...draft, cells: { ...draft.cells, [key]: kept } }
      : {
          ...draft,
          rows: draft.rows.map((one) =>
            one.key === row ? { ...one, cells: { ...one.cells, [key]: kept } } : one,
          ),
        },
  );
};

/** @param row key of the row; undefined: of the form */
export const choose = (id: FormId, row: number | undefined, key: string, value: string): void =>
  change(id, (draft) =>
    row === undefined
      ? { ...draft, choices: { ...draft.choices, [key]: value } }
      : {
          ...draft,
          rows: draft.rows.map((one) =>
            one.key === row ? { ...one, choices: { ...one.choices, [key]: value } } : one,
          ),
        },
  );

/** A row more, with the choices of the last but one, so that ways go on alternating. @returns its key */
export const addRow = (id: FormId): number => {
  const { rows } = state.peek().drafts[id];
  const key = Math.max(-1, ...rows.map((row) => row.key)) + 1;
  const like = rows.at(-2) ?? rows.at(-1) ?? emptyDraft(id).rows[0];
  if (rows.length < MOST_ROWS)
    change(id, (draft) => ({ ...draft, rows: [...draft.rows, { key, cells: {}, choices: like.choices }] }));
  return key;
};

export const removeRow = (id: FormId, key: number): void => {
  undoable.value = { form: id, draft: state.peek().drafts[id] };
  change(id, (draft) => ({ ...draft, rows: draft.rows.filter((row) => row.key !== key) }));
};

export const clearForm = (id: FormId): void => {
  undoable.value = { form: id, draft: state.peek().drafts[id] };
  change(id, (draft) => ({ ...emptyDraft(id), choices: draft.choices }));
};

export const undo = (): void => {
  const last = undoable.peek();
  if (last === undefined) return;
  change(last.form, () => last.draft);
  undoable.value = undefined;
};
