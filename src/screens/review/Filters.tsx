/** What is looked at: dates, kind, slope, break, pace, and the benchmark beside it. Folded away on a phone. */
import { useState } from 'preact/hooks';
import { BENCHMARKS } from '../../../sim/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import { ALL_INTERVALS, BENCHMARK_CAUTION, leftOutWords, remainingWords } from '../../text/phrases.ts';
import { EVERYTHING, type ReviewFilter } from './filter.ts';
import { benchmarkId, review } from './state.ts';

/** Below this the filters begin folded; as in review.css. */
const WIDE = '(min-width: 60rem)';

const DATES = [
  { value: 'all', label: 'all' },
  { value: 'year', label: 'this year' },
  { value: 'months', label: 'last 3 months' },
  { value: 'own', label: 'chosen' },
] as const;
const KINDS = [
  { value: 'rounds', label: 'rounds' },
  { value: 'practice', label: 'practice' },
  { value: 'both', label: 'both' },
] as const;
const CLIMBS = [
  { value: 'any', label: 'any' },
  { value: 'up', label: 'uphill' },
  { value: 'down', label: 'downhill' },
  { value: 'level', label: 'level' },
] as const;
const BREAKS = [
  { value: 'any', label: 'any' },
  { value: 'leftToRight', label: 'left to right' },
  { value: 'rightToLeft', label: 'right to left' },
  { value: 'straight', label: 'straight' },
] as const;
const PACES = [
  { value: 'any', label: 'any' },
  { value: 'die', label: 'die' },
  { value: 'normal', label: 'normal' },
  { value: 'firm', label: 'firm' },
] as const;

export interface DayFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onDay: (day: string) => void;
}

export const DayField = ({ id, label, value, onDay }: DayFieldProps) => (
  <div class="field">
    <label for={id}>{label}</label>
    <input id={id} type="date" value={value} onInput={(event) => onDay(event.currentTarget.value)} />
  </div>
);

const BenchmarkField = () => {
  const { id, source } = review.benchmark.value;
  return (
    <div class="field review-benchmark">
      <label for="review-benchmark">Benchmark</label>
      <select
        id="review-benchmark"
        value={id}
        onChange={(event) => {
          benchmarkId.value = event.currentTarget.value;
        }}
      >
        {BENCHMARKS.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
      <p class="hint">{source}</p>
    </div>
  );
};

export const Filters = () => {
  const [open] = useState(() => matchMedia(WIDE).matches);
  const filter = review.filter.value;
  const set = (change: Partial<ReviewFilter>): void => {
    review.filter.value = { ...review.filter.peek(), ...change };
  };
  const record = review.record.value;
  const left = leftOutWords(record);
  return (
    <details class="card review-filters" open={open}>
      <summary>
        <span>
          Filters and benchmark{' '}
          <span class="quiet" role="status" data-testid="remaining">
            {remainingWords(review.count.value, record.puttCount)}
          </span>
        </span>
      </summary>
      <div class="review-choices">
        <Choice
          legend="Dates"
          name="dates"
          showLegend
          value={filter.dates}
          options={DATES}
          onChange={(dates) => set({ dates })}
        />
        {filter.dates === 'own' && (
          <div class="review-days">
            <DayField id="review-from" label="From" value={filter.from} onDay={(from) => set({ from })} />
            <DayField id="review-to" label="To" value={filter.to} onDay={(to) => set({ to })} />
          </div>
        )}
        <Choice
          legend="Putts of"
          name="kind"
          showLegend
          value={review.kind.value}
          options={KINDS}
          onChange={(kind) => set({ kind })}
        />
        <Choice
          legend="Slope"
          name="climb"
          showLegend
          value={filter.climb}
          options={CLIMBS}
          onChange={(climb) => set({ climb })}
        />
        <Choice
          legend="Break"
          name="breaks"
          showLegend
          value={filter.breaks}
          options={BREAKS}
          onChange={(breaks) => set({ breaks })}
        />
        <Choice
          legend="Pace meant"
          name="paceMeant"
          showLegend
          value={filter.paceMeant}
          options={PACES}
          onChange={(paceMeant) => set({ paceMeant })}
        />
        {review.filtered.value && (
          <button
            type="button"
            class="plain"
            onClick={() => {
              review.filter.value = EVERYTHING;
            }}
          >
            No filters
          </button>
        )}
      </div>
      <div class="review-yardstick">
        <BenchmarkField />
        <div class="quiet">
          <p>{BENCHMARK_CAUTION}</p>
          <p>
            {ALL_INTERVALS} {left}
          </p>
        </div>
      </div>
    </details>
  );
};
