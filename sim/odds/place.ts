/**
 * One place on the green and what may be done from it: every pace is played on the same lines, region and rests,
 * which are most of the work. Leaves out: which of them is best (next-putts.ts, whole-green.ts).
 */
import { NEXT_PUTT_PACE } from '../constants.ts';
import { type CentreLine, LineWalk } from '../read/line.ts';
import type { Player, Putt } from '../types.ts';
import { type DropRegion, dropRegions } from './drop-region.ts';
import { missRests } from './lip-outs.ts';
import { playOut, rangeOf } from './outcomes.ts';
import type { Rests } from './rests.ts';
import { Strokes } from './stroke-errors.ts';

/** Share of all putts, and where they rest relative to the hole, m. */
export type Missed = (share: number, x: number, y: number) => void;

/** Between which paces a place will be asked. */
export interface Reach {
  /** Paces, m past, lines of which are sought in turn. */
  readonly paces: readonly number[];
  /** Only the first that has a line. */
  readonly first: boolean;
  /** Whose strokes rests have to reach for on a field: somebody at least as wild as whoever will play. Default: the player. */
  readonly wildest?: Player;
}

const ignoreAim = (): void => undefined;

/** Paces tried in turn for one sensible pace, m past the hole: the usual one, or others where it has no line. */
export const SENSIBLE_PACES = [NEXT_PUTT_PACE, 0.2, 0.1, 0.05, 0.8, 1.5];

export class Place {
  /** Paces that have a line, of those reached for: no pace outside them is played. */
  readonly low: number;
  readonly high: number;
  private readonly regions: readonly DropRegion[];
  private readonly rests: Rests;
  private readonly strokes: Strokes;

  private constructor(
    private readonly walk: LineWalk,
    private readonly player: Player,
    private readonly lines: Map<number, CentreLine>,
    wildest: Player | undefined,
  ) {
    this.low = Math.min(...lines.keys());
    this.high = Math.max(...lines.keys());
    this.strokes = new Strokes(walk.putt, player);
    this.regions = dropRegions(walk);
    this.rests = missRests(walk, () => {
      const strokes = wildest === undefined ? this.strokes : new Strokes(walk.putt, wildest);
      return rangeOf([...lines.keys()].flatMap((pace) => strokes.at(pace) ?? []));
    });
  }

  /** @returns undefined when none of the paces reached for has a line from here */
  static from(putt: Putt, player: Player, reach: Reach): Place | undefined {
    const walk = new LineWalk(putt);
    const lines = new Map<number, CentreLine>();
    for (const pace of reach.paces) {
      const line = walk.lineAt(pace);
      if (line === undefined) continue;
      lines.set(pace, { ...line });
      if (reach.first) break;
    }
    return lines.size > 0 ? new Place(walk, player, lines, reach.wildest) : undefined;
  }

  /**
   * Play one pace (m past) on the line as read: every miss is told, as a share of all putts.
   * @param player another one than the place was made for: on a field none wilder than it reaches for; on a plane anybody
   * @returns what the shares told and the share holed add up to, nearly 1; undefined when the pace has no line
   */
  play(pace: number, missed: Missed, player: Player = this.player): number | undefined {
    const lines = player === this.player ? this.strokes : new Strokes(this.walk.putt, player);
    const strokes = this.lineAt(pace) && lines.at(pace);
    if (strokes === undefined) return undefined;
    total[0] = 0;
    const holed = playOut(strokes, this.regions, this.rests, {
      aim: ignoreAim,
      miss(share, x, y) {
        total[0] += share;
        missed(share, x, y);
      },
    });
    return holed + total[0];
  }

  /** The true line of a pace; undefined when it has none. */
  lineAt(pace: number): CentreLine | undefined {
    const known = this.lines.get(pace);
    if (known !== undefined) return known;
    const line = this.walk.lineAt(pace);
    if (line !== undefined) this.lines.set(pace, { ...line });
    return line;
  }
}

// An array, because a closure's own variable would be boxed at every addition.
const total = new Float64Array(1);
