/** What the mutated files are made from: a literal backup and its CSV files, names in them that must survive or be refused. */
import { makeBackup } from '../../src/store/backup.ts';
import { practiceCsv, puttsCsv } from '../../src/store/csv.ts';
import type { RecordsNow } from '../../src/store/recordsNow.ts';
import { atOnce } from '../../src/store/work.ts';
import { nowWith } from './imports.ts';
import { literalBackup } from './literalBackup.ts';
import { mutateBackup, mutateCsv } from './mutateFile.ts';

const records = (): RecordsNow => {
  const { tables } = literalBackup();
  tables.rounds[0].course = 'Größe <b>Heath</b>';
  tables.practice[0].note = 'putter B';
  return nowWith(tables);
};

const whole = records();
const BACKUP = atOnce(makeBackup(whole, 1764000000000)).join('');
const PUTTS = atOnce(puttsCsv(whole.rounds.values(), whole.putts.values())).join('');
const PRACTICE = atOnce(practiceCsv(whole.practice.values())).join('');

export interface MutatedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The nth of them: three backups to two CSV files. */
export const mutatedFile = (number: number): MutatedFile => {
  const seed = `mutation ${number}`;
  const turn = number % 5;
  if (turn < 3) return { name: `${number}.json`, bytes: mutateBackup(BACKUP, seed) };
  return { name: `${number}.csv`, bytes: mutateCsv(turn === 3 ? PUTTS : PRACTICE, seed) };
};
