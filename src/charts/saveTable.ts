/** A chart's figures as a CSV file. Leaves out: records as CSV (store/csv.ts), which have columns of their own. */
import { saveFile } from '../controls/saveFile.ts';

export interface FigureTable {
  /** Column names with their units. */
  readonly head: readonly string[];
  /** Cells as shown; the first names its row and is unique. */
  readonly rows: readonly (readonly string[])[];
}

export const saveTable = async ({ head, rows }: FigureTable, fileName: string): Promise<void> => {
  const { default: papaparse } = await import('papaparse');
  // A cell that begins like a formula is written as text: spreadsheets would run it.
  const text = papaparse.unparse([[...head], ...rows.map((row) => [...row])], { escapeFormulae: true });
  // The mark tells spreadsheets that the letters are UTF-8.
  saveFile(`${fileName}.csv`, new Blob([`\uFEFF${text}\r\n`], { type: 'text/csv;charset=utf-8' }));
};
