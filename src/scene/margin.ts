/**
 * The strip below the map: scale bar and legend, as on the margin of a paper map, so that neither covers ground.
 * Answers for: its height and what is written there. Leaves out: the meaning of numbers beside the map (screens).
 */
import { feetToMetres } from '../../sim/index.ts';
import type { Size } from './camera.ts';
import type { ContourSteps } from './contours.ts';
import type { Units } from './model.ts';
import type { Palette } from './palette.ts';
import { type MeasureText, type Picture, type Primitive, plainFace } from './primitives.ts';
import { type Spot, spotMark } from './spots.ts';

/** Height of the strip, pixels, with the legend beside the scale bar or below it. */
const ONE_ROW = 30;
const TWO_ROWS = 46;
/** Narrower than this the legend goes below. */
const WIDE = 460;
const SIDE = 14;
const FACE = plainFace(11.5);
/** Lengths of the scale bar, and the longest it may be: share of the width, and pixels. */
const METRES = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20];
const FEET = [0.5, 1, 2, 3, 6, 10, 20, 30, 60];
const LONGEST_SHARE = 0.3;
const LONGEST = 150;
/** Marks explained, space from the middle of a mark to its words, and between things, pixels. */
const KEYS: readonly { readonly name: Spot; readonly words: string }[] = [
  { name: 'aim', words: 'aim' },
  { name: 'apex', words: 'apex' },
  { name: 'rest', words: 'stops' },
];
const KEY_WIDTH = 16;
const GAP = 12;

export const marginHeight = (width: number): number => (width >= WIDE ? ONE_ROW : TWO_ROWS);

/** The longest round length that fits. @param scale pixels per metre @param longest pixels */
export function chooseScaleBar(
  scale: number,
  longest: number,
  units: Units,
): { readonly pixels: number; readonly words: string } {
  const sizes = units === 'imperial' ? FEET : METRES;
  const pixels = (size: number) => scale * (units === 'imperial' ? feetToMetres(size) : size);
  const size = sizes.filter((each) => pixels(each) <= longest).pop() ?? sizes[0];
  return { pixels: pixels(size), words: units === 'imperial' ? `${size} ft` : `${size} m` };
}

export const legendWords = (steps: ContourSteps | undefined, level: boolean): string =>
  level
    ? 'level ground'
    : `${steps === undefined || steps.words === '' ? '' : `contours every ${steps.words}; `}strokes run downhill`;

export interface MarginRequest {
  /** Of the whole picture, strip included. */
  readonly size: Size;
  readonly scale: number;
  readonly palette: Palette;
  readonly units: Units;
  readonly steps: ContourSteps | undefined;
  readonly level: boolean;
  /** Explain the marks of lines: apex, aim and resting place. */
  readonly explainMarks: boolean;
  readonly measure: MeasureText;
}

export function drawMargin(request: MarginRequest): Picture {
  const { size, scale, palette, units, steps, level, explainMarks, measure } = request;
  const { width, height } = size;
  const strip = marginHeight(width);
  const top = height - strip;
  const two = strip === TWO_ROWS;
  const middle = top + (two ? 15 : strip / 2);
  const bar = chooseScaleBar(scale, Math.min(LONGEST, LONGEST_SHARE * width), units);
  const half = SIDE + bar.pixels / 2;
  const box = (left: number, right: number, above: number, below: number) => [
    left,
    above,
    right,
    above,
    right,
    below,
    left,
    below,
  ];
  const picture: Primitive[] = [
    { kind: 'polygons', polygons: [box(0, width, top, height)], colour: palette.paper, alpha: 1 },
    { kind: 'lines', lines: [[0, top, width, top]], width: 1.2, colour: palette.indexContour, alpha: 0.9 },
    {
      kind: 'polygons',
      polygons: [box(SIDE, half, middle - 2.5, middle + 2.5)],
      colour: palette.softInk,
      alpha: 1,
    },
    {
      kind: 'lines',
      lines: [[...box(SIDE, SIDE + bar.pixels, middle - 2.5, middle + 2.5), SIDE, middle - 2.5]],
      width: 1,
      colour: palette.softInk,
      alpha: 1,
    },
  ];
  const write = (text: string, x: number, y: number, align: 'left' | 'right') =>
    picture.push({ kind: 'text', text, x, y, face: FACE, colour: palette.softInk, align, turn: 0 });
  write(bar.words, SIDE + bar.pixels + 8, middle, 'left');
  const words = legendWords(steps, level);
  const legendLeft = two ? SIDE : width - SIDE - measure(words, FACE);
  write(words, legendLeft, two ? top + 33 : middle, 'left');
  // Neatline: the map's own frame, whatever the page puts round it.
  picture.push({
    kind: 'lines',
    lines: [[...box(0.5, width - 0.5, 0.5, height - 0.5), 0.5, 0.5]],
    width: 1,
    colour: palette.indexContour,
    alpha: 0.9,
  });
  if (!explainMarks) return picture;
  const from = SIDE + bar.pixels + 8 + measure(bar.words, FACE) + GAP;
  const room = (two ? width - SIDE : legendLeft - GAP) - from;
  const keys = KEYS.map(({ name, words: meaning }) => ({
    name,
    meaning,
    width: KEY_WIDTH + measure(meaning, FACE),
  }));
  const needed = keys.reduce((sum, key) => sum + key.width, 0) + GAP * (keys.length - 1);
  // Marks without words can still be read in the text beside the map; half a key helps nobody.
  if (needed > room) return picture;
  let x = from + (two ? room - needed : (room - needed) / 2);
  for (const { name, meaning, width: keyWidth } of keys) {
    picture.push(...spotMark(name, { x: x + 6, y: middle }, palette.softInk, palette.paper));
    write(meaning, x + KEY_WIDTH, middle, 'left');
    x += keyWidth + GAP;
  }
  return picture;
}
