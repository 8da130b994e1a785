/**
 * The odds against a plain Monte Carlo that shares no code with them (tests/bench/oracle.ts): half a million rolls for each of
 * two dozen putts, stored with standard errors in oracle-values.json by tests/bench/make-oracle-values.ts.
 * The oracle itself is checked here too: its rolls and lines against odex, its step against a shorter one, its counts
 * against a closed form, and the stored values against a short run of today.
 */
import { describe, expect, it } from 'vitest';
import {
  HOLE_RADIUS,
  type Odds,
  prepareNextPutts,
  puttOdds,
  readPutt,
  STIMP_SPEED,
} from '../../../sim/index.ts';
import { seededRandom } from '../../../sim/random.ts';
import { odexLine, odexRoll } from '../../bench/odex-plane.ts';
import { type Measured, normals, type OracleOdds, oracleOdds } from '../../bench/oracle.ts';
import { CASES, heightSumOf, playerOf, puttOf, type StoredValues } from '../../bench/oracle-cases.ts';
import { plainLine } from '../../bench/oracle-line.ts';
import { LONG_STEP, newPlainRoll, PLAIN_STEP, rollPlain, settingOf } from '../../bench/oracle-roll.ts';
import storedFile from './oracle-values.json' with { type: 'json' };

const stored = storedFile as StoredValues;
const named = stored.cases.map((one) => [one.case.name, one] as const);

/** Names of the shares and means compared, with what the engine may be off, beside three standard errors of the oracle. */
const TOLERANCES: readonly (readonly [keyof Odds & keyof OracleOdds, number])[] = [
  // Promised: holed within 0.2 points, three-putts within 0.3.
  ['holed', 0.002],
  ['threePutt', 0.003],
  // Promised nowhere: as the three-putts.
  ['short', 0.003],
  ['high', 0.003],
  ['low', 0.003],
  // Touches nothing that is decided by; told to a tenth of a percent below ten: half a point.
  ['lippedOut', 0.005],
  // A share of 0.2 points more misses and one of 0.3 more three-putts together.
  ['expectedPutts', 0.005],
  // m: no decision turns on a centimetre of leave.
  ['leaveMedian', 0.01],
];

describe('the odds beside half a million plain rolls', () => {
  it('are compared for every putt on the list, as the list has it today', () => {
    expect(stored.cases.map((one) => one.case)).toEqual(CASES);
    for (const { case: one, heightSum, odds } of stored.cases) {
      // A generator that makes another green needs new values (rounding of a sum of thousands of heights: 1e-6).
      expect(Math.abs(heightSumOf(puttOf(one)) - heightSum)).toBeLessThan(1e-6);
      // Points of percent: the values are sharp enough to judge 0.2 by.
      expect(odds.holed.se).toBeLessThan(1e-3);
      expect(odds.threePutt.se).toBeLessThan(1.2e-3);
      expect(odds.lost).toBeLessThan(50);
    }
  });

  it.each(named)('agree with them: %s', (_name, { case: one, odds: wanted }) => {
    const putt = puttOf(one);
    const player = playerOf(one.player);
    // The oracle plays every later putt at one pace on its true line.
    const odds = puttOdds(putt, one.paceM, player, prepareNextPutts(putt, player, { policy: 'fixed' }));
    if (odds.status !== 'ok') throw new Error(odds.reason);
    const apart = TOLERANCES.map(([what, allowed]) => {
      const { value, se } = wanted[what] as Measured;
      return { what, got: odds[what], value, allowed: allowed + 3 * se };
    });
    expect(apart.filter(({ got, value, allowed }) => !(Math.abs((got as number) - value) < allowed))).toEqual(
      [],
    );
  });

  it.each(named)('are for the same line: %s', (_name, { case: one, odds }) => {
    const read = readPutt(puttOf(one), one.paceM);
    if (read.status !== 'ok') throw new Error(read.reason);
    // Oracle: found to 1e-5 m with rolls good to 0.2 mm of rest; on a green the engine promises 5 mm.
    expect(Math.abs(read.start - odds.start) * one.lengthM).toBeLessThan(1e-3);
    expect(Math.abs(read.speed - odds.speed)).toBeLessThan(1e-3);
  });
});

