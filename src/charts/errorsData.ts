/**
 * What a chart of errors of different units takes: every row has an axis of its own, laid out here from 0 to 1 of the chart's
 * width. Apart from the drawing, which brings the chart library. Leaves out: statistics, words.
 */

/** One error in the unit it is shown in. */
export interface ErrorRow {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** The same before the record. */
  readonly beforeLow: number;
  readonly beforeHigh: number;
  /** Behind the numbers of the axis: "°", "%". */
  readonly unit: string;
  /** The value in words, at the right end where there is room. */
  readonly note: string;
}

export interface PlacedTick {
  readonly name: string;
  readonly at: number;
  readonly label: string;
}

export interface ErrorsPlotData {
  /** Ends and values from 0 to 1. */
  readonly rows: readonly Pick<
    ErrorRow,
    'name' | 'value' | 'low' | 'high' | 'beforeLow' | 'beforeHigh' | 'note'
  >[];
  readonly ticks: readonly PlacedTick[];
  /** Where nothing lies, in rows that go to both sides. */
  readonly zeros: readonly { readonly name: string; readonly at: number }[];
}

/** Steps from 0 to the end of an axis, at most. */
const MOST_STEPS = 3;

const stepOf = (to: number): number => {
  const unit = 10 ** Math.floor(Math.log10(to / MOST_STEPS));
  return unit * ([1, 2, 5].find((times) => times * unit * MOST_STEPS >= to) ?? 10);
};

/** Room beyond the farthest end, share of it. */
const ROOM = 1.04;

/** Spreads begin at 0; what goes to both sides has 0 in the middle. */
export const placeErrors = (rows: readonly ErrorRow[]): ErrorsPlotData => {
  const placed = rows.map((row) => {
    const both = Math.min(row.low, row.beforeLow) < 0;
    const to = ROOM * Math.max(row.high, row.beforeHigh, ...(both ? [-row.low, -row.beforeLow] : []));
    const at = (value: number): number => (both ? (value / to + 1) / 2 : value / to);
    const step = stepOf(to);
    const count = Math.floor(to / step);
    const ticks = Array.from({ length: (both ? 2 : 1) * count + 1 }, (_, i): PlacedTick => {
      const value = step * (both ? i - count : i);
      const text = `${value < 0 ? '−' : ''}${Number(Math.abs(value).toPrecision(6))}`;
      return { name: row.name, at: at(value), label: `${text}${row.unit}` };
    });
    const { name, note } = row;
    return {
      row: {
        name,
        note,
        value: at(row.value),
        low: at(row.low),
        high: at(row.high),
        beforeLow: at(row.beforeLow),
        beforeHigh: at(row.beforeHigh),
      },
      ticks,
      zeros: both ? [{ name, at: at(0) }] : [],
    };
  });
  return {
    rows: placed.map(({ row }) => row),
    ticks: placed.flatMap(({ ticks }) => ticks),
    zeros: placed.flatMap(({ zeros }) => zeros),
  };
};

/** CSS pixels of one row with its axis. */
const ROW = 58;
export const errorsHeight = (rows: number): number => ROW * rows + 8;
