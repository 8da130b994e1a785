/**
 * The putts by which costs are told: lengths, slopes and directions on planes, each worked out once and then played by any player.
 *
 * Answers for: which putts stand for a round's, their weights, what a player makes of each. Leaves out: which players
 * (cost-table.ts), how lengths make a round (round-costs.ts).
 * The mix of ground is that of the presets (benchmarks/mix.ts): slopes spread evenly from 0.5 to 3%, every direction alike, the
 * green speed in the middle. Slopes of 1, 2 and 3% stand for it with weights that have its mean and its mean square (derived), so
 * that the same putts answer "on 2%" as well.
 */
import { BENCHMARK_CAPTURE, ballAt, greenOf } from '../benchmarks/putts.ts';
import { DIE_PACE, FIRM_PACE } from '../constants.ts';
import { minimize } from '../maths/minimum.ts';
import { type HeldPolicy, holdPolicy, isFarFrom, pacesAbout, tableUnder } from '../odds/held-policy.ts';
import { Place } from '../odds/place.ts';
import { holingOutAt, type NextPutts, nextPuttAt } from '../odds/polar-table.ts';
import type { Direction } from '../player/published.ts';
import type { CaptureName, Player } from '../types.ts';
import { feetToMetres } from '../units.ts';

/** Lengths worked out, m. Between them putts are interpolated (round-costs.ts). */
export const LENGTHS: readonly number[] = [1.5, 3, 4, 5, 8, 12, 20, 30, 42, 60].map(feetToMetres);
/** Lengths of "hit them firmer", m: some of the above. */
export const FIRMER_LENGTHS: readonly number[] = [5, 8, 12, 20, 30].map(feetToMetres);
export const FIRMER_SLOPES = [0.01, 0.02, 0.03] as const;
/** Even from 0.5 to 3% has the mean 1.75% and the mean square 3.583; three weights with both. */
export const SLOPE_WEIGHTS = [5 / 12, 5 / 12, 1 / 6];

/** Up: from 4 to 8 o'clock below the hole; down: from 10 to 2; side: the rest. Two bearings stand for each, degrees. */
export const DIRECTIONS: readonly Direction[] = ['uphill', 'sidehill', 'downhill'];
const BEARINGS = [15, 45, 75, 105, 135, 165];

/** Paces from which the lines of a putt are sought, and between which the best pace is, m past. */
const LOW = 0.02;
const HIGH = 1.5;
const LINES = [0.02, 0.1, 0.2, 0.4318, 0.762, 1.5];
/** Ratio of paces one step of the search apart. */
const STEP = 1.6;

interface FirstPutt {
  /** Into LENGTHS. */
  readonly at: number;
  /** Into DIRECTIONS. */
  readonly direction: number;
  readonly place: Place;
  /** The pace that needs fewest for the player the ground was made for, m past. */
  readonly best: number;
}

interface Green {
  readonly weight: number;
  readonly held: HeldPolicy;
  /** Tables of next putts made so far, by who misses: most of the work of playing. */
  readonly tables: Map<string, NextPutts>;
  readonly putts: readonly FirstPutt[];
}

export interface Ground {
  /** The player whose best choices are kept by all. */
  readonly player: Player;
  /** Pace of every first putt, m past. */
  readonly usual: number;
  readonly greens: readonly Green[];
}

export interface GroundOptions {
  readonly player: Player;
  readonly usual: number;
  /** Stimpmeter reading, m. */
  readonly greenSpeed: number;
  readonly capture?: CaptureName;
  readonly onProgress?: (share: number) => void;
}

/** How much of the work is the table of next putts. */
const TABLE_PART = 0.7;

export function prepareGround(options: GroundOptions): Ground {
  const { player, usual, greenSpeed, capture = BENCHMARK_CAPTURE, onProgress } = options;
  const greens = FIRMER_SLOPES.map((slope, i): Green => {
    const tell = (share: number): void => onProgress?.((i + share) / FIRMER_SLOPES.length);
    const green = greenOf(slope, greenSpeed, capture);
    const held = holdPolicy(green, player, { onProgress: (share) => tell(TABLE_PART * share) });
    const table = tableUnder(held, player);
    const putts = LENGTHS.flatMap((length, at) => {
      tell(TABLE_PART + (1 - TABLE_PART) * (at / LENGTHS.length));
      return BEARINGS.flatMap((degrees, bearing): FirstPutt[] => {
        const putt = ballAt(green, length, (degrees * Math.PI) / 180);
        const place = Place.from(putt, player, { paces: LINES, first: false });
        // Whoever cannot play it at all three paces cannot compare them.
        if (
          place === undefined ||
          [DIE_PACE, usual, FIRM_PACE].some((pace) => place.lineAt(pace) === undefined)
        )
          return [];
        const { x, y } = putt.ball;
        const best = bestPaceFrom(place, table, holingOutAt(table, x, y).pace);
        return [{ at, direction: Math.floor(bearing / 2), place, best }];
      });
    });
    return { weight: SLOPE_WEIGHTS[i], held, tables: new Map(), putts };
  });
  onProgress?.(1);
  return { player, usual, greens };
}

