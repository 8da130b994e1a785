/**
 * The map of a green: laws of planes, coarse to fine against every place computed, places against comparePaces, tiles in any
 * order, and sides of the hole.
 */
import { describe, expect, it } from 'vitest';
import {
  approachSides,
  comparePaces,
  emptyGreenMap,
  filledIn,
  type GreenQuestion,
  generateGreen,
  mapValueAt,
  nodePoint,
  PLACE_STATUS,
  PRESETS,
  type Putt,
  pinSpots,
  placesToPlay,
  planeSurface,
  playPlaces,
  prepareNextPutts,
  seededRandom,
  wholeGreen,
  withPlayed,
} from '../../../sim/index.ts';
import { sized } from '../../support/size.ts';

const { player } = PRESETS[0];

function questionOf(putt: Omit<Putt, 'ball'>, policy: 'best' | 'fixed' = 'best'): GreenQuestion {
  const whole = { ...putt, ball: putt.hole };
  return { putt: whole, player, table: prepareNextPutts(whole, player, { policy }) };
}
const onPlane = (slope: number, policy?: 'fixed'): GreenQuestion =>
  questionOf(
    {
      surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
      greenSpeed: 3.048,
      hole: { x: 0, y: 0 },
      capture: 'simple',
    },
    policy,
  );

const TILTED = onPlane(0.02);
/** Only how putts grow with distance is asked of it: one sensible pace. */
const FLAT = onPlane(0, 'fixed');
/** m, along a side. */
const SIZE = sized(7, 10);
const SURFACE = generateGreen({ seed: 3, sizeM: SIZE });
const GREEN = questionOf({
  surface: SURFACE,
  greenSpeed: 3.048,
  hole: pinSpots(SURFACE, 1, 1)[0],
  capture: 'simple',
});

const { played, interpolated, offGreen, inHole, noLine } = PLACE_STATUS;
const hasValue = (status: number): boolean => status === played || status === interpolated;

describe('the map of a plane', () => {
  const map = wholeGreen(TILTED, { spacing: 0.5, reach: 4 });

  it('has the hole in the middle, a putt or more everywhere else, and chances that fit', () => {
    const middle = (map.expected.length - 1) / 2;
    for (let node = 0; node < map.expected.length; node++) {
      if (node === middle) {
        expect(map.status[node]).toBe(inHole);
        expect(map.expected[node]).toBe(0);
        continue;
      }
      expect(hasValue(map.status[node])).toBe(true);
      expect(map.expected[node]).toBeGreaterThanOrEqual(1);
      expect(map.one[node] + map.threeOrMore[node]).toBeLessThanOrEqual(1 + 1e-12);
      expect(map.threeOrMore[node]).toBeGreaterThanOrEqual(0);
    }
  });

  it('is the same on both sides of the fall line', () => {
    for (let row = 0; row < map.rows; row++)
      for (let column = 0; column < map.columns; column++) {
        const left = row * map.columns + column;
        const right = row * map.columns + map.columns - 1 - column;
        // Both sides are solved by themselves: what roots and parabolas stop at, putts.
        expect(Math.abs(map.expected[left] - map.expected[right])).toBeLessThan(1e-4);
      }
  });

  it('takes more putts the farther from the hole, along every spoke, on the level', () => {
    const level = wholeGreen(FLAT, { spacing: 0.5, reach: 4, bound: 0 });
    for (const [across, along] of [
      [1, 0],
      [0, -1],
      [-1, 1],
    ]) {
      let before = 1;
      for (let step = 1; step <= 8; step++) {
        const node = (8 + step * along) * level.columns + 8 + step * across;
        expect(level.expected[node]).toBeGreaterThanOrEqual(before);
        before = level.expected[node];
      }
      expect(before).toBeGreaterThan(1.4);
    }
  });
});

