/**
 * Records in words, for the table of an import: what each is, and what differs between the one in the file and the one here. Leaves out:
 * sentences of the screen (data.ts), numbers (format.ts).
 */
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
import { changedFields, type PlanLine } from '../store/importPlan.ts';
import type { Plan } from '../store/planSchema.ts';
import { quoted } from '../store/reasons.ts';
import type { KeptSet } from '../store/schema.ts';
import type { AnyRecord, RecordOf, TableName } from '../store/tables.ts';
import { counted } from './data.ts';
import { formatDay, formatGreenSpeed, formatLeave, formatLength, type Units } from './format.ts';
import { measurementLine } from './measureKept.ts';

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
  costs: 'what errors cost',
  forwards: 'readings forwards',
  left: 'readings to the left',
  pairs: 'readings',
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

/** Fields whose numbers say nothing to a person one by one. */
const INNER = new Set([
  'rolls',
  'pairs',
  'forwards',
  'left',
  'gates',
  'walks',
  'costs',
  'test',
  'grass',
  'carpet',
]);

/** A field of a measurement or a plan that is told as a whole; undefined: told like any other. */
const wholeWords = (
  field: string,
  { here, record, units }: { here: AnyRecord; record: AnyRecord; units: Units },
): string | undefined => {
  if (field === 'result' && 'by' in here && 'by' in record) {
    const [old, now] = [measurementLine(here, units).value, measurementLine(record, units).value];
    return old === now
      ? 'what was made of it: not quite the same here and in the file'
      : `value: ${old} here, ${now} in the file`;
  }
  return INNER.has(field) ? `${FIELD_WORDS[field] ?? field}: not the same here and in the file` : undefined;
};

/** "distance: 12 ft here, 14 ft in the file", one for each field; exact numbers where the rounded ones look alike. */
export const changeWords = (here: AnyRecord, record: AnyRecord, units: Units): string[] =>
  changedFields(here, record).map(({ field, before, after }) => {
    const whole = wholeWords(field, { here, record, units });
    if (whole !== undefined) return whole;
    const [old, now] = [valueWords(field, before, units), valueWords(field, after, units)];
    const alike = old === now;
    const name = FIELD_WORDS[field] ?? field;
    if (!alike) return `${name}: ${old} here, ${now} in the file`;
    if (field === 'answers') return `${name}: what an answer cost`;
    return typeof before === 'object' && typeof after === 'object'
      ? `${name}: not the same here and in the file`
      : `${name}: ${quoted(before)} here, ${quoted(after)} in the file`;
  });
