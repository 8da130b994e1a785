/** Sentences of the data screen: what is on the device, backups, storage, what an import does. Leaves out: numbers (format.ts). */
import { puttingDrill } from '../../drills/putting-drills.ts';
import type { RecordedPutt, RecordedRound } from '../../sim/index.ts';
import {
  BREAK_WORDS,
  CLIMB_WORDS,
  GROUND_WORDS,
  KIND_WORDS,
  PACE_WORDS,
  REACH_WORDS,
  SIDE_WORDS,
  SLOPE_WORDS,
} from '../store/csvWords.ts';
import type { Verdict } from '../store/importDraft.ts';
import { changedFields, type ImportPlan, type PlanLine, writtenBy } from '../store/importPlan.ts';
import type { StorageState } from '../store/persistence.ts';
import type { Plan } from '../store/planSchema.ts';
import { quoted } from '../store/reasons.ts';
import type { KeptSet } from '../store/schema.ts';
import type { AnyRecord, PerTable, RecordOf, TableName } from '../store/tables.ts';
import { formatDay, formatGreenSpeed, formatLeave, formatLength, type Units } from './format.ts';
import { measurementLine } from './measureKept.ts';

const DAY = 86_400_000;
/** A backup older than this is worth a word, days. */
const OLD = 14;

const grouped = (count: number): string => count.toLocaleString('en');

/** "1 putt", "1,204 putts". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${grouped(count)} ${count === 1 ? one : many}`;

/** "a", "a and b", "a, b and c". */
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** How many of each there are. */
export type Holding = PerTable<number>;

/** "1,204 putts of 38 rounds, 12 practice sets and 5 reading sets"; empty when there is nothing. */
export const holdingWords = ({
  rounds,
  putts,
  practice,
  readSets,
  drillResults,
  measurements,
  plans,
}: Holding): string =>
  listed([
    ...(rounds + putts > 0 ? [`${counted(putts, 'putt')} of ${counted(rounds, 'round')}`] : []),
    ...(practice > 0 ? [counted(practice, 'practice set')] : []),
    ...(readSets > 0 ? [counted(readSets, 'reading set')] : []),
    ...(drillResults > 0 ? [counted(drillResults, 'drill score')] : []),
    ...(measurements > 0 ? [counted(measurements, 'measurement')] : []),
    ...(plans > 0 ? [counted(plans, 'plan of a week', 'plans of weeks')] : []),
  ]);

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
    holding.practice,
    holding.readSets,
    holding.drillResults,
    holding.measurements,
    holding.plans,
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

export const TABLE_WORDS: Readonly<Record<TableName, string>> = {
  rounds: 'Round',
  putts: 'Putt',
  practice: 'Practice set',
  readSets: 'Reading set',
  drillResults: 'Drill score',
  measurements: 'Measurement',
  plans: 'Plan of a week',
};

const placeOf = ({ day, course }: RecordedRound): string => `${formatDay(day)}${course ? `, ${course}` : ''}`;

export interface Wording {
  readonly units: Units;
  /** Of a putt, from the file or from here. */
  readonly roundOf: (id: string) => RecordedRound | undefined;
}

const puttWords = (putt: RecordedPutt, { units, roundOf }: Wording): string => {
  const round = roundOf(putt.roundId);
  const where = round ? `${placeOf(round)}, hole ${putt.hole}` : `Hole ${putt.hole}`;
  const kind = putt.kind === 'putt' ? 'putt' : KIND_WORDS[putt.kind];
  const end = putt.holed ? ', holed' : putt.miss ? `, left ${formatLeave(putt.miss.leave, units)}` : '';
  return `${where}, ${kind} ${putt.stroke}: ${formatLength(putt.distance, units)}${end}`;
};

const WORDS_OF: {
  readonly [Table in TableName]: (record: RecordOf[Table], wording: Wording) => string;
} = {
  rounds: (round) => `${placeOf(round)}: ${round.holes} holes`,
  putts: puttWords,
  practice: ({ day, holed, attempts, distance }, { units }) =>
    `${formatDay(day)}: ${holed} of ${attempts} from ${formatLength(distance, units)}`,
  readSets: ({ day, drillName, answers, size }) =>
    `${formatDay(day)}, ${drillName}: ${answers.length} of ${size} putts answered`,
  drillResults: ({ day, drillId, score, ground }) =>
    `${formatDay(day)}, ${puttingDrill(drillId)?.name ?? drillId}, ${GROUND_WORDS[ground]}: ${score}`,
  measurements: (measurement, { units }) => {
    const { what, value } = measurementLine(measurement, units);
    return `${formatDay(measurement.day)}, ${what}: ${value}`;
  },
  plans: ({ start, sessions }) =>
    `Week of ${formatDay(start)}: ${counted(sessions.length, 'session')}, ${doneWords(sessions)}`,
};

