/**
 * Lines on ground that is no plane: they do what they promise when rolled with a hundred times less error allowed, none is
 * missed that a scan over starts and energies finds, and of several the direct one is told.
 */
import { describe, expect, it } from 'vitest';
import {
  type FieldSurface,
  feetToMetres,
  fieldSurface,
  generateGreen,
  type Point,
  type Putt,
  pinSpots,
  planeSurface,
  readPutt,
} from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';
import { LineWalk } from '../../../sim/read/line.ts';
import { roughRoller } from '../../../sim/roll/field.ts';
import { FINISH_REACH } from '../../../sim/roll/field-finish.ts';
import { frictionOf, steepestHold } from '../../../sim/roll/plane.ts';
import { bearingOf, lengthOf, rollerFor } from '../../../sim/roll/roll.ts';
import { newPass, type Roller } from '../../../sim/roll/roller.ts';
import { fieldBounds, splineOf } from '../../../sim/surface/field.ts';
import { sampleSurface } from '../../../sim/surface/sample.ts';
import { splineGradient } from '../../../sim/surface/spline.ts';

function strictRoller(surface: FieldSurface, { greenSpeed, ball, hole }: Putt): Roller {
  const spline = splineOf(surface);
  return roughRoller({
    gradientAt: (place, out) => splineGradient(spline, place, out),
    bounds: fieldBounds(surface),
    cell: surface.spacing,
    finishReach: FINISH_REACH,
    tighter: 100,
    greenSpeed,
    ball,
    hole,
  });
}

/** Starts (radians from the ball-hole line) and paces of all lines a scan finds: neighbouring starts that part the hole. */
function scanLines(putt: Putt): { start: number; pace: number }[] {
  const roller = rollerFor(putt);
  const pass = newPass();
  const level = 2 * frictionOf(putt.greenSpeed) * lengthOf(putt);
  const found: { start: number; pace: number }[] = [];
  for (let energy = 0.2 * level; energy < 3 * level; energy *= 1.02) {
    let before: { miss: number; pace: number } | undefined;
    for (let start = -1.41; start <= 1.41; start += 0.02) {
      roller.pass(bearingOf(putt) + start, Math.sqrt(energy), pass);
      const pace =
        pass.status === 'atRest'
          ? Math.hypot(pass.restX - putt.hole.x, pass.restY - putt.hole.y)
          : Number.POSITIVE_INFINITY;
      const now = pass.missSpeed > 0 ? { miss: pass.miss, pace } : undefined;
      // A change of sign over more than 50 cm is a ball that turned before the hole, not one that crossed it.
      if (before && now && before.miss * now.miss <= 0 && Math.abs(now.miss - before.miss) < 0.5)
        found.push({ start: start - 0.01, pace: Math.min(before.pace, now.pace) });
      before = now;
    }
  }
  return found;
}

const puttsOn = (
  green: FieldSurface,
  holes: readonly Point[],
  seed: string,
): { putt: Putt; pace: number }[] => {
  const random = seededRandom(seed);
  return holes.flatMap((hole) =>
    Array.from({ length: 6 }, () => {
      const bearing = 2 * Math.PI * random();
      const length = feetToMetres(3 + 30 * random());
      const putt: Putt = {
        surface: green,
        greenSpeed: feetToMetres(8 + 5 * random()),
        ball: { x: hole.x + length * Math.cos(bearing), y: hole.y + length * Math.sin(bearing) },
        hole,
        capture: 'simple',
      };
      return { putt, pace: 0.05 + 1.2 * random() };
    }).filter(({ putt: { ball } }) => ball.x > 0.5 && ball.y > 0.5 && ball.x < 19.5 && ball.y < 19.5),
  );
};

