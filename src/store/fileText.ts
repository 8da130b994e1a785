/**
 * The text of a file, whatever program saved it: UTF-8 with or without a byte order mark, UTF-16 with one. Anything else is
 * refused rather than guessed at: a wrong guess changes names silently. And which reader a text is for.
 */
import { readBackup } from './backup.ts';
import { readCsv } from './csv.ts';
import { type ReadFile, refuseFile } from './importFile.ts';
import type { MigrationContext } from './migrations.ts';
import type { Work } from './work.ts';

/** Ten times a backup of 100,000 putts, bytes: more than that is another file by mistake. */
export const LARGEST_FILE = 300_000_000;

export type FileText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: string };

const encodingOf = (bytes: Uint8Array): string =>
  bytes[0] === 0xff && bytes[1] === 0xfe
    ? 'utf-16le'
    : bytes[0] === 0xfe && bytes[1] === 0xff
      ? 'utf-16be'
      : 'utf-8';

const WRONG_ENCODING =
  'Got a file that is not text in UTF-8, expected UTF-8 (or UTF-16 with a byte order mark). In a spreadsheet choose “CSV UTF-8” when saving; a damaged file must be fetched again.';

export const textOf = (bytes: Uint8Array): FileText => {
  try {
    const text = new TextDecoder(encodingOf(bytes), { fatal: true }).decode(bytes);
    // UTF-16 without a mark passes for UTF-8 with a zero beside each letter; no file of ours has one.
    if (text.includes('\0')) return { ok: false, problem: WRONG_ENCODING };
    if (text.trim() === '')
      return {
        ok: false,
        problem: 'Got an empty file, expected a backup or a CSV file. Choose another one.',
      };
    return { ok: true, text };
  } catch {
    return { ok: false, problem: WRONG_ENCODING };
  }
};

/** A file's bytes taken apart: a backup begins with a brace or bracket, anything else is read as CSV. */
export function* readImportFile(bytes: Uint8Array, context: MigrationContext): Work<ReadFile> {
  const found = textOf(bytes);
  if (!found.ok) return refuseFile(found.problem);
  return /^\s*[{[]/.test(found.text) ? yield* readBackup(found.text, context) : yield* readCsv(found.text);
}
