/**
 * How likely a record is for a player. Answers for: the logarithm of the product over all that was recorded. Leaves out: priors
 * (prior.ts), the search (posterior.ts).
 *
 * One in two hundred putts is taken to say nothing of its player (a number mistyped, a tap-in missed in a hurry): its chance is that
 * of a player with three times the usual errors. Bad strokes are another thing: tails.ts.
 */
import type { Recorded, SaidOf } from './outcomes.ts';
import { PlayerStrokes, type Someone, type Spot } from './player-strokes.ts';
import { chanceOf } from './recorded-strokes.ts';

/** Chance of the words, whatever became of the putt: 1 where there are none. */
export const chanceOfWords = (said: SaidOf, strokes: PlayerStrokes): number => {
  let sum = 0;
  for (const { index, share, words } of said.spots) sum += share * strokes.words(index, words);
  return sum;
};

/** Share of putts that are another player's, so to speak, and how many times his errors are the usual ones (both ours). */
const STRAY = 0.005;
export const STRAY_TIMES = 3;
/** No chance is smaller: what no player does is a slip of the pen. */
const LEAST = 1e-12;

/** Chance of one outcome, strays included. @param stray its chance for the stray player */
export const mixedChance = (chance: number, stray: number): number =>
  Math.max(LEAST, (1 - STRAY) * chance + STRAY * stray);

export interface Likelihood {
  /** Logarithm of the chance of all of it. */
  of(someone: Someone): number;
  /** The same record by record, into `out`. */
  each(someone: Someone, out: Float64Array): void;
}

/** @param stray whose strokes strays are */
export function likelihoodOf(
  record: readonly Recorded[],
  spots: readonly Spot[],
  stray: Someone,
): Likelihood {
  const strokes = new PlayerStrokes(spots);
  strokes.fill(stray);
  // Putts of one length with the same words are given the same: worked out once for all of them.
  const saids: SaidOf[] = [];
  const numbers = new Map<string, number>();
  const saidAt = record.map(({ said }) => {
    if (said === undefined) return -1;
    const key = said.spots
      .map(({ index, words }) => `${index}${words.climb}${words.breaks}${words.slopeFelt}`)
      .join();
    let number = numbers.get(key);
    if (number === undefined) {
      number = saids.length;
      numbers.set(key, number);
      saids.push(said);
    }
    return number;
  });
  const givens = new Float64Array(saids.length);
  const hear = (): void => {
    for (let i = 0; i < saids.length; i++) givens[i] = chanceOfWords(saids[i], strokes);
  };
  hear();
  const given = (r: number): number => (saidAt[r] < 0 ? 1 : givens[saidAt[r]]);
  const strays = record.map(({ outcomes }, r) =>
    outcomes.map((those) =>
      Float64Array.from(those, (outcome) => chanceOf(outcome, strokes, stray.rim, given(r))),
    ),
  );
  const logOf = (r: number, rim: number): number => {
    const { shares, outcomes, counts } = record[r];
    const onGround = (g: number): number => {
      let sum = 0;
      for (let o = 0; o < counts.length; o++)
        sum +=
          counts[o] *
          Math.log(mixedChance(chanceOf(outcomes[g][o], strokes, rim, given(r)), strays[r][g][o]));
      return sum;
    };
    if (shares.length === 1) return onGround(0);
    const logs = shares.map((_, g) => onGround(g));
    const most = Math.max(...logs);
    return most + Math.log(logs.reduce((total, log, g) => total + shares[g] * Math.exp(log - most), 0));
  };
  return {
    of(someone) {
      strokes.fill(someone);
      hear();
      let sum = 0;
      for (let r = 0; r < record.length; r++) sum += logOf(r, someone.rim);
      return sum;
    },
    each(someone, out) {
      strokes.fill(someone);
      hear();
      for (let r = 0; r < record.length; r++) out[r] = logOf(r, someone.rim);
    },
  };
}
