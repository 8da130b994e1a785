/**
 * CSV files of putts and of practice sets, out and in. Answers for: lines and files (delimiter, line ends, quotes, header) and
 * which of the two a file is. Leaves out: columns (csvPutts.ts, csvPractice.ts), bytes (fileText.ts), judging records
 * (importPlan.ts). Documented for users in CSV.md.
 * Written: commas, a point in decimals, CRLF (RFC 4180), a byte order mark, by which spreadsheets know UTF-8. Read: commas,
 * semicolons or tabs, told by the header; CRLF, LF or CR; a decimal comma as well as a point.
 */
import Papa from 'papaparse';
import type { PracticeSet, RecordedPutt, RecordedRound } from '../../sim/index.ts';
import { NEEDED_PRACTICE_COLUMNS, PRACTICE_COLUMNS, practiceRows, readPracticeLines } from './csvPractice.ts';
import {
  type CsvLine,
  FEET_COLUMNS,
  NEEDED_PUTT_COLUMNS,
  PUTT_COLUMNS,
  puttRows,
  readPuttLines,
} from './csvPutts.ts';
import { type ImportFile, type ReadFile, refuseFile } from './importFile.ts';
import { quoted } from './reasons.ts';
import { perTable } from './tables.ts';
import { each, type Work } from './work.ts';

const NEW_LINE = '\r\n';
const MARK = '\ufeff';
const DELIMITERS = [',', ';', '\t'] as const;

const KNOWN = {
  puttsCsv: new Set([...Object.keys(PUTT_COLUMNS), ...Object.keys(FEET_COLUMNS)]),
  practiceCsv: new Set([...Object.keys(PRACTICE_COLUMNS), 'distance_ft']),
};
const NEEDED = { puttsCsv: NEEDED_PUTT_COLUMNS, practiceCsv: NEEDED_PRACTICE_COLUMNS };

/** Lines made into text at a time. */
const BATCH = 1000;

/** The text of a file, in pieces for a Blob. */
function* csvText(columns: object, rows: readonly string[][]): Work<string[]> {
  const pieces = [MARK];
  const all = [Object.keys(columns), ...rows];
  for (let from = 0; from < all.length; from += BATCH) {
    yield from / all.length;
    pieces.push(Papa.unparse(all.slice(from, from + BATCH), { newline: NEW_LINE }), NEW_LINE);
  }
  return pieces;
}

/** All putts with their rounds as the text of a file, in pieces. */
export function* puttsCsv(rounds: Iterable<RecordedRound>, putts: Iterable<RecordedPutt>): Work<string[]> {
  const rows = yield* puttRows(rounds, putts);
  return yield* csvText(PUTT_COLUMNS, rows);
}

/** All practice sets as the text of a file, in pieces. */
export const practiceCsv = (sets: Iterable<PracticeSet>): Work<string[]> =>
  csvText(PRACTICE_COLUMNS, practiceRows(sets));

const nameOf = (cell: string): string =>
  cell
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');

/** Which delimiter makes most known columns of the first line. */
const delimiterOf = (text: string, lineEnd: string): string => {
  const first = text.split(lineEnd, 1)[0];
  const known = new Set([...KNOWN.puttsCsv, ...KNOWN.practiceCsv]);
  const columns = (delimiter: string): number =>
    first.split(delimiter).filter((cell) => known.has(nameOf(cell.replaceAll('"', '')))).length;
  return [...DELIMITERS].sort((a, b) => columns(b) - columns(a))[0];
};

/** The first line end decides; the header, which comes first, has none within its cells. */
const lineEndOf = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

interface Sheet {
  readonly header: readonly string[];
  /** Below the header, blank ones left out. */
  readonly rows: readonly { readonly number: number; readonly cells: readonly string[] }[];
  /** Rows, as numbered, whose quotes are wrong. */
  readonly badQuotes: ReadonlySet<number>;
  /** Row of a quote that nothing closes: what follows it cannot be told apart. */
  readonly openQuote: number | undefined;
}

