/**
 * Where everything lies in the plan of a drill: from the drill's data to places in the drawing.
 * Answers for: scale, places of balls, marks, gates and labels, in units of the drawing (WIDTH across). Leaves out: ink
 * (DrillDrawing.tsx), the enlarged details (DrillDetails.tsx). Uphill is at the top; a mark is putted to up the page.
 */
import type { PuttingDrill, Station } from '../../../sim/index.ts';
import { isLevel } from '../../text/drills.ts';
import { formatLength, type Units } from '../../text/format.ts';

export const WIDTH = 280;
/** Room for labels round the places, and the most the plan may be high without it. */
const SIDE = 70;
const ABOVE = 46;
const TALLEST = 200;
/** A plan of places level with the hole is still given so much height. */
const LOWEST = 130;
/** Room for the word downhill below. */
const FOOT = 22;
/** Ball marks hold a number and must not cover each other or the hole. */
export const BALL = 9;
/** Half the width at which zones that have none of their own are drawn in the plan. */
export const ZONE_HALF = 16;
/** When the farthest ball is so many times as far as the nearest, distances are drawn by their roots. */
const UNEVEN = 2.5;
/** Stations nearer than this in direction lie behind one another: hours. */
const SAME_WAY = 0.3;

export interface PlanLabel {
  readonly x: number;
  /** Baseline of the first line. */
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly lines: readonly string[];
}

export interface PlanPlace {
  readonly x: number;
  readonly y: number;
  /** Numbers in order of play, letters where the order is random; empty: the only one. */
  readonly name: string;
  readonly label: PlanLabel;
}

export interface PlanGate {
  readonly x: number;
  readonly y: number;
  /** Unit vector across the line. */
  readonly acrossX: number;
  readonly acrossY: number;
}

export interface DrillPlan {
  readonly height: number;
  /** Drawing units per metre; undefined where distances are drawn by their roots. */
  readonly scale: number | undefined;
  readonly target: 'hole' | 'mark';
  /** The hole, or the ball that marks are putted to from. */
  readonly centre: { readonly x: number; readonly y: number };
  /** Balls round a hole, or marks. */
  readonly places: readonly PlanPlace[];
  /** Balls that are putted from the centre: to marks. */
  readonly ballLabel: PlanLabel | undefined;
  readonly gates: readonly PlanGate[];
}

interface Placed {
  readonly stations: readonly Station[];
  readonly indices: readonly number[];
  /** From the centre, in units of distance as drawn. */
  readonly x: number;
  readonly y: number;
}

/** Stations at one place belong together: they differ in pace only. */
function placed({ stations, target }: PuttingDrill, drawn: (metres: number) => number): Placed[] {
  const found: { stations: Station[]; indices: number[]; x: number; y: number }[] = [];
  stations.forEach((station, index) => {
    // A mark lies as far up the page from the ball as the ball lies below the mark.
    const angle = ((target === 'mark' ? station.clock + 6 : station.clock) / 12) * 2 * Math.PI;
    const far = drawn(station.distanceM);
    const [x, y] = [far * Math.sin(angle), -far * Math.cos(angle)];
    const same = found.find((one) => Math.hypot(one.x - x, one.y - y) < 1e-6);
    if (same === undefined) found.push({ stations: [station], indices: [index], x, y });
    else {
      same.stations.push(station);
      same.indices.push(index);
    }
  });
  return found;
}

const apart = (one: number, other: number): number => {
  const hours = Math.abs(one - other) % 12;
  return Math.min(hours, 12 - hours);
};

const LINE = 14;

interface Crowd {
  readonly all: readonly Placed[];
  readonly target: 'hole' | 'mark';
  readonly units: Units;
}

const plainLabel = (x: number, y: number, lines: readonly string[]): PlanLabel => ({
  x,
  y: y + 4.5 - ((lines.length - 1) * LINE) / 2,
  anchor: 'start',
  lines,
});

