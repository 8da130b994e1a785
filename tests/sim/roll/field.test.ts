/** How rolls on a height field behave: symmetry, endings, misses, traces, work. */
import { describe, expect, it } from 'vitest';
import {
  type FieldSurface,
  feetToMetres,
  fieldSurface,
  GRAVITY,
  generateGreen,
  type HeightSample,
  ROLLING_FACTOR,
  STIMP_SPEED,
  sampleSurface,
} from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';
import { fieldRoller } from '../../../sim/roll/field.ts';
import { newPass } from '../../../sim/roll/roller.ts';

const GREEN_SPEED = feetToMetres(10);
const FRICTION = STIMP_SPEED ** 2 / (2 * GREEN_SPEED);

/** A square from 0 to 20 m. */
const fieldOf = (height: (x: number, y: number) => number, spacing = 0.25): FieldSurface => {
  const count = Math.round(20 / spacing) + 1;
  const heights: number[] = [];
  for (let row = 0; row < count; row++)
    for (let column = 0; column < count; column++) heights.push(height(column * spacing, row * spacing));
  return fieldSurface({ origin: { x: 0, y: 0 }, spacing, columns: count, rows: count, heights });
};
const heightOf = (surface: FieldSurface, x: number, y: number): number => {
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  if (!sampleSurface(surface, x, y, sample)) throw new Error(`off the surface at ${x}, ${y}`);
  return sample.height;
};

const BALL = { x: 9, y: 8 };
const HOLE = { x: 11, y: 10.2 };

