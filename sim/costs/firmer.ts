/**
 * "Hit them firmer and play less break": what that does, for one player, by length, slope and direction.
 *
 * Answers for: holed, three putts and putts when dying it in (6 in), at the usual pace and firm (30 in); what firm gains, and the chance
 * that it gains. Leaves out: how the putts are played (ground.ts), words.
 */
import { DIE_PACE, FIRM_PACE } from '../constants.ts';
import type { Direction } from '../player/published.ts';
import type { Player } from '../types.ts';
import {
  DIRECTIONS,
  EXPECTED,
  FIRMER_LENGTHS,
  FIRMER_PACES,
  FIRMER_SLOPES,
  type FirmerPace,
  firmerAt,
  MISSED,
  THREE_PUTT,
} from './ground.ts';
import { chanceAbove, type Interval, intervalOf } from './intervals.ts';
import { type Parted, parted } from './parted.ts';

export interface PaceFigures {
  /** m past */
  readonly pace: number;
  readonly holed: number;
  readonly threePutt: number;
  readonly expectedPutts: number;
}

/** 'gains' and 'costs' only where the whole interval and WORTH lie on that side; 'same' where it lies within WORTH of nothing. */
export type FirmerVerdict = 'gains' | 'costs' | 'same' | 'cannotTell';

export interface FirmerRow {
  /** Ball to hole, m; rise over run. */
  readonly length: number;
  readonly slope: number;
  /** 'any': the mean of the three. */
  readonly direction: Direction | 'any';
  /** Of the middle player. */
  readonly paces: Readonly<Record<FirmerPace, PaceFigures>>;
  /** Putts saved by firm in place of the usual pace, and by dying it in. */
  readonly firm: Interval;
  readonly die: Interval;
  /** That firm saves putts. */
  readonly chance: number;
  readonly verdict: FirmerVerdict;
  /** Where it gains for some and costs others: what parts those for whom it costs (first) from those for whom it gains (second). */
  readonly on: Parted | undefined;
}

/** Putts: less is not worth choosing a pace for, and about what the engine can tell. */
export const WORTH = 0.005;

export const firmerVerdict = ({ low, high }: Interval): FirmerVerdict => {
  if (low > WORTH) return 'gains';
  if (high < -WORTH) return 'costs';
  return low >= -WORTH && high <= WORTH ? 'same' : 'cannotTell';
};

export interface FirmerInput {
  /** The middle player's row (ground.ts). */
  readonly middle: Float64Array;
  /** m past */
  readonly usual: number;
  readonly players: readonly { readonly player: Player; readonly weight: number }[];
  readonly puttsOf: (player: Player, at: number) => number;
}

/** Length by length, slope by slope: uphill, sidehill, downhill, any. */
export function firmerRows({ middle, usual, players, puttsOf }: FirmerInput): FirmerRow[] {
  const weights = Float64Array.from(players, ({ weight }) => weight);
  const metres: Readonly<Record<FirmerPace, number>> = { die: DIE_PACE, usual, firm: FIRM_PACE };
  return FIRMER_LENGTHS.flatMap((length, l) =>
    FIRMER_SLOPES.flatMap((slope, s) =>
      [...DIRECTIONS, 'any' as const].flatMap((direction, d): FirmerRow[] => {
        const among = direction === 'any' ? DIRECTIONS.map((_, i) => i) : [d];
        const mean = (of: (at: number) => number, pace: number): number =>
          among.reduce((sum, i) => sum + of(firmerAt(l, s, i, pace)), 0) / among.length;
        const figures = FIRMER_PACES.map(
          (name, pace): PaceFigures => ({
            pace: metres[name],
            holed: 1 - mean((at) => middle[at + MISSED], pace),
            threePutt: mean((at) => middle[at + THREE_PUTT], pace),
            expectedPutts: mean((at) => middle[at + EXPECTED], pace),
          }),
        );
        // Too steep for the green: nothing to say.
        if (figures.some(({ expectedPutts }) => !Number.isFinite(expectedPutts))) return [];
        const savedBy = (pace: number): Float64Array =>
          Float64Array.from(players, ({ player }) => {
            const putts = (which: number): number => mean((at) => puttsOf(player, at + EXPECTED), which);
            return putts(1) - putts(pace);
          });
        const firmSaves = savedBy(2);
        const firm = intervalOf(firmSaves, weights);
        const verdict = firmerVerdict(firm);
        const turns = firm.low < -WORTH && firm.high > WORTH;
        return [
          {
            length,
            slope,
            direction,
            paces: { die: figures[0], usual: figures[1], firm: figures[2] },
            firm,
            die: intervalOf(savedBy(0), weights),
            chance: chanceAbove(firmSaves, weights),
            verdict,
            on: turns
              ? parted(
                  players.filter((_, i) => firmSaves[i] < -WORTH),
                  players.filter((_, i) => firmSaves[i] > WORTH),
                )
              : undefined,
          },
        ];
      }),
    ),
  );
}
