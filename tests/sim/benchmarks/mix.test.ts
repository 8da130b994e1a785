/** The mix of putts behind a record: its sums against finer ones, its parts against single putts. */
import { describe, expect, it } from 'vitest';
import {
  BENCHMARK_CAPTURE,
  degreesToRadians,
  feetToMetres,
  type Mix,
  type NextPutts,
  type Putt,
  planeSurface,
  playMix,
  prepareNextPutts,
  puttOdds,
  TOUR_MIX,
} from '../../../sim/index.ts';
import { sized } from '../../support/size.ts';

const player = {
  lineSd: degreesToRadians(1),
  paceSd: 0.06,
  slopeSd: 0.0045,
  speedSd: 0.03,
  readBias: 0,
  paceBias: 0,
};

/** Made once for each green: at one sensible pace for every day, because it is the sums over the mix that are compared. */
const tables = new Map<string, NextPutts>();
const tableOf = (green: Putt): NextPutts => {
  const key = JSON.stringify([green.surface, green.greenSpeed]);
  const table = tables.get(key) ?? prepareNextPutts(green, player, { policy: sized('fixed', 'best') });
  tables.set(key, table);
  return table;
};

describe('the mix of putts', () => {
  it('is summed finely enough: 2 slopes, 1 green speed and 6 directions stand for 4, 2 and 9', () => {
    const options = { mix: TOUR_MIX, lengths: [5, 20].map(feetToMetres), player, tableOf };
    const usual = playMix(options);
    const fine = playMix({ ...options, fineness: { slopes: 4, greenSpeeds: 2, directions: 9 } });
    for (const [i, row] of usual.entries()) {
      // A tenth of the 1.5 points and of the 0.03 putts asked of the fit.
      expect(Math.abs(row.holed - fine[i].holed)).toBeLessThan(0.0015);
      expect(Math.abs(row.threePutt - fine[i].threePutt)).toBeLessThan(0.0015);
      expect(Math.abs(row.expectedPutts - fine[i].expectedPutts)).toBeLessThan(0.003);
      expect(row.played).toBe(1);
    }
  });

  it('of one slope, one green speed and one direction is a single putt: pin-high', () => {
    const mix: Mix = { slopes: [0.02, 0.02], greenSpeeds: [3, 3] };
    const fineness = { slopes: 1, greenSpeeds: 1, directions: 1 };
    const [row] = playMix({ mix, lengths: [3], player, pace: 0.4, fineness });
    const putt = {
      surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }),
      greenSpeed: 3,
      ball: { x: 3, y: 0 },
      hole: { x: 0, y: 0 },
      capture: BENCHMARK_CAPTURE,
    };
    const odds = puttOdds(putt, 0.4, player, prepareNextPutts(putt, player));
    expect(odds.status).toBe('ok');
    if (odds.status !== 'ok') return;
    expect(row.holed).toBeCloseTo(odds.holed, 9);
    expect(row.expectedPutts).toBeCloseTo(odds.expectedPutts, 9);
    expect(row.leave).toBeCloseTo(odds.leaveMedian, 9);
    expect(row.pace).toBe(0.4);
  });

  it('is played nearly at the best pace: no habit needs fewer putts', () => {
    const options = { mix: TOUR_MIX, lengths: [10, 30].map(feetToMetres), player, tableOf };
    const best = playMix(options);
    // What is played of the best pace costs up to a thousandth of a putt.
    for (const pace of [0.2, 0.45, 0.75])
      for (const [i, row] of playMix({ ...options, pace }).entries())
        expect(row.expectedPutts).toBeGreaterThan(best[i].expectedPutts - 0.001);
  });

  it('says what share has a line: half of a mix whose steeper half holds no ball', () => {
    // At 3 m a plane holds a ball up to 7.8% (MODEL.md, section 1): 4.1% does, 9.9% does not.
    const mix: Mix = { slopes: [0.02, 0.12], greenSpeeds: [3, 3] };
    const [row] = playMix({ mix, lengths: [3], player, pace: 0.4, tableOf });
    expect(row.played).toBe(0.5);
    expect(row.holed).toBeGreaterThan(0);
  });
});