describe('a line on a generated green', () => {
  it('crosses the hole centre and rests the pace past it, on 12 greens with and without a tier', () => {
    let count = 0;
    for (let seed = 0; seed < 12; seed++) {
      const green = generateGreen({ seed, tier: seed % 3 === 0 });
      for (const { putt, pace } of puttsOn(green, pinSpots(green, 3, seed), `greens ${seed}`)) {
        const walk = new LineWalk(putt);
        const line = walk.lineAt(pace);
        const where = JSON.stringify({ seed, ball: putt.ball, hole: putt.hole, pace });
        if (line === undefined) throw new Error(`no line: ${where}`);
        // Six rolls on average; a line that takes sixty has lost its way.
        expect(walk.search.rolls, where).toBeLessThan(60);
        const roll = strictRoller(green, putt).pass(line.heading, line.speed, newPass());
        expect(roll.missSpeed, where).toBeGreaterThan(0);
        // Promised: aim within 0.5 mm, rest within 1 mm; the roller itself is good to 0.1 mm.
        expect(Math.abs(roll.miss), where).toBeLessThan(2e-4);
        const rest = Math.hypot(roll.restX - putt.hole.x, roll.restY - putt.hole.y);
        expect(Math.abs(rest - pace), where).toBeLessThan(3e-4);
        count++;
      }
    }
    expect(count).toBeGreaterThan(100);
  });

  it('is missed only where a scan over starts and energies finds none either: steep holes on steep greens', () => {
    const random = seededRandom('steep holes');
    let none = 0;
    for (let seed = 0; none < 3 && seed < 200; seed++) {
      const green = generateGreen({ seed: `steep ${seed}`, tier: true, tilt: 0.05 });
      const hole = { x: 3 + 14 * random(), y: 3 + 14 * random() };
      const ground = { height: 0, gradientX: 0, gradientY: 0 };
      sampleSurface(green, hole.x, hole.y, ground);
      // Holes that barely hold a ball, or do not.
      const greenSpeed = feetToMetres(12.5);
      const steepness = Math.hypot(ground.gradientX, ground.gradientY) / steepestHold(greenSpeed);
      if (steepness < 0.9) continue;
      for (const { putt, pace } of puttsOn(green, [hole], `steep ${seed}`).slice(0, 2)) {
        const fast = { ...putt, greenSpeed };
        if (readPutt(fast, pace).status === 'ok') continue;
        none++;
        for (const line of scanLines(fast)) expect(line.pace).toBeGreaterThan(pace);
      }
    }
    expect(none).toBeGreaterThan(0);
  });
});

/** A round dip 60 cm across the middle of a 6 m putt, on a gentle tilt: it bends paths inwards, as a lens does light. */
const dip = (depth: number, tilt: number): Putt => {
  const columns = 97;
  const heights: number[] = [];
  for (let j = 0; j < columns; j++)
    for (let i = 0; i < columns; i++) {
      const x = -1 + 0.1 * i;
      const y = -4.8 + 0.1 * j;
      heights.push(tilt * y - depth * Math.exp(-((x - 3) ** 2 + y * y) / (2 * 0.6 ** 2)));
    }
  return {
    surface: fieldSurface({ origin: { x: -1, y: -4.8 }, spacing: 0.1, columns, rows: columns, heights }),
    greenSpeed: 3.048,
    ball: { x: 0, y: 0 },
    hole: { x: 6, y: 0 },
    capture: 'simple',
  };
};

describe('of several lines with one pace', () => {
  it.each([
    [0.15, 0],
    [0.2, 0],
    [0.2, 0.01],
  ])('the direct one is read and another told: a dip of %d m, tilt %d', (depth, tilt) => {
    const putt = dip(depth, tilt);
    const read = readPutt(putt, 0.4);
    if (read.status !== 'ok') throw new Error(read.reason);
    const scanned = scanLines(putt).filter(({ pace }) => Math.abs(pace - 0.4) < 0.15);
    const nearest = Math.min(...scanned.map(({ start }) => Math.abs(start)));
    // The scan looks every 0.02 rad, and its paces are those of neighbours.
    expect(Math.abs(Math.abs(read.start) - nearest)).toBeLessThan(0.04);
    const { otherStart } = read;
    if (otherStart === undefined) throw new Error('expected another line');
    expect(Math.abs(otherStart)).toBeGreaterThan(Math.abs(read.start));
    expect(scanned.some(({ start }) => Math.abs(start - otherStart) < 0.04)).toBe(true);
  });

  it('there is none to tell where the ground bends paths little: a dip of 5 cm', () => {
    const read = readPutt(dip(0.05, 0.01), 0.4);
    expect(read.status === 'ok' ? read.otherStart : Number.NaN).toBeUndefined();
  });
});

describe('a plane given as heights', () => {
  it('has the line of the plane', () => {
    const columns = 41;
    const heights = Array.from({ length: columns * columns }, (_, i) => -0.02 * 0.25 * (i % columns));
    const grid = fieldSurface({ origin: { x: -5, y: -5 }, spacing: 0.25, columns, rows: columns, heights });
    for (const [x, y, pace] of [
      [3, 0.5, 0.3],
      [0, 4, 0.1],
      [-2, -3, 0.9],
    ]) {
      const rest = { greenSpeed: 3, ball: { x, y }, hole: { x: 0, y: 0 }, capture: 'simple' } as const;
      const [first, second] = [grid, planeSurface({ slope: 0.02, downhill: 0 })].map((surface) => {
        const read = readPutt({ surface, ...rest }, pace);
        if (read.status !== 'ok') throw new Error(read.reason);
        return read;
      });
      // 0.1 mm at the hole; the two are solved by different methods on different rollers.
      expect(Math.abs((first.aimOffset ?? Number.NaN) - (second.aimOffset ?? Number.NaN))).toBeLessThan(1e-4);
      expect(Math.abs(first.speed - second.speed)).toBeLessThan(1e-4);
      expect(Math.abs(first.curveHeight - second.curveHeight)).toBeLessThan(1e-4);
      expect(Math.hypot(first.rest.x - second.rest.x, first.rest.y - second.rest.y)).toBeLessThan(1e-4);
    }
  });
});
