/**
 * Putts as lines of a CSV file, the fields of their round on each: a line alone says where and when. Documented in CSV.md.
 * A round without putts has one line of the kind "no putt". Lengths in metres, as records have them; in feet they would not come
 * back the same, so feet are read (a file written by hand) and never written.
 * The last column is a word that is never empty and never the beginning of another: a line cut short is told by it.
 */
import { feetToMetres, type RecordedMiss, type RecordedPutt, type RecordedRound } from '../../sim/index.ts';
import { crc32Of } from './crc32.ts';
import {
  dayCell,
  momentCell,
  numberCell,
  type RowRead,
  readRow,
  textCell,
  type Values,
  wholeCell,
  wholesCell,
  wordCell,
  writeRow,
  yesNoCell,
} from './csvCells.ts';
import { cellsOf, columnOf, lineValues, partOf } from './csvColumns.ts';
import {
  BREAK_WORDS,
  CLIMB_WORDS,
  KIND_WORDS,
  PACE_WORDS,
  REACH_WORDS,
  SIDE_WORDS,
  SLOPE_WORDS,
} from './csvWords.ts';
import type { FoundRecord } from './importFile.ts';
import { inOrderOfPlay } from './records.ts';
import { same } from './same.ts';
import { each, type Work } from './work.ts';

const ofRound = columnOf<RecordedRound, 'round'>('round');
const ofPutt = columnOf<RecordedPutt, 'putt'>('putt');
const ofMiss = columnOf<RecordedMiss, 'miss'>('miss');

/** In the order of the file, which is a promise: a new one goes before `kind`. */
export const PUTT_COLUMNS = {
  day: ofRound('day', dayCell),
  course: ofRound('course', textCell),
  hole: ofPutt('hole', wholeCell),
  stroke: ofPutt('stroke', wholeCell),
  distance_m: ofPutt('distance', numberCell),
  climb: ofPutt('climb', wordCell(CLIMB_WORDS)),
  breaks: ofPutt('breaks', wordCell(BREAK_WORDS)),
  slope_felt: ofPutt('slopeFelt', wordCell(SLOPE_WORDS)),
  pace_meant: ofPutt('paceMeant', wordCell(PACE_WORDS)),
  started_as_meant: ofPutt('startedAsMeant', yesNoCell),
  pace_as_meant: ofPutt('paceAsMeant', yesNoCell),
  holed: ofPutt('holed', yesNoCell),
  miss_side: ofMiss('side', wordCell(SIDE_WORDS)),
  miss_reach: ofMiss('reach', wordCell(REACH_WORDS)),
  leave_m: ofMiss('leave', numberCell),
  holes_in_round: ofRound('holes', wholeCell),
  green_speed_m: ofRound('greenSpeed', numberCell),
  holes_without_putt: ofRound('withoutPutt', wholesCell),
  round_started: ofRound('startedAt', momentCell),
  round_ended: ofRound('endedAt', momentCell),
  recorded: ofPutt('recordedAt', momentCell),
  round_id: ofRound('id', textCell),
  putt_id: ofPutt('id', textCell),
  kind: ofPutt('kind', wordCell(KIND_WORDS)),
};
const WRITTEN = cellsOf(PUTT_COLUMNS);
/** Read in place of those in metres. */
export const FEET_COLUMNS = { distance_ft: numberCell, leave_ft: numberCell, green_speed_ft: numberCell };
const READ = { ...WRITTEN, ...FEET_COLUMNS };
type PuttValues = Values<typeof READ>;

/** Without these no line can be read; each entry is one column or another. */
export const NEEDED_PUTT_COLUMNS: readonly (readonly string[])[] = [
  ['day'],
  ['hole'],
  ['distance_m', 'distance_ft'],
  ['holed'],
];

