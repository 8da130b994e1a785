/**
 * Uphill or downhill? Penner: the physics favours downhill (second-hand); records favour uphill (Broadie, read); Fearing et al.
 * 2011: no difference (second-hand). All three can be had from one engine.
 */
import { describe, expect, it } from 'vitest';
import { degreesToRadians, feetToMetres, playThirds } from '../../../sim/index.ts';

/** By how much more is holed downhill than uphill, share: 10 ft, green speed 10.5 ft. */
const downhillGain = (lineSdDeg: number, readSd: number, slope = 0.03): number => {
  const player = { lineSd: degreesToRadians(lineSdDeg), paceSd: 0.09, readSd, readBias: 0, paceBias: 0 };
  const thirds = playThirds({ length: feetToMetres(10), slope, greenSpeed: feetToMetres(10.5), player });
  return thirds === undefined ? Number.NaN : thirds.downhill.holed - thirds.uphill.holed;
};

describe('uphill or downhill', () => {
  it('is easier downhill for a player who reads without error, whatever the start line: the physics', () => {
    for (const lineSd of [0.5, 1, 1.5]) expect(downhillGain(lineSd, 0)).toBeGreaterThan(0.02);
  });

  it('turns with the read error: a sure stroke on 3% is easier downhill with a good eye, uphill with a poor one', () => {
    const gains = [0, 0.1, 0.2, 0.3, 0.4].map((readSd) => downhillGain(0.5, readSd));
    expect(gains[0]).toBeGreaterThan(0.02);
    expect(gains[4]).toBeLessThan(-0.02);
    for (let i = 1; i < gains.length; i++) expect(gains[i]).toBeLessThan(gains[i - 1]);
  });

  it('turns later, the larger the start line error and the gentler the slope', () => {
    const gain = downhillGain(0.5, 0.3);
    expect(gain).toBeLessThan(0);
    expect(downhillGain(1, 0.3)).toBeGreaterThan(0);
    expect(downhillGain(0.5, 0.3, 0.01)).toBeGreaterThan(0);
  });

  it('leaves sidehill putts, which break most, the hardest as soon as reading errs', () => {
    const player = { lineSd: degreesToRadians(1), paceSd: 0.09, readSd: 0.3, readBias: 0, paceBias: 0 };
    const thirds = playThirds({ length: 3, slope: 0.02, greenSpeed: 3.2, player });
    expect(thirds).toBeDefined();
    if (thirds === undefined) return;
    expect(thirds.sidehill.holed).toBeLessThan(thirds.uphill.holed);
    expect(thirds.sidehill.holed).toBeLessThan(thirds.downhill.holed);
  });

  it('is not answered where the slope holds no ball', () => {
    const player = { lineSd: 0.02, paceSd: 0.09, readSd: 0.3, readBias: 0, paceBias: 0 };
    expect(playThirds({ length: 3, slope: 0.12, greenSpeed: 3, player })).toBeUndefined();
  });
});
