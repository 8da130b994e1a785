/** The pure half of the map: what is drawn, and what need not be drawn again. Letters are measured as 6 pixels each. */
import { describe, expect, it } from 'vitest';
import { fieldSurface, HOLE_RADIUS, planeSurface } from '../../../sim/index.ts';
import { placeAt } from '../../../src/scene/animation.ts';
import { placeLabels } from '../../../src/scene/labels.ts';
import { chooseScaleBar } from '../../../src/scene/margin.ts';
import type { SceneModel } from '../../../src/scene/model.ts';
import { cameraFor, puttPicture, sameGround, stillPictures } from '../../../src/scene/picture.ts';
import { dashed, type Picture, type Polygons } from '../../../src/scene/primitives.ts';

const measure = (text: string): number => 6 * text.length;
const size = { width: 760, height: 620 };
const model: SceneModel = {
  surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }),
  viewport: { centre: { x: 0, y: 0 }, metresAcross: 5 },
  ball: { x: 0, y: -1.5 },
  hole: { x: 0, y: 1.5 },
  lines: [],
  clouds: [],
  showHeights: true,
  showContours: true,
  theme: 'light',
  units: 'metric',
  draggable: ['ball', 'hole'],
  description: '',
};
const ofKind = <Kind extends Picture[number]['kind']>(picture: Picture, kind: Kind) =>
  picture.filter((primitive) => primitive.kind === kind) as Extract<Picture[number], { kind: Kind }>[];
const putt = (from: SceneModel) =>
  puttPicture(from, size, measure, { rolled: false, previousLabels: [] }).picture;

describe('the ground', () => {
  it('need not be drawn again when ball, hole, lines or words change', () => {
    const moved = { ...model, ball: { x: 1, y: 1 }, hole: { x: 2, y: 2 }, description: 'moved' };
    expect(sameGround(model, moved)).toBe(true);
  });

  it.each([
    ['surface', { surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }) }],
    ['viewport', { viewport: { centre: { x: 0, y: 0 }, metresAcross: 6 } }],
    ['turn', { viewport: { centre: { x: 0, y: 0 }, metresAcross: 5, up: 0 } }],
    ['theme', { theme: 'dark' }],
    ['units', { units: 'imperial' }],
    ['contours', { showContours: false }],
    ['heights', { showHeights: false }],
  ] satisfies [string, Partial<SceneModel>][])('is drawn again when its %s changes', (_, change) => {
    expect(sameGround(model, { ...model, ...change })).toBe(false);
  });

  it('has strokes that run down the slope, thick end uphill', () => {
    // Downhill is -y, down the page: in each stroke the wide end has the smaller page y.
    const [strokes] = ofKind(stillPictures(model, size, measure).ground, 'polygons');
    expect(strokes.polygons.length).toBeGreaterThan(100);
    for (const [topX, topY, footX, footY, otherFootX, , otherTopX] of strokes.polygons) {
      expect(footY).toBeGreaterThan(topY);
      expect(Math.abs(otherTopX - topX)).toBeGreaterThan(Math.abs(otherFootX - footX));
    }
  });

  it('has longer and heavier strokes on steeper ground', () => {
    const area = (slope: number): { length: number; width: number } => {
      const surface = planeSurface({ slope, downhill: -Math.PI / 2 });
      const [{ polygons }] = ofKind(stillPictures({ ...model, surface }, size, measure).ground, 'polygons');
      const [stroke] = polygons;
      return { length: stroke[3] - stroke[1], width: Math.abs(stroke[0] - stroke[6]) };
    };
    const gentle = area(0.01);
    const steep = area(0.04);
    expect(steep.length).toBeGreaterThan(1.5 * gentle.length);
    expect(steep.width).toBeGreaterThan(1.2 * gentle.width);
  });

  it('has heights only where they are asked for, each with its unit', () => {
    const texts = (from: SceneModel) =>
      ofKind(stillPictures(from, size, measure).ground, 'text').map(({ text }) => text);
    expect(texts({ ...model, showHeights: false })).toEqual([]);
    expect(texts({ ...model, showContours: false })).toEqual([]);
    const heights = texts(model);
    expect(heights.length).toBeGreaterThan(0);
    for (const height of heights) expect(height).toMatch(/^\d+(\.5)? cm$/);
  });

  it('is plain paper beyond the edge of a green', () => {
    const surface = fieldSurface({
      origin: { x: 0, y: 0 },
      spacing: 0.5,
      columns: 9,
      rows: 9,
      heights: new Float64Array(81).map((_, at) => 0.01 * (at % 9)),
    });
    // The green spans 0 to 4 m; a view 5 m across round its corner at 0, 0 is mostly beyond it.
    const covers = ofKind(stillPictures({ ...model, surface }, size, measure).ground, 'polygons').at(
      -1,
    ) as Polygons;
    const covered = (x: number, y: number) => {
      const pixel = cameraFor(model, size).toPixel({ x, y });
      return covers.polygons.some((polygon) => contains(polygon, pixel));
    };
    expect(covered(-0.1, 1)).toBe(true);
    expect(covered(1, -0.1)).toBe(true);
    expect(covered(-1, -1)).toBe(true);
    expect(covered(0.1, 0.1)).toBe(false);
    expect(covered(2, 1)).toBe(false);
  });
});

