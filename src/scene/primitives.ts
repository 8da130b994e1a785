/**
 * What a picture is made of: a list of simple shapes in CSS pixels, drawn first to last. Any painter that knows these
 * draws the same map. Leaves out: metres, colours' meaning, painting. Lists of places are flat: x, y, x, y.
 */

/** One polyline or polygon, x, y pairs. */
export type Places = readonly number[];

/** Colours with their alpha blended by the painter; a number between two samples is smoothed. */
export interface Raster {
  readonly kind: 'raster';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** Red, green, blue, alpha, row by row. */
  readonly colours: Uint8ClampedArray<ArrayBuffer>;
}

export interface Lines {
  readonly kind: 'lines';
  readonly lines: readonly Places[];
  readonly width: number;
  readonly colour: string;
  readonly alpha: number;
}

export interface Polygons {
  readonly kind: 'polygons';
  readonly polygons: readonly Places[];
  readonly colour: string;
  readonly alpha: number;
}

export interface Circle {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly alpha: number;
  readonly fill?: string;
  readonly stroke?: { readonly colour: string; readonly width: number };
}

/** The same small mark in many places. */
export interface Marks {
  readonly kind: 'marks';
  readonly shape: 'cross' | 'ring' | 'dot';
  readonly places: Places;
  readonly radius: number;
  /** Of the stroke; a dot has none. */
  readonly width: number;
  readonly colour: string;
  readonly alpha: number;
}

export interface Text {
  readonly kind: 'text';
  readonly text: string;
  /** The middle of the text, vertically always and horizontally unless aligned. */
  readonly x: number;
  readonly y: number;
  readonly face: Face;
  readonly colour: string;
  readonly align: 'left' | 'centre' | 'right';
  /** Turn, radians clockwise on the page. */
  readonly turn: number;
  /** Colour round the letters, so that they stand clear of lines below. */
  readonly halo?: string;
}

export type Primitive = Raster | Lines | Polygons | Circle | Marks | Text;
export type Picture = readonly Primitive[];

/** A type face as css font text. */
export type Face = string;
const DISPLAY =
  '"Palatino Linotype", Palatino, "Book Antiqua", "URW Palladio L", Georgia, "DejaVu Serif", serif';
const PLAIN = 'system-ui, -apple-system, "Segoe UI", "DejaVu Sans", "Liberation Sans", Arial, sans-serif';
export const displayFace = (size: number): Face => `italic ${size}px ${DISPLAY}`;
export const plainFace = (size: number): Face => `${size}px ${PLAIN}`;

/** Width of a text in a face, CSS pixels. */
export type MeasureText = (text: string, face: Face) => number;

/**
 * Cuts a polyline into dashes, so that painters need not know dashes.
 * @param pattern lengths in pixels, drawn and left out in turn; even count
 */
export function dashed(places: Places, pattern: readonly number[]): number[][] {
  const dashes: number[][] = [];
  let part = 0;
  let left = pattern[0];
  let dash: number[] | undefined = places.length >= 4 ? [places[0], places[1]] : undefined;
  for (let at = 0; at + 3 < places.length; at += 2) {
    let x = places[at];
    let y = places[at + 1];
    let length = Math.hypot(places[at + 2] - x, places[at + 3] - y);
    while (length > 0) {
      const step = Math.min(left, length);
      x += ((places[at + 2] - x) * step) / length;
      y += ((places[at + 3] - y) * step) / length;
      length -= step;
      left -= step;
      dash?.push(x, y);
      if (left > 0) continue;
      if (dash) dashes.push(dash);
      part = (part + 1) % pattern.length;
      left = pattern[part];
      dash = part % 2 === 0 ? [x, y] : undefined;
    }
  }
  if (dash && dash.length >= 4) dashes.push(dash);
  return dashes;
}