const doneWords = (sessions: Plan['sessions']): string => {
  const items = sessions.flatMap(({ items: some }) => some);
  const scores = items.flatMap(({ score }) => score ?? []);
  const done = items.filter(({ doneOn }) => doneOn !== undefined).length;
  return `${done} of ${items.length} done${scores.length > 0 ? `, scores ${scores.join(', ')}` : ''}`;
};

const FIELD_WORDS: Readonly<Record<string, string>> = {
  startedAt: 'started',
  endedAt: 'ended',
  greenSpeed: 'green speed',
  withoutPutt: 'holes without a putt',
  roundId: 'round',
  slopeFelt: 'slope felt',
  paceMeant: 'pace meant',
  startedAsMeant: 'started as meant',
  paceAsMeant: 'pace as meant',
  recordedAt: 'written down',
  drillName: 'drill',
  drillId: 'drill',
  madeAt: 'made',
  madeOn: 'day of making',
  revision: 'changes so far',
};

/** Pieces of a record that is none, enough to find it by: numbers and texts, without ids and moments. */
const MOST_PIECES = 5;
const foundWords = (found: unknown): string => {
  if (typeof found !== 'object' || found === null) return quoted(found);
  const pieces = Object.entries(found).filter(
    ([name, value]) => (typeof value === 'number' || typeof value === 'string') && !/(id|Id|At)$/.test(name),
  );
  if (pieces.length === 0) return quoted(found);
  const told = pieces
    .slice(0, MOST_PIECES)
    .map(([name, value]) => `${FIELD_WORDS[name] ?? name} ${quoted(value)}`);
  return told.join(', ');
};

/** A line's record in words; what was found, where no record came of it. */
export const recordWords = ({ table, record, found }: PlanLine, wording: Wording): string =>
  record === undefined
    ? foundWords(found)
    : (WORDS_OF[table] as (record: AnyRecord, wording: Wording) => string)(record, wording);

const PLAIN_WORDS: Readonly<Record<string, string>> = {
  ...CLIMB_WORDS,
  ...BREAK_WORDS,
  ...SLOPE_WORDS,
  ...PACE_WORDS,
  ...SIDE_WORDS,
  ...REACH_WORDS,
  ...KIND_WORDS,
  ...GROUND_WORDS,
};
/** Fields whose text is a word of ours; any other text is the person's own. */
const WORDED = new Set(['climb', 'breaks', 'slopeFelt', 'paceMeant', 'kind', 'ground', 'side', 'reach']);

const momentWords = (moment: number): string =>
  new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' }).format(moment);

const valueWords = (field: string, value: unknown, units: Units): string => {
  if (value === undefined) return 'not recorded';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    if (field === 'distance') return formatLength(value, units);
    if (field === 'leave') return formatLeave(value, units);
    if (field === 'greenSpeed') return formatGreenSpeed(value);
    return field.endsWith('At') ? momentWords(value) : String(value);
  }
  if (typeof value === 'string') return WORDED.has(field) ? (PLAIN_WORDS[value] ?? value) : value;
  if (field === 'questions') return counted((value as KeptSet['questions']).length, 'question');
  if (field === 'answers') return counted((value as KeptSet['answers']).length, 'answer');
  if (field === 'sessions') return doneWords(value as Plan['sessions']);
  if (Array.isArray(value))
    return value.length === 0
      ? 'none'
      : typeof value[0] === 'object'
        ? counted(value.length, 'entry', 'entries')
        : value.join(', ');
  return Object.entries(value as object)
    .map(([name, part]) => `${name} ${valueWords(name, part, units)}`)
    .join(', ');
};

/** "distance: 12 ft here, 14 ft in the file", one for each field; exact numbers where the rounded ones look alike. */
export const changeWords = (here: AnyRecord, record: AnyRecord, units: Units): string[] =>
  changedFields(here, record).map(({ field, before, after }) => {
    const [old, now] = [valueWords(field, before, units), valueWords(field, after, units)];
    const alike = old === now;
    const name = FIELD_WORDS[field] ?? field;
    if (!alike) return `${name}: ${old} here, ${now} in the file`;
    if (field === 'answers') return `${name}: what an answer cost`;
    return typeof before === 'object' && typeof after === 'object'
      ? `${name}: not the same here and in the file`
      : `${name}: ${quoted(before)} here, ${quoted(after)} in the file`;
  });
