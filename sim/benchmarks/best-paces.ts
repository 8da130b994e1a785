/**
 * The best pace on plain putts of many lengths, slopes, directions and green speeds, beside what others say of it. Answers
 * for: the table and Hoadley's rule. Leaves out: why they differ (MODEL.md, section 4).
 */
import { fewestPutts } from '../odds/compare.ts';
import { prepareNextPutts } from '../odds/next-putts.ts';
import { type Direction, PUBLISHED_PACES } from '../player/published.ts';
import type { CaptureName, Player } from '../types.ts';
import { feetToMetres, inchesToMetres } from '../units.ts';
import { BENCHMARK_CAPTURE, ballAt, greenOf } from './putts.ts';

export interface BestPace {
  /** Ball to hole, m. */
  readonly length: number;
  /** Rise over run; on the level the direction is 'sidehill' by convention and means nothing. */
  readonly slope: number;
  /** Straight below the hole, pin-high, straight above it. */
  readonly direction: Direction;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  /** Pace with the fewest expected putts, m past. */
  readonly pace: number;
  /** At that pace. */
  readonly holed: number;
  readonly expectedPutts: number;
  /** Two feet times the chance of holing at our pace (Hoadley 1994), m. */
  readonly hoadley: number;
  /** Putts lost by playing PLAIN_PACE instead. */
  readonly plainCosts: number;
}

/** 17 in: the published figure for all putts, m. */
export const PLAIN_PACE = inchesToMetres(PUBLISHED_PACES.pelzInches);

export interface BestPaceOptions {
  readonly player: Player;
  readonly capture?: CaptureName;
  /** m; the usual: 3 to 40 ft. */
  readonly lengths?: readonly number[];
  /** Rise over run; the usual: 0 to 3%. */
  readonly slopes?: readonly number[];
  /** Stimpmeter readings, m; the usual: 8, 10 and 12 ft. */
  readonly greenSpeeds?: readonly number[];
}

const USUAL = {
  lengths: [3, 5, 8, 10, 15, 20, 30, 40].map(feetToMetres),
  slopes: [0, 0.01, 0.02, 0.03],
  greenSpeeds: [8, 10, 12].map(feetToMetres),
};

/** Paces among which the best is refined, m past. */
const PACES = [0.02, 0.06, 0.12, 0.2, 0.3, 0.42, 0.55, 0.7, 0.9, 1.2];

/** Bearing of the ball from straight below the hole, radians. */
const BALL_AT: Readonly<Record<Direction, number>> = { uphill: 0, sidehill: Math.PI / 2, downhill: Math.PI };

/** Green speed by green speed, slope by slope, direction by direction, lengths in turn; putts without a line are left out. */
export function bestPaces(options: BestPaceOptions): BestPace[] {
  const { player, capture = BENCHMARK_CAPTURE } = options;
  const { lengths, slopes, greenSpeeds } = { ...USUAL, ...options };
  const found: BestPace[] = [];
  for (const greenSpeed of greenSpeeds)
    for (const slope of slopes) {
      const green = greenOf(slope, greenSpeed, capture);
      const table = prepareNextPutts(green, player);
      const directions: readonly Direction[] =
        slope === 0 ? ['sidehill'] : ['uphill', 'sidehill', 'downhill'];
      for (const direction of directions)
        for (const length of lengths) {
          const putt = ballAt(green, length, BALL_AT[direction]);
          const best = fewestPutts(putt, PACES, player, table);
          if (best === undefined) continue;
          const { holed, expectedPutts } = best.odds;
          const plain = best.oddsAt(PLAIN_PACE);
          found.push({
            length,
            slope,
            direction,
            greenSpeed,
            pace: best.pace,
            holed,
            expectedPutts,
            hoadley: feetToMetres(PUBLISHED_PACES.hoadleyFeetPerShareHoled) * holed,
            plainCosts: plain ? plain.expectedPutts - expectedPutts : Number.POSITIVE_INFINITY,
          });
        }
    }
  return found;
}
