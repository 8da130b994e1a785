/**
 * The tables of next putts at hand, newest first, and which of them serves a putt. Answers for: on a plane a table serves
 * any place of the hole, on a field the same hole only. Leaves out: making them (worker), when (answer.ts, margin.ts).
 */
import type { NextPutts, Player, Putt, Surface } from '../../sim/index.ts';
import { changedPutt } from '../worker/cases.ts';
import type { CaseName } from '../worker/messages.ts';

/** A table takes about a tenth of a megabyte; these hold the putt on the page, its four cases, and a few before. */
const MOST_TABLES = 16;

export type Key = readonly unknown[];
const kept: { readonly key: Key; readonly table: NextPutts | undefined }[] = [];

/** Green speeds and slopes are reached by sums: 10 ft and a foot must be the same as 11 ft. */
const rounded = (value: number): number => Number(value.toFixed(9));

/** What makes the same table, whichever place of the ball, and on a plane of the hole. */
export const keyOf = (asked: Putt, player: Player, change?: CaseName): Key => {
  if (asked.surface.kind === 'plane') {
    const putt = change === undefined ? asked : changedPutt(asked, change);
    const { surface, greenSpeed, capture, skid } = putt;
    if (surface.kind === 'plane')
      return [
        rounded(surface.slope),
        rounded(surface.downhill),
        rounded(greenSpeed),
        capture,
        skid === true,
        ...Object.values(player),
      ];
  }
  const { surface, greenSpeed, hole, capture, skid } = asked;
  return [surface, greenSpeed, hole.x, hole.y, capture, skid === true, change, ...Object.values(player)];
};

export const sameKey = (first: Key, second: Key): boolean =>
  first.length === second.length && first.every((value, index) => value === second[index]);

const moved = (table: NextPutts | undefined, { hole }: Putt): NextPutts | undefined =>
  table && { ...table, hole };

/** Whether the table is there; one may be known not to exist (a hole that holds no ball). */
export const hasTable = (putt: Putt, player: Player, change?: CaseName): boolean => {
  const key = keyOf(putt, player, change);
  return kept.some((one) => sameKey(one.key, key));
};

/** The table made for this putt in this condition. */
export const tableFor = (putt: Putt, player: Player, change?: CaseName): NextPutts | undefined => {
  const key = keyOf(putt, player, change);
  return moved(kept.find((one) => sameKey(one.key, key))?.table, putt);
};

export const keepTable = (
  putt: Putt,
  player: Player,
  change: CaseName | undefined,
  table: NextPutts | undefined,
): void => {
  kept.unshift({ key: keyOf(putt, player, change), table });
  kept.length = Math.min(kept.length, MOST_TABLES);
};

/** The last table used, and the ground it is of. */
let last: { readonly table: NextPutts; readonly surface: Surface } | undefined;
export const useTable = (table: NextPutts, { surface }: Putt): void => {
  last = { table, surface };
};

/**
 * The last table, for what can be said while the right one is made. Near: of much the same ground, so that next putts are
 * about right; otherwise only what does not depend on them (holed, leaves) may be shown.
 */
export const roughTable = (putt: Putt): { readonly table: NextPutts; readonly near: boolean } | undefined => {
  if (last === undefined) return undefined;
  const near =
    last.surface === putt.surface || (last.surface.kind === 'plane' && putt.surface.kind === 'plane');
  return { table: { ...last.table, hole: putt.hole }, near };
};
