/** The map in words, for whoever cannot see it: follows every change of the putt. */
import type { Point, Read, Surface } from '../../../sim/index.ts';
import {
  formatAim,
  formatClock,
  formatLeave,
  formatLength,
  formatSlope,
  holeWords,
  type Units,
} from '../../text/format.ts';

export interface DescribedMap {
  readonly surface: Surface;
  /** m */
  readonly length: number;
  /** hours */
  readonly clock: number;
  /** Slope at the hole, share. */
  readonly slope: number;
  readonly die: Read | undefined;
  readonly firm: Read | undefined;
  readonly hole: Point;
  readonly units: Units;
}

/** Where the ball comes to the hole from, for the player: left-to-right, right-to-left or straight. */
export const breakDirection = (aimOffset: number): string =>
  Math.abs(aimOffset) < 0.00635
    ? 'straight'
    : aimOffset > 0
      ? 'breaks left to right'
      : 'breaks right to left';

const lineWords = (name: string, read: Read | undefined, { hole, units }: DescribedMap): string => {
  if (read === undefined || read.status !== 'ok') return `${name}: no line.`;
  const past = Math.hypot(read.rest.x - hole.x, read.rest.y - hole.y);
  const aim =
    read.aimOffset === undefined
      ? 'start behind you'
      : `aim ${formatAim(read.aimOffset, units)}, ${holeWords(read.aimOffset)}`;
  return `${name}: ${aim}; stops ${formatLeave(past, units)} from a covered hole.`;
};

export const describeMap = (map: DescribedMap): string => {
  const ground =
    map.surface.kind === 'plane'
      ? `a plane of ${formatSlope(map.slope)}`
      : `a made-up green, ${formatSlope(map.slope)} at the hole`;
  const turn =
    map.die?.status === 'ok' && map.die.aimOffset !== undefined
      ? ` It ${breakDirection(map.die.aimOffset).replace('straight', 'runs straight')}.`
      : '';
  return `Ball ${formatLength(map.length, map.units)} from the hole at ${formatClock(map.clock)} on ${ground}.${turn} ${lineWords('Die', map.die, map)} ${lineWords('Firm', map.firm, map)}`;
};
