/**
 * Uphill, sidehill or downhill: which is holed most, and what a miss leaves. Answers for: each third of the clock round the
 * hole. Leaves out: why (MODEL.md, section 4).
 */
import { prepareNextPutts } from '../odds/next-putts.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import type { Direction } from '../player/published.ts';
import type { CaptureName, Player, Putt } from '../types.ts';
import { degreesToRadians } from '../units.ts';
import { BENCHMARK_CAPTURE, ballAt, greenOf, playedOf } from './putts.ts';

export interface ThirdsOptions {
  /** Ball to hole, m. */
  readonly length: number;
  /** Rise over run. */
  readonly slope: number;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  readonly player: Player;
  readonly capture?: CaptureName;
  /** Tables of next putts at hand; missing: made. */
  readonly tableOf?: (green: Putt, player: Player) => NextPutts;
}

/** Each putt at the pace players play it (putts.ts); means over a part of the clock. */
export interface Third {
  readonly holed: number;
  /** Mean of the median leaves, m. */
  readonly leave: number;
}

/** Uphill: from 4 to 8 o'clock, below the hole. Downhill: from 10 to 2. Sidehill: the rest. */
export interface Thirds extends Readonly<Record<Direction, Third>> {
  /** Sidehill with some climb (4:30), with some fall (1:30): what steep slopes part most. */
  readonly sidehillUp: Third;
  readonly sidehillDown: Third;
}

/** Bearings of the ball from straight below the hole, degrees: two stand for each third, one half of the clock for both. */
const BEARINGS: Readonly<Record<keyof Thirds, readonly number[]>> = {
  uphill: [15, 45],
  sidehill: [75, 105],
  downhill: [135, 165],
  sidehillUp: [45],
  sidehillDown: [135],
};

/** @returns undefined when some putt has no line */
export function playThirds(options: ThirdsOptions): Thirds | undefined {
  const { length, slope, greenSpeed, player, capture = BENCHMARK_CAPTURE } = options;
  const { tableOf = prepareNextPutts } = options;
  const green = greenOf(slope, greenSpeed, capture);
  const table = tableOf(green, player);
  let missing = false;
  // Bearings of two thirds are the same.
  const known = new Map<number, ReturnType<typeof playedOf>>();
  const playedFrom = (degrees: number): ReturnType<typeof playedOf> => {
    const played = known.has(degrees)
      ? known.get(degrees)
      : playedOf(ballAt(green, length, degreesToRadians(degrees)), player, table);
    known.set(degrees, played);
    return played;
  };
  const thirdOf = (direction: keyof Thirds): Third => {
    const bearings = BEARINGS[direction];
    let holed = 0;
    let leave = 0;
    for (const degrees of bearings) {
      const played = playedFrom(degrees);
      if (played === undefined) {
        missing = true;
        continue;
      }
      holed += played.odds.holed / bearings.length;
      leave += played.odds.leaveMedian / bearings.length;
    }
    return { holed, leave };
  };
  const thirds = {
    uphill: thirdOf('uphill'),
    sidehill: thirdOf('sidehill'),
    downhill: thirdOf('downhill'),
    sidehillUp: thirdOf('sidehillUp'),
    sidehillDown: thirdOf('sidehillDown'),
  };
  return missing ? undefined : thirds;
}
