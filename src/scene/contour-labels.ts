/**
 * Heights written into the thicker contours, the line broken for them as on a paper map.
 * Answers for: where they go, upright along the line, apart from each other and from the edge. Leaves out: ink.
 */
import type { Size } from './camera.ts';
import type { Contour } from './contours.ts';
import { lengthsAlong, partOf, placeAlong } from './polyline.ts';

export interface HeightLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Radians clockwise on the page. */
  readonly turn: number;
  readonly width: number;
}

/** Distances in pixels: between labels, from the edge, between places tried, clear space at each end of a label. */
const APART = 120;
const APART_ON_LINE = 300;
const FROM_EDGE = 26;
const TRY_EVERY = 14;
const CLEAR = 5;
/** A line bends too much for a label where its length exceeds the straight distance by this share. */
const MOST_BEND = 1.04;
/** One label for this much length of line, pixels. */
const ONE_FOR = 640;
/** Where on a line a label is tried first, share of its length: the putt crosses the middle of the page. */
const FIRST_TRY = 0.24;

interface LabelRequest {
  readonly contours: readonly Contour[];
  readonly size: Size;
  readonly format: (level: number) => string;
  readonly widthOf: (text: string) => number;
}

/** Labels for the thicker contours, and those contours with gaps for them. */
export function labelContours({ contours, size, format, widthOf }: LabelRequest): {
  labels: HeightLabel[];
  lines: number[][];
} {
  const labels: HeightLabel[] = [];
  const lines: number[][] = [];
  for (const { places, level } of contours) {
    const lengths = lengthsAlong(places);
    const total = lengths[lengths.length - 1];
    const text = format(level);
    const width = widthOf(text);
    const half = width / 2 + CLEAR;
    const gaps: number[] = [];
    const room = total - 4 * half;
    for (let tried = 0; tried * TRY_EVERY < room; tried++) {
      if (gaps.length > total / ONE_FOR) break;
      const along = 2 * half + ((FIRST_TRY * total + tried * TRY_EVERY) % room);
      if (gaps.some((gap) => Math.abs(gap - along) < APART_ON_LINE)) continue;
      const label = labelAt(places, lengths, along, half);
      if (!label || !fits(label, size, labels)) continue;
      labels.push({ ...label, text, width });
      gaps.push(along);
    }
    gaps.sort((one, two) => one - two);
    let from = 0;
    for (const gap of gaps) {
      lines.push(partOf(places, lengths, from, gap - half));
      from = gap + half;
    }
    lines.push(from === 0 ? places : partOf(places, lengths, from, total));
  }
  return { labels, lines };
}

function labelAt(
  places: readonly number[],
  lengths: Float64Array,
  along: number,
  half: number,
): { x: number; y: number; turn: number } | undefined {
  const [startX, startY] = placeAlong(places, lengths, along - half);
  const [endX, endY] = placeAlong(places, lengths, along + half);
  const straight = Math.hypot(endX - startX, endY - startY);
  if (2 * half > straight * MOST_BEND) return undefined;
  let turn = Math.atan2(endY - startY, endX - startX);
  // Never upside down.
  if (turn > Math.PI / 2) turn -= Math.PI;
  if (turn <= -Math.PI / 2) turn += Math.PI;
  const [x, y] = placeAlong(places, lengths, along);
  return { x: (x + (startX + endX) / 2) / 2, y: (y + (startY + endY) / 2) / 2, turn };
}

const fits = (
  { x, y }: { x: number; y: number },
  { width, height }: Size,
  labels: readonly HeightLabel[],
): boolean =>
  x > FROM_EDGE &&
  y > FROM_EDGE &&
  x < width - FROM_EDGE &&
  y < height - FROM_EDGE &&
  labels.every((other) => Math.hypot(other.x - x, other.y - y) >= APART);
