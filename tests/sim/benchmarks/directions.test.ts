/**
 * Uphill or downhill? Penner: the physics favours downhill (second-hand); records favour uphill (Broadie, read); Fearing et al.
 * 2011: no difference (second-hand). All three can be had from one engine: it turns on what is misread.
 */
import { describe, expect, it } from 'vitest';
import {
  degreesToRadians,
  feetToMetres,
  type NextPutts,
  type Player,
  type Putt,
  playThirds,
  prepareNextPutts,
} from '../../../sim/index.ts';
import { sized } from '../../support/size.ts';

const playerWith = (lineSdDeg: number, slopeSd: number): Player => ({
  lineSd: degreesToRadians(lineSdDeg),
  paceSd: 0.05,
  slopeSd,
  speedSd: 0,
  readBias: 0,
  paceBias: 0,
});

/** Later putts at one sensible pace: what is compared here is the first, and such a table is made in a third of the time. */
const tableOf = (green: Putt, player: Player): NextPutts =>
  prepareNextPutts(green, player, { policy: sized('fixed', 'best') });

/** By how much more is holed uphill than downhill, share: 10 ft, green speed 10.5 ft. */
const uphillGain = (lineSdDeg: number, slopeSd: number, slope = 0.03): number => {
  const player = playerWith(lineSdDeg, slopeSd);
  const on = { length: feetToMetres(10), slope, greenSpeed: feetToMetres(10.5) };
  const thirds = playThirds({ ...on, player, tableOf });
  return thirds === undefined ? Number.NaN : thirds.uphill.holed - thirds.downhill.holed;
};

describe('uphill or downhill', () => {
  it('is easier downhill for a player who sees the ground as it is, whatever the start line: the physics', () => {
    for (const lineSd of [0.5, 1, 1.5]) expect(uphillGain(lineSd, 0)).toBeLessThan(-0.01);
  });

  it('is the easier uphill the more slope is misread, from 0.3% on', () => {
    const gains = [0, 0.0015, 0.003, 0.0045, 0.006].map((slopeSd) => uphillGain(0.8, slopeSd));
    for (let i = 1; i < gains.length; i++) expect(gains[i]).toBeGreaterThan(gains[i - 1]);
    // Two points: what is asked of the tour's preset.
    expect(gains[3]).toBeGreaterThan(0.02);
  });

  it('differs more, the steeper the slope', () => {
    expect(uphillGain(0.8, 0.0045, 0.03)).toBeGreaterThan(uphillGain(0.8, 0.0045, 0.01));
  });

  it('leaves more downhill than uphill', () => {
    const on = { length: 3, slope: 0.03, greenSpeed: 3.2 };
    const thirds = playThirds({ ...on, player: playerWith(0.8, 0.0045), tableOf });
    if (thirds === undefined) throw new Error('no line');
    expect(thirds.downhill.leave).toBeGreaterThan(thirds.uphill.leave);
    expect(thirds.sidehillDown.holed).toBeLessThan(thirds.sidehillUp.holed);
  });

  it('is not answered where the slope holds no ball', () => {
    expect(
      playThirds({ length: 3, slope: 0.12, greenSpeed: 3, player: playerWith(1, 0.004) }),
    ).toBeUndefined();
  });
});
