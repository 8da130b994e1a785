/**
 * Places labels beside their spots, clear of each other and, as far as there is room, of lines and marks.
 * Answers for: a choice by cost among places round each spot, in the order given. Leaves out: drawing.
 * Tried and dropped: moving labels step by step until nothing overlaps; it never settles while one drags.
 */
import type { Places } from './primitives.ts';

export interface LabelRequest {
  readonly text: string;
  readonly width: number;
  readonly height: number;
  /** What it names, pixels. */
  readonly x: number;
  readonly y: number;
}

export interface PlacedLabel extends LabelRequest {
  /** Middle of the label. */
  readonly labelX: number;
  readonly labelY: number;
  /** Whether it is so far off that a fine line must join it to its spot. */
  readonly apart: boolean;
  /** Which of the places tried it is; hand it back next time and the label stays put while it can. */
  readonly choice: number;
}

export interface LabelSurroundings {
  /** Places to keep clear of, such as the corners of lines, x, y pairs. */
  readonly obstacles: Places;
  /** Places better kept clear of, such as marks of a cloud. */
  readonly marks: Places;
  readonly width: number;
  readonly height: number;
}

const DIRECTIONS = 16;
/** Gap between spot and label, pixels. */
const GAPS = [12, 22, 36, 54, 76];
/** Beyond this gap a fine line joins label and spot. */
const JOINED_FROM = 22;
/** Space kept round a label, pixels. */
const PADDING = 3;
/** Costs, relative to one another: on another label or off the page beats anything, then lines, distance, marks. */
const COST_OVERLAP = 1e4;
const COST_OFF_PAGE = 1e5;
const COST_OBSTACLE = 12;
const COST_MARK = 5;
const COST_PER_PIXEL = 0.25;
const COST_OF_MOVING = 14;

export function placeLabels(
  requests: readonly LabelRequest[],
  surroundings: LabelSurroundings,
  previous: readonly number[] = [],
): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  requests.forEach((request, index) => {
    let best: PlacedLabel | undefined;
    let bestCost = Number.POSITIVE_INFINITY;
    for (let choice = 0; choice < GAPS.length * DIRECTIONS; choice++) {
      const candidate = candidateOf(request, choice);
      const moved = previous[index] !== undefined && previous[index] !== choice;
      const cost = costOf(candidate, surroundings, placed) + (moved ? COST_OF_MOVING : 0);
      if (cost < bestCost) {
        best = candidate;
        bestCost = cost;
      }
    }
    if (best) placed.push(best);
  });
  return placed;
}

function candidateOf(request: LabelRequest, choice: number): PlacedLabel {
  const gap = GAPS[Math.floor(choice / DIRECTIONS)];
  const angle = ((choice % DIRECTIONS) / DIRECTIONS) * 2 * Math.PI;
  const x = Math.cos(angle);
  const y = Math.sin(angle);
  return {
    ...request,
    labelX: request.x + x * (gap + request.width / 2),
    labelY: request.y + y * (gap + request.height / 2),
    apart: gap > JOINED_FROM,
    choice,
  };
}

function costOf(label: PlacedLabel, around: LabelSurroundings, placed: readonly PlacedLabel[]): number {
  const halfWidth = label.width / 2 + PADDING;
  const halfHeight = label.height / 2 + PADDING;
  const { labelX, labelY } = label;
  const off =
    Math.max(0, halfWidth - labelX) +
    Math.max(0, labelX + halfWidth - around.width) +
    Math.max(0, halfHeight - labelY) +
    Math.max(0, labelY + halfHeight - around.height);
  let cost =
    Math.hypot(labelX - label.x, labelY - label.y) * COST_PER_PIXEL + (off > 0 ? COST_OFF_PAGE + off : 0);
  for (const other of placed)
    if (
      Math.abs(other.labelX - labelX) < halfWidth + other.width / 2 &&
      Math.abs(other.labelY - labelY) < halfHeight + other.height / 2
    )
      cost += COST_OVERLAP;
  const countInside = (places: Places): number => {
    let count = 0;
    for (let at = 0; at + 1 < places.length; at += 2)
      if (Math.abs(places[at] - labelX) < halfWidth && Math.abs(places[at + 1] - labelY) < halfHeight)
        count++;
    return count;
  };
  return cost + COST_OBSTACLE * countInside(around.obstacles) + COST_MARK * countInside(around.marks);
}