function bestPaceFrom(place: Place, table: NextPutts, guess: number): number {
  const low = Math.max(LOW, place.low);
  const high = Math.min(HIGH, place.high);
  const logOf = (pace: number): number => Math.log(pace) / Math.log(STEP);
  const found = minimize((steps) => playFirst(place, STEP ** steps, table)?.[EXPECTED] ?? Infinity, {
    start: logOf(Math.max(low, Math.min(high, guess))),
    step: 1,
    low: logOf(low),
    high: logOf(high),
    walks: 4,
    parabolas: 2,
  });
  return found === undefined ? guess : STEP ** found;
}

/** The pace at which who rolls so much too far on average (share) gets as far as another did, m past; at least LOW. */
const sameReach = (pace: number, length: number, before: number, after: number): number =>
  Math.max(LOW, ((length + pace) * (1 + before)) / (1 + after) - length);

/** The pace of these that needs fewest putts, within those that have a line. */
function bestOf(place: Place, paces: readonly number[], table: NextPutts, player: Player): number {
  const within = paces.map((pace) => Math.max(place.low, Math.min(place.high, pace)));
  if (within.length === 1) return within[0];
  const putts = within.map(
    (pace) => playFirst(place, pace, table, player)?.[EXPECTED] ?? Number.POSITIVE_INFINITY,
  );
  return within[putts.indexOf(Math.min(...putts))];
}

/** What is told of a putt: three numbers one after the other. */
export const FIGURES = 3;
export const MISSED = 0;
export const THREE_PUTT = 1;
export const EXPECTED = 2;

const next = new Float64Array(2);
const sums = new Float64Array(FIGURES);

/** One first putt: shares missed and three-putted, putts needed; undefined when the pace has no line. Reused: read at once. */
function playFirst(place: Place, pace: number, table: NextPutts, player?: Player): Float64Array | undefined {
  sums.fill(0);
  const total = place.play(
    pace,
    (share, x, y) => {
      nextPuttAt(table, x, y, next);
      sums[MISSED] += share;
      sums[THREE_PUTT] += share * next[0];
      sums[EXPECTED] += share * next[1];
    },
    player,
  );
  if (total === undefined) return undefined;
  for (let i = 0; i < FIGURES; i++) sums[i] /= total;
  sums[EXPECTED] += 1;
  return sums;
}

/** The paces of "hit them firmer", in this order. */
export const FIRMER_PACES = ['die', 'usual', 'firm'] as const;
export type FirmerPace = (typeof FIRMER_PACES)[number];

/** What one player makes of the ground: one row of numbers, so that a surrogate can take it whole. */
export const usualAt = (length: number): number => FIGURES * length;
export const bestAt = (length: number): number => FIGURES * (LENGTHS.length + length);
/** @param length into FIRMER_LENGTHS @param slope into FIRMER_SLOPES @param direction into DIRECTIONS @param pace into FIRMER_PACES */
export const firmerAt = (length: number, slope: number, direction: number, pace: number): number =>
  FIGURES *
  (2 * LENGTHS.length +
    ((length * FIRMER_SLOPES.length + slope) * DIRECTIONS.length + direction) * FIRMER_PACES.length +
    pace);
const ROW = firmerAt(FIRMER_LENGTHS.length, 0, 0, 0);

/** Holing out by this player. Who has missed allows for his habits, so players who differ in those alone share a table. */
function tableOn({ held, tables }: Green, player: Player): NextPutts {
  const { lineSd, paceSd, slopeSd, speedSd } = player;
  const key = [lineSd, paceSd, slopeSd, speedSd].join(' ');
  const table = tables.get(key) ?? tableUnder(held, player);
  tables.set(key, table);
  return table;
}

/**
 * Played by this player, on later putts with the choices the ground was made with.
 * @param usualOnly the other paces are left NaN: a third of the work
 */
export function playGround(ground: Ground, player: Player, usualOnly = false): Float64Array {
  const { greens, usual } = ground;
  const row = new Float64Array(ROW);
  const weights = new Float64Array(ROW);
  const far = isFarFrom(ground.player, player);
  const add = (to: number, weight: number, figures: Float64Array | undefined): void => {
    if (figures === undefined) return;
    for (let i = 0; i < FIGURES; i++) {
      row[to + i] += weight * figures[i];
      weights[to + i] += weight;
    }
  };
  greens.forEach((green, slope) => {
    const { weight, putts } = green;
    const table = tableOn(green, player);
    for (const { at, direction, place, best } of putts) {
      const firmer = FIRMER_LENGTHS.indexOf(LENGTHS[at]);
      const play = (pace: number, ...to: readonly (readonly [number, number])[]): void => {
        const figures = playFirst(place, pace, table, player);
        for (const [where, times] of to) add(where, times, figures);
      };
      play(
        usual,
        [usualAt(at), weight],
        ...(firmer < 0 ? [] : [[firmerAt(firmer, slope, direction, 1), 1] as const]),
      );
      if (usualOnly) continue;
      const kept = sameReach(best, LENGTHS[at], ground.player.paceBias, player.paceBias);
      play(bestOf(place, pacesAbout(kept, far), table, player), [bestAt(at), weight]);
      if (firmer < 0) continue;
      play(DIE_PACE, [firmerAt(firmer, slope, direction, 0), 1]);
      play(FIRM_PACE, [firmerAt(firmer, slope, direction, 2), 1]);
    }
  });
  for (let i = 0; i < ROW; i++) row[i] /= weights[i];
  return row;
}
