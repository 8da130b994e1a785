/**
 * What becomes of every stroke at one putt and one pace meant, on the grid of errors of error-shares.ts, whoever plays it. Answers
 * for: which part of a cell drops, and where the rest of it comes to lie: beside, along and how far from the hole. Leaves out:
 * how likely a stroke is (error-shares.ts), what a player would write of it (words.ts).
 *
 * The engine's own odds, in another order of summing: odds/outcomes.ts takes one player and sums over his errors; here the
 * errors are laid out first and players follow by the thousand. What drops is odds/drop-region.ts, how a ball leaves the
 * rim odds/lip-outs.ts, rests are those of odds/rests.ts, exact on a plane. Holed shares are within 0.6 points of odds/compare.ts (tests).
 */
import { HOLE_RADIUS } from '../../constants.ts';
import { type DropRegion, dropRegions } from '../../odds/drop-region.ts';
import { type Meetings, meetingsOf, missRests } from '../../odds/lip-outs.ts';
import type { RestPoint } from '../../odds/rests.ts';
import type { LineWalk } from '../../read/line.ts';
import { lengthOf, startOf } from '../../roll/roll.ts';
import { PACE_EDGES, PACES, paceMiddle, START_EDGES, STARTS, USUAL_PACE } from './error-shares.ts';
import { normalBelow } from './normal-below.ts';

/** Cells of which a part drops. */
export interface HoledCells {
  readonly count: number;
  /** Which cell: start x PACES + pace. */
  readonly cell: Uint16Array;
  /** 0 to 1. */
  readonly part: Float32Array;
}

/** Parts of cells that miss; several may lie in one cell. */
export interface MissedCells extends HoledCells {
  /** m, positive high: where it passed the hole, or where it lies beside the straight line to the hole when it stayed short. */
  readonly beside: Float32Array;
  /** m past the hole along that line, negative short; a lip-out got there. */
  readonly along: Float32Array;
  /** m to the hole. */
  readonly leave: Float32Array;
}

export interface Strokes {
  /** True start angle, 0 or more: the high side is where it points. Radians. */
  readonly aim: number;
  readonly holed: HoledCells;
  readonly missed: MissedCells;
}

/** Starts farther off than this and this share of the aim are left out: errors that nobody has whom a fit is for. Radians. */
const FARTHEST = 0.16;
const FARTHEST_SHARE = 1.2;
/** A cell is cut across starts so that no part is wider at the hole than this: hole radii near it, m elsewhere. */
const NEAR_PART = 0.5;
const FAR_PART = 0.16;
const MOST_PARTS = 4;
/** Near the hole, where the region closes, in no fewer than this; so far from it, hole radii. */
const FEWEST_NEAR = 3;
const NEAR = 2;
/** And along energies, m of distance. */
const LONG_PART = 0.08;
/** As "along" of a ball that touched the hole, m: plainly not short. */
const LIPPED = 1;

const POINTS = 3 * MOST_PARTS ** 2 * STARTS * PACES;
// Filled by one call of `strokesOf` at a time, then copied: nothing outlives it.
const cells = new Uint16Array(POINTS);
const parts = new Float32Array(POINTS);
const besides = new Float32Array(POINTS);
const alongs = new Float32Array(POINTS);
const leaves = new Float32Array(POINTS);
const holedParts = new Float64Array(STARTS * PACES);
/** At one start: energies that drop, softest first, in pairs, region by region; the same as errors of pace; and what is left. */
const found = new Float64Array(4);
const drop = new Float64Array(8);
const gaps = new Float64Array(16);
const rest: RestPoint = { x: 0, y: 0, lipped: false };

/** All of one putt that does not depend on the pace meant. */
export interface Holing {
  readonly walk: LineWalk;
  readonly regions: readonly DropRegion[];
  readonly meetings: Meetings | undefined;
}

/** @returns undefined where nothing rests */
export function holingOf(walk: LineWalk): Holing | undefined {
  return walk.reason === undefined
    ? { walk, regions: dropRegions(walk), meetings: meetingsOf(walk) }
    : undefined;
}

/** Of pace errors of the usual spread, the share between two: how those within a cell lie. */
const usualShare = (low: number, high: number): number =>
  normalBelow(high / USUAL_PACE) - normalBelow(low / USUAL_PACE);

