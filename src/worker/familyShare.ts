/** How much of the work of asking a family is done: on a field half of it comes before the first answer, on a plane next to nothing. */

const BEFORE_FIRST = 0.5;

export interface FamilyShare {
  /** @param share done of what comes before the first, 0 to 1 */
  readonly preparing: (share: number) => number;
  readonly asked: (asked: number, of: number) => number;
}

export const familyShare = (isField: boolean): FamilyShare => {
  const before = isField ? BEFORE_FIRST : 0;
  return {
    preparing: (share) => before * share,
    asked: (asked, of) => before + ((1 - before) * asked) / of,
  };
};
