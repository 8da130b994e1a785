/** Sentences of the data screen: what is on the device, backups, storage, what an import does. Leaves out: its records (dataRecords.ts). */
import type { Verdict } from '../../store/importDraft.ts';
import { type ImportPlan, writtenBy } from '../../store/importPlan.ts';
import type { StorageState } from '../../store/persistence.ts';
import { type PerTable, TABLE_NAMES, type TableName } from '../../store/tables.ts';
import { formatDay } from '../../text/format.ts';
import { counted, grouped, listed } from './counted.ts';
import { TABLE_WORDS } from './tableWords.ts';

const DAY = 86_400_000;
/** A backup older than this is worth a word, days. */
const OLD = 14;

/** How many of each there are. */
export type Holding = PerTable<number>;

/** Tables told by themselves; putts are told with their rounds. */
const APART = TABLE_NAMES.filter((name) => name !== 'rounds' && name !== 'putts');

/** "1,204 putts of 38 rounds, 12 practice sets and 5 reading sets"; empty when there is nothing. */
export const holdingWords = (holding: Holding): string => {
  const of = (name: TableName): string =>
    counted(holding[name], TABLE_WORDS[name].one, TABLE_WORDS[name].many);
  const played = holding.rounds + holding.putts > 0 ? [`${of('putts')} of ${of('rounds')}`] : [];
  return listed([...played, ...APART.filter((name) => holding[name] > 0).map(of)]);
};

/** What a backup holds. */
export const BACKUP_HOLDS = listed(
  TABLE_NAMES.map((name) => TABLE_WORDS[name].inBackup ?? TABLE_WORDS[name].many),
);

/** Whole calendar days from one day to another. */
const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY);

/** How old a backup is. @param made its day @param today both YYYY-MM-DD */
export const ageWords = (made: string, today: string): string => {
  const days = daysBetween(made, today);
  if (days < 0) return `is of ${formatDay(made)}, which is still to come by the clock of this device`;
  if (days === 0) return 'is of today';
  return days === 1 ? 'is of yesterday' : `is ${counted(days, 'day')} old`;
};

/** The first sentence of the page. @param backup day of the last one, undefined: never */
export const overviewSentence = (holding: Holding, backup: string | undefined, today: string): string => {
  const words = holdingWords(holding);
  // A single thing is, several are; a round goes with its putts.
  const things = [
    holding.putts + (holding.putts === 0 ? holding.rounds : 0),
    ...APART.map((name) => holding[name]),
  ];
  const verb = things.reduce((sum, count) => sum + count) === 1 ? 'is' : 'are';
  if (words === '') return 'Nothing is recorded on this device yet.';
  if (backup === undefined) return `${words} ${verb} on this device, and nowhere else: make a backup.`;
  const old = daysBetween(backup, today) > OLD;
  return `${words} ${verb} on this device; the last backup ${ageWords(backup, today)}${old ? ': make one' : ''}.`;
};

/** "3 KB", "12 MB": what takes room, to two figures. */
export const formatBytes = (bytes: number): string => {
  const [size, unit] =
    bytes < 1e6 ? [bytes / 1e3, 'KB'] : bytes < 1e9 ? [bytes / 1e6, 'MB'] : [bytes / 1e9, 'GB'];
  return `${size < 9.95 ? size.toFixed(1) : Math.round(size)} ${unit}`;
};

export const PERSISTED_WORDS: Readonly<Record<StorageState['persisted'], string>> = {
  yes: 'The browser keeps these records until you remove them.',
  no: 'The browser may clear these records away when the device runs short of room. Ask it to keep them; a browser may say no, so a backup is the safe way.',
  unknown: 'This browser does not say whether it may clear these records away: a backup is the safe way.',
};

export const roomWords = ({ used, room }: StorageState): string =>
  used === undefined
    ? ''
    : `In use by this page: ${formatBytes(used)}${room === undefined ? '' : ` of ${formatBytes(room)}`}.`;

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  refuse: 'Refused',
  change: 'Changed',
  keep: 'Kept as here',
  add: 'New',
  same: 'Already here',
};

/** What the plan would do, in a sentence. */
export const planSentence = (plan: ImportPlan): string => {
  const { add, change, keep, same, refuse } = plan.counts;
  const parts = [
    ...(add > 0 ? [`adds ${counted(add, 'record')}`] : []),
    ...(change > 0 ? [`changes ${grouped(change)}`] : []),
    ...(keep > 0 ? [`leaves ${grouped(keep)} that differ as they are here`] : []),
    ...(same > 0 ? [`finds ${grouped(same)} here already`] : []),
    ...(refuse > 0 ? [`refuses ${grouped(refuse)}`] : []),
  ];
  return parts.length === 0 ? 'This file holds no records.' : `This file ${listed(parts)}.`;
};

export const importWords = (plan: ImportPlan, leaveOut: boolean): string => {
  const records = counted(writtenBy(plan), 'record');
  return plan.counts.refuse > 0 && leaveOut ? `Import the other ${records}` : `Import ${records}`;
};
