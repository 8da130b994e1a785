/**
 * Was it the putting, or luck? A round's putts beside what this player and a benchmark would have holed from the same places.
 *
 * Answers for: expected and actual numbers in each band, the chances of so few and so many, a cautious verdict, the leans of the
 * misses, and how many more such putts would tell. Leaves out: the curves (handed in as shares), strokes gained (handed in), words.
 *
 * Rules (ours, MODEL.md section 5). Fewer than FEWEST_TO_CONCLUDE putts in a band: nothing to conclude. Unusual only if the
 * player's two-sided chance, times the bands with enough putts, times the rounds looked at, is under 1% (Bonferroni: holds whatever
 * the bands share). The player's curve is a mixture over its draws, so that an uncertain curve makes fewer things unusual.
 */

import { type DistanceBand, isInBand, ROUND_BANDS, TAP_IN } from '../record/bands.ts';
import type { RecordedPutt } from '../record/record.ts';
import {
  chanceAtLeast,
  chanceAtMost,
  type ExpectedHits,
  hitCounts,
  mixedHitCounts,
  summarizeHits,
  twoSidedChance,
} from '../statistics/hit-counts.ts';
import { FEWEST_TO_CONCLUDE } from './caution.ts';
import { leansOf, type MissLeans } from './miss-leans.ts';
import { type MorePutts, morePutts } from './more-putts.ts';
import { explainGain, type GainWithoutHoling, type HoleGain } from './round-gain.ts';

/** Chance, over all bands and rounds looked at, of calling a round unusual that is not. */
const FALSE_ALARMS = 0.01;

/** What the record holds of a band beside this round; for the number of putts that would tell. */
export interface BandRecord {
  /** Such putts in the whole record, this round's included. */
  readonly alreadyHad: number;
  /** Such putts in a round, on average. */
  readonly perRound: number;
}

export interface RoundCheckInput {
  /** All putts of the round, first and later ones; those that are not of kind 'putt' are passed over. */
  readonly putts: readonly RecordedPutt[];
  /**
   * This player's share holed: one list per draw of his curve, one share per putt of `putts`. The curve must come from other
   * rounds: with this one in it the round is compared with itself.
   */
  readonly playerShares: readonly (readonly number[])[];
  /** One per draw; left out: all equal. */
  readonly playerWeights?: readonly number[];
  /** The benchmark's share holed, one per putt of `putts`. */
  readonly benchmarkShares: readonly number[];
  /** How many rounds the player looks at in this way, this one included: usually all in the record. At least 1. */
  readonly roundsLookedAt: number;
  /** Holes with their strokes gained; left out: a gain is not explained. */
  readonly holes?: readonly HoleGain[];
  /** Default ROUND_BANDS. */
  readonly bands?: readonly DistanceBand[];
  /** One per band; left out: this round is all there is. */
  readonly bandRecords?: readonly BandRecord[];
  /** Share of misses that stay short without any fault; default a half. */
  readonly expectedShort?: number;
  /** Departure worth knowing, see morePutts. */
  readonly departure?: number;
  /** Longest tap-in, m; default 3 ft. */
  readonly tapIn?: number;
  /** Where first putts lay, for the explanation of a gain; default FIRST_PUTT_BANDS. */
  readonly firstPuttBands?: readonly DistanceBand[];
}

/** Expected number holed, central 90%, and where the actual number lies. */
export interface HoledBeside extends ExpectedHits {
  /** Chance of holing so few or fewer, and so many or more. */
  readonly soFew: number;
  readonly soMany: number;
  /** Chance of holing none of them. */
  readonly none: number;
}

/** Nothing is said of fewer than twelve putts; withinChance: no more than chance does, which is not "all is well". */
export type RoundVerdict = 'nothingToConclude' | 'unusuallyFew' | 'unusuallyMany' | 'withinChance';

export interface BandCheck {
  readonly band: DistanceBand;
  readonly tries: number;
  readonly holed: number;
  readonly byPlayer: HoledBeside;
  readonly byBenchmark: HoledBeside;
  /** The player's chance of a number as far out as this, either way. */
  readonly chance: number;
  /** The same when everything looked at is considered, at most 1. */
  readonly correctedChance: number;
  readonly verdict: RoundVerdict;
  /** undefined without putts in the band. */
  readonly morePutts: MorePutts | undefined;
}

