/**
 * Columns of our CSV files, each with the field of a record it holds: one list says what is written and what is read. Leaves out: cells
 * (csvCells.ts), which columns there are and what is made up where one is missing (csvPutts.ts, csvPractice.ts).
 */
import type { Cell, Values } from './csvCells.ts';

interface Column<Part extends string = string, Of = Cell<unknown>> {
  /** What the field is of: the record itself, or a part of it. */
  readonly part: Part;
  readonly field: string;
  readonly cell: Of;
}
interface Columns<Part extends string> {
  readonly [name: string]: Column<Part>;
}
type CellsOf<Of extends Columns<string>> = { readonly [Name in keyof Of]: Of[Name]['cell'] };

/** Makes columns of one part. */
export const columnOf =
  <Kept extends object, Part extends string>(part: Part) =>
  <Of extends Cell<unknown>>(field: keyof Kept & string, cell: Of): Column<Part, Of> => ({
    part,
    field,
    cell,
  });

export const cellsOf = <Of extends Columns<string>>(columns: Of): CellsOf<Of> =>
  Object.fromEntries(Object.entries(columns).map(([name, { cell }]) => [name, cell])) as CellsOf<Of>;

/** The values of a line. @param parts those that are there; an empty list has no cell */
export const lineValues = <Part extends string, Of extends Columns<Part>>(
  columns: Of,
  parts: { readonly [Name in Part]?: object | undefined },
): Values<CellsOf<Of>> =>
  Object.fromEntries(
    Object.entries(columns).map(([name, { part, field }]) => {
      const value = (parts[part] as Record<string, unknown> | undefined)?.[field];
      return [name, Array.isArray(value) && value.length === 0 ? undefined : value];
    }),
  ) as Values<CellsOf<Of>>;

/** The fields of a part as a line has them; those of an empty cell hold undefined. */
export const partOf = <Part extends string>(
  columns: Columns<Part>,
  wanted: Part,
  values: object,
): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(columns).flatMap(([name, { part, field }]) =>
      part === wanted ? [[field, (values as Record<string, unknown>)[name]]] : [],
    ),
  );