/** Even-odd rule, for polygons that do not cross themselves. */
const contains = (polygon: readonly number[], { x, y }: { x: number; y: number }): boolean => {
  let inside = false;
  for (let at = 0, before = polygon.length - 2; at < polygon.length; before = at, at += 2) {
    const [x1, y1, x2, y2] = [polygon[at], polygon[at + 1], polygon[before], polygon[before + 1]];
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside;
};

describe('the putt', () => {
  const holeRadius = (metresAcross: number): number => {
    const near = { ...model, viewport: { centre: model.hole, metresAcross } };
    const at = cameraFor(near, size).toPixel(model.hole);
    const discs = ofKind(putt(near), 'circle').filter(
      ({ x, y, fill }) => fill === '#26241f' && x === at.x && y === at.y,
    );
    return discs[0].radius;
  };

  it('has a hole of true size, and never smaller than 5 pixels', () => {
    // The map is 590 pixels high without its margin of 30: 1 m across makes 590 pixels a metre.
    expect(holeRadius(1)).toBeCloseTo(590 * HOLE_RADIUS, 6);
    expect(holeRadius(20)).toBe(5);
  });

  it('marks missed putts only, crosses for die and rings for firm', () => {
    const cloud = {
      rests: new Float64Array([0.1, 1.8, 0, 1.5, -0.3, 2]),
      holed: new Uint8Array([0, 1, 0]),
      lippedOut: new Uint8Array(3),
    };
    const die = putt({ ...model, clouds: [{ ...cloud, style: 'die' }] });
    const firm = putt({ ...model, clouds: [{ ...cloud, style: 'firm' }] });
    const [crosses] = ofKind(die, 'marks');
    const [rings] = ofKind(firm, 'marks');
    expect([crosses.shape, rings.shape]).toEqual(['cross', 'ring']);
    // 118 pixels a metre (590 over 5), from the middle 380, 295: the two misses, not the one in the hole.
    const expected = [380 + 11.8, 295 - 212.4, 380 - 35.4, 295 - 236];
    for (const { places } of [crosses, rings]) {
      expect(places).toHaveLength(4);
      places.forEach((place, at) => {
        expect(place).toBeCloseTo(expected[at], 6);
      });
    }
  });

  it('puts a dot in the mark of a miss that lipped out, and in no other', () => {
    const cloud = {
      rests: new Float64Array([0.1, 1.8, 0, 1.5, -0.3, 2]),
      holed: new Uint8Array([0, 1, 0]),
      lippedOut: new Uint8Array([0, 0, 1]),
    };
    const marks = ofKind(putt({ ...model, clouds: [{ ...cloud, style: 'firm' }] }), 'marks');
    const dots = marks.filter(({ shape }) => shape === 'dot');
    expect(dots).toHaveLength(1);
    // The third ball alone, by the same camera as above.
    expect(dots[0].places).toHaveLength(2);
    expect(dots[0].places[0]).toBeCloseTo(380 - 35.4, 6);
    expect(dots[0].places[1]).toBeCloseTo(295 - 236, 6);
  });

  it('draws the dying line in dashes and the firm one in one piece', () => {
    const path = new Float64Array([0, -1.5, 0, 0.2, 0, 1, 0, 1.5, 2, 0, 1.8, 3]);
    const pieces = (style: 'die' | 'firm') => {
      const lines = ofKind(putt({ ...model, lines: [{ path, style }] }), 'lines');
      // Widest but for its casing: the way to the hole.
      return lines.find(({ width }) => width === 3)?.lines.length;
    };
    expect(pieces('firm')).toBe(1);
    expect(pieces('die')).toBeGreaterThan(10);
  });
});

describe('dashes', () => {
  it('cover the share of the line that the pattern says, corners included', () => {
    const dashes = dashed([0, 0, 30, 0, 30, 70], [6, 4]);
    const length = (line: readonly number[]) => {
      let sum = 0;
      for (let at = 2; at < line.length; at += 2)
        sum += Math.hypot(line[at] - line[at - 2], line[at + 1] - line[at - 1]);
      return sum;
    };
    // 100 pixels at 6 on, 4 off: ten dashes of 6. Rounding of sums of ten steps stays far below 1e-9.
    expect(dashes).toHaveLength(10);
    for (const dash of dashes) expect(length(dash)).toBeCloseTo(6, 9);
  });
});

describe('labels', () => {
  const request = (text: string, x: number, y: number) => ({ text, x, y, width: 80, height: 17 });
  const overlap = (one: { labelX: number; labelY: number }, two: { labelX: number; labelY: number }) =>
    Math.abs(one.labelX - two.labelX) < 80 && Math.abs(one.labelY - two.labelY) < 17;
  const free = { obstacles: [], marks: [], width: 760, height: 590 };

  it('never overlap, even for aims in the same place', () => {
    const [one, two] = placeLabels([request('one', 300, 300), request('two', 300, 300)], free);
    expect(overlap(one, two)).toBe(false);
  });

  it('stay on the page in a corner', () => {
    const [label] = placeLabels([request('corner', 757, 2)], free);
    expect(label.labelX + 40).toBeLessThanOrEqual(760);
    expect(label.labelY - 8.5).toBeGreaterThanOrEqual(0);
  });

  it('keep clear of a line beside their spot', () => {
    const obstacles = Array.from({ length: 100 }, (_, at) => [310, 6 * at]).flat();
    const [label] = placeLabels([request('left', 300, 300)], { ...free, obstacles });
    expect(label.labelX + 40).toBeLessThan(310);
  });

  it('stay where they were when that is as good', () => {
    const places = [request('still', 300, 300)];
    const [first] = placeLabels(places, free, [9]);
    expect(first.choice).toBe(9);
  });
});

describe('the scale bar', () => {
  it('is a round length that fits', () => {
    expect(chooseScaleBar(100, 150, 'metric')).toEqual({ pixels: 100, words: '1 m' });
    // 3 ft are 0.9144 m.
    const feet = chooseScaleBar(100, 150, 'imperial');
    expect(feet.words).toBe('3 ft');
    expect(feet.pixels).toBeCloseTo(91.44, 9);
  });
});

describe('a ball on its way', () => {
  const path = new Float64Array([0, 0, 0, 1, 0, 0.5, 1, 2, 1.5]);

  it('is between the corners of its path in proportion to the time', () => {
    expect(placeAt(path, 0.25)).toEqual({ x: 0.5, y: 0 });
    expect(placeAt(path, 1)).toEqual({ x: 1, y: 1 });
  });

  it('waits at both ends', () => {
    expect(placeAt(path, -1)).toEqual({ x: 0, y: 0 });
    expect(placeAt(path, 9)).toEqual({ x: 1, y: 2 });
  });
});
