/**
 * Uphill, sidehill or downhill: which is holed most. Answers for: the share holed from each third of the clock round the hole,
 * for players who differ in one error. Leaves out: why (MODEL.md, section 4).
 */
import { comparePaces, puttOdds } from '../odds/compare.ts';
import { prepareNextPutts } from '../odds/next-putts.ts';
import { planeSurface } from '../surface/plane.ts';
import type { CaptureName, Player, Putt } from '../types.ts';
import { BENCHMARK_CAPTURE } from './mix.ts';

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

/** Shares holed, each at the pace of fewest putts; means over a third of the clock. */
export interface Thirds {
  /** From 4 to 8 o'clock, below the hole. */
  readonly uphill: number;
  /** From 2 to 4 and 8 to 10. */
  readonly sidehill: number;
  /** From 10 to 2, above it. */
  readonly downhill: number;
}

/** Paces among which the best is refined, m past. */
const PACES = [0.03, 0.1, 0.2, 0.35, 0.5, 0.7, 1];
/** Bearings of the ball from straight below the hole, degrees: two stand for each third, one half of the clock for both. */
const BEARINGS: Readonly<Record<keyof Thirds, readonly number[]>> = {
  uphill: [15, 45],
  sidehill: [75, 105],
  downhill: [135, 165],
};

/** @returns undefined when some putt has no line */
export function holedByThird(options: ThirdsOptions): Thirds | undefined {
  const { length, slope, greenSpeed, player, capture = BENCHMARK_CAPTURE } = options;
  const downhill = -Math.PI / 2;
  const green: Putt = {
    surface: planeSurface({ slope, downhill }),
    greenSpeed,
    ball: { x: 0, y: -1 },
    hole: { x: 0, y: 0 },
    capture,
  };
  const table = prepareNextPutts(green, player);
  const holedFrom = (degrees: number): number => {
    const bearing = downhill + (degrees * Math.PI) / 180;
    const putt = { ...green, ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) } };
    const pace = comparePaces(putt, PACES, player, table).best?.fewestPutts;
    const odds = pace === undefined ? undefined : puttOdds(putt, pace, player, table);
    return odds?.status === 'ok' ? odds.holed : Number.NaN;
  };
  const meanOf = (third: keyof Thirds): number =>
    BEARINGS[third].reduce((sum, degrees) => sum + holedFrom(degrees), 0) / BEARINGS[third].length;
  const thirds = { uphill: meanOf('uphill'), sidehill: meanOf('sidehill'), downhill: meanOf('downhill') };
  return Object.values(thirds).every(Number.isFinite) ? thirds : undefined;
}