describe('the map of a green', () => {
  const coarseToFine = wholeGreen(GREEN, { spacing: 0.5 });

  it('agrees, filled coarse to fine, with every place computed', () => {
    const all = wholeGreen(GREEN, { spacing: 0.5, bound: 0 });
    let worst = 0;
    let count = 0;
    for (let node = 0; node < all.expected.length; node++) {
      expect(hasValue(coarseToFine.status[node])).toBe(hasValue(all.status[node]));
      if (coarseToFine.status[node] !== interpolated) continue;
      count++;
      worst = Math.max(worst, Math.abs(coarseToFine.expected[node] - all.expected[node]));
    }
    // Else nothing much was put in between: a tenth of the places.
    expect(count).toBeGreaterThan(all.expected.length / 10);
    // The bound stated: twice what halving had to move, putts.
    expect(worst).toBeLessThan(2 * coarseToFine.bound);
  });

  it('says at its places what comparing paces says there', () => {
    const random = seededRandom('places');
    for (let i = 0; i < 12; i++) {
      const node = Math.floor(random() * coarseToFine.expected.length);
      if (coarseToFine.status[node] !== played) continue;
      const ball = nodePoint(coarseToFine, node);
      const putt = { ...GREEN.putt, ball };
      const paces = Array.from({ length: 25 }, (_, k) => 0.05 * 1.14 ** k);
      const compared = comparePaces(putt, paces, player, GREEN.table);
      const best = Math.min(...compared.rows.map(({ odds }) => odds?.expectedPutts ?? 9));
      // Putts: paces 14% apart stand a little beside the best; both know misses from the same table.
      expect(Math.abs(coarseToFine.expected[node] - best)).toBeLessThan(0.002);
      const at = mapValueAt(coarseToFine, ball.x, ball.y);
      expect(at?.expected).toBeCloseTo(coarseToFine.expected[node], 9);
    }
  });

  it('comes out the same from tiles in any order, and from tiles thrown away halfway', () => {
    const options = { spacing: 1 };
    const whole = wholeGreen(GREEN, options);
    let map = emptyGreenMap(GREEN.putt, options);
    const empty = map;
    for (let step = 0; step < map.strides.length; step++) {
      const nodes = placesToPlay(map, step);
      const tiles = [];
      for (let i = 0; i < nodes.length; i += 7) tiles.push(nodes.slice(i, i + 7));
      const before = map;
      const done = tiles.reverse().map((tile) => playPlaces(GREEN, empty, tile));
      // A step given up after one tile leaves the map it began with as it was.
      const kept = { ...before, expected: before.expected.slice(), status: before.status.slice() };
      withPlayed(before, done[0], GREEN.table);
      expect(before.expected).toEqual(kept.expected);
      expect(before.status).toEqual(kept.status);
      for (const tile of done) map = withPlayed(map, tile, GREEN.table);
      map = filledIn(map, GREEN.table);
    }
    expect(map).toEqual(whole);
  });

  it('marks what is off the green, in the hole and without a line, and never holds NaN', () => {
    // At 9% and 10 ft no ball rests and no place has a line: no table is looked into.
    const none: GreenQuestion = {
      ...TILTED,
      putt: { ...TILTED.putt, surface: planeSurface({ slope: 0.09, downhill: 0 }) },
    };
    const map = wholeGreen(none, { spacing: 1, reach: 2 });
    expect([...map.status].filter((status) => status !== noLine && status !== inHole)).toEqual([]);
    for (const values of [map.expected, map.one, map.threeOrMore, map.pace])
      expect(values.every((value) => value === 0)).toBe(true);
    const off = playPlaces(GREEN, { ...coarseToFine, origin: { x: -50, y: 0 } }, Int32Array.of(0));
    expect(off.status[0]).toBe(offGreen);
  });
});

describe('sides of the hole', () => {
  it('on a plane: best straight below the hole, the same left and right, and the difference is what it says', () => {
    const { putt, table } = TILTED;
    const found = approachSides(putt.surface, putt.hole, table);
    if (found.status !== 'ok') throw new Error('expected sides');
    expect(found.sides).toHaveLength(24);
    // MODEL.md: 6 o'clock is straight below the hole.
    expect(found.sides[0].clock).toBeCloseTo(0, 9);
    expect(found.sides[12].clock).toBeCloseTo(6, 9);
    // Every record by direction (Broadie 2019, read; an experiment of 1,290 putts, doi 10.4324/9780203715000-12, abstract read): uphill
    // putts are the easier ones, because they suffer less from what is misread.
    expect(found.best.clock).toBeCloseTo(6, 9);
    for (let i = 1; i < 12; i++)
      // Rounding.
      expect(Math.abs(found.sides[i].expectedPutts - found.sides[24 - i].expectedPutts)).toBeLessThan(1e-9);
    expect(found.difference).toBeCloseTo(found.worst.expectedPutts - found.best.expectedPutts, 12);
    expect(found.difference).toBeGreaterThan(0);
    expect(found.slope).toBeCloseTo(0.02, 9);
    expect(found.sides[0].compass).toBeUndefined();
  });

  it('leaves out places off the green, tells a compass bearing, and the map says nearly what the table says', () => {
    const { putt, table } = GREEN;
    const near = approachSides(putt.surface, putt.hole, table, { distance: 2 });
    const map = wholeGreen(GREEN, { spacing: 0.25, bound: 0.02 });
    const onMap = approachSides(putt.surface, putt.hole, map, { distance: 2 });
    if (near.status !== 'ok' || onMap.status !== 'ok') throw new Error('expected sides');
    expect(onMap.sides.length).toBe(near.sides.length);
    for (let i = 0; i < near.sides.length; i++) {
      const { place, compass, expectedPutts } = near.sides[i];
      // Clockwise from +y.
      expect(Math.sin(compass ?? 9) * 2).toBeCloseTo(place.x - putt.hole.x, 9);
      expect(Math.cos(compass ?? 9) * 2).toBeCloseTo(place.y - putt.hole.y, 9);
      // Putts: the table is off by 0.006 at most here (MODEL.md), the map's cells are straight.
      expect(Math.abs(expectedPutts - onMap.sides[i].expectedPutts)).toBeLessThan(0.015);
    }
    const far = approachSides(putt.surface, putt.hole, table, { distance: 0.6 * SIZE });
    if (far.status !== 'ok') throw new Error('expected sides');
    expect(far.sides.length).toBeLessThan(24);
    expect(approachSides(putt.surface, putt.hole, table, { distance: 30 }).status).toBe('noSides');
  });
});
