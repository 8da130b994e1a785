/** Which thing a finger takes hold of. */
import { describe, expect, it } from 'vitest';
import { planeSurface } from '../../../sim/index.ts';
import { makeCamera } from '../../../src/scene/camera.ts';
import type { SceneModel } from '../../../src/scene/model.ts';
import { movable, pickNearest } from '../../../src/scene/pick.ts';

const model: SceneModel = {
  surface: planeSurface({ slope: 0.02, downhill: 0 }),
  viewport: { centre: { x: 0, y: 0 }, metresAcross: 4 },
  ball: { x: -0.1, y: 0 },
  hole: { x: 0.1, y: 0 },
  lines: [],
  clouds: [],
  showHeights: true,
  showContours: true,
  theme: 'light',
  units: 'metric',
  draggable: ['ball', 'hole', 'aim'],
  description: '',
};
// 100 pixels a metre: ball at 190, 200 and hole at 210, 200.
const { toPixel } = makeCamera(model.viewport, { width: 400, height: 400 });
const pick = (x: number, y: number, from = model) => pickNearest(movable(from), { x, y }, toPixel)?.handle;

describe('picking', () => {
  it('takes the nearer of two things within reach', () => {
    expect(pick(199, 205)).toBe('ball');
    expect(pick(201, 205)).toBe('hole');
  });

  it('reaches 28 pixels and no farther', () => {
    expect(pick(190 - 28, 200)).toBe('ball');
    expect(pick(190 - 28.5, 200)).toBeUndefined();
  });

  it('leaves alone what cannot be moved, even under the finger', () => {
    expect(pick(190, 200, { ...model, draggable: ['hole'] })).toBe('hole');
    expect(pick(190, 200, { ...model, draggable: [] })).toBeUndefined();
  });

  it('does not look for an aim that is not there', () => {
    expect(movable(model).map(({ handle }) => handle)).toEqual(['ball', 'hole']);
    expect(movable({ ...model, aim: { x: 0, y: 1 } }).map(({ handle }) => handle)).toEqual([
      'ball',
      'hole',
      'aim',
    ]);
  });
});
