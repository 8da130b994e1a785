/**
 * Contours. Expected places are those of surfaces with known contours: a plane has straight ones a step/slope apart, a
 * bowl of height r^2 has circles.
 */
import { describe, expect, it } from 'vitest';
import { planeSurface } from '../../../sim/index.ts';
import { makeCamera } from '../../../src/scene/camera.ts';
import { chooseSteps, findContours, type HeightGrid } from '../../../src/scene/contours.ts';
import { sampleGround } from '../../../src/scene/samples.ts';

const size = { width: 600, height: 480 };
/** Pixels: linear interpolation is exact on a plane but for rounding of heights near 1e-1 m. */
const EXACT = 1e-6;

const gridOf = (height: (x: number, y: number) => number, cell = 6): HeightGrid => {
  const columns = size.width / cell + 1;
  const rows = size.height / cell + 1;
  const heights = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      heights[row * columns + column] = height(column * cell, row * cell);
  return { cell, columns, rows, heights };
};

describe('contours of a plane', () => {
  const slope = 0.023;
  const downhill = 0.7;
  const camera = makeCamera({ centre: { x: 1, y: 2 }, metresAcross: 4.8, up: 1.2 }, size);
  const samples = sampleGround(planeSurface({ slope, downhill }), camera, size);
  const contours = findContours(samples, 0.01);
  /** Height at a pixel, from the definition of a plane, not from the samples. */
  const heightAt = (x: number, y: number): number => {
    const place = camera.toWorld({ x, y });
    return -slope * (place.x * Math.cos(downhill) + place.y * Math.sin(downhill));
  };

  it('lie at their own height all along, so they are straight', () => {
    expect(contours.length).toBeGreaterThan(8);
    const pixelsPerMetreOfHeight = camera.scale / slope;
    for (const { level, places } of contours)
      for (let at = 0; at < places.length; at += 2)
        expect(Math.abs(heightAt(places[at], places[at + 1]) - level) * pixelsPerMetreOfHeight).toBeLessThan(
          EXACT,
        );
  });

  it('lie step over slope apart', () => {
    // Distance of a point on each from the line along the slope: 0.01 m / 0.023 = 0.4348 m = 43.48 pixels at 100 a metre.
    const down = camera.toPixel({ x: Math.cos(downhill), y: Math.sin(downhill) });
    const origin = camera.toPixel({ x: 0, y: 0 });
    const along = contours
      .map(
        ({ places }) =>
          ((places[0] - origin.x) * (down.x - origin.x) + (places[1] - origin.y) * (down.y - origin.y)) / 100,
      )
      .sort((one, two) => one - two);
    for (let at = 1; at < along.length; at++)
      expect(along[at] - along[at - 1]).toBeCloseTo(100 * (0.01 / slope), 6);
  });

  it('come as one line each, from edge to edge', () => {
    expect(new Set(contours.map(({ level }) => level)).size).toBe(contours.length);
    const onEdge = (x: number, y: number) => x === 0 || y === 0 || x >= size.width || y >= size.height;
    for (const { places } of contours) {
      expect(onEdge(places[0], places[1])).toBe(true);
      expect(onEdge(places[places.length - 2], places[places.length - 1])).toBe(true);
    }
  });

  it('are thick on every fifth level', () => {
    for (const { level, index } of contours) expect(index).toBe(Math.round(level / 0.01) % 5 === 0);
  });
});

describe('contours of other ground', () => {
  it('close round a bowl, at the right distance from its middle', () => {
    const contours = findContours(
      gridOf((x, y) => ((x - 300) ** 2 + (y - 240) ** 2) / 1e4),
      1,
    );
    const inner = contours.filter(({ level }) => level === 1 || level === 4);
    expect(inner).toHaveLength(2);
    for (const { level, places } of inner) {
      expect(places.slice(0, 2)).toEqual(places.slice(-2));
      for (let at = 0; at < places.length; at += 2)
        // r^2 = 1e4 level; a chord across a cell of 6 pixels misses by at most 6^2/8r = 0.045 pixels at r = 100.
        expect(
          Math.abs(Math.hypot(places[at] - 300, places[at + 1] - 240) - 100 * Math.sqrt(level)),
        ).toBeLessThan(0.05);
    }
  });

  it.each([1, -1])(
    'keep apart in a saddle whose middle lies a little above or below the level (%i)',
    (above) => {
      // Height xy + c round the middle of a cell: level 0 is the pair of hyperbolas xy = -c, one on each side.
      const contours = findContours(
        gridOf((x, y) => (x - 297) * (y - 237) + above),
        1e6,
      );
      expect(contours).toHaveLength(2);
      for (const { places } of contours) {
        const side = Math.sign(places[0] - 297);
        for (let at = 0; at < places.length; at += 2) {
          expect(Math.sign(places[at] - 297)).toBe(side);
          expect(Math.sign(places[at + 1] - 237)).toBe(-above * side);
        }
      }
    },
  );

  it('are absent on level ground', () => {
    expect(
      findContours(
        gridOf(() => 0.02),
        0.01,
      ),
    ).toEqual([]);
  });
});

describe('the step between contours', () => {
  it('is one or two centimetres on a usual putt and grows with the range', () => {
    // At most 20 contours in view: 12 cm need 0.6 cm or more, 40 cm 2 cm, 150 cm 7.5 cm.
    expect(chooseSteps(0.12, 0.02, 100, 'metric').words).toBe('1 cm');
    expect(chooseSteps(0.4, 0.03, 60, 'metric').words).toBe('2 cm');
    expect(chooseSteps(1.5, 0.04, 20, 'metric').words).toBe('10 cm');
  });

  it('keeps the steepest ground from closing up', () => {
    // 5 pixels at 20 a metre are 0.25 m, which rise 1.5 cm at 6%: 1 cm would be nearer than that.
    expect(chooseSteps(0.2, 0.06, 20, 'metric').words).toBe('2 cm');
  });

  it('is in inches for those who use them', () => {
    const steps = chooseSteps(0.12, 0.02, 100, 'imperial');
    expect(steps.words).toBe('0.4 in');
    expect(steps.format(0.0508)).toBe('2 in');
  });
});
