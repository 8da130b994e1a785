/** The map's camera. Expected places follow from the definition of a turn and of the scale, worked out beside each. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeCamera } from '../../../src/scene/camera.ts';

const size = { width: 760, height: 590 };
/** Metres: doubles carry 16 digits and places are tens of metres, so a micrometre is far more than rounding. */
const ROUNDING = 1e-6;

describe('the camera', () => {
  it('shows the centre of the viewport in the middle of the page', () => {
    const camera = makeCamera({ centre: { x: 3, y: -2 }, metresAcross: 5, up: 1.1 }, size);
    expect(camera.toPixel({ x: 3, y: -2 })).toEqual({ x: 380, y: 295 });
  });

  it('shows the asked-for metres across the shorter side', () => {
    const camera = makeCamera({ centre: { x: 0, y: 0 }, metresAcross: 5.9 }, size);
    expect(camera.scale).toBeCloseTo(100, 9);
    // 2.95 m up is half of 5.9 m: the upper edge.
    expect(camera.toPixel({ x: 0, y: 2.95 }).y).toBeCloseTo(0, 9);
  });

  it('puts +x to the right and +y up the page unless turned', () => {
    const camera = makeCamera({ centre: { x: 0, y: 0 }, metresAcross: 5.9 }, size);
    const { x, y } = camera.toPixel({ x: 1, y: 1 });
    expect(x).toBeCloseTo(480, 9);
    expect(y).toBeCloseTo(195, 9);
  });

  it('puts the bearing it is turned to up the page, without mirroring', () => {
    // Up is +x, so what lies to its left, +y, is on the left of the page.
    const camera = makeCamera({ centre: { x: 0, y: 0 }, metresAcross: 5.9, up: 0 }, size);
    expect(camera.toPixel({ x: 1, y: 0 }).y).toBeCloseTo(195, 9);
    expect(camera.toPixel({ x: 0, y: 1 }).x).toBeCloseTo(280, 9);
  });

  it('brings every place to a pixel and back', () => {
    const metres = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        metres,
        metres,
        metres,
        metres,
        fc.double({ min: 0.3, max: 60, noNaN: true }),
        fc.double({ min: -7, max: 7, noNaN: true }),
        (x, y, centreX, centreY, metresAcross, up) => {
          const camera = makeCamera({ centre: { x: centreX, y: centreY }, metresAcross, up }, size);
          const back = camera.toWorld(camera.toPixel({ x, y }));
          expect(Math.hypot(back.x - x, back.y - y)).toBeLessThan(ROUNDING);
        },
      ),
      { seed: 20261125 },
    );
  });
});