const sheetOf = (text: string): Sheet => {
  const newline = lineEndOf(text) as '\r\n' | '\n' | '\r';
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: delimiterOf(text, newline), newline });
  const [header = [], ...rows] = data;
  const quotes = errors.filter(({ type }) => type === 'Quotes');
  const open = quotes.find(({ code }) => code === 'MissingQuotes');
  return {
    header: header.map(nameOf),
    rows: rows
      .map((cells, index) => ({ number: index + 2, cells }))
      .filter(({ cells }) => cells.some((cell) => cell.trim() !== '')),
    badQuotes: new Set(quotes.map(({ row }) => (row ?? 0) + 1)),
    openQuote: open && (open.row ?? 0) + 1,
  };
};

const lacking = (kind: keyof typeof NEEDED, columns: ReadonlySet<string>): string[] =>
  NEEDED[kind].filter((names) => !names.some((name) => columns.has(name))).map((names) => names.join(' or '));

const HOW_MANY = 'A comma within a cell needs quotes round the cell; a line cut short must be completed.';

const lineOf = (sheet: Sheet, { number, cells }: Sheet['rows'][number]): CsvLine => {
  const { header } = sheet;
  // Spreadsheets may leave out nothing, or add empty cells at the end: only those are let pass.
  const extra = cells.slice(header.length).some((cell) => cell.trim() !== '');
  const problem = sheet.badQuotes.has(number)
    ? 'Got quotes that do not match, expected each quote within a quoted cell doubled. Correct the quotes.'
    : cells.length < header.length || extra
      ? `Got ${cells.length} cells, expected ${header.length} as in the header. ${HOW_MANY}`
      : undefined;
  return {
    place: `row ${number}`,
    texts: new Map(header.map((name, index) => [name, cells[index] ?? ''])),
    problem,
  };
};

const EXPECTED = `the columns of our putts (${NEEDED_PUTT_COLUMNS.flat().join(', ')}) or of practice sets (${NEEDED_PRACTICE_COLUMNS.flat().join(', ')})`;

/** A CSV file taken apart. */
export function* readCsv(text: string): Work<ReadFile> {
  const sheet = sheetOf(text);
  const columns = new Set(sheet.header);
  const kind = columns.has('attempts') ? 'practiceCsv' : 'puttsCsv';
  const missing = lacking(kind, columns);
  if (missing.length === NEEDED[kind].length || (kind === 'puttsCsv' && !columns.has('hole')))
    return refuseFile(
      `Got a file whose first line is ${quoted(sheet.header.join(', '))}, expected a backup of this page or ${EXPECTED}. Put the names of the columns in the first line.`,
    );
  if (missing.length > 0)
    return refuseFile(
      `Got no column ${missing.join(', no column ')}, expected at least ${NEEDED[kind].map((names) => names.join(' or ')).join(', ')}. Add it, or export a file here to see how it looks.`,
    );
  const doubled = sheet.header.find((name, index) => name !== '' && sheet.header.indexOf(name) !== index);
  if (doubled !== undefined)
    return refuseFile(`Got the column ${quoted(doubled)} twice, expected it once. Take one out.`);
  if (sheet.openQuote !== undefined)
    return refuseFile(
      `Got a quote in row ${sheet.openQuote} that is never closed, expected a second one. Close it: what follows it cannot be told apart.`,
    );
  const unknown = sheet.header.filter((name) => name !== '' && !KNOWN[kind].has(name));
  const lines: CsvLine[] = [];
  yield* each(sheet.rows, (row) => lines.push(lineOf(sheet, row)), [0, 0.4]);
  const found: ImportFile['found'] =
    kind === 'puttsCsv'
      ? { ...perTable(() => []), ...(yield* readPuttLines(lines, columns)) }
      : { ...perTable(() => []), practice: yield* readPracticeLines(lines) };
  const remarks =
    unknown.length > 0 ? [`Columns not known and not read: ${unknown.map(quoted).join(', ')}.`] : [];
  return { ok: true, file: { kind, found, remarks } };
}
