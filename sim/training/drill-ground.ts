/**
 * The ground a drill is done on, and each of its stations as a putt.
 * Answers for: which ground a drill is for, the slope a station gets. Leaves out: measuring speed and slope.
 * All stations lie round one hole on a plane; the model knows no seams, grain or pile direction of a carpet.
 */
import { checkPutt } from '../roll/check.ts';
import { planeSurface } from '../surface/plane.ts';
import type { CaptureName, PlaneSurface, Putt } from '../types.ts';
import { clockToBearing } from '../units.ts';
import type { PuttingDrill, Station } from './putting-drill.ts';

/** A carpet is taken as level: a floor that is not is a green. */
export type DrillGround =
  | {
      readonly kind: 'grass';
      /** Stimpmeter reading, m. */
      readonly greenSpeed: number;
      /** Steepest the player has there, rise over run: each station takes what is nearest to it within its range. */
      readonly slope: number;
    }
  | { readonly kind: 'carpet'; readonly greenSpeed: number };

export type GroundKind = DrillGround['kind'];

/** Down the page, so that 12 o'clock is at the top. */
const DOWNHILL = -Math.PI / 2;

/** Slope of a station on this ground, rise over run. */
export const stationSlope = ({ slope: [least, most] }: Station, ground: DrillGround): number =>
  ground.kind === 'carpet' ? 0 : Math.max(least, Math.min(most, ground.slope));

/** A station as a putt; the hole, or the mark, is the origin and downhill is down the page. */
export function stationPutt(
  station: Station,
  ground: DrillGround,
  capture: CaptureName,
): Putt & { readonly surface: PlaneSurface } {
  const bearing = clockToBearing(station.clock, DOWNHILL);
  return {
    surface: planeSurface({ slope: stationSlope(station, ground), downhill: DOWNHILL }),
    greenSpeed: ground.greenSpeed,
    ball: { x: station.distanceM * Math.cos(bearing), y: station.distanceM * Math.sin(bearing) },
    hole: { x: 0, y: 0 },
    capture,
  };
}

/** @returns a sentence when this drill cannot be done on this ground, undefined when it can */
export function drillProblem(drill: PuttingDrill, ground: DrillGround): string | undefined {
  if (drill.ground !== 'both' && drill.ground !== ground.kind)
    return `Got ${ground.kind}; expected ${drill.ground} for "${drill.name}". Choose another drill or another ground.`;
  if (ground.kind === 'grass' && !(ground.slope >= 0 && ground.slope <= 0.1))
    return `Got a slope of ${ground.slope}; expected a share of 0 to 0.1. Type the slope again.`;
  for (const station of drill.stations) {
    const problem = checkPutt(stationPutt(station, ground, 'rim'));
    if (problem !== undefined) return problem;
  }
  return undefined;
}
