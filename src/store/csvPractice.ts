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
import { cellsOf, columnOf, lineValues, partOf } from './csvColumns.ts';
import type { CsvLine } from './csvPutts.ts';
import { BREAK_WORDS, CLIMB_WORDS, GROUND_WORDS } from './csvWords.ts';
import type { FoundRecord } from './importFile.ts';
import { each, type Work } from './work.ts';

const ofSet = columnOf<PracticeSet, 'set'>('set');
const ofMisses = columnOf<NonNullable<PracticeSet['misses']>, 'misses'>('misses');

/** In the order of the file, which is a promise: a new one goes before `ground`. */
export const PRACTICE_COLUMNS = {
  day: ofSet('day', dayCell),
  distance_m: ofSet('distance', numberCell),
  attempts: ofSet('attempts', wholeCell),
  holed: ofSet('holed', wholeCell),
  missed_high: ofMisses('high', wholeCell),
  missed_low: ofMisses('low', wholeCell),
  missed_short: ofMisses('short', wholeCell),
  missed_past: ofMisses('past', wholeCell),
  climb: ofSet('climb', wordCell(CLIMB_WORDS)),
  breaks: ofSet('breaks', wordCell(BREAK_WORDS)),
  note: ofSet('note', textCell),
  recorded: ofSet('recordedAt', momentCell),
  practice_id: ofSet('id', textCell),
  ground: ofSet('ground', wordCell(GROUND_WORDS)),
};
const WRITTEN = cellsOf(PRACTICE_COLUMNS);
const READ = { ...WRITTEN, distance_ft: numberCell };
type PracticeValues = Values<typeof READ>;

export const NEEDED_PRACTICE_COLUMNS: readonly (readonly string[])[] = [
  ['day'],
  ['distance_m', 'distance_ft'],
  ['attempts'],
  ['holed'],
];

/** Lines of all sets, the oldest first. */
export const practiceRows = (sets: Iterable<PracticeSet>): string[][] =>
  [...sets]
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.recordedAt - b.recordedAt))
    .map((set) => writeRow(WRITTEN, lineValues(PRACTICE_COLUMNS, { set, misses: set.misses })));

const foundSet = (values: PracticeValues, texts: ReadonlyMap<string, string>): Record<string, unknown> => {
  const misses = partOf(PRACTICE_COLUMNS, 'misses', values);
  const counted = Object.values(misses).some((count) => count !== undefined);
  return {
    ...partOf(PRACTICE_COLUMNS, 'set', values),
    // Of a file made by hand: the same line makes the same set, so that a second import changes nothing.
    id: values.practice_id ?? `csv-practice-${crc32Of(JSON.stringify([...texts].sort()))}`,
    recordedAt: values.recorded ?? Date.parse(`${values.day}T12:00:00Z`),
    distance:
      values.distance_m ?? (values.distance_ft === undefined ? undefined : feetToMetres(values.distance_ft)),
    misses: counted ? misses : undefined,
    ground: values.ground ?? 'grass',
  };
};

export function* readPracticeLines(lines: readonly CsvLine[]): Work<FoundRecord[]> {
  const sets: FoundRecord[] = [];
  yield* each(lines, ({ place, texts, problem }) => {
    const read = readRow(READ, texts);
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