/** Outwards from the centre, or to the side where places lie behind one another. */
function labelOf(one: Placed, { x, y }: { x: number; y: number }, { all, target, units }: Crowd): PlanLabel {
  const distance = formatLength(one.stations[0].distanceM, units);
  if (target === 'mark') return plainLabel(x + ZONE_HALF + 6, y, [distance]);
  const balls = one.stations.reduce((sum, station) => sum + station.balls, 0);
  const lines = [distance, ...(balls > 1 ? [`${balls} balls`] : [])];
  const far = Math.hypot(one.x, one.y);
  const [outX, outY] = [one.x / far, one.y / far];
  const behind = all.some(
    (other) => other !== one && apart(other.stations[0].clock, one.stations[0].clock) < SAME_WAY,
  );
  if (behind || Math.abs(outX) > 0.45 || Math.abs(outX) < 1e-6) {
    const room = BALL + 6 + (one.indices.length > 1 ? 8 : 0);
    const right = plainLabel(x + room, y, lines);
    return outX < -1e-6 ? { ...right, x: x - room, anchor: 'end' } : right;
  }
  const below = y + BALL + LINE;
  return {
    x,
    y: outY < 0 ? y - BALL - 5 - (lines.length - 1) * LINE : below,
    anchor: 'middle',
    lines,
  };
}

/** How many balls are putted from the one place at marks. */
function ballsWords({ stations }: PuttingDrill): string {
  const { balls } = stations[0];
  if (stations.length > 1) return `${balls} balls to each`;
  return balls > 1 ? `${balls} balls` : 'ball';
}

/** A place in the drawing and where it is spoken of: letters for places that are drawn by lot. */
export const nameOf = (index: number, { order, stations }: PuttingDrill): string =>
  stations.length < 2 ? '' : order === 'random' ? String.fromCharCode(65 + index) : String(index + 1);

export function drillPlan(drill: PuttingDrill, units: Units): DrillPlan {
  const { stations, target, gates } = drill;
  const distances = stations.map(({ distanceM }) => distanceM);
  const oneWay = stations.every(({ clock }) => apart(clock, stations[0].clock) < SAME_WAY);
  const uneven = !oneWay && Math.max(...distances) > UNEVEN * Math.min(...distances);
  const all = placed(drill, uneven ? Math.sqrt : (metres) => metres);
  const xs = [0, ...all.map(({ x }) => x)];
  const ys = [0, ...all.map(({ y }) => y)];
  const [west, east] = [Math.min(...xs), Math.max(...xs)];
  const [north, south] = [Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(
    (WIDTH - 2 * SIDE) / Math.max(east - west, 1e-9),
    TALLEST / Math.max(south - north, 1e-9),
  );
  const tall = Math.max(LOWEST, 2 * ABOVE + scale * (south - north));
  const centre = { x: WIDTH / 2 - (scale * (west + east)) / 2, y: (tall - scale * (north + south)) / 2 };
  const places = all.map((one): PlanPlace => {
    const at = { x: centre.x + scale * one.x, y: centre.y + scale * one.y };
    const name = one.indices.map((index) => nameOf(index, drill)).join(' ');
    return { ...at, name, label: labelOf(one, at, { all, target, units }) };
  });
  return {
    height: tall + (isLevel(drill) ? 0 : FOOT),
    scale: uneven ? undefined : scale,
    target,
    centre,
    places,
    ballLabel: target === 'mark' ? plainLabel(centre.x + BALL + 6, centre.y, [ballsWords(drill)]) : undefined,
    gates: places.flatMap((place, i) => {
      // Marks share the ball at the centre: its gates stand on the way to the first.
      if (target === 'mark' && i > 0) return [];
      const [from, to] = target === 'mark' ? [centre, place] : [place, centre];
      const far = Math.hypot(to.x - from.x, to.y - from.y);
      const [alongX, alongY] = [(to.x - from.x) / far, (to.y - from.y) / far];
      return gates.map(({ fromBallM }) => ({
        x: from.x + fromBallM * scale * alongX,
        y: from.y + fromBallM * scale * alongY,
        acrossX: -alongY,
        acrossY: alongX,
      }));
    }),
  };
}
