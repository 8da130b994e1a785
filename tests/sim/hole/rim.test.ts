/** The rim rule's table against the direct calculation at random places it was not made from, and what the layers above rely on. */
import { describe, expect, it } from 'vitest';
import { HOLE_RADIUS } from '../../../sim/constants.ts';
import { captureRule } from '../../../sim/hole/capture.ts';
import { tiltedLeave } from '../../../sim/hole/rim.ts';
import { rimMotion } from '../../../sim/hole/rim-motion.ts';
import type { LipOut } from '../../../sim/hole/rule.ts';
import { seededRandom } from '../../../sim/random.ts';
import { fastestDrop } from './rim-support.ts';

const rule = captureRule('rim');
const leave = (speed: number, offset: number): LipOut | undefined => {
  const out: LipOut = { x: Number.NaN, y: Number.NaN, turn: Number.NaN, speed: Number.NaN };
  return rule.leave?.(speed, offset, out) ? out : undefined;
};

/** Value at a share of a sorted list. */
const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(share * (values.length - 1))];

describe('what drops, by the rim rule', () => {
  it('is bounded by one curve that falls all the way from dead centre to the rim', () => {
    let before = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 2000; i++) {
      const now = rule.fastestDrop((HOLE_RADIUS * i) / 2000);
      expect(now).toBeLessThan(before);
      before = now;
    }
    expect(before).toBe(0);
    expect(rule.fastestDrop(2 * HOLE_RADIUS)).toBe(0);
    expect(rule.fastestDrop(-0.03)).toBe(rule.fastestDrop(0.03));
  });

  it('has a widest offset that is the exact inverse of the fastest speed', () => {
    for (let i = 0; i <= 2000; i++) {
      const offset = (HOLE_RADIUS * i) / 2000;
      // m: rounding.
      expect(Math.abs(rule.widestDrop(rule.fastestDrop(offset)) - offset)).toBeLessThan(1e-13);
    }
    expect(rule.widestDrop(0)).toBe(HOLE_RADIUS);
    expect(rule.widestDrop(rule.fastestDrop(0) + 1e-9)).toBeLessThan(0);
  });

  it('follows the direct calculation within 0.0005 m/s between its nodes', () => {
    const random = seededRandom('boundary');
    for (let i = 0; i < 12; i++) {
      const share = random();
      expect(Math.abs(rule.fastestDrop(share * HOLE_RADIUS) - fastestDrop(share))).toBeLessThan(5e-4);
    }
  });

  it('is what the direct calculation says for all but the island of fast balls near dead centre that bounce off the back', () => {
    const random = seededRandom('verdicts');
    let island = 0;
    for (let i = 0; i < 1200; i++) {
      // A third of them in the island's own neighbourhood.
      const close = i % 3 === 0;
      const offset = HOLE_RADIUS * (2 * random() - 1) * (close ? 0.1 : 1);
      const speed = close ? 1.7 + 0.7 * random() : 0.05 + 2.45 * random();
      const holed = rimMotion({ speed, offset }).status === 'holed';
      if (holed === speed <= rule.fastestDrop(offset)) continue;
      expect(holed).toBe(true);
      island++;
      expect(Math.abs(offset)).toBeLessThan(0.07 * HOLE_RADIUS);
      expect(speed).toBeGreaterThan(1.89);
      expect(speed).toBeLessThan(2.22);
    }
    expect(island).toBeGreaterThan(0);
  });
});

