/**
 * Lines for a ball that skids first. On a plane each pace has one and only one; they are rolled by odex 2.0.4
 * (tests/bench/odex-skid.ts), and over the whole range by the roller that tests/sim/roll/skid.test.ts holds to odex.
 */
import { describe, expect, it } from 'vitest';
import {
  checkPutt,
  feetToMetres,
  generateGreen,
  type Putt,
  pinSpots,
  planeSurface,
  readPutt,
} from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';
import { LineWalk, summarizeLine } from '../../../sim/read/line.ts';
import { steepnessOf } from '../../../sim/roll/plane.ts';
import { bearingOf, rollerFor } from '../../../sim/roll/roll.ts';
import { newPass } from '../../../sim/roll/roller.ts';
import { skidShape } from '../../../sim/roll/slide.ts';
import { odexSkid } from '../../bench/odex-skid.ts';

const puttOf = (slope: number, feet: number, bearing: number, length: number, downhill = 0): Putt => ({
  surface: planeSurface({ slope, downhill }),
  greenSpeed: feetToMetres(feet),
  ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) },
  hole: { x: 0, y: 0 },
  capture: 'simple',
  skid: true,
});
const told = ({ surface, greenSpeed, ball }: Putt, pace: number): string =>
  JSON.stringify({ surface, greenSpeed, ball, pace });

describe('a line on a plane for a ball that skids', () => {
  it('crosses the hole and rests the pace past it, by odex: slopes 0-6%, speeds 7-14 ft, lengths 2-60 ft', () => {
    const random = seededRandom('skid lines by odex');
    for (let count = 0; count < 40; ) {
      const length = feetToMetres(2 + 58 * random());
      const putt = puttOf(
        0.06 * random(),
        7 + 7 * random(),
        2 * Math.PI * random(),
        length,
        2 * Math.PI * random(),
      );
      const pace = 0.05 + 1.45 * random();
      const { surface, greenSpeed, ball, hole } = putt;
      if (surface.kind !== 'plane' || steepnessOf(surface, greenSpeed) > 0.9) continue;
      count++;
      const read = readPutt(putt, pace);
      if (read.status !== 'ok') throw new Error(told(putt, pace));
      const { slope, downhill } = surface;
      const { slide, rest, time, pass } = odexSkid(
        { slope, downhill, greenSpeed, ball, hole },
        bearingOf(putt) + read.start,
        read.speed,
      );
      // The read promises 0.5 mm and 1 mm; closed forms and the oracle agree to rounding of rolls of up to 100 m.
      expect(Math.abs(Math.hypot(rest.x, rest.y) - pace)).toBeLessThan(1e-6);
      expect(Math.hypot(rest.x - read.rest.x, rest.y - read.rest.y)).toBeLessThan(1e-6);
      expect(time).toBeCloseTo(read.path[read.path.length - 1], 6);
      // On the shortest putts the hole may lie on the slide.
      const crossing = slide.pass ?? pass;
      if (crossing === undefined) throw new Error('the line passes the hole');
      expect(Math.abs(crossing.offset)).toBeLessThan(1e-6);
      expect(crossing.speed).toBeCloseTo(read.arrivalSpeed, 6);
      expect(crossing.time).toBeCloseTo(read.time, 6);
    }
  });

  it('is found for 2000 putts all over the range, also from beside the hole, where the hole lies on the slide', () => {
    const random = seededRandom('skid lines');
    const wrong: string[] = [];
    for (let count = 0; count < 2000; ) {
      const length = count % 4 === 0 ? 0.08 + 0.3 * random() : feetToMetres(2 + 58 * random());
      const putt = puttOf(
        0.06 * random(),
        7 + 7 * random(),
        2 * Math.PI * random(),
        length,
        2 * Math.PI * random(),
      );
      const pace = 0.05 + 1.45 * random();
      if (putt.surface.kind !== 'plane' || steepnessOf(putt.surface, putt.greenSpeed) > 0.9) continue;
      count++;
      const walk = new LineWalk(putt);
      const line = walk.lineAt(pace);
      if (line === undefined) {
        wrong.push(told(putt, pace));
        continue;
      }
      const summary = summarizeLine(putt, walk, line);
      const roll = rollerFor(putt).pass(bearingOf(putt) + summary.start, summary.speed, newPass());
      // A micrometre is a thousandth of what the read promises.
      if (
        !(Math.abs(roll.miss) < 1e-6) ||
        !(roll.missSpeed > 0) ||
        !(Math.abs(Math.hypot(roll.restX, roll.restY) - pace) < 1e-6)
      )
        wrong.push(`not on the line: ${told(putt, pace)}`);
    }
    expect(wrong).toEqual([]);
  });

  it('is the only one: at each progress one start points to the hole, and the pace falls as more is lost', () => {
    // The argument of sim/read/plane-line.ts, looked at for a path of two stretches. Steepness up to what a slow and a fast
    // green hold; slide and roll scale apart, so both enter.
    const starts = 120;
    for (const feet of [7, 14])
      for (const kappa of [0.05, 0.4, 0.8, 0.95]) {
        const slope = (kappa * 7 * 1.83 ** 2) / (2 * feetToMetres(feet) * 5 * 9.81);
        const shape = skidShape(planeSurface({ slope, downhill: 0 }), feetToMetres(feet));
        const progresses = [0.05, 0.3, 0.6, 0.9, 0.99, 1];
        for (let lambda = 0.02; lambda < 30; lambda *= 1.4) progresses.push(1 + lambda);
        const paces = new Map<number, number>();
        for (const progress of progresses) {
          let before = 0;
          for (let i = 1; i < starts; i++) {
            shape.aim((Math.PI * i) / starts);
            shape.look(progress);
            const direction = Math.atan2(shape.y, shape.x);
            expect(direction, `${feet} ft, kappa ${kappa}, progress ${progress}`).toBeGreaterThan(before);
            before = direction;
          }
          for (const toHole of [0.1, 0.6, 1.2, 1.6, 2.2, 2.8, 3.1]) {
            let low = 0;
            let high = Math.PI;
            for (let halving = 0; halving < 52; halving++) {
              const middle = (low + high) / 2;
              shape.aim(middle);
              shape.look(progress);
              if (Math.atan2(shape.y, shape.x) < toHole) low = middle;
              else high = middle;
            }
            const pace =
              Math.hypot(shape.restX - shape.x, shape.restY - shape.y) / Math.hypot(shape.x, shape.y);
            // Below this the difference of two places is rounding.
            if (pace < 1e-9) continue;
            const last = paces.get(toHole) ?? Number.POSITIVE_INFINITY;
            expect(pace, `${feet} ft, kappa ${kappa}, ${toHole}, progress ${progress}`).toBeLessThan(last);
            paces.set(toHole, pace);
          }
        }
      }
  });

  it('is none where the slope holds no ball', () => {
    const read = readPutt(puttOf(0.06, 14, 1, 3), 0.4);
    expect(read.status === 'noLine' ? read.reason : '').toMatch(/never comes to rest/);
  });
});

