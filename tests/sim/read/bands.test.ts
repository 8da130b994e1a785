/** Bands of a line: what lies just inside drops, what lies just outside does not, when rolled one by one. */
import { describe, expect, it } from 'vitest';
import {
  type CaptureName,
  feetToMetres,
  generateGreen,
  type Line,
  type Putt,
  pinSpots,
  planeSurface,
  readPutt,
  rollBall,
} from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';

const planePutts = (count: number, capture: CaptureName): { putt: Putt; pace: number }[] => {
  const random = seededRandom(`bands ${capture}`);
  return Array.from({ length: count }, () => {
    const bearing = 2 * Math.PI * random();
    const length = feetToMetres(3 + 27 * random());
    const putt: Putt = {
      surface: planeSurface({ slope: 0.035 * random(), downhill: 2 * Math.PI * random() }),
      greenSpeed: feetToMetres(8 + 4 * random()),
      ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) },
      hole: { x: 0, y: 0 },
      capture,
    };
    return { putt, pace: 0.1 + 0.7 * random() };
  });
};
const greenPutts = (): { putt: Putt; pace: number }[] => {
  const green = generateGreen({ seed: 5 });
  const random = seededRandom('bands on a green');
  return pinSpots(green, 5, 5).map((hole) => {
    const bearing = 2 * Math.PI * random();
    const ball = { x: hole.x + 2.4 * Math.cos(bearing), y: hole.y + 2.4 * Math.sin(bearing) };
    return { putt: { surface: green, greenSpeed: 3, ball, hole, capture: 'simple' }, pace: 0.3 };
  });
};
const lineOf = (putt: Putt, pace: number): Line => {
  const read = readPutt(putt, pace);
  if (read.status !== 'ok') throw new Error(read.reason);
  return read;
};
const holed = (putt: Putt, start: number, speed: number): boolean =>
  rollBall(putt, start, speed).status === 'holed';

/** Either side of an edge, as a distance at the hole, m: a tenth of a millimetre, which no eye can see. */
const HAIR = 1e-4;

const kinds = [
  ['planes, the simple rule', planePutts(30, 'simple')],
  ['planes, free fall', planePutts(30, 'freeFall')],
  ['a generated green', greenPutts()],
] as const;

describe.each(kinds)('the bands of a line on %s', (_name, putts) => {
  it('end where starts at its speed cease to drop, and hold no gap', () => {
    for (const { putt, pace } of putts) {
      const line = lineOf(putt, pace);
      const band = line.startBand;
      if (band === undefined) {
        expect(holed(putt, line.start, line.speed)).toBe(false);
        continue;
      }
      const hair = HAIR / Math.hypot(putt.ball.x - putt.hole.x, putt.ball.y - putt.hole.y);
      const where = JSON.stringify({ ...putt, surface: undefined, pace, band });
      expect(holed(putt, band.low - hair, line.speed), where).toBe(false);
      expect(holed(putt, band.high + hair, line.speed), where).toBe(false);
      for (let share = 0; share <= 1; share += 0.05) {
        const start = band.low + hair + share * (band.high - band.low - 2 * hair);
        expect(holed(putt, start, line.speed), where).toBe(true);
      }
    }
  });

  it('end where paces on its start cease to drop, at the paces they name, and hold no gap', () => {
    for (const { putt, pace } of putts) {
      const line = lineOf(putt, pace);
      const band = line.paceBand;
      if (band === undefined) {
        expect(holed(putt, line.start, line.speed)).toBe(false);
        continue;
      }
      const where = JSON.stringify({ ...putt, surface: undefined, pace, band });
      // Walk the speed out from the line, in steps of a millimetre or so of rest, and note the last pace that drops.
      const length = Math.hypot(putt.ball.x - putt.hole.x, putt.ball.y - putt.hole.y);
      const step = (line.speed / (2 * (length + pace))) * 1e-3;
      const last = (direction: 1 | -1): number => {
        let speed = line.speed;
        while (holed(putt, line.start, speed + direction * step)) speed += direction * step;
        const { rest } = rollBall(putt, line.start, speed, { covered: true });
        if (rest === undefined) throw new Error(`never stops: ${where}`);
        return Math.hypot(rest.x - putt.hole.x, rest.y - putt.hole.y);
      };
      // A step of launch speed moves the rest by up to 4 mm downhill; the lower end may lie short of the hole, where the
      // pace is negative.
      expect(Math.abs(band.high - last(1)), where).toBeLessThan(5e-3);
      expect(Math.abs(Math.abs(band.low) - last(-1)), where).toBeLessThan(5e-3);
    }
  });
});
