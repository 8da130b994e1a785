/** Putts that cannot be judged are refused in a sentence: what was got, what was expected, how to mend it. */
import { describe, expect, it } from 'vitest';
import { checkPutt, feetToMetres, generateGreen, type Putt, planeSurface } from '../../sim/index.ts';

const good: Putt = {
  surface: planeSurface({ slope: 0.02, downhill: 0 }),
  greenSpeed: feetToMetres(10),
  ball: { x: 3, y: 0 },
  hole: { x: 0, y: 0 },
  capture: 'simple',
};
const green = generateGreen({ seed: 1 });

describe('the check of a putt', () => {
  it('has nothing to say of an ordinary putt, on a plane or a green', () => {
    expect(checkPutt(good)).toBeUndefined();
    expect(checkPutt({ ...good, skid: true })).toBeUndefined();
    expect(
      checkPutt({ ...good, surface: green, ball: { x: 8, y: 8 }, hole: { x: 10, y: 10 } }),
    ).toBeUndefined();
  });

  it.each([
    ['a ball nowhere', { ball: { x: Number.NaN, y: 0 } }, 'finite positions'],
    ['a hole at the end of the world', { hole: { x: 0, y: Number.POSITIVE_INFINITY } }, 'finite positions'],
    ['a green speed of 40 ft', { greenSpeed: feetToMetres(40) }, '3 to 20 ft'],
    ['a green speed that is no number', { greenSpeed: Number.NaN }, '3 to 20 ft'],
    ['a putt of 0 ft', { ball: { x: 0, y: 0 } }, 'outside the hole'],
    ['a putt of 200 ft', { ball: { x: 61, y: 0 } }, 'at most 131 ft'],
    // MODEL.md section 1: at 10 ft a slope of 7.8% no longer holds a ball.
    ['a slope that holds no ball', { surface: planeSurface({ slope: 0.09, downhill: 0 }) }, 'under 7.8%'],
    ['a hole off the green', { surface: green, ball: { x: 1, y: 1 }, hole: { x: -1, y: 1 } }, 'on the green'],
    [
      'a ball off the green',
      { surface: green, ball: { x: 1, y: 21 }, hole: { x: 1, y: 19 } },
      'on the green',
    ],
  ] as const)('refuses %s', (_, change, expected) => {
    const problem = checkPutt({ ...good, ...change });
    expect(problem).toMatch(/^Got .+; expected .+\. .+\.$/);
    expect(problem).toContain(expected);
  });
});
