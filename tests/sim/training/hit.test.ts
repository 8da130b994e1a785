/** What counts as a hit, against balls rolled one by one. */
import { describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../../drills/index.ts';
import { readPutt } from '../../../sim/read/line.ts';
import { rollBall } from '../../../sim/roll/roll.ts';
import { difficultyOf, hitAimsOf, isHit } from '../../../sim/training/hit.ts';
import { puttOfQuestion } from '../../../sim/training/putt-question.ts';
import { makeReadSet } from '../../../sim/training/question.ts';

/** Aims so far within or beyond the edge of what counts are told apart by a roll, m: the solver's own band is good to less. */
const EDGE = 0.0005;

describe('a hit', () => {
  it('under 20 ft is an aim from which the ball drops, to half a millimetre', () => {
    for (const id of ['pin-high-sidehill', 'up-and-down-pairs', 'short-testers', 'whole-greens']) {
      const drill = READ_DRILLS.find((one) => one.id === id);
      if (drill === undefined) throw new Error(`no drill ${id}`);
      for (const question of makeReadSet(drill, 'hits', 4).filter(({ length }) => length < 6.09)) {
        const putt = puttOfQuestion(question);
        const read = readPutt(putt, question.pace);
        if (read.status !== 'ok' || question.hitAims === undefined) throw new Error('no line');
        const { low, high } = question.hitAims;
        const drops = (aim: number): boolean =>
          rollBall(putt, Math.atan2(aim, question.length), read.speed).status === 'holed';
        expect(drops(low + EDGE)).toBe(true);
        expect(drops(high - EDGE)).toBe(true);
        expect(drops(low - EDGE)).toBe(false);
        expect(drops(high + EDGE)).toBe(false);
        expect(isHit(question, question.trueAim)).toBe(true);
        expect(isHit(question, high + EDGE)).toBe(false);
      }
    }
  });

  it('from 20 ft on is an aim within 18 in of the true one too', () => {
    const far = {
      trueAim: 1.2,
      hitAims: hitAimsOf(1.2, 9, { low: Math.atan(1.15 / 9), high: Math.atan(1.24 / 9) }),
    };
    expect(far.hitAims?.low).toBeCloseTo(1.2 - 0.4572, 12);
    expect(far.hitAims?.high).toBeCloseTo(1.2 + 0.4572, 12);
    expect(difficultyOf(far)).toBeCloseTo(1.2 / 0.4572, 12);
    // A putt from there that nothing drops still can be left dead.
    expect(hitAimsOf(1.2, 9, undefined)?.high).toBeCloseTo(1.6572, 12);
    expect(hitAimsOf(1.2, 3, undefined)).toBeUndefined();
  });

  it('is known of no question of before', () => {
    expect(isHit({ trueAim: 0.3 }, 0.3)).toBeUndefined();
    expect(difficultyOf({ trueAim: 0.3 })).toBeUndefined();
  });
});
