/** Which thing a pointer means: the nearest one within reach, a finger's width. Leaves out: events (handles.ts). */
import type { Point } from '../../sim/index.ts';
import type { Handle, SceneModel } from './model.ts';

/** Half a finger, CSS pixels. */
export const PICK_RADIUS = 28;

/** Where each thing that can be moved is, m; things not in the model are left out. */
export function movable(model: SceneModel): { readonly handle: Handle; readonly place: Point }[] {
  return model.draggable.flatMap((handle) => {
    const place = handle === 'ball' ? model.ball : handle === 'hole' ? model.hole : model.aim;
    return place ? [{ handle, place }] : [];
  });
}

/** The nearest of these within `radius` (pixels) of a pointer; of two equally near the first. */
export function pickNearest<Thing extends { readonly place: Point }>(
  things: readonly Thing[],
  pointer: Point,
  toPixel: (place: Point) => Point,
  radius = PICK_RADIUS,
): Thing | undefined {
  let nearest: Thing | undefined;
  let least = radius;
  for (const thing of things) {
    const { x, y } = toPixel(thing.place);
    const distance = Math.hypot(x - pointer.x, y - pointer.y);
    if (distance < least || (distance === least && nearest === undefined)) {
      nearest = thing;
      least = distance;
    }
  }
  return nearest;
}
