/** Isolines of a value over the ground. Expected places are those of cones and planes, known in closed form. */
import { describe, expect, it } from 'vitest';
import { makeCamera } from '../../../src/scene/camera.ts';
import type { SceneValues } from '../../../src/scene/model.ts';
import { paletteOf } from '../../../src/scene/palette.ts';
import type { Lines, Text } from '../../../src/scene/primitives.ts';
import { drawValues, sampleValues } from '../../../src/scene/values.ts';

const size = { width: 400, height: 400 };
const camera = makeCamera({ centre: { x: 0, y: 0 }, metresAcross: 8 }, size);

const grid = (value: (x: number, y: number) => number, spacing = 0.25, reach = 5): SceneValues => {
  const columns = Math.round((2 * reach) / spacing) + 1;
  return {
    origin: { x: -reach, y: -reach },
    spacingX: spacing,
    spacingY: spacing,
    columns,
    rows: columns,
    values: Float64Array.from({ length: columns * columns }, (_, node) =>
      value(-reach + (node % columns) * spacing, -reach + Math.floor(node / columns) * spacing),
    ),
    beyond: 0,
    step: 0.1,
    tint: [1, 2],
    format: (putts) => putts.toFixed(1),
    stale: false,
  };
};
const draw = (values: SceneValues) =>
  drawValues({ values, camera, size, palette: paletteOf('light'), measure: (text) => 7 * text.length });
const linesOf = (picture: ReturnType<typeof draw>): Lines[] =>
  picture.filter((one): one is Lines => one.kind === 'lines');

describe('isolines', () => {
  it('lie where a cone has their values', () => {
    const picture = draw(grid((x, y) => 1 + Math.hypot(x, y) / 10));
    const [light, heavy] = linesOf(picture);
    const radii = (lines: Lines): number[] =>
      lines.lines.flatMap((line) =>
        line.flatMap((x, at) => (at % 2 ? [] : [Math.hypot(x - 200, line[at + 1] - 200) / camera.scale])),
      );
    // In a square of 8 m whole circles of 1, 2, 3 m and parts of 4 and 5 m: odd metres light, even ones heavy.
    // Chords of at most 9 px on circles of 50 px and more: 0.2 px or 4 mm; the cone's bend between samples as much again.
    for (const radius of radii(light)) expect(Math.abs(radius - Math.round(radius))).toBeLessThan(0.02);
    expect(new Set(radii(light).map(Math.round))).toEqual(new Set([1, 3, 5]));
    expect(new Set(radii(heavy).map(Math.round))).toEqual(new Set([2, 4]));
  });

  it('carry their value on the heavy lines, and differ from heights by dashes', () => {
    const picture = draw(grid((x) => 1.6 + x / 10));
    const texts = picture.filter((one): one is Text => one.kind === 'text').map(({ text }) => text);
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(['1.4', '1.6', '1.8']).toContain(text);
    const [, heavy] = linesOf(picture);
    // One straight line of 400 px in dashes of 8 and gaps of 5.
    expect(heavy.lines.length).toBeGreaterThan(60);
  });

  it('leave out the least value, where a line through level ground would be noise', () => {
    const picture = draw(grid((x, y) => 1 + 1e-6 * Math.sin(9 * x + 5 * y)));
    for (const { lines } of linesOf(picture)) expect(lines).toEqual([]);
  });
});

describe('values on the page', () => {
  it('follow a curved value between nodes: cubics are exact for a parabola', () => {
    const parabola = (x: number, y: number) => 1.2 + 0.03 * x * x - 0.02 * x * y + 0.01 * y;
    const { heights, columns, cell } = sampleValues(grid(parabola, 0.5), camera, size);
    for (let at = 0; at < heights.length; at++) {
      const { x, y } = camera.toWorld({ x: (at % columns) * cell, y: Math.floor(at / columns) * cell });
      expect(heights[at]).toBeCloseTo(parabola(x, y), 10);
    }
  });

  it('are missing off the grid and beside nodes without one, and reach as far beyond as asked', () => {
    const small = grid(() => 1.5, 0.25, 2);
    small.values[0] = Number.NaN;
    const at = (values: SceneValues, x: number, y: number): number => {
      const { heights, columns, cell } = sampleValues(values, camera, size);
      const pixel = camera.toPixel({ x, y });
      return heights[Math.round(pixel.y / cell) * columns + Math.round(pixel.x / cell)];
    };
    expect(at(small, 3, 0)).toBeNaN();
    expect(at(small, -1.92, -1.92)).toBeNaN();
    expect(at(small, 0, 0)).toBeCloseTo(1.5, 12);
    expect(at({ ...small, beyond: 1.5 }, 3, 0)).toBeCloseTo(1.5, 12);
  });
});
