/** The pace one usually putts at, in words: the question, its answers, what was said. Data in, words out. */
import { formatShort, type Units } from '../../text/format.ts';

export const PACE_ASKED = 'What pace do you usually putt at?';
export const PACE_WHY =
  'How far past the hole you mean a miss to stop. Asked once: a record tells how far putts roll, not how far they were meant to, so without it a habit of hitting too hard or too soft cannot be told from the pace you mean. Putts with “Pace meant” tapped go by that.';

/** @param paces soft, middle and firm, m past */
export const paceAnswers = (paces: readonly [number, number, number], units: Units): readonly string[] => {
  const [die, plain, firm] = paces.map((pace) => formatShort(pace, units));
  return [`Die it in, ${die} past`, `About ${plain} past`, `Firm, ${firm} past`];
};

/** @param pace m past */
export const paceSaid = (pace: number, units: Units): string =>
  `You usually putt to stop ${formatShort(pace, units)} past the hole, you said; the fit takes that for what was meant.`;
export const NOT_SAID =
  'You did not say what pace you usually putt at: a habit of pace cannot be told from it.';
