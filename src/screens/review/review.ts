/**
 * The review as a graph: records, filter, benchmark and units in; what each section shows out, worked out again only when
 * something it rests on has changed. Pure but for the signals. Leaves out: words, pictures, where records come from.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import {
  BENCHMARKS,
  type Benchmark,
  choosePutts,
  FEET_BANDS,
  METRE_BANDS,
  puttingBenchmarkOf,
  strokesGained,
} from '../../../sim/index.ts';
import { type ReviewRecord, reviewRecord } from '../../state/reviewRecord.ts';
import type { AllRecords } from '../../store/records.ts';
import type { Units } from '../../text/format.ts';
import { chosenCount, EVERYTHING, puttFilterOf, type ReviewFilter } from './filter.ts';
import { gainedView } from './gained.ts';
import { curveOfChosen, holedView } from './holed.ts';
import { missesView } from './misses.ts';
import { bandRecordsOf, roundView } from './roundCheck.ts';
import { threePuttView } from './threePutts.ts';
import { newestThird, type Periods, trendView } from './trend.ts';

export interface ReviewInputs {
  /** undefined: not read yet. */
  readonly records: ReadonlySignal<AllRecords | undefined>;
  readonly units: ReadonlySignal<Units>;
  readonly benchmarkId: ReadonlySignal<string>;
  /** YYYY-MM-DD */
  readonly today: () => string;
}

const NOTHING: ReviewRecord = reviewRecord({
  rounds: [],
  putts: [],
  practice: [],
  measured: [],
  unreadable: 0,
});

export const createReview = ({ records, units, benchmarkId, today }: ReviewInputs) => {
  const filter = signal<ReviewFilter>(EVERYTHING);
  /** undefined: the newest. */
  const roundId = signal<string | undefined>(undefined);
  /** undefined: the newest third against the rest. */
  const ownPeriods = signal<Periods | undefined>(undefined);

  const read = computed(() => records.value !== undefined);
  const filtered = computed(() => JSON.stringify(filter.value) !== JSON.stringify(EVERYTHING));
  const record = computed(() => (records.value === undefined ? NOTHING : reviewRecord(records.value)));
  const benchmark = computed((): Benchmark => puttingBenchmarkOf(benchmarkId.value) ?? BENCHMARKS[0]);
  const bands = computed(() => (units.value === 'imperial' ? FEET_BANDS : METRE_BANDS));
  // Who has only practised sees practice at once, not an empty page.
  const kind = computed(() =>
    filter.value.kind === 'rounds' && record.value.holes.length === 0 ? 'practice' : filter.value.kind,
  );
  const question = computed(() => ({ ...puttFilterOf(filter.value, today()), kind: kind.value }));
  const chosen = computed(() => choosePutts(record.value, question.value));

  // The round check asks the whole record, whatever is filtered.
  const wholeCurve = computed(() =>
    curveOfChosen(choosePutts(record.value, { kind: 'rounds' }), benchmark.value),
  );
  const curve = computed(() =>
    filtered.value || kind.value !== 'rounds'
      ? curveOfChosen(chosen.value, benchmark.value)
      : wholeCurve.value,
  );
  const holed = computed(() => holedView(chosen.value, benchmark.value, bands.value, curve.value));
  const threePutts = computed(() => threePuttView(chosen.value, benchmark.value, bands.value));
  const misses = computed(() => missesView(chosen.value, bands.value));
  const gained = computed(() => gainedView(chosen.value, record.value.roundOf, benchmark.value, units.value));

  const bandRecords = computed(() => bandRecordsOf(record.value, units.value));
  const checkedId = computed(() => {
    const { rounds, roundOf } = record.value;
    const asked = roundId.value;
    return asked !== undefined && roundOf.has(asked) ? asked : rounds.at(-1)?.id;
  });
  const round = computed(() =>
    checkedId.value === undefined
      ? undefined
      : roundView({
          record: record.value,
          roundId: checkedId.value,
          curve: wholeCurve.value,
          bandRecords: bandRecords.value,
          benchmark: benchmark.value,
          units: units.value,
        }),
  );

  const chosenDays = computed(() => {
    const { from, to } = question.value;
    return record.value.rounds
      .map(({ day }) => day)
      .filter((day) => (from === undefined || day >= from) && (to === undefined || day <= to));
  });
  const suggestedPeriods = computed(() => newestThird(chosenDays.value));
  // Of all days; without a choice of days that is what the other sections have counted already.
  const dated = computed(() => question.value.from !== undefined || question.value.to !== undefined);
  const undated = computed(() =>
    dated.value
      ? choosePutts(record.value, { ...question.value, from: undefined, to: undefined })
      : chosen.value,
  );
  const undatedGained = computed(() =>
    dated.value ? strokesGained(benchmark.value, undated.value.holes) : gained.value.gained,
  );
  const trend = computed(() => {
    const periods = ownPeriods.value ?? suggestedPeriods.value;
    return periods === undefined
      ? undefined
      : trendView({
          chosen: undated.value,
          gained: undatedGained.value,
          roundOf: record.value.roundOf,
          periods,
          benchmark: benchmark.value,
          units: units.value,
        });
  });

  return {
    /** What the person chooses. */
    filter,
    roundId,
    ownPeriods,
    /** What follows. */
    read,
    record,
    kind,
    benchmark,
    chosen,
    filtered,
    count: computed(() => chosenCount(chosen.value)),
    holed,
    threePutts,
    misses,
    gained,
    checkedId,
    round,
    suggestedPeriods,
    trend,
  };
};
