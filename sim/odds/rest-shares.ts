/**
 * How often a ball stops in a zone round the hole or round a mark on the ground.
 *
 * Answers for: the share holed and the share at rest in each zone, one putt at one pace, on a plane. Leaves out: what zones are
 * worth (training/).
 * On a plane a ball rests at ball + v^2 D(start) (rests.ts): the misses of one start lie on a ray, and the part of a cell of
 * paces inside a box or a circle is cut exactly. Balls that lip out count where the cell's middle comes to rest.
 */
import { LineWalk } from '../read/line.ts';
import { lengthOf } from '../roll/roll.ts';
import type { NoLine, PlaneSurface, Player, Putt } from '../types.ts';
import { dropRegions } from './drop-region.ts';
import { missRests } from './lip-outs.ts';
import { playOut, rangeOf } from './outcomes.ts';
import { restsOf } from './rests.ts';
import { Strokes, UNSEEN } from './stroke-errors.ts';

/**
 * Where a ball is to stop, seen along the line ball to target. box: from `shortM` before the target to `pastM` past it, so wide,
 * or as wide as the ground; a negative length lies on the other side. circle: within so far of the target.
 */
export type Zone =
  | {
      readonly shape: 'box';
      readonly shortM: number;
      readonly pastM: number;
      readonly widthM?: number;
    }
  | { readonly shape: 'circle'; readonly radiusM: number };

export interface RestShares {
  readonly status: 'ok';
  /** 0 for a mark. */
  readonly holed: number;
  /** Share at rest in each zone, holed balls left out. */
  readonly within: readonly number[];
}

export interface RestQuestion {
  readonly putt: Putt & { readonly surface: PlaneSurface };
  /** m past the covered hole or the mark, above 0. */
  readonly pace: number;
  readonly player: Player;
  readonly zones: readonly Zone[];
  /** A mark lets every ball pass. */
  readonly target: 'hole' | 'mark';
}

/** The sides of a zone cut starts off sharply, but for the spread of the pace: a tenth or so of where they lie, SD (ours). */
const PIECE = 0.2;

const inside = (zone: Zone, past: number, aside: number): boolean =>
  zone.shape === 'circle'
    ? past ** 2 + aside ** 2 <= zone.radiusM ** 2
    : past >= -zone.shortM && past <= zone.pastM && Math.abs(aside) <= (zone.widthM ?? Infinity) / 2;

const span: [from: number, to: number] = [0, 0];

/**
 * Which of the rests at -length + k along, k across the line lie in the zone: k from span[0] to span[1], none when that is empty.
 * @param along distance rolled along the line at k = 1, m
 * @param across the same beside it
 */
function raySpan(zone: Zone, length: number, along: number, across: number): void {
  span[0] = 0;
  span[1] = -1;
  if (zone.shape === 'circle') {
    // |(-length + k along, k across)| = radius: a quadratic in k.
    const square = along ** 2 + across ** 2;
    const root = (length * along) ** 2 - square * (length ** 2 - zone.radiusM ** 2);
    if (root <= 0) return;
    span[0] = (length * along - Math.sqrt(root)) / square;
    span[1] = (length * along + Math.sqrt(root)) / square;
    return;
  }
  if (along <= 0) return;
  const widest = zone.widthM === undefined || across === 0 ? Infinity : zone.widthM / 2 / Math.abs(across);
  span[0] = (length - zone.shortM) / along;
  span[1] = Math.min((length + zone.pastM) / along, widest);
}

/** @returns NoLine when no start line does it at this pace */
export function restShares(question: RestQuestion): RestShares | NoLine {
  const { putt, pace, player, zones, target } = question;
  const walk = new LineWalk(putt);
  if (walk.lineAt(pace) === undefined) return { status: 'noLine', reason: walk.whyNot(pace) };
  const strokes = new Strokes(putt, player).at(pace);
  if (strokes === undefined) return { status: 'noLine', reason: UNSEEN };
  const range = () => rangeOf([strokes]);
  const length = lengthOf(putt);
  const towardX = (putt.hole.x - putt.ball.x) / length;
  const towardY = (putt.hole.y - putt.ball.y) / length;
  const within = new Float64Array(zones.length);
  let missed = 0;
  const holed = playOut(
    strokes,
    target === 'hole' ? dropRegions(walk) : [],
    target === 'hole' ? missRests(walk, range) : restsOf(putt, range),
    {
      widestPiece: zones.length > 0 ? PIECE : undefined,
      aim: () => undefined,
      miss(share, x, y, softer, firmer, tilt, lipped) {
        missed += share;
        const past = x * towardX + y * towardY;
        const aside = towardX * y - towardY * x;
        const middle = (softer + firmer) / 2;
        const from = softer / middle;
        const wide = firmer / middle - from;
        for (let i = 0; i < zones.length; i++) {
          if (lipped || !(wide > 0)) {
            if (inside(zones[i], past, aside)) within[i] += share;
            continue;
          }
          raySpan(zones[i], length, past + length, aside);
          const low = Math.max(0, Math.min(1, (span[0] - from) / wide));
          const high = Math.max(0, Math.min(1, (span[1] - from) / wide));
          // The density 1 + tilt (f - 1/2), summed from low to high.
          if (high > low) within[i] += share * (high - low) * (1 + (tilt * (high + low - 1)) / 2);
        }
      },
    },
  );
  const total = holed + missed;
  return {
    status: 'ok',
    holed: holed / total,
    within: Array.from(within, (share) => share / total),
  };
}
