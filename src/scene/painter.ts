/**
 * What every painter can do. A map has five layers, drawn in this order: ground, values, putt, roller, margin. Ground,
 * values and margin are still: drawn once by the two-dimensional canvas into an image, which either painter then only copies.
 */
import type { Size } from './camera.ts';
import type { PainterKind } from './model.ts';
import type { Picture } from './primitives.ts';

export const LAYERS = ['ground', 'values', 'putt', 'roller', 'margin'] as const;
export type LayerName = (typeof LAYERS)[number];
export const isStill = (layer: LayerName): boolean =>
  layer === 'ground' || layer === 'values' || layer === 'margin';

export interface Painter {
  readonly kind: PainterKind;
  readonly element: HTMLCanvasElement;
  /** CSS pixels, and device pixels for each. All layers must be set again afterwards. */
  resize(size: Size, ratio: number): void;
  setLayer(layer: LayerName, picture: Picture): void;
  /** Shows the layers as set. */
  render(): void;
  destroy(): void;
}