/** Lines of all rounds and putts, the oldest round first. Putts without a round have no line. */
export function* puttRows(rounds: Iterable<RecordedRound>, putts: Iterable<RecordedPutt>): Work<string[][]> {
  const byRound = new Map<string, RecordedPutt[]>();
  for (const putt of putts) {
    const group = byRound.get(putt.roundId);
    if (group === undefined) byRound.set(putt.roundId, [putt]);
    else group.push(putt);
  }
  const inOrder = [...rounds].sort((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : a.startedAt - b.startedAt,
  );
  const rows: string[][] = [];
  yield* each(inOrder, (round) => {
    const played = inOrderOfPlay(byRound.get(round.id) ?? []);
    const add = (parts: { putt: object; miss?: object | undefined }): void => {
      rows.push(writeRow(WRITTEN, lineValues(PUTT_COLUMNS, { round, ...parts })));
    };
    if (played.length === 0) add({ putt: { kind: 'noPutt' } });
    for (const putt of played) add({ putt, miss: putt.miss });
  });
  return rows;
}

/** Metres of a column and its twin in feet; both at once contradict each other sooner or later. */
const metresOf = (
  metres: number | undefined,
  feet: number | undefined,
): { readonly value?: number; readonly both: boolean } =>
  metres !== undefined && feet !== undefined
    ? { both: true }
    : { value: metres ?? (feet === undefined ? undefined : feetToMetres(feet)), both: false };

/** Noon UTC of a day, for lines that say no moment: the same each time, so that a second import changes nothing. */
const noonOf = (day: string | undefined): number | undefined => {
  const noon = Date.parse(`${day}T12:00:00Z`);
  return Number.isNaN(noon) ? undefined : noon;
};

/** The round of a line by its own fields, for a file made by hand without ids. */
const roundIdOf = ({ round_id, day, course }: PuttValues): string =>
  round_id ?? `csv-${day}-${crc32Of(course ?? '')}`;

const foundRound = (values: PuttValues, hasEnd: boolean): Record<string, unknown> => {
  const startedAt = values.round_started ?? noonOf(values.day);
  return {
    ...partOf(PUTT_COLUMNS, 'round', values),
    id: roundIdOf(values),
    startedAt,
    endedAt: hasEnd ? values.round_ended : startedAt,
    holes: values.holes_in_round ?? 18,
    greenSpeed: metresOf(values.green_speed_m, values.green_speed_ft).value,
    withoutPutt: values.holes_without_putt ?? [],
  };
};

const foundMiss = (values: PuttValues): Record<string, unknown> | undefined => {
  const miss = {
    ...partOf(PUTT_COLUMNS, 'miss', values),
    leave: metresOf(values.leave_m, values.leave_ft).value,
  };
  return Object.values(miss).every((value) => value === undefined) ? undefined : miss;
};

const foundPutt = (values: PuttValues, roundId: string): Record<string, unknown> => {
  const stroke = values.stroke ?? 1;
  return {
    ...partOf(PUTT_COLUMNS, 'putt', values),
    id: values.putt_id ?? `${roundId.slice(0, 48)}-h${values.hole}-s${stroke}`,
    roundId,
    stroke,
    kind: values.kind ?? 'putt',
    distance: metresOf(values.distance_m, values.distance_ft).value,
    miss: foundMiss(values),
    recordedAt: values.recorded ?? values.round_started ?? noonOf(values.day),
  };
};

/** A line of the file: its texts by column, or what is wrong with it as a line. */
export interface CsvLine {
  readonly place: string;
  readonly texts: ReadonlyMap<string, string>;
  readonly problem: string | undefined;
}

const bothUnits = (values: PuttValues): string | undefined => {
  const pairs = [
    ['distance', values.distance_m, values.distance_ft],
    ['leave', values.leave_m, values.leave_ft],
    ['green_speed', values.green_speed_m, values.green_speed_ft],
  ] as const;
  const twice = pairs.find(([, metres, feet]) => metresOf(metres, feet).both);
  return twice && `Got ${twice[0]} in metres and in feet, expected one of them. Empty the other.`;
};

/** Rounds and putts of the lines; the first line of a round speaks for it, and others must say the same. */
export function* readPuttLines(
  lines: readonly CsvLine[],
  columns: ReadonlySet<string>,
): Work<{ readonly rounds: FoundRecord[]; readonly putts: FoundRecord[] }> {
  const hasEnd = columns.has('round_ended') || columns.has('round_id');
  const rounds = new Map<string, FoundRecord>();
  const putts: FoundRecord[] = [];
  yield* each(lines, ({ place, texts, problem: lineProblem }) => {
    const read: RowRead<typeof READ> = readRow(READ, texts);
    const { values } = read;
    const round = foundRound(values, hasEnd);
    const roundId = roundIdOf(values);
    const { kind } = values;
    const found = kind === 'noPutt' ? round : foundPutt(values, roundId);
    const first = rounds.get(roundId);
    const differs =
      first === undefined || same(first.found, round)
        ? undefined
        : `Got other fields of its round than in ${first.place} (day, course, holes, green speed, start, end or holes without a putt), expected the same on each line of a round.`;
    const problem = lineProblem ?? (read.ok ? undefined : read.problem) ?? bothUnits(values) ?? differs;
    if (first === undefined && problem === undefined) rounds.set(roundId, { place, found: round });
    if (kind !== 'noPutt' || problem !== undefined) putts.push({ place, found, problem });
  });
  return { rounds: [...rounds.values()], putts };
}
