/**
 * Cells of our CSV files: how each kind of value is written and read. Answers for: losing nothing between the two, and for names
 * that a spreadsheet would take for a formula. Leaves out: columns (csvPutts.ts, csvPractice.ts), lines and files (csv.ts).
 */
import { quoted } from './reasons.ts';

export type CellRead<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly expected: string };

export interface Cell<Value> {
  /** @returns never empty: an empty cell is a value that was not recorded */
  write(value: Value): string;
  /** @param text not empty */
  read(text: string): CellRead<Value>;
}

const good = <Value>(value: Value): CellRead<Value> => ({ ok: true, value });
const bad = (expected: string) => ({ ok: false, expected }) as const;

/**
 * A spreadsheet takes these beginnings for a formula (common practice, no source). An apostrophe before them makes them text; one
 * more is put before text that has that form already, so that taking one off always gives the text back.
 */
const FORMULA = /^'*[=+\-@\t\r]/;
export const guarded = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);
export const unguarded = (text: string): string =>
  text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text;

export const textCell: Cell<string> = { write: guarded, read: (text) => good(unguarded(text)) };

/** A decimal point or a decimal comma; no thousands, no exponents. */
const DECIMAL = /^[+-]?\d+([.,]\d+)?$/;
export const numberCell: Cell<number> = {
  write: String,
  read(text) {
    const trimmed = text.trim();
    if (!DECIMAL.test(trimmed)) return bad('a number such as 3.2 or 3,2');
    return good(Number(trimmed.replace(',', '.')));
  },
};

export const wholeCell: Cell<number> = {
  write: String,
  read(text) {
    const trimmed = text.trim();
    return /^\d{1,15}$/.test(trimmed) ? good(Number(trimmed)) : bad('a whole number such as 4');
  },
};

/** Whole numbers with blanks between them. */
export const wholesCell: Cell<readonly number[]> = {
  write: (values) => values.join(' '),
  read(text) {
    const parts = text.trim().split(/\s+/);
    return parts.every((part) => /^\d{1,15}$/.test(part))
      ? good(parts.map(Number))
      : bad('whole numbers with blanks between them, such as 3 12');
  },
};

/** A day is judged by the gate; here it only loses its blanks. */
export const dayCell: Cell<string> = { write: (day) => day, read: (text) => good(text.trim()) };

/** A moment to the thousandth of a second, UTC: numbers of thirteen digits come back rounded from a spreadsheet. */
const MOMENT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})$/;
export const momentCell: Cell<number> = {
  write: (moment) => new Date(moment).toISOString(),
  read(text) {
    const trimmed = text.trim();
    const moment = MOMENT.test(trimmed) ? Date.parse(trimmed) : Number.NaN;
    return Number.isNaN(moment) ? bad('a moment such as 2026-05-02T14:30:00.000Z') : good(moment);
  },
};

/** One of a few words, whatever the case. */
export const wordCell = <Value extends string>(
  words: { readonly [Word in Value]: string },
): Cell<Value> & { readonly words: { readonly [Word in Value]: string } } => {
  const byWord = new Map(Object.entries<string>(words).map(([value, word]) => [word, value as Value]));
  return {
    words,
    write: (value) => words[value],
    read(text) {
      const value = byWord.get(text.trim().toLowerCase().replace(/\s+/g, ' '));
      return value === undefined ? bad(`one of ${[...byWord.keys()].join(', ')}`) : good(value);
    },
  };
};

export const yesNoCell: Cell<boolean> = {
  write: (value) => (value ? 'yes' : 'no'),
  read(text) {
    const word = text.trim().toLowerCase();
    return word === 'yes' || word === 'no' ? good(word === 'yes') : bad('yes or no');
  },
};

/** A line as values; a column that is empty or not there has none. */
export type Values<Of> = { readonly [Name in keyof Of]?: Of[Name] extends Cell<infer Value> ? Value : never };

export type RowRead<Of> =
  | { readonly ok: true; readonly values: Values<Of> }
  | { readonly ok: false; readonly values: Values<Of>; readonly problem: string };

/** A line's texts by column, read; the first that cannot be read says why. */
export const readRow = <Of extends { readonly [Name in keyof Of]: Cell<unknown> }>(
  columns: Of,
  texts: ReadonlyMap<string, string>,
): RowRead<Of> => {
  const values = new Map<string, unknown>();
  let problem: string | undefined;
  for (const [name, cell] of Object.entries<Cell<unknown>>(columns)) {
    const text = texts.get(name);
    if (text === undefined || text.trim() === '') continue;
    const read = cell.read(text);
    if (read.ok) values.set(name, read.value);
    else problem ??= `Got ${quoted(text)} for ${name}, expected ${read.expected}.`;
  }
  const found = Object.fromEntries(values) as Values<Of>;
  return problem === undefined ? { ok: true, values: found } : { ok: false, values: found, problem };
};

/** A line's texts in the order of its columns. */
export const writeRow = <Of extends { readonly [Name in keyof Of]: Cell<unknown> }>(
  columns: Of,
  values: Values<Of>,
): string[] =>
  Object.entries<Cell<unknown>>(columns).map(([name, cell]) => {
    const value = (values as Record<string, unknown>)[name];
    return value === undefined ? '' : cell.write(value);
  });
