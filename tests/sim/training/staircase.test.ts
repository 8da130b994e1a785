/** The staircase, against what it promises and against players of known ability. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../sim/random.ts';
import { hitShareBound, wantedDifficulty } from '../../../sim/training/staircase.ts';

const logistic = (z: number): number => 1 / (1 + Math.exp(-z));

/** Hits of a player who hits a question of difficulty d with chance 1/(1 + (d/ability)^slope). */
const play = (ability: number, slope: number, answers: number, seed: string): boolean[] => {
  const random = seededRandom(seed);
  const hits: boolean[] = [];
  for (let one = 0; one < answers; one++)
    hits.push(random() < logistic(-slope * Math.log(wantedDifficulty(hits) / ability)));
  return hits;
};
const shareOf = (hits: readonly boolean[]): number => hits.filter((hit) => hit).length / hits.length;

describe('the wanted difficulty', () => {
  it('rises by 0.3 steps after a hit and falls by 0.7 after a miss', () => {
    const first = Math.log(wantedDifficulty([]));
    const up = Math.log(wantedDifficulty([true])) - first;
    const down = Math.log(wantedDifficulty([false])) - first;
    expect(up).toBeGreaterThan(0);
    expect(down / up).toBeCloseTo(-7 / 3, 10);
    // Seven hits and three misses: where it began.
    const mixed = [true, true, false, true, true, true, false, true, true, false];
    expect(Math.log(wantedDifficulty(mixed))).toBeCloseTo(first, 10);
  });

  it('brings 70% of hits whatever the ability, never farther off than its bound', () => {
    for (const ability of [1.5, 3, 6, 12])
      for (const slope of [1.5, 3]) {
        const hits = play(ability, slope, 400, `${ability} ${slope}`);
        expect(Math.abs(shareOf(hits) - 0.7)).toBeLessThan(hitShareBound(400));
        expect(hitShareBound(400)).toBeLessThan(0.02);
      }
  });

  it('settles where such a player hits seven in ten', () => {
    // Logistic, slope 3: 70% at ability (3/7)^(1/3) = 0.754 of it. Mean over the second half of 400, its scatter about 0.3 in the logarithm.
    const hits = play(6, 3, 400, 'settles');
    let sum = 0;
    for (let one = 200; one < 400; one++) sum += Math.log(wantedDifficulty(hits.slice(0, one)));
    expect(Math.abs(sum / 200 - Math.log(6 * 0.754))).toBeLessThan(0.15);
  });

  it('stays between its ends', () => {
    expect(wantedDifficulty(Array(500).fill(true))).toBeCloseTo(50, 10);
    expect(wantedDifficulty(Array(500).fill(false))).toBeCloseTo(0.2, 10);
  });
});
