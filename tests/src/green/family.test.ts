/** Where to leave it, asked of a whole family: tables made up so that what each member should do is known; and the words. */
import { describe, expect, it } from 'vitest';
import { type NextPutts, PRESETS } from '../../../sim/index.ts';
import { familySidesOf } from '../../../src/screens/green/family.ts';
import { sidesOf } from '../../../src/screens/green/view.ts';
import { askedHow, sideForAll, sideTurns } from '../../../src/screens/green/words.ts';
import { flatTable, planePutt } from './shells.ts';

const { surface, hole } = planePutt();
const DISTANCE = 4;
/** Dearer uphill of the hole by so many putts, cheaper below it. */
const tiltedBy = (putts: number): NextPutts => {
  const table = flatTable();
  const expected = table.expected.map((value, cell) => {
    const angle = table.zero + (2 * Math.PI * (cell % table.spokes)) / table.spokes;
    return value + putts * Math.sin(angle);
  });
  return { ...table, expected };
};
const { family } = PRESETS[0];
const table = tiltedBy(0.05);
const sides = sidesOf(surface, hole, table, DISTANCE);
if (sides === undefined) throw new Error('no sides');
const ask = (tilts: readonly number[], weights: readonly number[] = tilts.map(() => 1)) =>
  familySidesOf({
    surface,
    hole,
    sides,
    table,
    members: tilts.map((tilt, i) => ({ player: family[i], weight: weights[i], table: tiltedBy(tilt) })),
  });

describe('the side for everybody one may be', () => {
  it('holds where it serves all, with the least and the most it is worth', () => {
    expect(sides.best.clock).toBe(6);
    const found = ask([0.03, 0.05, 0.08]);
    expect(found?.turns).toBeUndefined();
    // From the worst place to the best: twice the tilt.
    expect(found?.worth.low).toBeCloseTo(0.06, 9);
    expect(found?.worth.high).toBeCloseTo(0.16, 9);
    expect(found && sideForAll(found, sides, 'metric')).toBe(
      'That holds for all 3 players asked: leaving it there rather than on the worst side is worth 0.06 to 0.16 putts to them.',
    );
  });
  it('turns on who one is where another side saves some of them a fiftieth of a putt: who, where, how much, what would tell', () => {
    // The first two members misread least: for the two who misread most the other side is better.
    const found = ask([0.05, 0.04, 0.02, -0.03, -0.04]);
    // Hours: 0 is 12 o'clock.
    expect(found?.turns?.clock).toBe(0);
    expect(found?.turns?.saves).toBeCloseTo(0.08, 9);
    expect(found?.turns?.on).toMatchObject({ by: 'reading', more: 'second' });
    expect(found && sideTurns(sides, found, 'metric')).toMatch(
      /^From 4\.00 m it turns on your errors: leave it below the hole \(6:00\) if you mis-strike more than you misread, above the hole \(12:00\) if you misread more than you mis-strike; .* would tell\.$/,
    );
    expect(found && sideForAll(found, sides, 'metric')).toMatch(
      /^For the middle one, from 4\.00 m, leave it below the hole: .* For the others 12:00 saves up to 0\.08 putts over 6:00\.$/,
    );
  });
  it('passes over those of hardly any weight, and says when it serves nobody asked', () => {
    expect(ask([0.05, -0.05], [0.98, 0.02])?.turns).toBeUndefined();
    const none = ask([-0.04, -0.05]);
    expect(none?.turns?.on).toBeUndefined();
    expect(none && sideTurns(sides, none, 'metric')).toBeUndefined();
    expect(none && sideForAll(none, sides, 'metric')).toMatch(
      /^That is for the middle player alone: for all 2 asked/,
    );
    const level = { asked: 2, worth: { low: 0, high: 0.01 }, turns: undefined };
    expect(sideForAll(level, sides, 'metric')).toMatch(/no side matters to any/);
  });
  it('says who was asked and how, in one sentence', () => {
    expect(askedHow(5, 200, '200 players who would have written your record')).toBe(
      'Map and table are of the middle one of 200 players who would have written your record; the side was asked of 5 of them that span the others, at this distance, by how their next putts differ.',
    );
  });
});
