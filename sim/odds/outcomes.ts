/**
 * What becomes of a putt at one pace: holed, short, past high, past low, and where the misses lie.
 *
 * The pace error is integrated by Gauss-Legendre pieces cut where the drop window opens and closes; at each speed the
 * holed share is the start-error share inside the window, exact; the rest is spread over cells of start angle outside it,
 * each standing at its middle (cells of 0.3 SD: the second-order error is far below the 0.3 points asked of three-putts).
 * Leaves out: what a miss costs (the visitor adds it up).
 */
import type { Player } from '../types.ts';
import { GAUSS_NODES, GAUSS_WEIGHTS } from './normal.ts';
import type { Rests } from './rests.ts';
import { startErrors } from './start-errors.ts';
import type { DropWindow } from './window.ts';

/** SDs looked at on either side: all but 7 in a million. */
export const REACH = 4.5;
const CELLS = 30;
/** 1 / sqrt(2 pi): height of the bell curve. */
const NORMAL_SCALE = 0.3989422804014327;
/** Widest piece of pace error integrated by five points, SD. */
const WIDEST_PIECE = 1.3;

/**
 * Receives every miss: its share of all putts, its rest relative to the hole (m), whether it passed left of the hole, and
 * how far the balls it stands for reach: shares of the distance rolled, `less` (<= 0) to `more` (>= 0).
 */
export type MissVisitor = (
  share: number,
  x: number,
  y: number,
  left: boolean,
  less: number,
  more: number,
) => void;

export interface Intent {
  /** Start angle meant, radians from ball->hole, and launch energy v^2 meant, m^2/s^2. */
  readonly start: number;
  readonly energy: number;
}

// Reused from call to call: nothing here outlives one `playOut`, and a visitor must not call it.
const edges = new Float64Array(CELLS + 1);
const belows = new Float64Array(CELLS + 1);
const middles = new Float64Array(CELLS);
const xs = new Float64Array(CELLS);
const ys = new Float64Array(CELLS);
const open = new Float64Array(2);

/**
 * Play one intent with the player's errors.
 * @param window undefined: nothing drops
 * @returns share holed, 0 to 1
 */
export function playOut(
  intent: Intent,
  player: Player,
  window: DropWindow | undefined,
  rests: Rests,
  miss: MissVisitor,
): number {
  const errors = startErrors(intent.start, player);
  const half = REACH * Math.max(errors.sd, 1e-9);
  const width = (2 * half) / CELLS;
  for (let i = 0; i <= CELLS; i++) {
    edges[i] = errors.middle - half + i * width;
    belows[i] = i === 0 ? 0 : i === CELLS ? 1 : errors.below(edges[i]);
    if (i < CELLS) middles[i] = edges[i] + width / 2;
  }
  rests.aim(middles);
  let holed = 0;

  /** Balls that start between two angles and miss; cells cut by an end stand at the middle of what is left of them. */
  let less = 0;
  let more = 0;
  const spread = (
    from: number,
    to: number,
    belowFrom: number,
    belowTo: number,
    weight: number,
    left: boolean,
  ): void => {
    const firstCell = Math.max(0, Math.min(CELLS - 1, Math.floor((from - edges[0]) / width)));
    const lastCell = Math.max(0, Math.min(CELLS - 1, Math.ceil((to - edges[0]) / width) - 1));
    for (let i = firstCell; i <= lastCell; i++) {
      const low = i === firstCell ? belowFrom : belows[i];
      const high = i === lastCell ? belowTo : belows[i + 1];
      const share = weight * (high - low);
      if (!(share > 1e-12)) continue;
      let x = xs[i];
      let y = ys[i];
      const middle = (Math.max(edges[i], from) + Math.min(edges[i + 1], to)) / 2;
      const shift = (middle - middles[i]) / width;
      if (Math.abs(shift) > 1e-3) {
        const j = Math.max(0, Math.min(CELLS - 2, shift < 0 ? i - 1 : i));
        x += shift * (xs[j + 1] - xs[j]);
        y += shift * (ys[j + 1] - ys[j]);
      }
      miss(share, x, y, left, less, more);
    }
  };

  const roll = (energy: number, weight: number): void => {
    rests.at(energy, xs, ys);
    const drops = window?.edgesAt(energy, open) ?? false;
    const middle = window?.middleAt(energy) ?? intent.start;
    const low = Math.max(edges[0], Math.min(edges[CELLS], drops ? open[0] : middle));
    const high = Math.max(edges[0], Math.min(edges[CELLS], drops ? open[1] : middle));
    const belowLow = low === edges[0] ? 0 : low === edges[CELLS] ? 1 : errors.below(low);
    const belowHigh = high === edges[0] ? 0 : high === edges[CELLS] ? 1 : errors.below(high);
    holed += weight * (belowHigh - belowLow);
    spread(edges[0], low, 0, belowLow, weight, false);
    spread(high, edges[CELLS], belowHigh, 1, weight, true);
  };

  const share = 1 + player.paceBias;
  if (player.paceSd === 0) {
    roll(intent.energy * Math.max(share, 1e-6), 1);
    return holed;
  }
  const energyAt = (z: number): number =>
    // A ball cannot be struck backwards: below nothing it stays where it is.
    intent.energy * Math.max(share + player.paceSd * z, 1e-6);
  const scoreOf = (energy: number): number => (energy / intent.energy - share) / player.paceSd;
  const cuts = [-REACH];
  for (const energy of window?.cuts ?? []) {
    const cut = scoreOf(energy);
    if (cut > cuts[cuts.length - 1] && cut < REACH) cuts.push(cut);
  }
  cuts.push(REACH);
  for (let piece = 1; piece < cuts.length; piece++) {
    const parts = Math.ceil((cuts[piece] - cuts[piece - 1]) / WIDEST_PIECE);
    const size = (cuts[piece] - cuts[piece - 1]) / parts;
    for (let part = 0; part < parts; part++) {
      let from = cuts[piece - 1] + part * size;
      const centre = from + size / 2;
      for (let k = 0; k < GAUSS_NODES.length; k++) {
        const z = centre + (GAUSS_NODES[k] * size) / 2;
        const to = from + (GAUSS_WEIGHTS[k] * size) / 2;
        const energy = energyAt(z);
        less = energyAt(from) / energy - 1;
        more = energyAt(to) / energy - 1;
        roll(energy, NORMAL_SCALE * Math.exp((-z * z) / 2) * (to - from));
        from = to;
      }
    }
  }
  return holed;
}
