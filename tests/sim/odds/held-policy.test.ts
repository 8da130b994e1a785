/** Another player's holing out under choices kept: beside a table of his own, which no choices can beat. */
import { describe, expect, it } from 'vitest';
import {
  generateGreen,
  heldTables,
  type NextPutts,
  type Player,
  type Putt,
  pinSpots,
  planeSurface,
  prepareNextPutts,
  presetOf,
} from '../../../sim/index.ts';
import { holdPolicy, isFarFrom, tableUnder } from '../../../sim/odds/held-policy.ts';
import { holingOutAt } from '../../../sim/odds/polar-table.ts';

const preset = presetOf('handicap-6');
if (preset === undefined) throw new Error('no preset');
const PLAYER: Player = preset.player;
const PUTT: Putt = {
  surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }),
  greenSpeed: 2.9,
  ball: { x: 0, y: -1 },
  hole: { x: 0, y: 0 },
  capture: 'rim',
};

/** Putts under one table more than under another, from places within 2 m all round. */
const differences = (first: NextPutts, second: NextPutts): number[] =>
  [0.4, 0.7, 1, 1.5, 2].flatMap((distance) =>
    Array.from({ length: 12 }, (_, i) => {
      const [x, y] = [distance * Math.cos((i * Math.PI) / 6), distance * Math.sin((i * Math.PI) / 6)];
      return holingOutAt(first, x, y).expectedPutts - holingOutAt(second, x, y).expectedPutts;
    }),
  );
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe('choices kept', () => {
  const held = holdPolicy(PUTT, PLAYER);

  it('are the table itself for the player they were made for', () => {
    for (const difference of differences(tableUnder(held, PLAYER), prepareNextPutts(PUTT, PLAYER)))
      expect(difference).toBe(0);
  });

  it.each([
    [
      'a step of a tenth in every spread',
      { lineSd: 0.9, paceSd: 0.9, slopeSd: 0.9, speedSd: 0.9 },
      {},
      0.001,
    ],
    ['half the spread of slope seen', { slopeSd: 0.5 }, {}, 0.01],
    ['twice the line error', { lineSd: 2 }, {}, 0.01],
  ])('cost another player little: %s', (_, times, plus, most) => {
    const player: Player = { ...PLAYER, ...plus };
    const other = Object.fromEntries(
      Object.entries(player).map(([error, value]) => [
        error,
        value * ((times as Record<string, number>)[error] ?? 1),
      ]),
    ) as unknown as Player;
    const costs = differences(tableUnder(held, other), prepareNextPutts(PUTT, other));
    // Both search in steps: where twice as many actions move a place by 0.002, 0.005 with habits (MODEL.md, section 4), so may these.
    for (const cost of costs) expect(cost).toBeGreaterThan(-0.005);
    expect(mean(costs)).toBeLessThan(most);
  });

  it('tell who differs by more than a quarter in a spread, whatever the habits, which nobody plays these putts with', () => {
    expect(isFarFrom(PLAYER, { ...PLAYER, lineSd: PLAYER.lineSd * 0.9 })).toBe(false);
    expect(isFarFrom(PLAYER, { ...PLAYER, lineSd: PLAYER.lineSd * 0.7 })).toBe(true);
    expect(isFarFrom(PLAYER, { ...PLAYER, slopeSd: PLAYER.slopeSd * 1.3 })).toBe(true);
    expect(isFarFrom(PLAYER, { ...PLAYER, readBias: -0.5, paceBias: 0.1 })).toBe(false);
  });

  it('cost a member of a family little on a green, whose rests reach as far as the wildest of them putts', () => {
    const surface = generateGreen({ seed: 7, sizeM: 20 });
    const [hole] = pinSpots(surface, 4, '7');
    const putt: Putt = { ...PUTT, surface, hole, ball: { x: hole.x + 1, y: hole.y } };
    // Mostly stroke: half as wild again in line and pace as the middle one.
    const [member] = preset.family;
    const table = heldTables(putt, PLAYER, { among: preset.family });
    const costs = differences(table(member), prepareNextPutts(putt, member));
    // As on a plane, and the coarser rests of a wider reach: 13 energies from the softest to the firmest putt.
    for (const cost of costs) expect(Math.abs(cost)).toBeLessThan(0.02);
    expect(Math.abs(mean(costs))).toBeLessThan(0.005);
    // Made once: whoever differs in habits alone has the same.
    expect(table({ ...member, readBias: -0.2 })).toBe(table(member));
  });
});
