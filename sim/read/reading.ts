/**
 * The line that a player means, over all that may be seen: start and launch energy as functions of what is misread.
 *
 * Answers for: one putt read again on ground that tilts another way, at another green speed. On a plane each such line is solved in
 * closed form. On other ground only the line on the ground as seen on average and four about it are found by rolling; in between the putt
 * is read on the plane that reads alike: its line is the same there, and its tilts are turned and stretched so that start and
 * energy follow tilts as they do on the ground itself. What that leaves out is how second derivatives differ (tests: the odds
 * beside lines solved anew for every ball). MODEL.md, section 3.
 * Leaves out: how often what is seen (odds/meant.ts).
 */

import { steepestHold } from '../roll/plane.ts';
import { bearingOf, startOf } from '../roll/roll.ts';
import type { Player, Putt } from '../types.ts';
import { LineWalk } from './line.ts';
import { type Sight, seenPlane, seenPutt } from './seen.ts';

/** A line as it is meant: start, radians from ball->hole, positive left, and launch energy v^2, m^2/s^2. */
export interface MeantLine {
  readonly start: number;
  readonly energy: number;
}

/** What is misread: slope along the line ball->hole (uphill positive) and across it (rising to the left), rise over run; green speed as a ratio. */
export interface Misread {
  readonly along: number;
  readonly across: number;
  readonly speed: number;
}

/** The line for one pace under any misreading; undefined where there is none. */
export type LineSeen = (misread: Misread) => MeantLine | undefined;

/** Nobody sees a green slower than this share of its speed. */
const SLOWEST_SEEN = 0.2;
/** Tilt by which a field is read about its mean, rise over run: large beside the errors of the lines, small beside slopes seen. */
const ASIDE = 0.003;
/** The plane that reads alike has the field's line within this, radians and shares of the energy. */
const ALIKE = 1e-7;
const MOST_STEPS = 12;

const meantOf = (putt: Putt, walk: LineWalk, pace: number): MeantLine | undefined => {
  const line = walk.anyLineAt(pace);
  return line && { start: startOf(putt, line.heading), energy: line.speed ** 2 };
};

/** One putt as one player reads it. */
export class Reading {
  private readonly times: number;
  private readonly alongX: number;
  private readonly alongY: number;
  private field: readonly LineWalk[] | undefined;

  constructor(
    readonly putt: Putt,
    { readBias }: Pick<Player, 'readBias'>,
  ) {
    const bearing = bearingOf(putt);
    this.times = 1 + readBias;
    this.alongX = Math.cos(bearing);
    this.alongY = Math.sin(bearing);
  }

  /** @returns undefined when the ground as seen on average has no line for this pace */
  linesFor(pace: number): LineSeen | undefined {
    const { surface } = this.putt;
    if (surface.kind === 'plane') {
      const seen: LineSeen = (misread) => this.onPlane(surface, pace, this.times, misread);
      return seen({ along: 0, across: 0, speed: 1 }) && seen;
    }
    return this.alike(pace);
  }

  /** Along and across as x and y. */
  private tilt({ along, across }: Pick<Misread, 'along' | 'across'>): Pick<Sight, 'tiltX' | 'tiltY'> {
    return {
      tiltX: along * this.alongX - across * this.alongY,
      tiltY: along * this.alongY + across * this.alongX,
    };
  }

  private onPlane(
    surface: Parameters<typeof seenPlane>[0],
    pace: number,
    times: number,
    misread: Misread,
  ): MeantLine | undefined {
    const speed = Math.max(SLOWEST_SEEN, misread.speed);
    const greenSpeed = this.putt.greenSpeed * speed;
    const seen = seenPlane(surface, { times, ...this.tilt(misread) }, greenSpeed);
    const putt = { ...this.putt, greenSpeed, surface: seen };
    return meantOf(this.putt, new LineWalk(putt), pace);
  }

