/**
 * The ground and the green speed as a player sees them: tilted by so much, all slope so much too large, another speed. Answers
 * for: the putt that is read in the place of the true one. Leaves out: how often what is seen (odds/meant.ts). MODEL.md, section 3.
 */
import { steepestHold } from '../roll/plane.ts';
import type { FieldSurface, PlaneSurface, Putt, Surface } from '../types.ts';

/** What is seen in the place of what is. */
export interface Sight {
  /** All slope is seen so many times as large. */
  readonly times: number;
  /** Slope seen on top of that, rise over run along +x and +y. */
  readonly tiltX: number;
  readonly tiltY: number;
  /** Green speed as seen, in true ones. */
  readonly speed: number;
}

/**
 * A plane is never seen steeper than this share of what holds a ball at the speed seen (ours): beyond it nothing could be read. Of the
 * presets' draws on 3% at 12 ft of green speed none gets there.
 */
export const STEEPEST_SEEN = 0.9;

/** The putt as it is seen. */
export function seenPutt(putt: Putt, sight: Sight): Putt {
  const greenSpeed = putt.greenSpeed * sight.speed;
  return { ...putt, greenSpeed, surface: seenSurface(putt.surface, sight, greenSpeed) };
}

function seenSurface(surface: Surface, sight: Sight, greenSpeed: number): Surface {
  if (sight.times === 1 && sight.tiltX === 0 && sight.tiltY === 0 && surface.kind === 'field') return surface;
  return surface.kind === 'plane' ? seenPlane(surface, sight, greenSpeed) : seenField(surface, sight);
}

/** A plane as it is seen, held below what a ball would not rest on. @param greenSpeed as seen, m */
export function seenPlane(
  { slope, downhill }: PlaneSurface,
  { times, tiltX, tiltY }: Omit<Sight, 'speed'>,
  greenSpeed: number,
): PlaneSurface {
  const fallX = times * slope * Math.cos(downhill) - tiltX;
  const fallY = times * slope * Math.sin(downhill) - tiltY;
  const seen = Math.sqrt(fallX * fallX + fallY * fallY);
  // Level ground keeps its direction, which everything else on it is counted from.
  if (seen === 0) return { kind: 'plane', slope: 0, downhill };
  const steepest = Math.max(slope, STEEPEST_SEEN * steepestHold(greenSpeed));
  return { kind: 'plane', slope: Math.min(seen, steepest), downhill: Math.atan2(fallY, fallX) };
}

/** Grounds seen of one field, kept: every place of a green is read on the same few. */
const kept = new WeakMap<FieldSurface, Map<string, FieldSurface>>();
/** Of one field; more are made by many players in turn, and the oldest goes. */
const MOST_KEPT = 24;

function seenField(surface: FieldSurface, { times, tiltX, tiltY }: Sight): FieldSurface {
  let grounds = kept.get(surface);
  if (grounds === undefined) {
    grounds = new Map();
    kept.set(surface, grounds);
  }
  const key = `${times} ${tiltX} ${tiltY}`;
  const known = grounds.get(key);
  if (known !== undefined) return known;
  const { spacing, columns } = surface;
  const heights = surface.heights.map(
    (height, i) => times * height + spacing * (tiltX * (i % columns) + tiltY * Math.floor(i / columns)),
  );
  const seen: FieldSurface = { ...surface, heights };
  if (grounds.size >= MOST_KEPT)
    for (const [oldest] of grounds) {
      grounds.delete(oldest);
      break;
    }
  grounds.set(key, seen);
  return seen;
}
