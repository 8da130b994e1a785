/** Laws every roll must obey, whatever its numbers. Seeds fixed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  feetToMetres,
  GRAVITY,
  generateGreen,
  type HeightSample,
  type Putt,
  planeSurface,
  type Roll,
  rollBall,
  STIMP_SPEED,
  type Surface,
  sampleSurface,
} from '../../sim/index.ts';

const heightAt = (surface: Surface, x: number, y: number): number => {
  const ground: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  if (!sampleSurface(surface, x, y, ground)) throw new Error(`off the surface at ${x}, ${y}`);
  return ground.height;
};

/** Energy per mass of a rolling sphere, J/kg, at the middle of each traced step: (7/10) v^2 + g h. */
const energies = (putt: Putt, { path }: Roll): number[] => {
  const found: number[] = [];
  for (let index = 0; index + 5 < path.length; index += 3) {
    const [x, y, t, nextX, nextY, nextT] = path.subarray(index, index + 6);
    if (nextT - t < 1e-9) continue;
    const speed = Math.hypot(nextX - x, nextY - y) / (nextT - t);
    found.push(0.7 * speed ** 2 + GRAVITY * heightAt(putt.surface, (x + nextX) / 2, (y + nextY) / 2));
  }
  return found;
};

const expectNoRise = (putt: Putt, start: number, speed: number): void => {
  const roll = rollBall(putt, start, speed);
  const found = energies(putt, roll);
  expect(found.length).toBeGreaterThan(10);
  // Speed from chords is second order in the step: a few parts in 10 000 of the launch energy at the traced density.
  const slack = 5e-4 * 0.7 * speed ** 2;
  for (let index = 1; index < found.length; index += 1)
    expect(found[index] - found[index - 1]).toBeLessThan(slack);
  // And it must fall: by friction times the way, all in all. 2% for the chords and the first and last half step.
  if (roll.status !== 'atRest') return;
  let way = 0;
  for (let index = 0; index + 5 < roll.path.length; index += 3)
    way += Math.hypot(roll.path[index + 3] - roll.path[index], roll.path[index + 4] - roll.path[index + 1]);
  const friction = STIMP_SPEED ** 2 / (2 * putt.greenSpeed);
  const { rest } = roll;
  if (rest === undefined) throw new Error('a ball at rest must say where');
  const lost =
    0.7 * speed ** 2 +
    GRAVITY * (heightAt(putt.surface, putt.ball.x, putt.ball.y) - heightAt(putt.surface, rest.x, rest.y));
  expect(Math.abs(lost / (1.4 * friction * way) - 1)).toBeLessThan(0.02);
};

const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

describe('the energy of a rolling ball', () => {
  it('never rises on a plane, and is lost to friction times the way it rolls', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        angle,
        angle,
        fc.double({ min: 7, max: 12, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (slope, downhill, start, feet, speed) => {
          expectNoRise(
            {
              surface: planeSurface({ slope, downhill }),
              greenSpeed: feetToMetres(feet),
              ball: { x: 0, y: 0 },
              hole: { x: 1000, y: 0 },
              capture: 'simple',
            },
            start,
            speed,
          );
        },
      ),
      { seed: 101, numRuns: 150 },
    );
  });

  it('never rises on a generated green, and is lost to friction times the way it rolls', () => {
    const greens = [1, 2, 3].map((seed) => generateGreen({ seed }));
    fc.assert(
      fc.property(
        fc.constantFrom(1, 2, 3),
        angle,
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        fc.tuple(fc.double({ min: 8, max: 12, noNaN: true }), fc.double({ min: 8, max: 12, noNaN: true })),
        (seed, start, speed, [x, y]) => {
          const surface = greens[seed - 1];
          expectNoRise(
            {
              surface,
              greenSpeed: feetToMetres(9),
              ball: { x, y },
              hole: { x: 19, y: 19 },
              capture: 'simple',
            },
            start,
            speed,
          );
        },
      ),
      { seed: 102, numRuns: 60 },
    );
  });
});