describe('how a ball leaves, by the rim rule', () => {
  it('is what the direct calculation says: median within 0.1 degrees, 2 mm/s, 2 mm; one in a hundred worse than 3 degrees, 5 cm/s, 5 cm', () => {
    const random = seededRandom('leaves');
    const turns: number[] = [];
    const speeds: number[] = [];
    const places: number[] = [];
    while (turns.length < 800) {
      const offset = HOLE_RADIUS * (2 * random() - 1);
      const speed = 0.05 + 2.45 * random();
      if (speed <= rule.fastestDrop(offset)) continue;
      const direct = rimMotion({ speed, offset });
      const mine = leave(speed, offset);
      if (direct.status !== 'out' || mine === undefined) continue;
      turns.push(Math.abs(mine.turn - direct.turn));
      speeds.push(Math.abs(mine.speed - direct.speed));
      places.push(Math.hypot(mine.x - direct.x, mine.y - direct.y));
    }
    expect(quantile(turns, 0.5)).toBeLessThan(0.002);
    expect(quantile(speeds, 0.5)).toBeLessThan(0.002);
    expect(quantile(places, 0.5)).toBeLessThan(0.002);
    expect(quantile(turns, 0.99)).toBeLessThan(0.06);
    expect(quantile(speeds, 0.99)).toBeLessThan(0.05);
    expect(quantile(places, 0.99)).toBeLessThan(0.05);
  });

  it('is right for most balls within a hundredth of the fastest drop too: nine in ten within 3 degrees', () => {
    const random = seededRandom('brink');
    const turns: number[] = [];
    for (let i = 0; i < 150; i++) {
      const offset = HOLE_RADIUS * random();
      const speed = rule.fastestDrop(offset) * (1 + 0.001 + 0.009 * random());
      const direct = rimMotion({ speed, offset });
      const mine = leave(speed, offset);
      if (direct.status === 'out' && mine !== undefined) turns.push(Math.abs(mine.turn - direct.turn));
    }
    expect(turns.length).toBeGreaterThan(140);
    expect(quantile(turns, 0.9)).toBeLessThan(0.055);
  });

  it('is as if the hole were covered where the ball misses the rim or hardly feels it, and those feel it little', () => {
    expect(leave(1, HOLE_RADIUS)).toBeUndefined();
    expect(leave(1, -1.2 * HOLE_RADIUS)).toBeUndefined();
    const random = seededRandom('unnoticed');
    let unnoticed = 0;
    for (let i = 0; i < 400; i++) {
      const offset = HOLE_RADIUS * (0.97 + 0.03 * random());
      const speed = 0.3 + 2 * random();
      if (speed <= rule.fastestDrop(offset) || leave(speed, offset) !== undefined) continue;
      unnoticed++;
      const direct = rimMotion({ speed, offset });
      if (direct.status !== 'out') throw new Error(direct.status);
      // Half a degree (9 mm at a metre) and half a hundredth of the speed: the limits of the rule and the table's error.
      expect(Math.abs(direct.turn)).toBeLessThan(0.009);
      expect(1 - direct.speed / speed).toBeLessThan(0.005);
    }
    expect(unnoticed).toBeGreaterThan(20);
  });

  it('is a mirror image on the other side, and lies outside the hole', () => {
    const random = seededRandom('sides');
    for (let i = 0; i < 300; i++) {
      const offset = HOLE_RADIUS * random();
      const speed = rule.fastestDrop(offset) + 1.5 * random() + 1e-6;
      const [right, left] = [leave(speed, offset), leave(speed, -offset)];
      if (right === undefined || left === undefined) {
        expect(left).toBe(right);
        continue;
      }
      expect(left).toEqual({ x: right.x, y: -right.y, turn: -right.turn, speed: right.speed });
      expect(Math.hypot(right.x, right.y)).toBeGreaterThan(HOLE_RADIUS - 1e-12);
      // On level ground nothing gives it speed.
      expect(right.speed).toBeLessThanOrEqual(speed * (1 + 1e-12));
    }
  });
});

describe('a ball that leaves a hole on a tilted green', () => {
  it('has, without slip or impact, exactly the speed that the height it lost gives it', () => {
    // Energy 7/10 v^2 against height: to second order in the slope (0.03^2 of it), 1e-4 m/s here.
    for (const downhill of [0, 1, 2, 3, -1, -2]) {
      const [speed, offset, slope] = [0.42, 0.93 * HOLE_RADIUS, 0.03];
      const direct = rimMotion({ speed, offset, slope, downhill });
      if (direct.status !== 'out') throw new Error(direct.status);
      const out = { x: direct.x, y: direct.y, turn: direct.turn, speed };
      tiltedLeave(offset, { x: -slope * Math.cos(downhill), y: -slope * Math.sin(downhill) }, out);
      expect(Math.abs(out.speed - direct.speed)).toBeLessThan(1e-4);
    }
  });

  it('is told at least twice as well by the height it lost as by the level leave, over all kinds of leaves', () => {
    const random = seededRandom('tilt');
    const [level, corrected]: [number[], number[]] = [[], []];
    for (let i = 0; i < 600; i++) {
      const offset = HOLE_RADIUS * (2 * random() - 1);
      const speed = rule.fastestDrop(offset) * (1.03 + 0.7 * random());
      const slope = 0.03 * random();
      const downhill = 2 * Math.PI * random();
      const flat = rimMotion({ speed, offset });
      const tilted = rimMotion({ speed, offset, slope, downhill });
      if (flat.status !== 'out' || tilted.status !== 'out') continue;
      const out: LipOut = { x: flat.x, y: flat.y, turn: flat.turn, speed: flat.speed };
      tiltedLeave(offset, { x: -slope * Math.cos(downhill), y: -slope * Math.sin(downhill) }, out);
      level.push(Math.abs(flat.speed - tilted.speed));
      corrected.push(Math.abs(out.speed - tilted.speed));
    }
    expect(quantile(corrected, 0.5)).toBeLessThan(quantile(level, 0.5) / 2);
    expect(quantile(corrected, 0.9)).toBeLessThan(quantile(level, 0.9) / 2);
    // m/s.
    expect(quantile(corrected, 0.9)).toBeLessThan(0.015);
  });
});