describe('a roll on a height field', () => {
  it('is mirrored on mirrored ground and turned on turned ground', () => {
    const green = generateGreen({ seed: 12 });
    const n = green.columns;
    const rearranged = (from: (column: number, row: number) => number): FieldSurface =>
      fieldSurface({
        ...green,
        heights: green.heights.map((_, i) => green.heights[from(i % n, Math.floor(i / n))]),
      });
    const mirrored = rearranged((column, row) => row * n + (n - 1 - column));
    const turned = rearranged((column, row) => (n - 1 - column) * n + row);
    const random = seededRandom('symmetry');
    for (let i = 0; i < 20; i++) {
      const heading = 2 * Math.PI * random();
      const speed = 1 + random();
      const plain = fieldRoller(green, GREEN_SPEED, BALL, HOLE).pass(heading, speed, newPass());
      const other = fieldRoller(
        mirrored,
        GREEN_SPEED,
        { x: 20 - BALL.x, y: BALL.y },
        { x: 20 - HOLE.x, y: HOLE.y },
      ).pass(Math.PI - heading, speed, newPass());
      // Step sizes are the same up to rounding; 1e-9 m is rounding grown over the roll.
      expect(other.restX).toBeCloseTo(20 - plain.restX, 8);
      expect(other.restY).toBeCloseTo(plain.restY, 8);
      expect(other.miss).toBeCloseTo(-plain.miss, 8);
      const quarter = fieldRoller(
        turned,
        GREEN_SPEED,
        { x: 20 - BALL.y, y: BALL.x },
        { x: 20 - HOLE.y, y: HOLE.x },
      ).pass(heading + Math.PI / 2, speed, newPass());
      expect(quarter.restX).toBeCloseTo(20 - plain.restY, 8);
      expect(quarter.restY).toBeCloseTo(plain.restX, 8);
      expect(quarter.miss).toBeCloseTo(plain.miss, 8);
    }
  });

  it('ends where it leaves the surface when it runs off, on every side', () => {
    const level = fieldOf(() => 0);
    for (const [turn, x, y] of [
      [0, 20, BALL.y],
      [1, BALL.x, 20],
      [2, 0, BALL.y],
      [3, BALL.x, 0],
    ]) {
      const pass = fieldRoller(level, GREEN_SPEED, BALL, HOLE).pass((turn * Math.PI) / 2, 5, newPass());
      expect(pass.status).toBe('leftSurface');
      expect(pass.restX).toBeCloseTo(x, 6);
      expect(pass.restY).toBeCloseTo(y, 6);
      // Level ground: way = v t - a t^2 / 2.
      const way = Math.hypot(x - BALL.x, y - BALL.y);
      expect(pass.time).toBeCloseTo((5 - Math.sqrt(25 - 2 * FRICTION * way)) / FRICTION, 6);
    }
  });

  it('comes back down a slope that does not hold it and runs off below', () => {
    // 10% at 10 ft: (5/7) g 0.1 = 0.70 > a_f = 0.55 m/s^2.
    const steep = fieldOf((_x, y) => 0.1 * y);
    for (const aside of [0, 1e-9, 1e-3, 0.2]) {
      const pass = fieldRoller(steep, GREEN_SPEED, BALL, HOLE).pass(Math.PI / 2 + aside, 1.5, newPass());
      expect(pass.status).toBe('leftSurface');
      expect(pass.restY).toBeCloseTo(0, 6);
      // Straight up: v / (pull + a_f) to the turn, then down from there with pull - a_f.
      if (aside > 1e-6) continue;
      const pull = ROLLING_FACTOR * GRAVITY * 0.1;
      const top = BALL.y + 1.5 ** 2 / (2 * (pull + FRICTION));
      const time = 1.5 / (pull + FRICTION) + Math.sqrt((2 * top) / (pull - FRICTION));
      expect(Math.abs(pass.time - time)).toBeLessThan(1e-3);
    }
  });

  it('rests on ground that holds it however slowly it arrives, and stays where it is without a stroke', () => {
    const gentle = fieldOf((x) => 0.02 * x);
    const roller = fieldRoller(gentle, GREEN_SPEED, BALL, HOLE);
    const still = roller.pass(1, 0, newPass());
    expect(still).toMatchObject({ status: 'atRest', restX: BALL.x, restY: BALL.y, time: 0 });
    const nudged = roller.pass(0, 0.01, newPass());
    expect(nudged.status).toBe('atRest');
    const pull = ROLLING_FACTOR * GRAVITY * 0.02;
    expect(nudged.restX - BALL.x).toBeCloseTo(0.01 ** 2 / (2 * (FRICTION + pull)), 9);
  });

  it('passes a hole where a ball came to rest short of it on the near side of zero speed', () => {
    const level = fieldOf(() => 0);
    const hole = { x: BALL.x + 3, y: BALL.y };
    const roller = fieldRoller(level, GREEN_SPEED, BALL, hole);
    const short = roller.pass(0.02, Math.sqrt(2 * FRICTION * 2.5), newPass());
    // Straight path 0.02 rad left of a hole 3 m off: the hole lies 3 sin 0.02 to the right of its line.
    expect(short).toMatchObject({ status: 'atRest', met: false, missSpeed: 0 });
    expect(short.miss).toBeCloseTo(-3 * Math.sin(0.02), 6);
    const past = roller.pass(0.01, Math.sqrt(2 * FRICTION * 3.5), newPass());
    expect(past.miss).toBeCloseTo(-3 * Math.sin(0.01), 6);
    expect(past.missSpeed).toBeCloseTo(Math.sqrt(2 * FRICTION * (3.5 - 3 * Math.cos(0.01))), 5);
    expect(past.met).toBe(true);
    const chord = Math.sqrt(0.053975 ** 2 - (3 * Math.sin(0.01)) ** 2);
    expect(past.rimSpeed).toBeCloseTo(Math.sqrt(2 * FRICTION * (3.5 - 3 * Math.cos(0.01) + chord)), 5);
    expect(past.rimOffset).toBeCloseTo(-3 * Math.sin(0.01), 6);
  });

  it('changes the side of its miss once as the start line turns, without jumps, whether it gets there or not', () => {
    const green = generateGreen({ seed: 21 });
    const roller = fieldRoller(green, GREEN_SPEED, BALL, HOLE);
    const bearing = Math.atan2(HOLE.y - BALL.y, HOLE.x - BALL.x);
    const pass = newPass();
    for (const speed of [1.2, 1.6, 2, 2.6]) {
      let changes = 0;
      let before = roller.pass(bearing - 0.5, speed, pass).miss;
      for (let i = 1; i <= 1000; i++) {
        const { miss } = roller.pass(bearing - 0.5 + i / 1000, speed, pass);
        if (Math.sign(miss) !== Math.sign(before)) changes++;
        // A milliradian is 3 mm at the hole, a little more where the break adds to it; three times that would be a jump.
        expect(Math.abs(miss - before)).toBeLessThan(0.009);
        before = miss;
      }
      expect(changes).toBe(1);
    }
  });

  it('says the same every time', () => {
    const roller = fieldRoller(generateGreen({ seed: 2 }), GREEN_SPEED, BALL, HOLE);
    const first = { ...roller.pass(0.8, 1.9, newPass()) };
    roller.pass(2, 1, newPass());
    roller.trace(0.3, 1.4);
    expect(roller.pass(0.8, 1.9, newPass())).toEqual(first);
  });

  it('takes at most 150 looks at the ground for a putt of 3 m', () => {
    const random = seededRandom('work');
    for (let seed = 0; seed < 10; seed++) {
      const roller = fieldRoller(generateGreen({ seed }), GREEN_SPEED, BALL, HOLE);
      for (let i = 0; i < 20; i++) {
        const pass = roller.pass(2 * Math.PI * random(), Math.sqrt(2 * FRICTION * 3.4), newPass());
        expect(pass.evaluations).toBeGreaterThan(6);
        expect(pass.evaluations).toBeLessThan(150);
      }
    }
  });
});

