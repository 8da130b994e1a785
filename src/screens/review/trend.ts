/** Two periods beside each other: changes with their intervals. Pure; shares 0..1, strokes. Leaves out: words. */
import {
  adjustedTrend,
  type Benchmark,
  bandIndex,
  type ChosenPutts,
  type Counted,
  type DistanceBand,
  METRE_ROUND_BANDS,
  type MeanTrend,
  meanTrend,
  type RecordedRound,
  ROUND_BANDS,
  type ShareTrend,
  type StrokesGained,
  shareTrend,
  type TwoPeriods,
} from '../../../sim/index.ts';
import type { Units } from '../../text/format.ts';

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
  /** What the filters leave, of all days: the periods have theirs. */
  readonly chosen: ChosenPutts;
  /** Strokes gained over those holes. */
  readonly gained: StrokesGained;
  readonly roundOf: ReadonlyMap<string, RecordedRound>;
  readonly periods: Periods;
  readonly benchmark: Benchmark;
  readonly units: Units;
}

const isWithin = ({ from, to }: Period, day: string): boolean =>
  (from === '' || day >= from) && (to === '' || day <= to);

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
  { struck, sets }: Pick<ChosenPutts, 'struck' | 'sets'>,
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

export const trendView = (question: TrendQuestion): TrendView => {
  const { chosen, gained, roundOf, periods, benchmark, units } = question;
  const bands = units === 'imperial' ? ROUND_BANDS : METRE_ROUND_BANDS;
  // The first band is all the others together, which touch.
  const parts = bands.slice(1);
  const during = (period: Period) => {
    const inside = new Set(
      [...roundOf.values()].flatMap(({ id, day }) => (isWithin(period, day) ? [id] : [])),
    );
    const rounds = gained.rounds.filter(({ roundId }) => inside.has(roundId));
    const struck = chosen.struck.filter(({ putt }) => inside.has(putt.roundId));
    const sets = chosen.sets.filter(({ day }) => isWithin(period, day));
    return {
      rounds: rounds.length,
      putts: struck.length,
      gained: { values: rounds.map(({ per18 }) => per18), weights: rounds.map(({ holes }) => holes) },
      rows: sorted({ struck, sets }, parts, benchmark),
    };
  };
  const [before, after] = [during(periods.before), during(periods.after)];
  return {
    periods,
    rounds: { before: before.rounds, after: after.rounds },
    putts: { before: before.putts, after: after.putts },
    gained: meanTrend({ before: before.gained, after: after.gained }),
    bands: bands.map((band, i): BandTrend => {
      const rows = { before: before.rows[i], after: after.rows[i] };
      const counted = { before: rows.before.counted, after: rows.after.counted };
      return {
        band,
        ...counted,
        plain: counted.before.tries > 0 && counted.after.tries > 0 ? shareTrend(counted) : undefined,
        adjusted: adjustedTrend({ before: rows.before.judged, after: rows.after.judged }, 0.95, {
          looks: bands.length,
        }),
      };
    }),
  };
};
