/** What the page shows of sides and maps, and its words. Sides here are made up: only how they are told matters. */
import { describe, expect, it } from 'vitest';
import {
  type ApproachSide,
  type ApproachSides,
  emptyGreenMap,
  feetToMetres,
  generateGreen,
  PLACE_STATUS,
  planeSurface,
} from '../../../sim/index.ts';
import { pictureOf } from '../../../src/screens/green/tiles.ts';
import { otherSpeedsOf, rowsOf, sidesOf, valuesOf, viewOf } from '../../../src/screens/green/view.ts';
import {
  noSides,
  placeWords,
  sideDetail,
  sideHeadline,
  sideMargin,
  sidesMissing,
  sideWords,
} from '../../../src/screens/green/words.ts';
import { flatTable, planePutt } from './shells.ts';

const side = (clock: number, expectedPutts: number): ApproachSide => ({
  clock,
  bearing: 0,
  compass: undefined,
  place: { x: 0, y: 0 },
  expectedPutts,
  onePutt: 2 - expectedPutts,
  threeOrMore: 0.01,
});

const made = (putts: (clock: number) => number, count = 24): ApproachSides => {
  const sides = Array.from({ length: count }, (_, at) => side(at / 2, putts(at / 2)));
  const inOrder = [...sides].sort((one, two) => one.expectedPutts - two.expectedPutts);
  const [best, worst] = [inOrder[0], inOrder[inOrder.length - 1]];
  return {
    status: 'ok',
    distance: feetToMetres(15),
    downhill: -Math.PI / 2,
    slope: 0.02,
    sides,
    best,
    worst,
    difference: worst.expectedPutts - best.expectedPutts,
  };
};
/** Best at half past six, worst at half past twelve, nothing alike. */
const tilted = made((clock) => 1.85 + 0.07 * Math.cos(((clock - 0.5) / 6) * Math.PI) + clock * 1e-6);

describe('the sentence', () => {
  it('names distance, side, both places, their putts and what the side is worth', () => {
    expect(sideHeadline(tilted, 'imperial')).toBe(
      'From 15 ft, leave it below the hole: 1.78 putts from 6:30 against 1.92 from 12:30, worth 0.14 putts.',
    );
    expect(sideHeadline(tilted, 'metric')).toMatch(/^From 4\.57 m, /);
  });

  it('names two places where they are each other’s mirror image', () => {
    const sidehill = made((clock) => 1.7 - 0.1 * Math.cos((clock / 3) * Math.PI) + clock * 1e-6);
    expect(sideHeadline(sidehill, 'imperial')).toMatch(
      /1\.60 putts from 12:00 or 6:00 against 1\.80 from 3:00 or 9:00/,
    );
  });

  it('says that the side hardly matters when it is worth less than a fiftieth of a putt', () => {
    const flat = made((clock) => 1.7 + 0.009 * Math.cos((clock / 6) * Math.PI));
    expect(sideHeadline(flat, 'imperial')).toMatch(
      /^From 15 ft the side hardly matters: 1\.69 putts from 6:00, 1\.71 from 12:00 at worst\.$/,
    );
    expect(sideDetail(flat)).not.toMatch(/Hardly worse/);
  });

  it('tells a difference that is the difference of the two numbers told', () => {
    for (let size = 0.02; size < 0.3; size += 0.0137) {
      const text = sideHeadline(
        made((clock) => 1.7 + size * Math.sin(clock)),
        'imperial',
      );
      const [least, most, worth] = (text.match(/\d\.\d\d/g) ?? []).map(Number);
      expect(worth).toBeCloseTo(most - least, 9);
    }
  });

  it('names another side that is hardly worse', () => {
    const straight = made(
      (clock) => 1.6 + 0.1 * Math.abs(Math.sin((clock / 6) * Math.PI)) + (clock > 3 && clock < 9 ? 0.01 : 0),
    );
    expect(sideDetail(straight)).toMatch(/^Hardly worse: below the hole, 1\.61 putts from 6:00\. /);
  });

  it('tells what a foot of green speed does, and where the best place goes', () => {
    const words = sideMargin(tilted.best, [
      { name: 'slower', found: { difference: 0.11, best: 6.5 } },
      { name: 'faster', found: { difference: 0.18, best: 8 } },
    ]);
    expect(words).toContain('0.11 putts a foot slower, 0.18 putts a foot faster');
    expect(words).toContain('A foot faster the best place is 8:00.');
    expect(
      sideMargin(tilted.best, [
        { name: 'slower', found: { difference: 0.11, best: 6 } },
        { name: 'faster', found: undefined },
      ]),
    ).toMatch(/a foot faster no ball would stop\. The best place stays/);
  });

  it('says how many places are missing, and that there is none', () => {
    expect(sidesMissing(24, 24)).toBeUndefined();
    expect(sidesMissing(9, 24)).toContain('9 of 24 places');
    expect(noSides(feetToMetres(40), 'imperial')).toContain('No place 40 ft from this hole');
  });
});

