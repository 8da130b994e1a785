/**
 * Records in words, for the table of an import: what each is, and what differs between the one in the file and the one here. Leaves out:
 * sentences of the screen (data.ts), numbers (format.ts).
 */
import { PRACTICE_COLUMNS } from '../../store/csvPractice.ts';
import { PUTT_COLUMNS } from '../../store/csvPutts.ts';
import { changedFields, type PlanLine } from '../../store/importPlan.ts';
import type { Plan } from '../../store/planSchema.ts';
import { quoted } from '../../store/reasons.ts';
import type { KeptSet } from '../../store/schema.ts';
import type { AnyRecord } from '../../store/tables.ts';
import { formatGreenSpeed, formatLeave, formatLength, type Units } from '../../text/format.ts';
import { measurementLine } from '../../text/measureKept.ts';
import { counted } from './counted.ts';
import { doneWords, TABLE_WORDS, type Wording } from './tableWords.ts';

/** Names of fields that are no words by themselves; any other is taken apart at its capitals. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  startedAt: 'started',
  endedAt: 'ended',
  withoutPutt: 'holes without a putt',
  roundId: 'round',
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
const fieldWords = (name: string): string =>
  (Object.hasOwn(FIELD_WORDS, name) ? FIELD_WORDS[name] : undefined) ??
  name.replace(/(?<=[a-z])[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);

/** Pieces of a record that is none, enough to find it by: numbers and texts, without ids and moments. */
const MOST_PIECES = 5;
const foundWords = (found: unknown): string => {
  if (typeof found !== 'object' || found === null) return quoted(found);
  const pieces = Object.entries(found).filter(
    ([name, value]) => (typeof value === 'number' || typeof value === 'string') && !/(id|Id|At)$/.test(name),
  );
  if (pieces.length === 0) return quoted(found);
  const told = pieces.slice(0, MOST_PIECES).map(([name, value]) => `${fieldWords(name)} ${quoted(value)}`);
  return told.join(', ');
};

/** A line's record in words; what was found, where no record came of it. */
export const recordWords = ({ table, record, found }: PlanLine, wording: Wording): string =>
  record === undefined
    ? foundWords(found)
    : (TABLE_WORDS[table].line as (record: AnyRecord, wording: Wording) => string)(record, wording);

/** Fields whose text is a word of ours, with the words our files have for it; any other text is the person's own. */
const WORDED = new Map(
  Object.values({ ...PUTT_COLUMNS, ...PRACTICE_COLUMNS }).flatMap(({ field, cell }) =>
    'words' in cell ? [[field as string, new Map(Object.entries<string>(cell.words))] as const] : [],
  ),
);

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
  if (typeof value === 'string') return WORDED.get(field)?.get(value) ?? value;
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
    const name = fieldWords(field);
    if (!alike) return `${name}: ${old} here, ${now} in the file`;
    if (field === 'answers') return `${name}: what an answer cost`;
    return typeof before === 'object' && typeof after === 'object'
      ? `${name}: not the same here and in the file`
      : `${name}: ${quoted(before)} here, ${quoted(after)} in the file`;
  });
