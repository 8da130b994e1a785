/**
 * The balls one can roll on the map: on the true line, or as this player strikes them. Answers for: which ball is next and
 * what is said of its roll. Struck balls are those of the cloud on the map, one after the other. Leaves out: drawing.
 */
import { type Putt, type Roll, rollBall } from '../../../sim/index.ts';
import { formatLeave, formatSeconds, type Units } from '../../text/format.ts';
import { clouds, lines } from './lines.ts';

export type Pace = 'die' | 'firm';
export type Stroke = 'true' | 'struck';

export interface NextRoll {
  readonly putt: Putt;
  readonly pace: Pace;
  readonly roll: Roll;
}

/** Of each cloud the ball rolled last, and of both the one that lipped out last. */
const rolled = { die: -1, firm: -1 };
let lipped = -1;

/** The ball on the true line, or the next of the cloud; undefined while there is none. */
export const nextRoll = (pace: Pace, stroke: Stroke): NextRoll | undefined => {
  if (stroke === 'true') {
    const asked = lines.peek();
    const line = asked?.[pace];
    if (asked === undefined || line?.status !== 'ok') return undefined;
    return { putt: asked.putt, pace, roll: rollBall(asked.putt, line.start, line.speed) };
  }
  const count = clouds.peek()?.[pace].starts.length ?? 0;
  if (count === 0) return undefined;
  rolled[pace] = (rolled[pace] + 1) % count;
  return cloudRoll(pace, rolled[pace]);
};

const cloudRoll = (pace: Pace, index: number): NextRoll | undefined => {
  const cloud = clouds.peek();
  if (cloud === undefined) return undefined;
  const { starts, speeds } = cloud[pace];
  return { putt: cloud.putt, pace, roll: rollBall(cloud.putt, starts[index], speeds[index]) };
};

/** Balls of the clouds that lipped out, firm ones first. */
const lipOuts = (): readonly { readonly pace: Pace; readonly index: number }[] => {
  const cloud = clouds.value;
  if (cloud === undefined) return [];
  return (['firm', 'die'] as const).flatMap((pace) =>
    [...cloud[pace].lippedOut].flatMap((out, index) => (out ? [{ pace, index }] : [])),
  );
};

/** Whether the map has a lip-out to show; follows the clouds. */
export const hasLipOut = (): boolean => lipOuts().length > 0;

/** The next ball of the clouds that lips out. */
export const nextLipOut = (): NextRoll | undefined => {
  const all = lipOuts();
  if (all.length === 0) return undefined;
  lipped = (lipped + 1) % all.length;
  const { pace, index } = all[lipped];
  return cloudRoll(pace, index);
};

/** What happened, for the line under the map. */
export const rollWords = ({ putt, pace, roll }: NextRoll, units: Units): string => {
  const name = pace === 'die' ? 'Dying' : 'Firm';
  const after = `after ${formatSeconds(roll.time)}`;
  if (roll.status === 'holed') return `${name} putt: holed ${after}.`;
  if (roll.rest === undefined) return `${name} putt: missed, and it does not stop on this slope.`;
  const left = formatLeave(Math.hypot(roll.rest.x - putt.hole.x, roll.rest.y - putt.hole.y), units);
  return `${name} putt: ${roll.lippedOut ? 'lipped out' : 'missed'}, ${left} left ${after}.`;
};
