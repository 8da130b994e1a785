/**
 * The putts of a hole and of a round as they are written down: what a new or corrected putt does to the others, when a hole is
 * finished, which comes next, what an undo takes back. Pure. Order is hole and stroke, never the clock.
 */
import type { RecordedPutt } from '../../../sim/index.ts';
import type { RoundInHand } from '../../store/records.ts';
import { sameLength } from './distances.ts';

export const puttsOfHole = ({ putts }: RoundInHand, hole: number): readonly RecordedPutt[] =>
  putts.filter((putt) => putt.hole === hole);

const ends = ({ kind, holed }: RecordedPutt): boolean => holed || kind === 'conceded';

/** Whether the last putt was holed or conceded. */
export const isHoledOut = (putts: readonly RecordedPutt[]): boolean => {
  const last = putts.at(-1);
  return last !== undefined && ends(last);
};

export const isFinished = (inHand: RoundInHand, hole: number): boolean =>
  inHand.round.withoutPutt.includes(hole) || isHoledOut(puttsOfHole(inHand, hole));

/**
 * The hole with a putt added at its end, or put in the place of the one with its id. A putt that ends the hole takes those
 * after it away; a leave that is corrected corrects the distance handed on to the next.
 */
export const withPutt = (putts: readonly RecordedPutt[], putt: RecordedPutt): RecordedPutt[] => {
  const at = putts.findIndex(({ id }) => id === putt.id);
  const before = at < 0 ? [...putts] : putts.slice(0, at);
  const after = at < 0 || ends(putt) ? [] : putts.slice(at + 1);
  const old = putts[at]?.miss?.leave;
  const [next, ...rest] = after;
  const handedOn =
    next !== undefined && putt.miss && sameLength(next.distance, old)
      ? [{ ...next, distance: putt.miss.leave }, ...rest]
      : after;
  return [...before, putt, ...handedOn].map((one, index) => ({ ...one, stroke: index + 1 }));
};

/** How many putts a correction takes away. */
export const takenAway = (putts: readonly RecordedPutt[], putt: RecordedPutt): number =>
  putts.length - withPutt(putts, putt).length + (putts.some(({ id }) => id === putt.id) ? 0 : 1);

export const withoutPuttOf = (putts: readonly RecordedPutt[], id: string): RecordedPutt[] =>
  putts.filter((putt) => putt.id !== id).map((putt, index) => ({ ...putt, stroke: index + 1 }));

/** The first hole not finished after this one, round by the first hole; undefined when every hole is finished. */
export const nextHole = (inHand: RoundInHand, from: number): number | undefined => {
  const { holes } = inHand.round;
  for (let step = 1; step <= holes; step += 1) {
    const hole = ((from - 1 + step) % holes) + 1;
    if (!isFinished(inHand, hole)) return hole;
  }
  return undefined;
};

/** Where a round goes on that is opened again: a hole begun, or the one after the last that was finished. */
export const holeToGoOn = (inHand: RoundInHand): number => {
  const { round } = inHand;
  const all = Array.from({ length: round.holes }, (_, index) => index + 1);
  const begun = all.find((hole) => puttsOfHole(inHand, hole).length > 0 && !isFinished(inHand, hole));
  if (begun !== undefined) return begun;
  const finished = all.filter((hole) => isFinished(inHand, hole));
  // Begun on a later hole, a round ends before where it began: the end of the last run of finished holes.
  const last = finished.findLast((hole) => !isFinished(inHand, (hole % round.holes) + 1));
  return last === undefined ? (finished.at(-1) ?? 1) : (last % round.holes) + 1;
};

/** What an undo takes back: a putt, or the word that a hole had none. */
export type UndoTarget =
  | { readonly kind: 'putt'; readonly hole: number; readonly putt: RecordedPutt }
  | { readonly kind: 'withoutPutt'; readonly hole: number };

/** The last thing written on this hole, or, while nothing is, on the hole before it. */
export const undoTarget = (inHand: RoundInHand, hole: number): UndoTarget | undefined => {
  const { holes, withoutPutt } = inHand.round;
  for (const at of [hole, ((hole - 2 + holes) % holes) + 1]) {
    const putt = puttsOfHole(inHand, at).at(-1);
    if (putt) return { kind: 'putt', hole: at, putt };
    if (withoutPutt.includes(at)) return { kind: 'withoutPutt', hole: at };
  }
  return undefined;
};

/** Whether two lists hold the same putts, left where they were. */
export const isSameList = (one: readonly RecordedPutt[], two: readonly RecordedPutt[]): boolean =>
  one.length === two.length &&
  one.every(({ id, miss }, index) => id === two[index].id && miss?.leave === two[index].miss?.leave);

/** Puts what was written in the place of what the page held, before the records themselves say so. */
export const withHole = (inHand: RoundInHand, hole: number, putts: readonly RecordedPutt[]): RoundInHand => ({
  ...inHand,
  putts: [...inHand.putts.filter((putt) => putt.hole !== hole), ...putts].sort(
    (a, b) => a.hole - b.hole || a.stroke - b.stroke,
  ),
});
