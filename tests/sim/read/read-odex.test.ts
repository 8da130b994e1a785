/**
 * The read on a plane against lines found by odex 2.0.4 at 1e-12 (tests/bench/odex-plane.ts), over the range the read promises
 * for. The oracle finds its line without the engine: from level ground, where the line is straight, the slope is raised
 * step by step and Newton's method keeps the path on the hole centre and the rest at the pace. So it also decides which of
 * two lines is the direct one, and whether there is a line at all.
 */
import { describe, expect, it } from 'vitest';
import { planeSurface, type Read, readPutt } from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';
import {
  type OdexLine,
  odexLine,
  odexRoll,
  type PlanePutt,
  randomPutt,
  steepnessOf,
} from '../../bench/odex-plane.ts';

const CASES = 150;
/** Steeper than this share of the slope that no longer holds a ball is left out: the read promises slopes that hold one. */
const STEEPEST = 0.95;

interface Case {
  putt: PlanePutt;
  pace: number;
  length: number;
  truth: OdexLine | undefined;
  mine: Read;
}

/** Slopes 0-6%, green speeds 7-14 ft, lengths 2-60 ft, all clock positions, paces 0.05-1.5 m. */
function casesOf(seed: string): Case[] {
  const random = seededRandom(seed);
  const cases: Case[] = [];
  while (cases.length < CASES) {
    const { putt, length } = randomPutt(random);
    const pace = 0.05 + 1.45 * random();
    if (steepnessOf(putt) >= STEEPEST) continue;
    const { slope, downhill, ...rest } = putt;
    const mine = readPutt({ surface: planeSurface({ slope, downhill }), capture: 'simple', ...rest }, pace);
    cases.push({ putt, pace, length, truth: odexLine(putt, pace), mine });
  }
  return cases;
}

const cases = casesOf('plane reads');
const folded = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));
const bearingOf = ({ ball, hole }: PlanePutt): number => Math.atan2(hole.y - ball.y, hole.x - ball.x);
const told = ({ putt, pace, length }: Case): string =>
  `slope ${putt.slope}, downhill ${putt.downhill}, speed ${putt.greenSpeed}, ball ${putt.ball.x} ${putt.ball.y}, pace ${pace}, length ${length}`;

describe('a read on a plane, beside odex at 1e-12', () => {
  it('finds a line wherever odex finds one that starts within 60 degrees of the hole and gets there within two minutes', () => {
    const found = cases.filter(({ truth }) => truth !== undefined);
    // Nearly all such putts have a line.
    expect(found.length).toBeGreaterThan(0.9 * CASES);
    for (const one of found) {
      const { putt, truth, mine } = one;
      if (truth === undefined) continue;
      const aside = Math.abs(folded(truth.heading - bearingOf(putt)));
      const time = odexRoll(putt, truth.heading, truth.speed).pass?.time ?? Number.NaN;
      // Limits of the read itself; no case lies within rounding of one.
      const reason = aside > Math.PI / 3 ? /° off the hole/ : time > 120 ? /two minutes/ : undefined;
      expect(mine.status, told(one)).toBe(reason === undefined ? 'ok' : 'noLine');
      if (mine.status === 'noLine') expect(mine.reason).toMatch(reason ?? /^$/);
    }
  });

  it('says so where the only line trickles for more than two minutes', () => {
    // Straight down, at shares of the steepest slope that holds a ball of which odex takes some to two minutes and more.
    const ground = { downhill: 0, greenSpeed: 4.3, ball: { x: 0, y: 0 }, hole: { x: 30, y: 0 } };
    for (const share of [0.97, 0.99, 0.995]) {
      const pace = 0.4;
      const putt: PlanePutt = { ...ground, slope: share / steepnessOf({ slope: 1, greenSpeed: 4.3 }) };
      const { slope, downhill, ...rest } = putt;
      const truth = odexLine(putt, pace);
      if (truth === undefined) throw new Error('odex finds no line');
      const time = odexRoll(putt, truth.heading, truth.speed).pass?.time ?? Number.NaN;
      const mine = readPutt({ surface: planeSurface({ slope, downhill }), capture: 'simple', ...rest }, pace);
      expect(mine.status, `${time} s`).toBe(time > 120 ? 'noLine' : 'ok');
      if (mine.status === 'noLine') expect(mine.reason).toContain(`${Math.round(time)} s`);
    }
  });

  it('aims within 0.5 mm at the hole, and launches as fast, as the line odex finds', () => {
    for (const one of cases) {
      const { mine, truth, length, putt } = one;
      if (truth === undefined || mine.status !== 'ok') continue;
      const start = folded(truth.heading - bearingOf(putt));
      // The angle as millimetres at the hole, and the offset itself (promised: 0.5 mm) where the start line passes beside it.
      expect(Math.abs(folded(mine.start - start)) * length, told(one)).toBeLessThan(5e-4);
      if (Math.abs(start) < Math.PI / 2)
        expect(Math.abs((mine.aimOffset ?? Number.NaN) - length * Math.tan(start)), told(one)).toBeLessThan(
          5e-4,
        );
      else expect(mine.aimOffset).toBeUndefined();
      // 0.5 mm of a putt's length as launch speed: v dv = a ds, with a at most 1 m/s^2 and v at least 0.5 m/s.
      expect(Math.abs(mine.speed - truth.speed), told(one)).toBeLessThan(1e-3);
    }
  });

  it('crosses the hole centre within 0.5 mm and rests within 1 mm of the pace when odex rolls its start and speed', () => {
    for (const one of cases) {
      const { mine, putt, pace } = one;
      if (mine.status !== 'ok') continue;
      const roll = odexRoll(putt, bearingOf(putt) + mine.start, mine.speed);
      expect(Math.abs(roll.pass?.offset ?? Number.NaN), told(one)).toBeLessThan(5e-4);
      expect(Math.abs(Math.hypot(roll.rest.x, roll.rest.y) - pace), told(one)).toBeLessThan(1e-3);
      expect(
        Math.hypot(roll.rest.x - mine.rest.x, roll.rest.y - mine.rest.y),
        `rest: ${told(one)}`,
      ).toBeLessThan(1e-3);
    }
  });

  it('says the time to the hole, and the speed and direction there, as odex does', () => {
    for (const one of cases) {
      const { mine, putt } = one;
      if (mine.status !== 'ok') continue;
      const { pass } = odexRoll(putt, bearingOf(putt) + mine.start, mine.speed);
      if (pass === undefined) throw new Error(`odex never reaches the hole: ${told(one)}`);
      // The pass is one root on the same path: only rounding and the oracle's dense output differ.
      expect(Math.abs(mine.time - pass.time), told(one)).toBeLessThan(1e-5);
      expect(Math.abs(mine.arrivalSpeed - pass.speed), told(one)).toBeLessThan(1e-5);
      expect(Math.abs(folded(mine.entry - pass.heading)), told(one)).toBeLessThan(1e-5);
    }
  });
});
