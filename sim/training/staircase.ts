/**
 * How hard the next question is to be, from the hits and misses so far.
 *
 * Answers for: the wanted difficulty. Leaves out: what difficulty is (hit.ts), finding such a putt (choose-next.ts).
 * Rule: weighted up and down (Kaernbach, Perception & Psychophysics 49, 227, 1991, memory). On a scale of ln difficulty a hit makes the
 * next question harder by 0.3 steps, a miss easier by 0.7: there is no drift where the share of hits is 0.7. So with n answers
 * the share of hits is 0.7 + (place now - place at first)/(n step), whatever the player's eye is like and whether the putts found
 * are as hard as asked, as long as the ends are not reached. Tried and dropped: a logistic model of ability, which needs the
 * difficulty to mean the same for every kind of putt; a player with one weak side has two abilities.
 */

/** Share of hits aimed at. */
export const WANTED_HITS = 0.7;
/** A hit and a miss together, in ln difficulty. */
const STEP = 0.5;
/** First question of all; a read off by half hits. */
const FIRST = 2;
/** Ends: a break well inside what counts, and harder than any putt here, so that an eye for which short putts are too easy gets long ones. */
const EASIEST = 0.2;
const HARDEST = 50;

/** Most that the share of hits can be from 0.7 after n answers between the ends, either way. */
export const hitShareBound = (answers: number): number =>
  Math.max(Math.log(HARDEST / FIRST), Math.log(FIRST / EASIEST)) / (answers * STEP);

/** Difficulty wanted after these answers, oldest first: true for a hit. */
export function wantedDifficulty(hits: Iterable<boolean>): number {
  let place = Math.log(FIRST);
  for (const hit of hits) {
    place += STEP * (hit ? 1 - WANTED_HITS : -WANTED_HITS);
    place = Math.max(Math.log(EASIEST), Math.min(Math.log(HARDEST), place));
  }
  return Math.exp(place);
}