describe('a traced roll', () => {
  it('runs from the ball to the rest of the quick pass, forward in time, in steps of at most 2 cm', () => {
    const green = generateGreen({ seed: 5, tier: true });
    const roller = fieldRoller(green, GREEN_SPEED, BALL, HOLE);
    for (const heading of [0, 1, 2.5, 4, 5.5]) {
      const pass = roller.pass(heading, 1.8, newPass());
      const path = roller.trace(heading, 1.8);
      expect([...path.subarray(0, 3)]).toEqual([BALL.x, BALL.y, 0]);
      expect(path[path.length - 3]).toBeCloseTo(pass.restX, 12);
      expect(path[path.length - 2]).toBeCloseTo(pass.restY, 12);
      expect(path[path.length - 1]).toBeCloseTo(pass.time, 12);
      for (let i = 3; i < path.length; i += 3) {
        expect(Math.hypot(path[i] - path[i - 3], path[i + 1] - path[i - 2])).toBeLessThan(0.02);
        expect(path[i + 2]).toBeGreaterThan(path[i - 1]);
      }
    }
  });

  it('gives up by friction along its length exactly the energy it started with', () => {
    const green = generateGreen({ seed: 6 });
    const roller = fieldRoller(green, GREEN_SPEED, BALL, HOLE);
    for (const heading of [0.4, 1.7, 3.1, 4.6]) {
      const path = roller.trace(heading, 1.7);
      let way = 0;
      for (let i = 3; i < path.length; i += 3)
        way += Math.hypot(path[i] - path[i - 3], path[i + 1] - path[i - 2]);
      const drop =
        heightOf(green, BALL.x, BALL.y) - heightOf(green, path[path.length - 3], path[path.length - 2]);
      // Per unit of mass: v^2/2 + (5/7) g drop = a_f way. 2 mm of way: chords are shorter than the path.
      const expected = (1.7 ** 2 / 2 + ROLLING_FACTOR * GRAVITY * drop) / FRICTION;
      expect(Math.abs(way - expected)).toBeLessThan(2e-3);
    }
  });
});