describe('words of a place', () => {
  it.each([
    [0, 'above the hole'],
    [1.5, 'above the hole to the right'],
    [3, 'to the right of the hole'],
    [6.5, 'below the hole'],
    [7.5, 'below the hole to the left'],
    [9, 'to the left of the hole'],
    [11.9, 'above the hole'],
  ])('at %d o’clock name its side', (clock, words) => {
    expect(sideWords(clock)).toBe(words);
  });

  it('tell its four numbers, or that there are none', () => {
    const place = { length: feetToMetres(20), clock: 3 };
    const value = { expected: 1.834, one: 0.19, threeOrMore: 0.024, pace: 0.4572 };
    expect(placeWords({ ...place, value }, 'imperial')).toBe(
      '20 ft at 3:00, to the right of the hole: 1.83 putts; 19% holed, 2.4% three putts or more; fewest putts stopping 18 in past.',
    );
    expect(placeWords({ ...place, value: undefined }, 'imperial')).toContain('no putt can be worked out');
  });
});

describe('the table', () => {
  it('has every whole hour, and the best and the worst place wherever they are', () => {
    const rows = rowsOf(tilted);
    expect(rows.map(({ clock }) => clock)).toEqual([0, 0.5, 1, 2, 3, 4, 5, 6, 6.5, 7, 8, 9, 10, 11]);
    expect(rows.find(({ mark }) => mark === 'best')?.clock).toBe(6.5);
    expect(rows.find(({ mark }) => mark === 'worst')?.clock).toBe(0.5);
    expect(Math.min(...rows.map(({ more }) => more))).toBe(0);
  });
});

describe('the map in view', () => {
  it('holds the whole ring on a plane, out to the edge of the map on a wide page', () => {
    const surface = planeSurface({ slope: 0.02, downhill: -Math.PI / 2 });
    for (const feet of [3, 15, 40]) {
      const { centre, metresAcross } = viewOf(surface, { x: 1, y: 2 }, feetToMetres(feet));
      expect(centre).toEqual({ x: 1, y: 2 });
      expect(metresAcross / 2).toBeGreaterThan(feetToMetres(feet));
    }
    // The map's box is 76 wide for 62 high, less its margin of 30 px at 620: half the wider side must be within 20 m.
    expect((viewOf(surface, { x: 0, y: 0 }, feetToMetres(40)).metresAcross / 2) * (760 / 590)).toBeLessThan(
      20.6,
    );
  });

  it('holds the whole of a green, wherever its hole is', () => {
    const green = generateGreen({ seed: '3', sizeM: 12 });
    expect(viewOf(green, { x: 2, y: 2 }, 1)).toEqual(viewOf(green, { x: 9, y: 4 }, 9));
    expect(viewOf(green, { x: 2, y: 2 }, 1).metresAcross).toBeGreaterThan(12);
  });

  it('has a value wherever the map has one, one putt in the hole, and none elsewhere', () => {
    const putt = planePutt();
    const map = pictureOf(emptyGreenMap(putt, { spacing: 0.5, reach: 2 }), flatTable());
    map.status[3] = PLACE_STATUS.noLine;
    const { values } = valuesOf(map, putt.surface, false);
    expect(values[3]).toBeNaN();
    expect(values[(map.status.length - 1) / 2]).toBe(1);
    expect(values[0]).toBeCloseTo(1.5, 12);
  });
});

describe('other green speeds', () => {
  it('change what the map says by as much as the tables change', () => {
    const { surface, hole } = planePutt();
    // A table that tells more putts the farther round from downhill.
    const leaning = (size: number) => {
      const table = flatTable();
      const { rings, spokes } = table;
      for (let ring = 0; ring < rings; ring++)
        for (let spoke = 0; spoke < spokes; spoke++)
          table.expected[ring * spokes + spoke] = 1.6 - size * Math.cos((spoke / spokes) * 2 * Math.PI);
      return table;
    };
    const table = leaning(0.05);
    const sides = sidesOf(surface, hole, table, 4);
    if (sides === undefined) throw new Error('no sides');
    expect(sides.difference).toBeCloseTo(0.1, 9);
    const [slower, faster] = otherSpeedsOf({
      surface,
      hole,
      sides: { ...sides, difference: 0.12 },
      table,
      slower: leaning(0.04),
      faster: undefined,
    });
    expect(slower.found?.difference).toBeCloseTo(0.12 - 0.02, 9);
    expect(slower.found?.best).toBeCloseTo(6, 9);
    expect(faster.found).toBeUndefined();
  });
});
