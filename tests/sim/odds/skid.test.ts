/**
 * Odds of a putt that skids, against a count of single rolls: the same roller (held to odex in tests/sim/roll/skid.test.ts)
 * struck with errors drawn at random, so that what is checked is the integration, the drop regions and the rests.
 */
import { describe, expect, it } from 'vitest';
import {
  comparePaces,
  feetToMetres,
  generateGreen,
  holedShare,
  PRESETS,
  type Putt,
  pinSpots,
  planeSurface,
  prepareNextPutts,
  puttOdds,
  sampleMisses,
} from '../../../sim/index.ts';
import { sized } from '../../support/size.ts';

const { player } = PRESETS[0];
const plane: Putt = {
  surface: planeSurface({ slope: 0.025, downhill: -Math.PI / 2 }),
  greenSpeed: feetToMetres(10),
  ball: { x: feetToMetres(9), y: feetToMetres(3) },
  hole: { x: 0, y: 0 },
  capture: 'simple',
  skid: true,
};
const green = ((): Putt => {
  const surface = generateGreen({ seed: '7', sizeM: 20 });
  const hole = pinSpots(surface, 1, '7')[0];
  return { ...plane, surface, hole, ball: { x: hole.x + 2, y: hole.y + 1.5 } };
})();

/** Each green's table is made once: at one sensible pace, of which nothing asked here depends. */
const tables = new Map(
  [plane, green].map((putt) => [putt, prepareNextPutts(putt, player, { policy: 'fixed' })]),
);

describe('odds of a skidding putt', () => {
  it.each([
    ['a plane', plane, sized(60_000, 300_000)],
    ['a green', green, sized(30_000, 120_000)],
  ])('on %s: holed, short and the median leave are what single rolls give', (_name, putt, count) => {
    const odds = puttOdds(putt, 0.381, player, tables.get(putt));
    if (odds.status !== 'ok') throw new Error(odds.reason);
    const { rests, holed } = sampleMisses(putt, 0.381, player, count, 11);
    const toward = Math.hypot(putt.hole.x - putt.ball.x, putt.hole.y - putt.ball.y);
    let dropped = 0;
    let short = 0;
    const leaves: number[] = [];
    for (let i = 0; i < count; i++) {
      if (holed[i]) {
        dropped++;
        continue;
      }
      const dx = rests[2 * i] - putt.hole.x;
      const dy = rests[2 * i + 1] - putt.hole.y;
      leaves.push(Math.hypot(dx, dy));
      const past = (dx * (putt.hole.x - putt.ball.x) + dy * (putt.hole.y - putt.ball.y)) / toward;
      if (past < 0) short++;
    }
    leaves.sort((first, second) => first - second);
    // 0.2 points promised, and three standard errors of the count.
    const near = (mine: number, counted: number): void =>
      expect(Math.abs(mine - counted)).toBeLessThan(0.002 + 3 * Math.sqrt((counted * (1 - counted)) / count));
    near(odds.holed, dropped / count);
    near(odds.short, short / count);
    // Leaves are told in bins; a centimetre is what the page shows. Three standard errors of the counted median: the ranks of half of n
    // have an SD of sqrt(n) / 2.
    const at = (errors: number): number =>
      leaves[Math.floor(leaves.length / 2 + (errors * Math.sqrt(leaves.length)) / 2)];
    expect(Math.abs(odds.leaveMedian - at(0))).toBeLessThan(0.01 + (at(3) - at(-3)) / 2);
    expect(odds.holed + odds.short + odds.high + odds.low).toBeCloseTo(1, 9);
  });

  it.each([
    ['a plane', plane],
    ['a green', green],
  ])('on %s: paces are compared, and aims judged, as without the skid', (_name, putt) => {
    const table = tables.get(putt);
    const { rows, best } = comparePaces(putt, [0.15, 0.4, 0.75], player, table);
    for (const { odds } of rows) expect(odds?.holed).toBeGreaterThan(0.1);
    expect(best?.mostHoled).toBeGreaterThan(0);
    const sure = { ...player, slopeSd: 0, speedSd: 0, readBias: 0 };
    const single = puttOdds(putt, 0.4, sure, table);
    // The same integral by another door: exact but for what lies beyond 4.5 SD.
    expect(holedShare(putt, 0.4, player)).toBeCloseTo(single.status === 'ok' ? single.holed : Number.NaN, 4);
  });
});