export interface RoundCheck {
  /** In the order of the bands asked for; also those without putts. */
  readonly bands: readonly BandCheck[];
  /** Bands with enough putts times rounds: what chances were multiplied by. */
  readonly looks: number;
  /** Of the misses in any of the bands. */
  readonly leans: MissLeans;
  /** Why strokes were gained though nothing longer than a tap-in dropped; undefined: there is nothing to explain. */
  readonly explained: GainWithoutHoling | undefined;
}

const beside = (chances: Float64Array, holed: number): HoledBeside => ({
  ...summarizeHits(chances),
  soFew: chanceAtMost(chances, holed),
  soMany: chanceAtLeast(chances, holed),
  none: chances[0],
});

function checkLengths({ putts, playerShares, benchmarkShares, bands, bandRecords }: RoundCheckInput): void {
  const count = putts.length;
  if (benchmarkShares.length !== count || playerShares.some(({ length }) => length !== count))
    throw new RangeError(
      `Got ${count} putts, ${benchmarkShares.length} shares of the benchmark and ${playerShares[0]?.length} of the player; expected one share per putt. Hand in a share for every putt, of whatever kind.`,
    );
  const asked = (bands ?? ROUND_BANDS).length;
  if (bandRecords !== undefined && bandRecords.length !== asked)
    throw new RangeError(
      `Got ${bandRecords.length} records for ${asked} bands; expected one per band. Hand in as many as bands.`,
    );
}

function verdictOf(tries: number, correctedChance: number, { soFew, soMany }: HoledBeside): RoundVerdict {
  if (tries < FEWEST_TO_CONCLUDE) return 'nothingToConclude';
  if (correctedChance >= FALSE_ALARMS) return 'withinChance';
  return soFew < soMany ? 'unusuallyFew' : 'unusuallyMany';
}

/**
 * Checks one round.
 * @throws RangeError when the lists do not belong together, or there is no draw of the player's curve
 */
export function checkRound(input: RoundCheckInput): RoundCheck {
  checkLengths(input);
  const { putts, playerShares, playerWeights, benchmarkShares, bandRecords, departure } = input;
  const { bands = ROUND_BANDS, tapIn = TAP_IN, holes = [] } = input;
  const members = bands.map((band) =>
    putts.flatMap(({ kind, distance }, i) => (kind === 'putt' && isInBand(band, distance) ? [i] : [])),
  );
  const enough = members.filter(({ length }) => length >= FEWEST_TO_CONCLUDE).length;
  const looks = enough * input.roundsLookedAt;
  const checks = bands.map((band, row): BandCheck => {
    const inside = members[row];
    const tries = inside.length;
    const holed = inside.filter((i) => putts[i].holed).length;
    const chances = mixedHitCounts(
      playerShares.map((shares) => inside.map((i) => shares[i])),
      playerWeights,
    );
    const byPlayer = beside(chances, holed);
    const byBenchmark = beside(hitCounts(inside.map((i) => benchmarkShares[i])), holed);
    const chance = twoSidedChance(chances, holed);
    const correctedChance = Math.min(1, Math.max(1, looks) * chance);
    const record = bandRecords?.[row] ?? { alreadyHad: tries, perRound: tries };
    return {
      band,
      tries,
      holed,
      byPlayer,
      byBenchmark,
      chance,
      correctedChance,
      verdict: verdictOf(tries, correctedChance, byPlayer),
      morePutts:
        tries === 0
          ? undefined
          : morePutts({
              expectedShare: byPlayer.mean / tries,
              departure,
              ...record,
            }),
    };
  });
  const judged = new Set(members.flat());
  return {
    bands: checks,
    looks,
    leans: leansOf(
      putts.filter((_, i) => judged.has(i)),
      { times: input.roundsLookedAt, expectedShort: input.expectedShort },
    ),
    explained: explainGain({ putts, benchmarkShares, holes, tapIn, firstPuttBands: input.firstPuttBands }),
  };
}
