/**
 * The fitted presets as benchmarks, and the list of all benchmarks. Answers for: names and sources. Leaves out: the numbers
 * (modelled-data.ts, made by tests/bench/make-benchmark-table.ts), how far the model misses the records (MODEL.md, section 3).
 */
import { presetOf } from '../player/presets.ts';
import { MODELLED_ROWS } from './modelled-data.ts';
import { type Benchmark, benchmarkOf } from './putting-benchmark.ts';
import { TOUR_RECORD } from './tour-record.ts';

/** The model of one preset. @throws when the preset or its rows are not there: a slip of ours */
function modelled(preset: string): Benchmark {
  const known = presetOf(preset);
  const rows = MODELLED_ROWS[preset];
  if (known === undefined || rows === undefined)
    throw new Error(`Got no preset or no rows '${preset}'; expected both. Run make-benchmark-table.ts.`);
  return benchmarkOf({
    id: `${preset}-modelled`,
    name: `${known.name} (modelled)`,
    source: `Our engine's putts of the preset "${known.name}" on planes of 0.5 to 3%, from all round the hole, each at 85% of its best pace. ${known.source}`,
    missed: rows.map(([feet, missed]) => [feet, missed]),
    threePutts: rows.map(([feet, , threePutt]) => [feet, threePutt]),
    laterPutts: rows.map(([feet, , , later]) => [feet, later]),
    range: [rows[0][0], rows[rows.length - 1][0]],
  });
}

/** The first is the one offered first. Ids are stable: settings keep them. */
export const BENCHMARKS: readonly Benchmark[] = [
  TOUR_RECORD,
  modelled('tour'),
  modelled('scratch'),
  modelled('handicap-6'),
  modelled('averaging-90'),
];

/** The benchmark of that id; undefined when there is none. */
export const puttingBenchmarkOf = (id: string): Benchmark | undefined =>
  BENCHMARKS.find((benchmark) => benchmark.id === id);
