/** What the tests of the rim share: the fastest drop by bisection, and all moments of one ball. */
import { HOLE_RADIUS } from '../../../sim/constants.ts';
import type { RimMaterial } from '../../../sim/hole/rim-contact.ts';
import { type RimOutcome, type RimPhase, rimMotion } from '../../../sim/hole/rim-motion.ts';

export interface Moment {
  readonly state: Float64Array;
  readonly time: number;
  readonly phase: RimPhase;
}

interface Setting {
  readonly material?: RimMaterial;
  readonly tolerance?: number;
  readonly slope?: number;
  readonly downhill?: number;
}

/** Every step of one ball. share: b/R. */
export function momentsOf(
  speed: number,
  share: number,
  { material, tolerance, slope, downhill }: Setting = {},
): { moments: Moment[]; outcome: RimOutcome } {
  const moments: Moment[] = [];
  const outcome = rimMotion(
    { speed, offset: share * HOLE_RADIUS, slope, downhill },
    {
      material,
      tolerance,
      watch: (state, time, phase) => moments.push({ state: state.slice(), time, phase }),
    },
  );
  return { moments, outcome };
}

/** Fastest arrival below which every ball drops, m/s: the first that does not in steps of 0.02, then halved. */
export function fastestDrop(share: number, { material, tolerance }: Setting = {}): number {
  const drops = (speed: number): boolean =>
    rimMotion({ speed, offset: share * HOLE_RADIUS }, { material, tolerance }).status === 'holed';
  let high = 0.02;
  while (drops(high)) high += 0.02;
  let low = high - 0.02;
  while (high - low > 1e-7) {
    const middle = (low + high) / 2;
    if (drops(middle)) low = middle;
    else high = middle;
  }
  return low;
}
