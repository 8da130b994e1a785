/**
 * Putts on a plane as the comparisons with records need them: a green without a ball, the ball at some bearing, and the pace
 * a modelled player plays. Leaves out: which greens and lengths (mix.ts, directions.ts, best-paces.ts).
 */
import { fewestPutts } from '../odds/compare.ts';
import type { NextPutts } from '../odds/polar-table.ts';
import { planeSurface } from '../surface/plane.ts';
import type { CaptureName, Odds, Player, Putt } from '../types.ts';

/** The rule by which all presets are fitted and all comparisons made. Another rule: fit anew. */
export const BENCHMARK_CAPTURE: CaptureName = 'rim';

/** Where the ground falls, radians from +x. */
const DOWNHILL = -Math.PI / 2;

/** Paces among which the best is refined, m past. */
const PACES = [0.03, 0.1, 0.2, 0.35, 0.5, 0.7, 1];

/** A green, its ball nowhere yet. @param slope rise over run @param greenSpeed m */
export const greenOf = (slope: number, greenSpeed: number, capture: CaptureName): Putt => ({
  surface: planeSurface({ slope, downhill: DOWNHILL }),
  greenSpeed,
  ball: { x: 0, y: -1 },
  hole: { x: 0, y: 0 },
  capture,
});

/** @param length ball to hole, m @param turned bearing of the ball from straight below the hole, radians */
export function ballAt(green: Putt, length: number, turned: number): Putt {
  const bearing = DOWNHILL + turned;
  return { ...green, ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) } };
}

/**
 * Players are taken to play so much of the pace of fewest putts (fitted by hand to what is short and what is left from 10 ft: at 1 the tour's
 * player leaves 2% short and 1.9 ft, at 0.75 6% and 1.4 ft; published 7% and 1.6 ft, Broadie 2020). MODEL.md, section 3.
 */
const SHARE_OF_BEST = 0.85;

/** The pace a player of a record plays, m past, and its odds; undefined when no pace has a line. */
export function playedOf(
  putt: Putt,
  player: Player,
  table: NextPutts,
): { readonly pace: number; readonly odds: Odds } | undefined {
  const best = fewestPutts(putt, PACES, player, table);
  if (best === undefined) return undefined;
  const pace = SHARE_OF_BEST * best.pace;
  const odds = best.oddsAt(pace);
  return odds ? { pace, odds } : { pace: best.pace, odds: best.odds };
}