/** @param pace meant, m past @returns undefined when this pace has no line */
export function strokesOf({ walk, regions, meetings }: Holing, pace: number): Strokes | undefined {
  const line = walk.lineAt(pace);
  if (line === undefined) return undefined;
  const { putt } = walk;
  const length = lengthOf(putt);
  const start = startOf(putt, line.heading);
  const energy = line.speed ** 2;
  const high = start < 0 ? -1 : 1;
  const aim = Math.abs(start);
  const towardX = (putt.hole.x - putt.ball.x) / length;
  const towardY = (putt.hole.y - putt.ball.y) / length;
  const rests = missRests(walk, NOWHERE, meetings);
  const centres = centresOf(walk, energy);
  const gathers = gathersOf(meetings, length, energy);
  const farthest = FARTHEST + FARTHEST_SHARE * aim;
  const unit = HOLE_RADIUS / length;
  holedParts.fill(0);
  let count = 0;
  for (let i = 0; i < STARTS; i++) {
    if (START_EDGES[i + 1] < -farthest || START_EDGES[i] > farthest) continue;
    const width = START_EDGES[i + 1] - START_EDGES[i];
    const near = Math.max(START_EDGES[i], -START_EDGES[i + 1]) < NEAR * unit;
    const finest = near ? NEAR_PART * unit : FAR_PART / length;
    const across = Math.max(near ? FEWEST_NEAR : 1, Math.min(MOST_PARTS, Math.ceil(width / finest)));
    for (let k = 0; k < across; k++) {
      const angle = high * (aim + START_EDGES[i] + (width * (k + 0.5)) / across);
      rests.aim(angle);
      const intervals = dropsAt(regions, angle, energy);
      for (let j = 0; j < PACES; j++) {
        const cell = i * PACES + j;
        const low = PACE_EDGES[j];
        const wide = PACE_EDGES[j + 1] - low;
        const lengthwise = Math.min(MOST_PARTS, Math.ceil((wide * length) / LONG_PART));
        const ofCell = 1 / (across * usualShare(low, low + wide));
        for (let l = 0; l < lengthwise; l++) {
          const from = low + (wide * l) / lengthwise;
          const to = low + (wide * (l + 1)) / lengthwise;
          const pieces = missesIn(from, to, intervals);
          let missing = 0;
          for (let piece = 0; piece < pieces; piece++) {
            const part = ofCell * usualShare(gaps[2 * piece], gaps[2 * piece + 1]);
            missing += part;
            // In the middle of what misses: at an energy that drops a ball would be told to leave the hole at a crawl.
            rest.lipped = false;
            rests.at(energy * (1 + (gaps[2 * piece] + gaps[2 * piece + 1]) / 2), rest);
            const along = rest.x * towardX + rest.y * towardY;
            cells[count] = cell;
            parts[count] = part;
            alongs[count] = rest.lipped ? LIPPED : along;
            besides[count] =
              along < 0 && !rest.lipped
                ? high * (rest.y * towardX - rest.x * towardY)
                : gathers[j] * (high * (angle - centres[j]));
            leaves[count++] = Math.sqrt(rest.x * rest.x + rest.y * rest.y);
          }
          holedParts[cell] += ofCell * usualShare(from, to) - missing;
        }
      }
    }
  }
  return {
    aim,
    holed: sparse(holedParts),
    missed: {
      count,
      cell: cells.slice(0, count),
      part: parts.slice(0, count),
      beside: besides.slice(0, count),
      along: alongs.slice(0, count),
      leave: leaves.slice(0, count),
    },
  };
}

/** Ranges matter to rests on other ground than planes only. */
const NOWHERE = { starts: [0, 0], energies: [0, 0] } as const;

function sparse(dense: Float64Array): HoledCells {
  const cell: number[] = [];
  for (let i = 0; i < dense.length; i++) if (dense[i] > 1e-6) cell.push(i);
  return {
    count: cell.length,
    cell: Uint16Array.from(cell),
    part: Float32Array.from(cell, (i) => dense[i]),
  };
}

/** Start (radians from ball->hole) that crosses the hole's middle, for the middle of each cell of pace error. */
function centresOf(walk: LineWalk, meant: number): Float64Array {
  // Firm first; followed in 1/v^2, the measure of break, from 0 for an endless speed straight at the hole.
  const softness = [0];
  const starts = [0];
  for (const { heading, speed } of walk.curve()) {
    softness.push(1 / speed ** 2);
    starts.push(startOf(walk.putt, heading));
  }
  const last = softness.length - 1;
  return Float64Array.from({ length: PACES }, (_, j) => {
    const at = 1 / (meant * (1 + paceMiddle(j)));
    let i = 1;
    while (i < last && softness[i] < at) i++;
    const share = Math.min(1, (at - softness[i - 1]) / (softness[i] - softness[i - 1]));
    return starts[i - 1] + share * (starts[i] - starts[i - 1]);
  });
}

/** How far beside the hole a radian off the line passes, m, for each cell of pace error: ground gathers paths, or spreads them. */
function gathersOf(meetings: Meetings | undefined, length: number, meant: number): Float64Array {
  const gathers = new Float64Array(PACES).fill(length);
  if (meetings === undefined) return gathers;
  const { rows, energy, aside, offset } = meetings;
  let row = rows - 1;
  for (let j = 0; j < PACES; j++) {
    while (row > 0 && energy[row] < meant * (1 + paceMiddle(j))) row--;
    gathers[j] = Math.abs(offset[0][row] - offset[1][row]) / (2 * aside[row]);
  }
  return gathers;
}

/** Errors of pace that drop at this start (radians from ball->hole), as pairs into `drop`; returns how many pairs. */
function dropsAt(regions: readonly DropRegion[], angle: number, energy: number): number {
  let count = 0;
  for (const region of regions) {
    const intervals = region.intervalsAt(angle, found);
    for (let k = 0; k < 2 * intervals; k++) drop[2 * count + k] = found[k] / energy - 1;
    count += intervals;
  }
  return count;
}

/** What is left of a stretch of pace errors without the first intervals of `drop`, as pairs into `gaps`; returns how many. */
function missesIn(low: number, high: number, intervals: number): number {
  gaps[0] = low;
  gaps[1] = high;
  let count = 1;
  for (let k = 0; k < intervals && count > 0; k++) {
    const soft = drop[2 * k];
    const firm = drop[2 * k + 1];
    // Intervals are wider than stretches, or nearly so: from the last gap on, in place.
    const from = gaps[2 * count - 2];
    const to = gaps[2 * count - 1];
    if (firm <= from || soft >= to) continue;
    count--;
    if (soft > from) {
      gaps[2 * count] = from;
      gaps[2 * count++ + 1] = soft;
    }
    if (firm < to) {
      gaps[2 * count] = firm;
      gaps[2 * count++ + 1] = to;
    }
  }
  return count;
}
