/** Two periods beside each other: changes with their intervals. Pure; shares 0..1, strokes. Leaves out: words. */
import {
  adjustedTrend,
  type Benchmark,
  bandIndex,
  type ChosenPutts,
  type Counted,
  choosePutts,
  type DistanceBand,
  METRE_ROUND_BANDS,
  type MeanTrend,
  meanTrend,
  type PuttFilter,
  ROUND_BANDS,
  type ShareTrend,
  shareTrend,
  strokesGained,
  type TwoPeriods,
} from '../../../sim/index.ts';
import type { Units } from '../../text/format.ts';
import type { ReviewRecord } from './record.ts';

/** Days, YYYY-MM-DD, both included; empty: no limit. */
export interface Period {
  readonly from: string;
  readonly to: string;
}
export type Periods = TwoPeriods<Period>;

export interface BandTrend {
  readonly band: DistanceBand;
  readonly before: Counted;
  readonly after: Counted;
  /** Of the plain shares; undefined: a period has no such putts. */
  readonly plain: ShareTrend | undefined;
  /** Of putts holed above the benchmark, per putt: what distance does not explain. Judged with all bands considered. */
  readonly adjusted: MeanTrend | undefined;
}

export interface TrendView {
  readonly periods: Periods;
  readonly rounds: TwoPeriods<number>;
  readonly putts: TwoPeriods<number>;
  /** Strokes gained per 18 holes; undefined: a period has no rounds. */
  readonly gained: MeanTrend | undefined;
  /** All from a tap-in on, then its parts. */
  readonly bands: readonly BandTrend[];
}

const dayBefore = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);

/**
 * The newest third of the chosen rounds and the rest; undefined: fewer than two days to set apart.
 * @param days of the rounds, oldest first
 */
export const newestThird = (days: readonly string[]): Periods | undefined => {
  const split = days[days.length - Math.max(1, Math.round(days.length / 3))];
  if (split === undefined) return undefined;
  // Rounds of one day stay together; all on the first day: nothing is before.
  if (split === days[0]) return undefined;
  return {
    before: { from: days[0], to: dayBefore(split) },
    after: { from: split, to: days[days.length - 1] },
  };
};

export interface TrendQuestion {
  readonly record: ReviewRecord;
  /** Its days are not looked at: the periods have theirs. */
  readonly filter: PuttFilter;
  readonly periods: Periods;
  readonly benchmark: Benchmark;
  readonly units: Units;
}

const within = (filter: PuttFilter, { from, to }: Period): PuttFilter => ({
  ...filter,
  from: from === '' ? undefined : from,
  to: to === '' ? undefined : to,
});

interface Judged {
  readonly holed: boolean;
  readonly benchmarkShare: number;
}

/** Putts of one band in one period: all counted, those of rounds judged too. */
interface Sorted {
  readonly counted: Counted;
  readonly judged: readonly Judged[];
}

/** One for each of these bands, which touch, and before them all together. */
const sorted = (
  { struck, sets }: ChosenPutts,
  parts: readonly DistanceBand[],
  benchmark: Benchmark,
): Sorted[] => {
  const judged = parts.map((): Judged[] => []);
  const practised = parts.map(() => ({ hits: 0, tries: 0 }));
  for (const { putt } of struck)
    judged[bandIndex(parts, putt.distance)]?.push({
      holed: putt.holed,
      benchmarkShare: benchmark.holedAt(putt.distance),
    });
  for (const set of sets) {
    const part = practised[bandIndex(parts, set.distance)];
    if (part === undefined) continue;
    part.hits += set.holed;
    part.tries += set.attempts;
  }
  const rows = parts.map((_, i) => ({
    judged: judged[i],
    counted: {
      hits: judged[i].filter(({ holed }) => holed).length + practised[i].hits,
      tries: judged[i].length + practised[i].tries,
    },
  }));
  const sum = (of: (counted: Counted) => number): number =>
    rows.reduce((total, { counted }) => total + of(counted), 0);
  return [
    { judged: judged.flat(), counted: { hits: sum(({ hits }) => hits), tries: sum(({ tries }) => tries) } },
    ...rows,
  ];
};

export const trendView = ({ record, filter, periods, benchmark, units }: TrendQuestion): TrendView => {
  const chosen = {
    before: choosePutts(record, within(filter, periods.before)),
    after: choosePutts(record, within(filter, periods.after)),
  };
  const gained = {
    before: strokesGained(benchmark, chosen.before.holes).rounds,
    after: strokesGained(benchmark, chosen.after.holes).rounds,
  };
  const bands = units === 'imperial' ? ROUND_BANDS : METRE_ROUND_BANDS;
  // The first band is all the others together, which touch.
  const parts = bands.slice(1);
  const rows = {
    before: sorted(chosen.before, parts, benchmark),
    after: sorted(chosen.after, parts, benchmark),
  };
  const values = (rounds: (typeof gained)['before']) => ({
    values: rounds.map(({ per18 }) => per18),
    weights: rounds.map(({ holes }) => holes),
  });
  return {
    periods,
    rounds: { before: gained.before.length, after: gained.after.length },
    putts: { before: chosen.before.struck.length, after: chosen.after.struck.length },
    gained: meanTrend({ before: values(gained.before), after: values(gained.after) }),
    bands: bands.map((band, i): BandTrend => {
      const { before, after } = { before: rows.before[i], after: rows.after[i] };
      const both = before.counted.tries > 0 && after.counted.tries > 0;
      return {
        band,
        before: before.counted,
        after: after.counted,
        plain: both ? shareTrend({ before: before.counted, after: after.counted }) : undefined,
        adjusted: adjustedTrend({ before: before.judged, after: after.judged }, 0.95, {
          looks: bands.length,
        }),
      };
    }),
  };
};
