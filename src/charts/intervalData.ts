/** What a chart of intervals takes, and how tall it is. Apart from the drawing, which brings the chart library. */

export interface IntervalPlotData {
  /** Top to bottom; names are unique. */
  readonly rows: readonly {
    readonly name: string;
    readonly value: number;
    readonly low: number;
    readonly high: number;
    /** Drawn as a stroke across. */
    readonly against?: number;
    /** At the right end: counts. */
    readonly note: string;
  }[];
  /** Ends of the axis, and how its numbers read. */
  readonly from: number;
  readonly to: number;
  readonly scale: 'share' | 'points' | 'strokes';
  readonly label: string;
  /** Room for the names, CSS pixels; missing: 92. */
  readonly nameWidth?: number;
}

/** CSS pixels of one line. */
const LINE = 30;
/** Axis and its words. */
const HEAD = 44;

export const intervalHeight = (rows: number): number => HEAD + Math.max(1, rows) * LINE;
