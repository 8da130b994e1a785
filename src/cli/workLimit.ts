/**
 * No request is worked on without end. Answers for: the one long piece of work, the table of next putts, given up after a minute.
 * Leaves out: the sentence's way to standard error (run.ts).
 */
import { type NextPutts, type Player, type Putt, prepareNextPutts } from '../../sim/index.ts';

/** Usual requests take one to ten seconds. */
const MOST_SECONDS = 60;

/** Too long; the message is for the person. */
export class TooMuchWork extends Error {}

/** @throws TooMuchWork once that many seconds have gone */
export function tableWithin(putt: Putt, player: Player, seconds = MOST_SECONDS): NextPutts {
  const until = performance.now() + 1000 * seconds;
  return prepareNextPutts(putt, player, {
    onProgress: () => {
      if (performance.now() > until)
        throw new TooMuchWork(
          `got a request that takes more than ${seconds} s, expected an easier one. Use a smaller or coarser grid, a shorter putt, or errors nearer to a player's.`,
        );
    },
  });
}
