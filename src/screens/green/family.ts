/**
 * Where to leave it, asked of others the person may be. Pure. Answers for: whether the place that is best on the map serves all of them, and
 * whom it does not. Leaves out: their tables (mapWork.ts), words (screens/green/words.ts).
 * As with other green speeds, only the change from table to table is taken from tables and put on what the map says.
 */
import {
  type ApproachSide,
  type ApproachSides,
  AS_GOOD_AS_NOBODY,
  type Member,
  type NextPutts,
  type Parted,
  type Point,
  parted,
  type Surface,
} from '../../../sim/index.ts';
import { sidesOf } from './view.ts';
import { SIDE_MATTERS } from './words.ts';

export interface FamilyRequest {
  readonly surface: Surface;
  readonly hole: Point;
  /** Of the map. */
  readonly sides: ApproachSides;
  /** Next putts of the player the map is of, and of the others. */
  readonly table: NextPutts;
  readonly members: readonly (Member & { readonly table: NextPutts })[];
}

export interface FamilySides {
  readonly asked: number;
  /** Putts that the map's best place saves over the worst one, least and most of all asked. */
  readonly worth: { readonly low: number; readonly high: number };
  /** undefined: the map's best place is best, or nearly, for all. */
  readonly turns:
    | {
        /** First: for whom the map's best place serves; second: for whom it does not. undefined: it serves nobody but the middle one. */
        readonly on: Parted | undefined;
        /** Where those should leave it, hours, and what that saves them over the map's best place, putts: the most of them. */
        readonly clock: number;
        readonly saves: number;
      }
    | undefined;
}

/** undefined: no place is known to all. */
export const familySidesOf = ({
  surface,
  hole,
  sides,
  table,
  members,
}: FamilyRequest): FamilySides | undefined => {
  const onTable = (source: NextPutts): Map<number, number> =>
    new Map(
      sidesOf(surface, hole, source, sides.distance)?.sides.map((one) => [one.clock, one.expectedPutts]) ??
        [],
    );
  const before = onTable(table);
  const found = members.flatMap((member) => {
    const after = onTable(member.table);
    const puttsAt = ({ clock, expectedPutts }: ApproachSide): number =>
      expectedPutts + (after.get(clock) ?? Number.NaN) - (before.get(clock) ?? Number.NaN);
    const known = sides.sides.filter((side) => Number.isFinite(puttsAt(side)));
    if (known.length === 0 || !Number.isFinite(puttsAt(sides.best))) return [];
    const all = known.map(puttsAt);
    const least = Math.min(...all);
    const there = puttsAt(sides.best);
    return [
      {
        member,
        worth: Math.max(...all) - there,
        saves: there - least,
        clock: known[all.indexOf(least)].clock,
      },
    ];
  });
  if (found.length === 0) return undefined;
  const weightOf = (some: readonly { readonly member: Member }[]): number =>
    some.reduce((sum, { member }) => sum + member.weight, 0);
  const others = found.filter(({ saves }) => saves >= SIDE_MATTERS);
  const served = found.filter(({ saves }) => saves < SIDE_MATTERS);
  const worths = found.map(({ worth }) => worth);
  const most = others.reduce((one, other) => (other.saves > one.saves ? other : one), others[0]);
  return {
    asked: found.length,
    worth: { low: Math.min(...worths), high: Math.max(...worths) },
    turns:
      weightOf(others) <= AS_GOOD_AS_NOBODY * weightOf(found)
        ? undefined
        : {
            on:
              served.length > 0
                ? parted(
                    served.map(({ member }) => member),
                    others.map(({ member }) => member),
                  )
                : undefined,
            clock: most.clock,
            saves: most.saves,
          },
  };
};
