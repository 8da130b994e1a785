/** What is told once when errors of an older form were taken over (state/olderErrors.ts), in one sentence. */

export interface TakenOver {
  readonly as: 'preset' | 'byHand';
  /** A fit in the old form was dropped with it. */
  readonly fitDropped: boolean;
}

export const takenOverWords = ({ as, fitDropped }: TakenOver): string => {
  const what =
    as === 'preset'
      ? 'the same player to start from, with their numbers in the new form'
      : 'the numbers below, with misread slope and green speed taken out of the spread of pace';
  const mend = fitDropped
    ? 'the fit to your record has to be made again on “Your errors”'
    : 'set them anew, or fit them from your record on “Your errors”';
  return `Your errors were set in an older form, in which a read was off by a share of the break; they were taken over as ${what}: ${mend}.`;
};
