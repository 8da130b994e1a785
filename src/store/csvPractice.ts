/** Practice sets as lines of a CSV file. Documented in CSV.md. The last column tells a line cut short, as in csvPutts.ts. */
import { feetToMetres, type PracticeSet } from '../../sim/index.ts';
import { crc32Of } from './crc32.ts';
import {
  dayCell,
  momentCell,
  numberCell,
  readRow,
  textCell,
  type Values,
  wholeCell,
  wordCell,
  writeRow,
} from './csvCells.ts';
import type { CsvLine } from './csvPutts.ts';
import { BREAK_WORDS, CLIMB_WORDS, GROUND_WORDS } from './csvWords.ts';
import type { FoundRecord } from './importFile.ts';
import { each, type Work } from './work.ts';

export const PRACTICE_COLUMNS = {
  day: dayCell,
  distance_m: numberCell,
  attempts: wholeCell,
  holed: wholeCell,
  missed_high: wholeCell,
  missed_low: wholeCell,
  missed_short: wholeCell,
  missed_past: wholeCell,
  climb: wordCell(CLIMB_WORDS),
  breaks: wordCell(BREAK_WORDS),
  note: textCell,
  recorded: momentCell,
  practice_id: textCell,
  ground: wordCell(GROUND_WORDS),
};
const READ_COLUMNS = { ...PRACTICE_COLUMNS, distance_ft: numberCell };
type PracticeValues = Values<typeof READ_COLUMNS>;

export const NEEDED_PRACTICE_COLUMNS: readonly (readonly string[])[] = [
  ['day'],
  ['distance_m', 'distance_ft'],
  ['attempts'],
  ['holed'],
];

const valuesOf = (set: PracticeSet): PracticeValues => ({
  day: set.day,
  distance_m: set.distance,
  attempts: set.attempts,
  holed: set.holed,
  missed_high: set.misses?.high,
  missed_low: set.misses?.low,
  missed_short: set.misses?.short,
  missed_past: set.misses?.past,
  climb: set.climb,
  breaks: set.breaks,
  note: set.note,
  recorded: set.recordedAt,
  practice_id: set.id,
  ground: set.ground,
});

/** Lines of all sets, the oldest first. */
export const practiceRows = (sets: Iterable<PracticeSet>): string[][] =>
  [...sets]
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.recordedAt - b.recordedAt))
    .map((set) => writeRow(PRACTICE_COLUMNS, valuesOf(set)));

const foundSet = (values: PracticeValues, texts: ReadonlyMap<string, string>): Record<string, unknown> => {
  const { missed_high: high, missed_low: low, missed_short: short, missed_past: past } = values;
  const counted = [high, low, short, past].some((count) => count !== undefined);
  return {
    // Of a file made by hand: the same line makes the same set, so that a second import changes nothing.
    id: values.practice_id ?? `csv-practice-${crc32Of(JSON.stringify([...texts].sort()))}`,
    day: values.day,
    recordedAt: values.recorded ?? Date.parse(`${values.day}T12:00:00Z`),
    distance:
      values.distance_m ?? (values.distance_ft === undefined ? undefined : feetToMetres(values.distance_ft)),
    attempts: values.attempts,
    holed: values.holed,
    misses: counted ? { high, low, short, past } : undefined,
    climb: values.climb,
    breaks: values.breaks,
    ground: values.ground ?? 'grass',
    note: values.note,
  };
};

export function* readPracticeLines(lines: readonly CsvLine[]): Work<FoundRecord[]> {
  const sets: FoundRecord[] = [];
  yield* each(lines, ({ place, texts, problem }) => {
    const read = readRow(READ_COLUMNS, texts);
    const { values } = read;
    const both =
      values.distance_m !== undefined && values.distance_ft !== undefined
        ? 'Got distance in metres and in feet, expected one of them. Empty the other.'
        : undefined;
    sets.push({
      place,
      found: foundSet(values, texts),
      problem: problem ?? (read.ok ? undefined : read.problem) ?? both,
    });
  });
  return sets;
}
