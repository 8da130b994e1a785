/**
 * A player to be measured against, as curves over distance: how often holed, how often three putts, how many putts.
 *
 * Answers for: smooth monotone curves through the rows of a table, and what they say beyond it. Leaves out: the tables
 * (tour-record.ts, modelled.ts), strokes gained (evidence/).
 *
 * How it is put between rows: log odds of a miss, and of a three-putt, over the logarithm of distance, by monotone cubics
 * (maths/interpolation.ts); in those coordinates both are nearly straight. Beyond the first and last row the curve goes on straight,
 * so that a ball on the lip never misses and no distance is ever easier than a shorter one; outside `from` to `to` that is a
 * continuation, not a record. Expected putts are 1 + missed + three putts + what a fourth putt and later ones add, an identity
 * and not a curve of its own: printed means and holed shares of other years contradict one another (tour, 5 ft: 1.23
 * putts, yet 24% missed, which is at least 1.24).
 */
import { monotoneCubic } from '../maths/interpolation.ts';
import { feetToMetres, metresToFeet } from '../units.ts';

export interface Benchmark {
  /** Stable: settings keep it. */
  readonly id: string;
  readonly name: string;
  /** A sentence or two: whose putts, from where. */
  readonly source: string;
  /** Distances its table speaks of, m; elsewhere the curves are continued. */
  readonly from: number;
  readonly to: number;
  /** Share holed. @param distance ball to hole, m; 0 or less: 1 */
  readonly holedAt: (distance: number) => number;
  /** Share of first putts from there that take at least three. @param distance m; 0 or less: 0 */
  readonly threePuttAt: (distance: number) => number;
  /** Putts needed to hole out. @param distance m; 0 or less: 1 */
  readonly expectedPuttsAt: (distance: number) => number;
}

/** One distance of a table, in feet as printed, and a share. */
export type ShareRow = readonly [feet: number, share: number];

export interface BenchmarkTable {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** Share missed, rising, above 0 and below 1; distances rising. */
  readonly missed: readonly ShareRow[];
  /** Share of at least three putts, likewise. */
  readonly threePutts: readonly ShareRow[];
  /** Fourth putts and later ones, mean number, not falling; left out: none worth counting. */
  readonly laterPutts?: readonly ShareRow[];
  /** Feet. */
  readonly range: readonly [number, number];
}

/** Over the logarithm of feet, which is taken once for all curves of a table. */
type Curve = (logFeet: number) => number;

/** Through the rows over the logarithm of distance, straight beyond them. */
function curveOver(rows: readonly ShareRow[], heightOf: (share: number) => number): Curve {
  const xs = Float64Array.from(rows, ([feet]) => Math.log(feet));
  const ys = Float64Array.from(rows, ([, share]) => heightOf(share));
  const last = xs.length - 1;
  const inside = monotoneCubic(xs, ys);
  const before = (ys[1] - ys[0]) / (xs[1] - xs[0]);
  const after = (ys[last] - ys[last - 1]) / (xs[last] - xs[last - 1]);
  return (x) => {
    if (x < xs[0]) return ys[0] + before * (x - xs[0]);
    if (x > xs[last]) return ys[last] + after * (x - xs[last]);
    return inside(x);
  };
}

function shareCurve(rows: readonly ShareRow[]): Curve {
  const logOdds = curveOver(rows, (share) => Math.log(share / (1 - share)));
  return (logFeet) => 1 / (1 + Math.exp(-logOdds(logFeet)));
}

const logFeet = (distance: number): number => Math.log(metresToFeet(distance));

/** The curves of one table. */
export function benchmarkOf(table: BenchmarkTable): Benchmark {
  const missed = shareCurve(table.missed);
  const threePutts = shareCurve(table.threePutts);
  const later =
    table.laterPutts === undefined ? (): number => 0 : curveOver(table.laterPutts, (count) => count);
  let lastAsked = 0;
  let lastExpected = 1;
  return {
    id: table.id,
    name: table.name,
    source: table.source,
    from: feetToMetres(table.range[0]),
    to: feetToMetres(table.range[1]),
    holedAt: (distance) => 1 - (distance > 0 ? missed(logFeet(distance)) : 0),
    threePuttAt: (distance) => (distance > 0 ? threePutts(logFeet(distance)) : 0),
    expectedPuttsAt: (distance) => {
      if (!(distance > 0)) return 1;
      // Where a putt came to rest is where the next is played from: asked twice in turn.
      if (distance !== lastAsked) {
        const x = logFeet(distance);
        lastAsked = distance;
        lastExpected = 1 + missed(x) + threePutts(x) + Math.max(0, later(x));
      }
      return lastExpected;
    },
  };
}
