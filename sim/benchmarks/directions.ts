/**
 * Uphill, sidehill or downhill: which is holed most, and what a miss leaves. Answers for: each third of the clock round the
 * hole. Leaves out: why (MODEL.md, section 4).
 */
import { prepareNextPutts } from '../odds/next-putts.ts';
import type { Direction } from '../player/published.ts';
import type { CaptureName, Player } from '../types.ts';
import { degreesToRadians } from '../units.ts';
import { BENCHMARK_CAPTURE, ballAt, bestOf, greenOf } from './putts.ts';

export interface ThirdsOptions {
  /** Ball to hole, m. */
  readonly length: number;
  /** Rise over run. */
  readonly slope: number;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  readonly player: Player;
  readonly capture?: CaptureName;
}

/** Each putt at its pace of fewest putts; means over a third of the clock. */
export interface Third {
  readonly holed: number;
  /** Mean of the median leaves, m. */
  readonly leave: number;
}

/** Uphill: from 4 to 8 o'clock, below the hole. Downhill: from 10 to 2. Sidehill: the rest. */
export type Thirds = Readonly<Record<Direction, Third>>;

/** Bearings of the ball from straight below the hole, degrees: two stand for each third, one half of the clock for both. */
const BEARINGS: Readonly<Record<Direction, readonly number[]>> = {
  uphill: [15, 45],
  sidehill: [75, 105],
  downhill: [135, 165],
};

/** @returns undefined when some putt has no line */
export function playThirds(options: ThirdsOptions): Thirds | undefined {
  const { length, slope, greenSpeed, player, capture = BENCHMARK_CAPTURE } = options;
  const green = greenOf(slope, greenSpeed, capture);
  const table = prepareNextPutts(green, player);
  let missing = false;
  const thirdOf = (direction: Direction): Third => {
    const bearings = BEARINGS[direction];
    let holed = 0;
    let leave = 0;
    for (const degrees of bearings) {
      const best = bestOf(ballAt(green, length, degreesToRadians(degrees)), player, table);
      if (best === undefined) {
        missing = true;
        continue;
      }
      holed += best.odds.holed / bearings.length;
      leave += best.odds.leaveMedian / bearings.length;
    }
    return { holed, leave };
  };
  const thirds = { uphill: thirdOf('uphill'), sidehill: thirdOf('sidehill'), downhill: thirdOf('downhill') };
  return missing ? undefined : thirds;
}