describe('the oracle', () => {
  it('rolls as odex does on every plane of the list, within 0.2 mm at rest, by its long step and its short one', () => {
    const random = seededRandom('oracle rolls');
    const roll = newPlainRoll();
    for (const one of CASES) {
      if (one.ground.kind !== 'plane') continue;
      const { surface, ...rest } = puttOf(one);
      if (surface.kind !== 'plane') continue;
      const { slope, downhill } = surface;
      const odex = { slope, downhill, ...rest };
      const line = odexLine(odex, one.paceM);
      if (line === undefined) throw new Error(`odex finds no line for ${one.name}`);
      for (const step of [LONG_STEP, PLAIN_STEP]) {
        const setting = settingOf({ surface, ...rest }, step);
        for (let i = 0; i < 5; i++) {
          const heading = line.heading + 0.1 * (random() - 0.5);
          const speed = line.speed * (0.9 + 0.2 * random());
          const truth = odexRoll(odex, heading, speed);
          rollPlain(setting, rest.ball, heading, speed, roll);
          expect(roll.status).toBe('atRest');
          expect(Math.hypot(roll.x - truth.rest.x, roll.y - truth.rest.y)).toBeLessThan(2e-4);
          if (roll.passed && truth.pass !== undefined && truth.pass.speed > 0.1)
            expect(Math.abs(roll.offset - truth.pass.offset)).toBeLessThan(2e-4);
        }
        const found = plainLine(setting, rest.ball, one.paceM, 1e-5);
        // 0.2 mm at rest and at the pass: as much of aim, and the speed that goes with it (v dv = a ds, v > 0.5 m/s).
        expect(Math.abs((found?.heading ?? Number.NaN) - line.heading) * one.lengthM).toBeLessThan(3e-4);
        expect(Math.abs((found?.speed ?? Number.NaN) - line.speed)).toBeLessThan(1e-3);
      }
    }
  });

  it('drops the same balls by its long step as by its short one, on every ground of the list', () => {
    for (const one of CASES) {
      const putt = puttOf(one);
      const counted = [LONG_STEP, PLAIN_STEP].map((step) =>
        oracleOdds(putt, one.paceM, playerOf(one.player), { rolls: 60, playedOut: 1, seed: 'step', step }),
      );
      // One ball in sixty may lie within 0.2 mm of the edge.
      expect(Math.abs(counted[0].holed.value - counted[1].holed.value)).toBeLessThan(0.017);
      expect(Math.abs(counted[0].leaveMedian.value - counted[1].leaveMedian.value)).toBeLessThan(5e-3);
    }
  });

  it('draws standard normal numbers', () => {
    const normal = normals('moments');
    const count = 40_000;
    const sums = [0, 0, 0];
    for (let i = 0; i < count; i++) {
      const z = normal();
      sums[0] += z;
      sums[1] += z * z;
      sums[2] += z ** 4;
    }
    // Moments 0, 1, 3 with standard errors sqrt(1/n), sqrt(2/n), sqrt(96/n): four of them.
    expect(Math.abs(sums[0] / count)).toBeLessThan(4 * Math.sqrt(1 / count));
    expect(Math.abs(sums[1] / count - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
    expect(Math.abs(sums[2] / count - 3)).toBeLessThan(4 * Math.sqrt(96 / count));
  });

  it('counts today what it counted for the stored values', () => {
    for (const [index, rolls] of [
      [1, 2000],
      [5, 2000],
      [14, 1000],
    ]) {
      const { case: one, odds: before } = stored.cases[index];
      const playedOut = rolls / 2;
      const today = oracleOdds(puttOf(one), one.paceM, playerOf(one.player), {
        rolls,
        playedOut,
        seed: 'today',
        step: LONG_STEP,
      });
      for (const [what] of TOLERANCES) {
        const [a, b] = [before[what] as Measured, today[what] as Measured];
        // Two independent counts: four standard errors of their difference, for 24 comparisons.
        expect(Math.abs(a.value - b.value), `${one.name}: ${what}`).toBeLessThan(4 * Math.hypot(a.se, b.se));
      }
    }
  });
});

describe('on level ground with a line error alone', () => {
  // Derived: the ball goes straight, so it drops when its angle is below the one whose offset at the rim the rule just
  // allows at the speed it has there: P = erf(angle / (SD sqrt 2)).
  const one = CASES[0];
  const putt = puttOf(one);
  const player = { lineSd: 0.025, paceSd: 0, readSd: 0, readBias: 0, paceBias: 0 };
  const pace = 0.6;
  const friction = STIMP_SPEED ** 2 / (2 * putt.greenSpeed);
  const spare = (angle: number): number => {
    const offset = one.lengthM * Math.sin(angle);
    const toRim = one.lengthM * Math.cos(angle) - Math.sqrt(HOLE_RADIUS ** 2 - offset ** 2);
    const speed = Math.sqrt(2 * friction * (one.lengthM + pace - toRim));
    // MODEL.md section 2, simple rule.
    return 1.63 * (1 - (offset / HOLE_RADIUS) ** 2) - speed;
  };
  let [low, high] = [0, Math.asin(HOLE_RADIUS / one.lengthM) * 0.999999];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (spare(middle) > 0) low = middle;
    else high = middle;
  }
  /** Share of a normal number within +-z, by Simpson's rule over 2000 parts: exact to 1e-12. */
  const within = (z: number): number => {
    const parts = 2000;
    let sum = 0;
    for (let i = 0; i <= parts; i++) {
      const x = (z * i) / parts;
      sum += (i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp((-x * x) / 2);
    }
    return (2 * sum * z) / (3 * parts) / Math.sqrt(2 * Math.PI);
  };
  const truth = within(low / player.lineSd);

  it('the odds hole the share of start lines that meet the opening', () => {
    const odds = puttOdds(putt, pace, player, prepareNextPutts(putt, player));
    if (odds.status !== 'ok') throw new Error(odds.reason);
    // Promised: 0.2 points.
    expect(Math.abs(odds.holed - truth)).toBeLessThan(0.002);
  });

  it('the oracle does too', () => {
    const { holed } = oracleOdds(putt, pace, player, {
      rolls: 10_000,
      playedOut: 1,
      seed: 'level',
      step: LONG_STEP,
    });
    expect(Math.abs(holed.value - truth)).toBeLessThan(3 * holed.se);
  });
});