describe('a line on a green for a ball that skids', () => {
  it('is found, crosses the hole and rests the pace past it', () => {
    const random = seededRandom('skids on greens');
    for (const seed of ['1', '2', '3']) {
      const surface = generateGreen({ seed, sizeM: 20, tier: seed === '2' });
      for (const hole of pinSpots(surface, 3, seed))
        for (let i = 0; i < 4; i++) {
          const bearing = 2 * Math.PI * random();
          const length = 0.6 + 5 * random();
          const putt: Putt = {
            surface,
            greenSpeed: feetToMetres(10),
            hole,
            ball: { x: hole.x + length * Math.cos(bearing), y: hole.y + length * Math.sin(bearing) },
            capture: 'simple',
          };
          // Some would begin off the green.
          if (checkPutt(putt) !== undefined) continue;
          const without = readPutt(putt, 0.381);
          if (without.status !== 'ok') throw new Error(without.reason);
          const read = readPutt({ ...putt, skid: true }, 0.381);
          if (read.status !== 'ok') throw new Error(read.reason);
          const roll = rollerFor({ ...putt, skid: true }).pass(
            bearingOf(putt) + read.start,
            read.speed,
            newPass(),
          );
          // Tolerances of the walk: a tenth and a micrometre.
          expect(Math.abs(roll.miss)).toBeLessThan(2e-7);
          expect(Math.abs(Math.hypot(roll.restX - hole.x, roll.restY - hole.y) - 0.381)).toBeLessThan(2e-6);
          expect(read.speed).toBeGreaterThan(1.2 * without.speed);
        }
    }
  });
});
