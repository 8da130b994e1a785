/** Which part of the ground the map shows. Places are laid out by hand. */
import { describe, expect, it } from 'vitest';
import { makeCamera } from '../../../src/scene/camera.ts';
import { mapSize } from '../../../src/scene/picture.ts';
import { fitView, type ViewRequest } from '../../../src/screens/decide/view.ts';

const room = { width: 760, height: 620 };
const asked = (changes: Partial<ViewRequest> = {}): ViewRequest => ({
  ball: { x: 3.2, y: -1.8 },
  hole: { x: 0, y: 0 },
  spots: [{ x: -0.7, y: 0.5 }],
  past: 0.8,
  room,
  previous: undefined,
  ...changes,
});

describe('the view of a putt', () => {
  it.each([[{ width: 760, height: 620 }], [{ width: 366, height: 366 }], [{ width: 300, height: 700 }]])(
    'has ball, hole and aims inside the map, in a room of %o',
    (box) => {
      const request = asked({ room: box });
      const { viewport } = fitView(request);
      const camera = makeCamera(viewport, mapSize(box));
      for (const place of [request.ball, request.hole, ...request.spots]) {
        const { x, y } = camera.toPixel(place);
        // 20 px: a label or the ring of a ball has room beside it.
        expect(x).toBeGreaterThan(20);
        expect(x).toBeLessThan(box.width - 20);
        expect(y).toBeGreaterThan(20);
        expect(y).toBeLessThan(box.height - 20);
      }
    },
  );

  it('stays as it is for a small move and for nothing at all', () => {
    const previous = fitView(asked());
    expect(fitView(asked({ previous }))).toBe(previous);
    expect(fitView(asked({ previous, ball: { x: 3.1, y: -1.7 } }))).toBe(previous);
  });

  it('moves when the ball has left it, and closes in when the putt has become short', () => {
    const previous = fitView(asked());
    expect(fitView(asked({ previous, ball: { x: 12, y: -1.8 } })).viewport.metresAcross).toBeGreaterThan(
      previous.viewport.metresAcross,
    );
    expect(fitView(asked({ previous, ball: { x: 0.5, y: 0 } })).viewport.metresAcross).toBeLessThan(
      previous.viewport.metresAcross / 1.5,
    );
  });

  it('is laid out again when the page has another size', () => {
    const previous = fitView(asked());
    expect(fitView(asked({ previous, room: { width: 366, height: 366 } }))).not.toBe(previous);
  });

  it('survives a map that has no size yet', () => {
    const { viewport } = fitView(asked({ room: { width: 0, height: 0 } }));
    expect(Number.isFinite(viewport.metresAcross)).toBe(true);
    expect(viewport.metresAcross).toBeGreaterThan(0);
  });
});
