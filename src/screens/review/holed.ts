/** Holed by distance: bands with intervals beside the benchmark, and the player's curve. Pure; shares 0..1, m. Leaves out: words. */
import {
  type Benchmark,
  type BesideBenchmark,
  besideBenchmark,
  type ChosenPutts,
  type Counted,
  type CurveShare,
  curveFamilyOf,
  curveShareAt,
  type DistanceBand,
  distanceBands,
  feetToMetres,
  type HolingCurve,
  holingCurve,
  type MorePutts,
  meanOverPutts,
  morePutts,
  type OwnPart,
  type Proportion,
  proportionInterval,
  type TriedFrom,
  talliesOf,
} from '../../../sim/index.ts';

export interface HoledRow extends BesideBenchmark {
  readonly band: DistanceBand;
  readonly holed: Proportion;
  readonly inRounds: Counted;
  readonly inPractice: Counted;
  /** Mean distance of these putts, m; undefined: none. */
  readonly middle: number | undefined;
}

export interface HoledView {
  /** One for each band, near to far. */
  readonly rows: readonly HoledRow[];
  /** The row that differs clearly, by most putts; undefined: none does. */
  readonly clearest: HoledRow | undefined;
  /** The row with most putts beyond the first band, for when none differs. */
  readonly fullest: HoledRow | undefined;
  /** How many more of those would tell; undefined: nothing to ask. */
  readonly more: MorePutts | undefined;
  readonly curve: readonly CurveShare[];
  readonly ownPart: OwnPart;
  readonly benchmarkCurve: readonly { readonly distance: number; readonly share: number }[];
  readonly tries: number;
}

/** The player's curve, a fitted one about the benchmark's player. */
export const curveOfChosen = ({ struck, sets }: ChosenPutts, benchmark: Benchmark): HolingCurve =>
  holingCurve(talliesOf(struck, sets), curveFamilyOf(benchmark));

/** Where curves are worked out: from half a metre to 60 ft, closer where they are steep. */
const CURVE_AT = Array.from({ length: 26 }, (_, i) => 0.5 * (feetToMetres(60) / 0.5) ** (i / 25));

const triedFrom = ({ struck, sets }: ChosenPutts): TriedFrom => {
  const distances = new Float64Array(struck.length + sets.length);
  const tries = new Float64Array(distances.length).fill(1);
  for (let i = 0; i < struck.length; i++) distances[i] = struck[i].putt.distance;
  sets.forEach(({ distance, attempts }, i) => {
    distances[struck.length + i] = distance;
    tries[struck.length + i] = attempts;
  });
  return { distances, tries };
};

const apart = ({ holed, expectedShare }: HoledRow): number =>
  Math.abs(holed.hits - holed.tries * (expectedShare ?? 0));

const most = <Row>(rows: readonly Row[], size: (row: Row) => number): Row | undefined =>
  rows.reduce<Row | undefined>(
    (best, row) => (best === undefined || size(row) > size(best) ? row : best),
    undefined,
  );

export const holedView = (
  chosen: ChosenPutts,
  benchmark: Benchmark,
  bands: readonly DistanceBand[],
  curve: HolingCurve,
): HoledView => {
  const tallies = distanceBands(chosen, bands);
  const tried = triedFrom(chosen);
  const middles = meanOverPutts(tried, bands, (distance) => distance);
  const beside = besideBenchmark(
    tallies.map(({ holed }) => holed),
    meanOverPutts(tried, bands, benchmark.holedAt),
  );
  const rows = tallies.map(
    ({ band, holed, holedInRounds, holedInPractice }, i): HoledRow => ({
      ...beside[i],
      band,
      holed: proportionInterval(holed.hits, holed.tries),
      inRounds: holedInRounds,
      inPractice: holedInPractice,
      middle: middles[i],
    }),
  );
  const differing = rows.filter(({ verdict }) => verdict === 'fewer' || verdict === 'more');
  const fullest = most(
    rows.slice(1).filter(({ holed }) => holed.tries > 0),
    ({ holed }) => holed.tries,
  );
  return {
    rows,
    clearest: most(differing, apart),
    fullest,
    more:
      fullest?.expectedShare === undefined
        ? undefined
        : morePutts({ expectedShare: fullest.expectedShare, alreadyHad: fullest.holed.tries }),
    curve: CURVE_AT.map((distance) => curveShareAt(curve, distance)),
    ownPart: curve.effective,
    benchmarkCurve: CURVE_AT.map((distance) => ({ distance, share: benchmark.holedAt(distance) })),
    tries: rows.reduce((sum, { holed }) => sum + holed.tries, 0),
  };
};
