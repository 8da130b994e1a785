/** Shares at rest in zones: the closed form for a mark on level ground, single rolls for all else. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { puttOdds } from '../../../sim/odds/compare.ts';
import { type RestQuestion, type RestShares, restShares, type Zone } from '../../../sim/odds/rest-shares.ts';
import { PRESETS } from '../../../sim/player/presets.ts';
import { planeSurface } from '../../../sim/surface/plane.ts';
import { type Stroke, simulator } from '../training/stroke-simulator.ts';

const player = PRESETS[1].player;
const ask = (change: Partial<RestQuestion> & { slope?: number } = {}): RestQuestion => ({
  putt: {
    surface: planeSurface({ slope: change.slope ?? 0.02, downhill: -Math.PI / 2 }),
    greenSpeed: 3.048,
    ball: { x: 5, y: 2 },
    hole: { x: 0, y: 0 },
    capture: 'rim',
  },
  pace: 0.3,
  player,
  zones: [],
  target: 'hole',
  ...change,
});
const shares = (question: RestQuestion): RestShares => {
  const found = restShares(question);
  if (found.status !== 'ok') throw new Error(found.reason);
  return found;
};
const isIn = (zone: Zone, { past, aside }: Stroke): boolean =>
  zone.shape === 'circle'
    ? Math.hypot(past, aside) <= zone.radiusM
    : past >= -zone.shortM && past <= zone.pastM && Math.abs(aside) <= (zone.widthM ?? Infinity) / 2;

const ZONES: Zone[] = [
  { shape: 'box', shortM: 0.3, pastM: 0.6, widthM: 0.8 },
  { shape: 'box', shortM: -0.1, pastM: 0.6 },
  { shape: 'circle', radiusM: 0.25 },
  { shape: 'circle', radiusM: 0.9 },
];

describe('shares at rest', () => {
  it('at a mark on level ground are those of the normal pace error', () => {
    const length = Math.hypot(5, 2);
    const { holed, within } = shares(
      ask({
        slope: 0,
        player: { ...player, lineSd: 1e-4, slopeSd: 0, speedSd: 0 },
        target: 'mark',
        zones: [{ shape: 'box', shortM: 0.2, pastM: 0.5 }],
      }),
    );
    // Distance rolled is (L + pace)(1 + paceSd z): normal, mean L + pace (MODEL.md section 3); jstat's distribution.
    const below = (distance: number): number =>
      jstat.normal.cdf(distance, length + 0.3, (length + 0.3) * player.paceSd);
    expect(holed).toBe(0);
    // Cells of 0.3 SD whose density is taken as straight: 0.1 of a point.
    expect(within[0]).toBeCloseTo(below(length + 0.5) - below(length - 0.2), 3);
  });

  it.each<[string, Partial<RestQuestion> & { slope?: number }]>([
    ['round a hole on a slope', {}],
    ['round a hole downhill', { putt: { ...ask().putt, ball: { x: 0.5, y: 4 } }, pace: 0.15 }],
    ['round a mark on a slope', { target: 'mark', pace: 0.001 }],
    ['by a player with habits', { player: { ...player, readBias: -0.25, paceBias: 0.06 } }],
  ])('%s agree with single rolls', (_name, change) => {
    const question = ask({ ...change, zones: ZONES });
    const rolls = simulator(question.putt, {
      pace: question.pace,
      player: question.player,
      seed: 'rests',
      covered: question.target === 'mark',
    });
    const count = 20_000;
    const counts = [0, 0, 0, 0, 0];
    for (let i = 0; i < count; i++) {
      const stroke = rolls.strike();
      if (stroke.holed) counts[4]++;
      else
        ZONES.forEach((zone, index) => {
          if (isIn(zone, stroke)) counts[index]++;
        });
    }
    const { holed, within } = shares(question);
    [...within, holed].forEach((found, index) => {
      const simulated = counts[index] / count;
      const error = Math.sqrt((simulated * (1 - simulated)) / count);
      // Four standard errors, and two tenths of a point for pieces of start and lip-outs that stand at their cell's middle: with pieces
      // a tenth as wide these shares moved by at most one tenth.
      expect(Math.abs(found - simulated), `zone ${index}`).toBeLessThan(4 * error + 0.002);
    });
  });

  it('hole what the odds hole', () => {
    const { putt, pace } = ask();
    const odds = puttOdds(putt, pace, player);
    if (odds.status !== 'ok') throw new Error(odds.reason);
    expect(shares(ask()).holed).toBeCloseTo(odds.holed, 9);
  });

  it('in a wider zone are larger, and everywhere together they are one', () => {
    const { holed, within } = shares(
      ask({
        zones: [
          { shape: 'circle', radiusM: 0.5 },
          { shape: 'circle', radiusM: 0.6 },
          { shape: 'circle', radiusM: 60 },
          { shape: 'box', shortM: 60, pastM: 60 },
        ],
      }),
    );
    expect(within[1]).toBeGreaterThan(within[0]);
    expect(holed + within[2]).toBeCloseTo(1, 9);
    expect(holed + within[3]).toBeCloseTo(1, 9);
  });
});
