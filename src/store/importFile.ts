/** What a file to import holds once it is taken apart, whatever its format: records not yet judged, each with its place. */
import type { PerTable } from './tables.ts';

export interface FoundRecord {
  /** Where the person finds it in the file: "putts, record 12" or "row 12". */
  readonly place: string;
  readonly found: unknown;
  /** Why no record could be made of it, when none could. */
  readonly problem?: string;
}

export interface ImportFile {
  readonly kind: 'backup' | 'puttsCsv' | 'practiceCsv';
  /** ms since 1970; of a backup. */
  readonly madeAt?: number;
  readonly found: PerTable<readonly FoundRecord[]>;
  /** Sentences about the file as a whole, such as columns that are not known. */
  readonly remarks: readonly string[];
}

/** A file taken apart, or a sentence that says what it got, what it expected and how to mend it. */
export type ReadFile =
  | { readonly ok: true; readonly file: ImportFile }
  | { readonly ok: false; readonly problem: string };

export const refuseFile = (problem: string): ReadFile => ({ ok: false, problem });
