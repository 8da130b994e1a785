/**
 * Inks and papers of both themes. The paces' colours are from the palette of Okabe & Ito (2008), safe for colour-blind
 * readers; where a colour carries letters it is a darker (lighter) neighbour with enough contrast to be read.
 */
import type { LineStyle, Theme } from './model.ts';

export interface LineInk {
  readonly line: string;
  readonly letters: string;
}

export interface Palette {
  readonly paper: string;
  /** Ground, lowest to highest in view: red, green, blue. */
  readonly low: readonly [number, number, number];
  readonly middle: readonly [number, number, number];
  readonly high: readonly [number, number, number];
  /** How strongly light from the upper left shows the relief, share of full white per unit of slope. */
  readonly relief: number;
  readonly contour: string;
  readonly contourAlpha: number;
  readonly indexContour: string;
  readonly hachure: string;
  readonly hachureAlpha: number;
  readonly ink: string;
  readonly softInk: string;
  readonly ball: string;
  readonly hole: string;
  readonly holeRim: string;
  readonly shadow: string;
  readonly lines: Readonly<Record<LineStyle, LineInk>>;
  /** Isolines of a value and their tint (red, green, blue): the bluish green of the same palette. */
  readonly values: LineInk & { readonly tint: readonly [number, number, number] };
}

const LIGHT: Palette = {
  paper: '#f8f4e9',
  low: [211, 211, 190],
  middle: [229, 222, 201],
  high: [244, 238, 222],
  relief: 1.3,
  contour: '#8d7a58',
  contourAlpha: 0.5,
  indexContour: '#76623f',
  hachure: '#4d5140',
  hachureAlpha: 0.62,
  ink: '#26241f',
  softInk: '#57513f',
  ball: '#ffffff',
  hole: '#26241f',
  holeRim: '#f8f4e9',
  shadow: '#3a3424',
  lines: {
    die: { line: '#0072b2', letters: '#00588a' },
    firm: { line: '#d55e00', letters: '#a34300' },
    yours: { line: '#a8538a', letters: '#85386a' },
    true: { line: '#26241f', letters: '#26241f' },
  },
  values: { line: '#00795a', letters: '#00563f', tint: [0, 120, 90] },
};

const DARK: Palette = {
  paper: '#272520',
  low: [25, 31, 29],
  middle: [35, 36, 31],
  high: [52, 48, 40],
  relief: 0.8,
  contour: '#a8987a',
  contourAlpha: 0.36,
  indexContour: '#b3a27e',
  hachure: '#b9b596',
  hachureAlpha: 0.5,
  ink: '#ece5d3',
  softInk: '#b8af98',
  ball: '#fdfaf1',
  hole: '#0b0b09',
  holeRim: '#d9d1bb',
  shadow: '#000000',
  lines: {
    die: { line: '#56b4e9', letters: '#7cc6f0' },
    firm: { line: '#e69f00', letters: '#f0b23c' },
    yours: { line: '#dc97bb', letters: '#e6aecb' },
    true: { line: '#ece5d3', letters: '#ece5d3' },
  },
  values: { line: '#35c596', letters: '#6fdcb6', tint: [0, 158, 115] },
};

export const paletteOf = (theme: Theme): Palette => (theme === 'dark' ? DARK : LIGHT);
