/**
 * Why did a round gain strokes though nothing long dropped?
 *
 * Answers for: the figures that explain it, for a screen to word: from where the first putts were, what the benchmark holes of the
 * long ones, how many three-putts it takes there. Leaves out: strokes gained themselves (handed in), every other round: there
 * is nothing to explain when a putt dropped or no stroke was gained.
 */

import { type DistanceBand, FIRST_PUTT_BANDS, isInBand, isLongerThan } from '../record/bands.ts';
import type { RecordedPutt } from '../record/record.ts';
import { chanceAtMost, type ExpectedHits, hitCounts, summarizeHits } from '../statistics/hit-counts.ts';

/** A hole beside the benchmark. */
export interface HoleGain {
  /** Distance of the first putt, m. */
  readonly firstPutt: number;
  /** Strokes gained: the benchmark's mean putts from there less those taken. */
  readonly gained: number;
  /** Three putts or more; undefined: not known, because the ball was picked up or given. */
  readonly threePutted: boolean | undefined;
  /** The benchmark's chance of three putts or more from there, 0..1. */
  readonly threePuttShare: number;
}

interface ThreePutts {
  /** Three-putts taken, and those the benchmark takes on average on the holes where it is known. */
  readonly threePutts: number;
  readonly expectedThreePutts: number;
}

/** Holes whose first putt lay in a band. */
export interface FirstPutts extends ThreePutts {
  readonly band: DistanceBand;
  readonly count: number;
  /** Sum over those holes. */
  readonly gained: number;
}

export interface GainWithoutHoling extends ThreePutts {
  /** Strokes gained over the round, above 0. */
  readonly gained: number;
  readonly holes: number;
  /** Median distance of the first putts, m. */
  readonly medianFirstPutt: number;
  /** Near to far; bands without a first putt are left out. */
  readonly firstPutts: readonly FirstPutts[];
  /** Putts longer than a tap-in, none of which dropped. */
  readonly longTries: number;
  /** What the benchmark holes of those, and its chance of holing none either. */
  readonly benchmarkHoled: ExpectedHits;
  readonly benchmarkHolesNone: number;
  /** The benchmark's chance of so few three-putts. */
  readonly benchmarkSoFewThreePutts: number;
}

export interface GainQuestion {
  /** Of the round; only kind 'putt' counts. */
  readonly putts: readonly RecordedPutt[];
  /** The benchmark's share holed, one per putt of `putts`. */
  readonly benchmarkShares: readonly number[];
  readonly holes: readonly HoleGain[];
  /** Longest tap-in, m. */
  readonly tapIn: number;
  /** Default FIRST_PUTT_BANDS. */
  readonly firstPuttBands?: readonly DistanceBand[];
}

const sumOver = <Item>(items: readonly Item[], amount: (item: Item) => number): number =>
  items.reduce((sum, item) => sum + amount(item), 0);

/** Only of holes where it is known whether three were taken. */
function threePuttsOf(holes: readonly HoleGain[]): ThreePutts & { readonly soFew: number } {
  const known = holes.filter(({ threePutted }) => threePutted !== undefined);
  const shares = known.map(({ threePuttShare }) => threePuttShare);
  const threePutts = known.filter(({ threePutted }) => threePutted).length;
  return {
    threePutts,
    expectedThreePutts: sumOver(shares, (share) => share),
    soFew: chanceAtMost(hitCounts(shares), threePutts),
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  return (sorted[Math.floor(middle)] + sorted[Math.ceil(middle)]) / 2;
}

/** @returns undefined when a putt longer than a tap-in dropped, or no strokes were gained */
export function explainGain({
  putts,
  benchmarkShares,
  holes,
  tapIn,
  firstPuttBands = FIRST_PUTT_BANDS,
}: GainQuestion): GainWithoutHoling | undefined {
  const gained = sumOver(holes, (hole) => hole.gained);
  const long = putts.flatMap(({ kind, distance, holed }, i) =>
    kind === 'putt' && isLongerThan(tapIn, distance) ? [{ holed, share: benchmarkShares[i] }] : [],
  );
  if (!(gained > 0) || long.some(({ holed }) => holed)) return undefined;
  const holedCounts = hitCounts(long.map(({ share }) => share));
  const { soFew, ...threePutts } = threePuttsOf(holes);
  return {
    gained,
    holes: holes.length,
    medianFirstPutt: median(holes.map(({ firstPutt }) => firstPutt)),
    firstPutts: firstPuttBands.flatMap((band): FirstPutts[] => {
      const inside = holes.filter(({ firstPutt }) => isInBand(band, firstPutt));
      if (inside.length === 0) return [];
      const { soFew: _, ...taken } = threePuttsOf(inside);
      return [{ band, count: inside.length, gained: sumOver(inside, (hole) => hole.gained), ...taken }];
    }),
    longTries: long.length,
    benchmarkHoled: summarizeHits(holedCounts),
    benchmarkHolesNone: holedCounts[0],
    ...threePutts,
    benchmarkSoFewThreePutts: soFew,
  };
}
