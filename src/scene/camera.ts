/**
 * The one place where metres become pixels and pixels metres.
 * Answers for: place, scale and turn of the page. Leaves out: what is drawn. World y runs left of world x, page y down.
 */
import type { Camera, Viewport } from './model.ts';

/** Size of a picture, CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Smallest page side that is divided by, pixels: a host not laid out yet must not make infinite places. */
const LEAST_SIDE = 1;

/** A camera that shows the viewport in a page of this size. */
export function makeCamera(viewport: Viewport, { width, height }: Size): Camera {
  const scale = Math.max(LEAST_SIDE, Math.min(width, height)) / viewport.metresAcross;
  const up = viewport.up ?? Math.PI / 2;
  const upX = Math.cos(up);
  const upY = Math.sin(up);
  const { x: centreX, y: centreY } = viewport.centre;
  return {
    scale,
    toPixel: ({ x, y }) => ({
      x: width / 2 + scale * ((x - centreX) * upY - (y - centreY) * upX),
      y: height / 2 - scale * ((x - centreX) * upX + (y - centreY) * upY),
    }),
    toWorld: ({ x, y }) => {
      const right = (x - width / 2) / scale;
      const away = (height / 2 - y) / scale;
      return { x: centreX + right * upY + away * upX, y: centreY - right * upX + away * upY };
    },
  };
}

/** Whether two viewports show the same. */
export const sameView = (one: Viewport, two: Viewport): boolean =>
  one.centre.x === two.centre.x &&
  one.centre.y === two.centre.y &&
  one.metresAcross === two.metresAcross &&
  one.up === two.up;
