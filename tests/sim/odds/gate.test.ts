/** Balls through gates: the closed form on level ground, single rolls on a slope, and what must hold. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { gateShare } from '../../../sim/odds/gate.ts';
import { PRESETS } from '../../../sim/player/presets.ts';
import { planeSurface } from '../../../sim/surface/plane.ts';
import type { Player, Putt } from '../../../sim/types.ts';
import { sized } from '../../support/size.ts';
import { gateOn, simulator, throughGate } from '../training/stroke-simulator.ts';

const onPlane = (slope: number, ball = { x: 3, y: 0 }): Putt => ({
  surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
  greenSpeed: 3.048,
  ball,
  hole: { x: 0, y: 0 },
  capture: 'rim',
});
/** Equipment Rules: 1.680 in across. */
const BALL = 0.04267;
const player = PRESETS[1].player;
const share = (value: ReturnType<typeof gateShare>): number => {
  if (typeof value !== 'number') throw new Error(value.reason);
  return value;
};
/** Standard normal distribution by jstat. */
const phi = (z: number): number => jstat.normal.cdf(z, 0, 1);

/** Level ground, and known to be: the stroke alone. */
const knowing: Player = { ...player, slopeSd: 0, speedSd: 0 };

describe('a gate on level ground', () => {
  it.each([
    [0.06, 0.5],
    [0.08, 1],
    [0.15, 2],
  ])('%s m wide, %s m away, passes 2 Phi(room / (distance x SD)) - 1 of all balls', (widthM, fromBallM) => {
    const room = (widthM - BALL) / 2;
    const expected = 2 * phi(room / (fromBallM * knowing.lineSd)) - 1;
    // The ball passes at d sin, the closed form says d angle: a third order in angles of under 3 degrees, 1e-4 of the share;
    // the normal distribution by the engine is good to 1e-7.
    expect(share(gateShare(onPlane(0), 0.3, knowing, [{ widthM, fromBallM }]))).toBeCloseTo(expected, 3);
  });

  it('with a second gate passes what the harder of the two lets by', () => {
    const [near, far] = [
      { widthM: 0.06, fromBallM: 0.5 },
      { widthM: 0.1, fromBallM: 1.5 },
    ];
    const one = (gates: (typeof near)[]): number => share(gateShare(onPlane(0), 0.3, knowing, gates));
    // On a straight line both ask for an angle: the smaller of room / distance decides.
    expect(one([near, far])).toBeCloseTo(Math.min(one([near]), one([far])), 6);
  });

  it('no ball fits through is refused', () => {
    expect(() => gateShare(onPlane(0), 0.3, player, [{ widthM: 0.04, fromBallM: 0.5 }])).toThrow(/Widen/);
  });
});

describe('a gate on a breaking line', () => {
  const count = sized(6000, 20_000);
  it.each<[string, number, number, Player]>([
    ['near the ball', 0.08, 0.6, player],
    ['halfway', 0.16, 1.5, player],
    ['halfway, by who knows the ground', 0.16, 1.5, knowing],
    ['halfway, a player with a habit of reading', 0.25, 1.5, { ...player, readBias: -0.2 }],
    ['halfway, too firm', 0.16, 1.5, { ...knowing, paceBias: 0.25 }],
  ])('%s is passed as often as by single rolls', (_name, widthM, fromBallM, who) => {
    const putt = onPlane(0.025);
    const rolls = simulator(putt, { pace: 0.3, player: who, seed: 'gate' });
    const gate = gateOn(rolls.line.path, fromBallM);
    let passed = 0;
    for (let i = 0; i < count; i++) if (throughGate(rolls.strike().path, gate, widthM)) passed++;
    const simulated = passed / count;
    const error = Math.sqrt((simulated * (1 - simulated)) / count);
    // Four standard errors of the simulation, and a thousandth for paths drawn as chords.
    expect(Math.abs(share(gateShare(putt, 0.3, who, [{ widthM, fromBallM }])) - simulated)).toBeLessThan(
      4 * error + 0.001,
    );
  });

  it('is passed more often when it is wider, nearer, or the player better', () => {
    const putt = onPlane(0.02);
    const one = (widthM: number, fromBallM: number, who = player): number =>
      share(gateShare(putt, 0.3, who, [{ widthM, fromBallM }]));
    expect(one(0.09, 1)).toBeGreaterThan(one(0.08, 1));
    expect(one(0.08, 0.9)).toBeGreaterThan(one(0.08, 1));
    expect(one(0.08, 1, { ...player, lineSd: 0.9 * player.lineSd })).toBeGreaterThan(one(0.08, 1));
  });
});
