/**
 * One read judged: how far off, which way, and as what share of the break.
 *
 * Answers for: the error of one aim. Leaves out: what it cost (odds), many reads together (summary.ts).
 * Errors are signed towards more break: playing 9 in where 12 in is true is -3 in, -25%, on either side of the hole.
 */
import { inchesToMetres } from '../units.ts';

/** Nearer than this is right, m: half an inch, about a quarter of a ball and finer than anyone starts a putt. */
const RIGHT_WITHIN = inchesToMetres(0.5);
/** With less true break than this a share says nothing, m. */
const LEAST_BREAK_FOR_SHARE = inchesToMetres(1);

export type ReadVerdict = 'right' | 'tooLittle' | 'tooMuch' | 'wrongSide';

export interface AimScore {
  /** Aim less truth, m, positive: more break than there is (on a straight putt: to the left). */
  readonly error: number;
  /** The same as a share of the true break; undefined on nearly straight putts. */
  readonly share: number | undefined;
  readonly verdict: ReadVerdict;
}

/** @param trueAim true aim offset, m, positive left @param aim the person's, m, positive left */
export function scoreAim(trueAim: number, aim: number): AimScore {
  const breaksRight = trueAim >= 0;
  const error = breaksRight ? aim - trueAim : trueAim - aim;
  const size = Math.abs(trueAim);
  const share = size < LEAST_BREAK_FOR_SHARE ? undefined : error / size;
  if (Math.abs(error) <= RIGHT_WITHIN) return { error, share, verdict: 'right' };
  // A straight putt has no low side: any aim off the centre is break that is not there.
  if (error > 0 || size < RIGHT_WITHIN) return { error, share, verdict: 'tooMuch' };
  // Past the centre by more than the hand's own doubt: not too little break but break to the other side.
  return { error, share, verdict: error < -(size + RIGHT_WITHIN) ? 'wrongSide' : 'tooLittle' };
}
