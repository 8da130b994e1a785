/**
 * One place on the green and what may be done from it: every pace and aim is played on the same lines, region and rests,
 * which are most of the work. Leaves out: which of them is best (next-putts.ts, whole-green.ts).
 */
import { NEXT_PUTT_PACE } from '../constants.ts';
import { type CentreLine, LineWalk } from '../read/line.ts';
import { lengthOf, startOf } from '../roll/roll.ts';
import type { Player, Putt } from '../types.ts';
import { type DropRegion, dropRegions } from './drop-region.ts';
import { missRests } from './lip-outs.ts';
import { type Intent, playOut, rangeOf } from './outcomes.ts';
import type { Rests } from './rests.ts';
import { startErrors } from './start-errors.ts';

/** Share of all putts, and where they rest relative to the hole, m. */
export type Missed = (share: number, x: number, y: number) => void;

/** Between which paces a place will be asked, and how far aside. */
export interface Reach {
  /** Paces, m past, lines of which are sought in turn. */
  readonly paces: readonly number[];
  /** Only the first that has a line. */
  readonly first: boolean;
  /** Beside the true aim, in SDs of the player's start errors. */
  readonly asideSds: number;
}

const ignoreAim = (): void => undefined;

/** Paces tried in turn for one sensible pace, m past the hole: the usual one, or others where it has no line. */
export const SENSIBLE_PACES = [NEXT_PUTT_PACE, 0.2, 0.1, 0.05, 0.8, 1.5];

export class Place {
  /** Paces that have a line, of those reached for: no pace outside them is played. */
  readonly low: number;
  readonly high: number;
  /** One SD of start errors at the true line of the first pace, m at the hole. */
  readonly aside: number;
  private readonly regions: readonly DropRegion[];
  private readonly rests: Rests;
  private readonly length: number;

  private constructor(
    private readonly walk: LineWalk,
    private readonly player: Player,
    private readonly lines: Map<number, CentreLine>,
    asideSds: number,
  ) {
    const { putt } = walk;
    const reached = [...lines];
    this.length = lengthOf(putt);
    this.low = Math.min(...lines.keys());
    this.high = Math.max(...lines.keys());
    this.aside = this.length * startErrors(startOf(putt, reached[0][1].heading), player).sd;
    const most = asideSds * this.aside;
    const intents = reached.flatMap(([pace, line]) => {
      const correction = most > 0 ? this.correction(pace) : 0;
      const shifts = most > 0 ? [0, correction - most, correction + most] : [0];
      return shifts.map((aimShift) => this.intent(line, aimShift));
    });
    this.regions = dropRegions(walk);
    this.rests = missRests(walk, rangeOf(intents, player));
  }

  /** @returns undefined when none of the paces reached for has a line from here */
  static from(putt: Putt, player: Player, reach: Reach): Place | undefined {
    const walk = new LineWalk(putt);
    if (walk.reason !== undefined) return undefined;
    const lines = new Map<number, CentreLine>();
    for (const pace of reach.paces) {
      const line = walk.lineAt(pace);
      if (line === undefined) continue;
      lines.set(pace, line);
      if (reach.first) break;
    }
    return lines.size > 0 ? new Place(walk, player, lines, reach.asideSds) : undefined;
  }

  /**
   * Metres at the hole by which a player with habits must aim aside to start, on average, on the line of the pace he
   * really gives the ball; 0 without habits. The search for an aim begins there.
   */
  correction(pace: number, player: Player = this.player): number {
    const { readBias, paceBias } = player;
    if (readBias === 0 && paceBias === 0) return 0;
    const meant = this.lineAt(pace);
    // As far past as distances times 1 + paceBias come; a ball meant to die that stops short keeps its line.
    const given = this.lineAt(pace + Math.max(paceBias * (this.length + pace), -0.9 * pace)) ?? meant;
    if (meant === undefined || given === undefined) return 0;
    return this.aimOf(given) / (1 + readBias) - this.aimOf(meant);
  }

  /**
   * The pace this player must mean so that the ball is given, on average, what another gives it who means `pace`: both know their
   * habits. Within the paces reached for.
   */
  paceFor(pace: number, other: Player, player: Player): number {
    if (other.paceBias === player.paceBias) return pace;
    const given = ((this.length + pace) * (1 + other.paceBias)) / (1 + player.paceBias) - this.length;
    return Math.max(this.low, Math.min(this.high, given));
  }

  /**
   * Play one pace (m past) and aim (m beside the true line's aim): every miss is told, as a share of all putts.
   * @param player another one than the place was made for: on a plane only, where rests reach everywhere
   * @returns what the shares told and the share holed add up to, nearly 1; undefined when the pace has no line
   */
  play(pace: number, aimShift: number, missed: Missed, player: Player = this.player): number | undefined {
    const line = this.lineAt(pace);
    if (line === undefined) return undefined;
    total[0] = 0;
    const holed = playOut(this.intent(line, aimShift), player, this.regions, this.rests, {
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

  private aimOf(line: CentreLine): number {
    return this.length * Math.tan(startOf(this.walk.putt, line.heading));
  }

  /** The aim offset moved by so many metres: the tangent of the start, which below 90 degrees is the aim over the length. */
  private intent(line: CentreLine, aimShift: number): Intent {
    const start = startOf(this.walk.putt, line.heading);
    const cosine = Math.cos(start);
    return {
      start: aimShift === 0 ? start : Math.atan2(Math.sin(start) + (aimShift / this.length) * cosine, cosine),
      energy: line.speed ** 2,
    };
  }
}

// An array, because a closure's own variable would be boxed at every addition.
const total = new Float64Array(1);