  /** The plane that reads like the field, and the tilts of it that stand for tilts of the field. */
  private alike(pace: number): LineSeen | undefined {
    const { putt, times } = this;
    // One pair of directions for all putts, so that the grounds seen are shared.
    this.field ??= [
      [0, 0],
      [ASIDE, 0],
      [-ASIDE, 0],
      [0, ASIDE],
      [0, -ASIDE],
    ].map(([tiltX, tiltY]) => new LineWalk(seenPutt(putt, { times, tiltX, tiltY, speed: 1 })));
    const [middle, ...about] = this.field.map((walk) => meantOf(putt, walk, pace));
    if (middle === undefined) return undefined;
    const level = { kind: 'plane', slope: 0, downhill: 0 } as const;
    const lineOn = (along: number, across: number, speed: number): MeantLine | undefined =>
      this.onPlane(level, pace, 1, { along, across, speed });
    const plane = planeAlike(lineOn, middle, 0.7 * steepestHold(putt.greenSpeed));
    if (plane === undefined) return undefined;
    const { along, across, slopes } = plane;
    // Start and energy by tilts of the field, from both sides where both have a line; then the plane's tilts that do the same.
    const byTilt = (
      up: MeantLine | undefined,
      down: MeantLine | undefined,
    ): readonly [number, number] | undefined => {
      if (up === undefined && down === undefined) return undefined;
      const [to, from] = [up ?? middle, down ?? middle];
      const width = ASIDE * ((up ? 1 : 0) + (down ? 1 : 0));
      return solved(
        slopes,
        (to.start - from.start) / width,
        (to.energy - from.energy) / width / middle.energy,
      );
    };
    const [byX, byY] = [byTilt(about[0], about[1]), byTilt(about[2], about[3])];
    return (misread) => {
      const { tiltX, tiltY } = this.tilt(misread);
      const plain = [misread.along, misread.across];
      const [more, aside] = [0, 1].map((i) =>
        byX === undefined || byY === undefined ? plain[i] : tiltX * byX[i] + tiltY * byY[i],
      );
      return lineOn(along + more, across + aside, misread.speed);
    };
  }
}

type Slopes = readonly [
  startByAlong: number,
  startByAcross: number,
  energyByAlong: number,
  energyByAcross: number,
];

/** Slopes along and across that move start and energy so far. */
function solved(
  [a, b, c, d]: Slopes,
  start: number,
  energy: number,
): readonly [along: number, across: number] {
  const determinant = a * d - b * c;
  return [(start * d - b * energy) / determinant, (a * energy - start * c) / determinant];
}

/** The plane on which a line is this one: Newton on slope along and across. */
function planeAlike(
  lineOn: (along: number, across: number, speed: number) => MeantLine | undefined,
  wanted: MeantLine,
  steepest: number,
): { readonly along: number; readonly across: number; readonly slopes: Slopes } | undefined {
  let along = 0;
  let across = 0;
  const step = 1e-5;
  for (let i = 0; i < MOST_STEPS; i++) {
    const [here, on, aside] = [
      lineOn(along, across, 1),
      lineOn(along + step, across, 1),
      lineOn(along, across + step, 1),
    ];
    if (here === undefined || on === undefined || aside === undefined) return undefined;
    const relative = (energy: number): number => energy / wanted.energy;
    const slopes: Slopes = [
      (on.start - here.start) / step,
      (aside.start - here.start) / step,
      (relative(on.energy) - relative(here.energy)) / step,
      (relative(aside.energy) - relative(here.energy)) / step,
    ];
    const [offStart, offEnergy] = [wanted.start - here.start, 1 - relative(here.energy)];
    if (Math.hypot(offStart, offEnergy) < ALIKE) return { along, across, slopes };
    const [more, sideways] = solved(slopes, offStart, offEnergy);
    along += more;
    across += sideways;
    const slope = Math.hypot(along, across);
    if (!Number.isFinite(slope)) return undefined;
    if (slope > steepest) {
      along *= steepest / slope;
      across *= steepest / slope;
    }
  }
  return undefined;
}
