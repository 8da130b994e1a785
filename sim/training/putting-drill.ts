/**
 * What a putting drill is: where balls are put down, what each stroke scores and how strokes add up. The data live in
 * drills/putting and pass a strict schema there.
 * Answers for: the shapes, how many strokes a drill takes and in what order. Leaves out: what score to expect
 * (drill-score.ts), the ground it is done on (drill-ground.ts), words with units (src/text).
 */
import type { Gate } from '../odds/gate.ts';
import type { Zone } from '../odds/rest-shares.ts';
import { seededRandom } from '../random.ts';
import type { Range } from './drill.ts';

/** The error a drill trains; mixed: all three. */
export const TRAINED = ['line', 'pace', 'read', 'mixed'] as const;
export type Trained = (typeof TRAINED)[number];
export const DRILL_GROUNDS = ['grass', 'carpet', 'both'] as const;

/** Balls put down at one place. */
export interface Station {
  /** Ball to hole or mark, m. */
  readonly distanceM: number;
  /** Direction from the hole, hours: 12 straight uphill of it, 6 below. */
  readonly clock: number;
  readonly balls: number;
  /** Slope wanted there, rise over run; [0, ...] may be level. */
  readonly slope: Range;
  /** Pace meant, m past; left out: the drill's. */
  readonly paceM?: number;
}

/**
 * What one stroke scores.
 * holed: 1 for a ball in the hole. gate: 1 for a ball through every gate. zones: the points of the innermost zone it stops in.
 * holingOut: points by the number of putts until the ball is in: for one, two, three, four or more.
 */
export type StrokeScore =
  | { readonly kind: 'holed' }
  | { readonly kind: 'gate' }
  | {
      readonly kind: 'zones';
      /** Points of a ball in the hole. */
      readonly holed: number;
      /** From the inside out, each within the next. */
      readonly zones: readonly (Zone & { readonly points: number })[];
    }
  | {
      readonly kind: 'holingOut';
      readonly points: readonly [one: number, two: number, three: number, more: number];
    };

/**
 * How strokes add up; a stroke succeeds when it scores at least 1.
 * sum: all points. best: the best total of so many rounds of the stations. run: the longest run of successes within so many
 * strokes, ended by a run of `length`. ladder: the stations are rungs; a success goes one up, a failure `back` down; the
 * score is how many rungs have been climbed after so many strokes, and past the last rung it ends.
 */
export type Tally =
  | { readonly kind: 'sum' }
  | { readonly kind: 'best'; readonly sets: number }
  | { readonly kind: 'run'; readonly length: number; readonly strokes: number }
  | { readonly kind: 'ladder'; readonly back: number; readonly strokes: number };

export interface PuttingDrill {
  /** Stable: kept in records for ever. */
  readonly id: string;
  /** Goes up whenever the set-up or the scoring changes: scores of two versions are not compared. */
  readonly version: number;
  readonly name: string;
  readonly purpose: string;
  readonly trains: Trained;
  readonly ground: (typeof DRILL_GROUNDS)[number];
  readonly needs: readonly string[];
  /** hole: balls may drop. mark: a tee or a coin, which stops nothing. */
  readonly target: 'hole' | 'mark';
  /** known: the line is marked or plain to see. fresh: read anew for every ball. perStation: read once, all its balls on that line. */
  readonly reading: 'known' | 'fresh' | 'perStation';
  /** Pace meant, m past the covered hole or the mark. */
  readonly paceM: number;
  readonly stations: readonly Station[];
  /** On the meant line, the same from every station. */
  readonly gates: readonly Gate[];
  /** byStation: all balls of one, then the next. inTurn: one ball of each, round and round. random: shuffled by a seed. */
  readonly order: 'byStation' | 'inTurn' | 'random';
  readonly scoring: {
    readonly stroke: StrokeScore;
    readonly tally: Tally;
    readonly better: 'higher' | 'lower';
  };
  readonly minutes: number;
  readonly source: string;
  /** What to do, in order; numbers as placeholders in braces, so that the app shows them in the person's units. */
  readonly steps: readonly string[];
}

/** Balls of one round of the stations. */
export const ballsOf = ({ stations }: Pick<PuttingDrill, 'stations'>): number =>
  stations.reduce((sum, { balls }) => sum + balls, 0);

/** Most strokes from the stations; putts at what is left come on top where the ball is holed out. */
export function strokesOf(drill: PuttingDrill): number {
  const { tally } = drill.scoring;
  if (tally.kind === 'run' || tally.kind === 'ladder') return tally.strokes;
  return ballsOf(drill) * (tally.kind === 'best' ? tally.sets : 1);
}

/** Points one stroke can score. */
function pointsRange({ scoring: { stroke } }: PuttingDrill): ScoreRange {
  if (stroke.kind === 'zones')
    return { least: 0, most: Math.max(stroke.holed, ...stroke.zones.map(({ points }) => points)) };
  if (stroke.kind === 'holingOut')
    return { least: Math.min(...stroke.points), most: Math.max(...stroke.points) };
  return { least: 0, most: 1 };
}

export interface ScoreRange {
  readonly least: number;
  readonly most: number;
}

/** The scores a drill can give: whole numbers from least to most. */
export function scoreRange(drill: PuttingDrill): ScoreRange {
  const { tally } = drill.scoring;
  if (tally.kind === 'run') return { least: 0, most: tally.length };
  if (tally.kind === 'ladder') return { least: 0, most: drill.stations.length };
  const { least, most } = pointsRange(drill);
  return { least: ballsOf(drill) * least, most: ballsOf(drill) * most };
}

/**
 * Indices of the stations, stroke by stroke, for one round of the stations.
 * @param seed of the shuffle where the order is random
 */
export function strokeOrder({ stations, order }: PuttingDrill, seed: number | string): number[] {
  if (order === 'inTurn') {
    const most = Math.max(...stations.map(({ balls }) => balls));
    return Array.from({ length: most }, (_, turn) =>
      stations.flatMap(({ balls }, station) => (turn < balls ? [station] : [])),
    ).flat();
  }
  const inOrder = stations.flatMap(({ balls }, station) => Array<number>(balls).fill(station));
  if (order === 'byStation') return inOrder;
  const random = seededRandom(seed);
  return inOrder
    .map((station) => ({ station, draw: random() }))
    .sort((one, other) => one.draw - other.draw)
    .map(({ station }) => station);
}
