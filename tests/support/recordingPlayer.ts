/**
 * A player of known errors on putts of the mix, rolled plainly, who writes them down as a person does: the words he would tap, and
 * leaves rounded to a list. Answers for: records whose truth is known. Shares with the fit the ground it is about (planes, lines,
 * rolling) and nothing of how it sums: strokes are drawn, rolled one by one by the roller, and told in words with errors of
 * judgement of their own.
 */

import { newLeavingBall } from '../../sim/hole/leave.ts';
import type { Player, Putt, RecordedMiss, RecordedPutt } from '../../sim/index.ts';
import {
  degreesToRadians,
  feetToMetres,
  inchesToMetres,
  planeSurface,
  seededRandom,
} from '../../sim/index.ts';
import { LineWalk } from '../../sim/read/line.ts';
import { bearingOf, drops, fromLip, lipsOut, rollerFor, startOf } from '../../sim/roll/roll.ts';
import { newPass } from '../../sim/roll/roller.ts';

/** A ball that touched the hole was not short, wherever it went from there: as `along`, m. */
const LIPPED = 1;
const HOLE_RADIUS = inchesToMetres(4.25) / 2;
/** What a form offers to tap: usual distances and leaves. */
const FEET = [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 35, 40, 50, 60];
const LEFT_INCHES = [3, 6, 9, 12, 18, 24, 30, 36, 42, 48, 60, 72, 96, 120, 144];
/** Slopes he calls gentle end here, rise over run. */
const GENTLE = 0.01;
const PACE_INCHES = { die: 6, normal: 17, firm: 30 } as const;

export interface RecordingHabits {
  /** Which optional words are tapped. */
  readonly says: {
    readonly climb?: boolean;
    readonly breaks?: boolean;
    readonly slopeFelt?: boolean;
    readonly paceMeant?: boolean;
    readonly side?: boolean;
    readonly reach?: boolean;
    readonly asMeant?: boolean;
  };
  /** Only putts that he says break; default all. */
  readonly breakingOnly?: boolean;
  /** Only putts that he feels on a medium or steep slope; default all. */
  readonly slopingOnly?: boolean;
  /** Lengths, feet, evenly in their logarithm; default 5 to 30. */
  readonly feet?: readonly [number, number];
  /** The side is told by where the ball finished, not where it passed; default false. */
  readonly sideByFinish?: boolean;
  /** What he calls "as meant": radians, share of the distance; default 1 degree and 10%. */
  readonly bands?: { readonly start: number; readonly pace: number };
}

/** The core of the form, and pace meant: what a miss's pad and the line above it ask for. */
export const ORDINARY: RecordingHabits['says'] = {
  climb: true,
  breaks: true,
  paceMeant: true,
  side: true,
  reach: true,
};

const nearest = (value: number, list: readonly number[]): number =>
  list.reduce((best, one) => (Math.abs(one - value) < Math.abs(best - value) ? one : best), list[0]);

export interface Recording {
  /** The next putt, rolled and written down. */
  next(): RecordedPutt;
}

/** One plain roll and all that can be seen of it. */
export interface SeenRoll {
  readonly holed: boolean;
  /** m; high positive: where it passed the hole or, short of it, where it lies beside the line from the ball to the hole. */
  readonly passed: number;
  /** m; beside that line at rest, high positive; past the hole along it; to the hole. */
  readonly beside: number;
  readonly along: number;
  readonly leave: number;
  /** Of the stroke: radians and share. */
  readonly lineError: number;
  readonly paceError: number;
}

/** Rolls strokes of one player at one putt and one pace, one after another. @returns undefined without a line */
export function plainRolls(
  putt: Putt,
  pace: number,
  player: Player,
  normal: () => number,
): { aim: number; roll: () => SeenRoll } | undefined {
  const walk = new LineWalk(putt);
  const line = walk.reason === undefined ? walk.lineAt(pace) : undefined;
  if (line === undefined) return undefined;
  const { roller } = walk.search;
  const zero = bearingOf(putt);
  const start = startOf(putt, line.heading);
  const high = start < 0 ? -1 : 1;
  const [towardX, towardY] = [Math.cos(zero), Math.sin(zero)];
  const pass = newPass();
  const leaving = newLeavingBall();
  const roll = (): SeenRoll => {
    const seen = 1 + player.readBias + player.readSd * normal();
    const lineError = player.lineSd * normal();
    const paceError = player.paceBias + player.paceSd * normal();
    const heading = zero + Math.atan2(seen * Math.sin(start), Math.cos(start)) + lineError;
    roller.pass(heading, line.speed * Math.sqrt(Math.max(1e-6, 1 + paceError)), pass);
    const holed = drops(putt, pass);
    // Positive offsets have the hole on their left: the ball passed on its right.
    const offset = -high * (pass.met ? pass.rimOffset : pass.miss);
    let lipped = false;
    if (!holed && lipsOut(putt, pass, leaving)) {
      lipped = true;
      rollerFor(fromLip(putt, leaving)).pass(leaving.heading, leaving.speed, pass);
    }
    const [x, y] = [pass.restX - putt.hole.x, pass.restY - putt.hole.y];
    const along = x * towardX + y * towardY;
    const beside = high * (y * towardX - x * towardY);
    const short = along < 0 && !lipped;
    return {
      holed,
      passed: short ? beside : offset,
      beside,
      along: lipped ? LIPPED : along,
      leave: Math.hypot(x, y),
      lineError,
      paceError,
    };
  };
  return { aim: start, roll };
}

/** Standard normal numbers (Box & Muller 1958). */
export const normalsOf = (random: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export function recordingPlayer(player: Player, habits: RecordingHabits, seed: string): Recording {
  const random = seededRandom(seed);
  const normal = normalsOf(random);
  const { says, feet = [5, 30], bands = { start: degreesToRadians(1), pace: 0.1 } } = habits;
  let number = 0;

  const draw = (): RecordedPutt | undefined => {
    const length = feetToMetres(feet[0] * (feet[1] / feet[0]) ** random());
    const slope = 0.005 + 0.025 * random();
    const bearing = 2 * Math.PI * random();
    const greenSpeed = feetToMetres(8.5 + 2 * random());
    const chosen = random();
    const paceMeant = chosen < 0.2 ? 'die' : chosen < 0.8 ? 'normal' : 'firm';
    const putt: Putt = {
      surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
      greenSpeed,
      ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) },
      hole: { x: 0, y: 0 },
      capture: 'rim',
    };
    const strokes = plainRolls(putt, inchesToMetres(PACE_INCHES[paceMeant]), player, normal);
    if (strokes === undefined) return undefined;
    // The ground as he sees it: a fifth and a quarter of a per cent off.
    const judged = (value: number): number => value * Math.exp(0.2 * normal()) + 0.0025 * normal();
    const rise = judged(-slope * Math.sin(bearing));
    const felt = judged(slope);
    const aimOffset = length * Math.tan(Math.max(-1.4, Math.min(1.4, strokes.aim)));
    const seenAim = aimOffset * Math.exp(0.15 * normal()) + 0.02 * normal();
    const breaks = Math.abs(seenAim) < HOLE_RADIUS ? 'straight' : seenAim > 0 ? 'leftToRight' : 'rightToLeft';
    if (habits.breakingOnly && breaks === 'straight') return undefined;
    if (habits.slopingOnly && felt < GENTLE) return undefined;
    const { holed, passed, beside, along, leave, lineError, paceError } = strokes.roll();
    const across = (habits.sideByFinish ? beside : passed) + 0.03 * normal();
    const highIsLeft = strokes.aim >= 0;
    const onHigh = across > 0;
    const side =
      Math.abs(across) < HOLE_RADIUS
        ? 'online'
        : breaks === 'straight'
          ? onHigh === highIsLeft
            ? 'left'
            : 'right'
          : onHigh
            ? 'high'
            : 'low';
    const seenLeave = Math.max(0.05, leave * Math.exp(0.07 * normal()) + 0.02 * normal());
    const inches = nearest(seenLeave / inchesToMetres(1), LEFT_INCHES);
    // One answer in ten is wrong.
    const answer = (inside: boolean): boolean => inside !== random() < 0.1;
    const started = answer(Math.abs(lineError) < bands.start);
    const paced = answer(Math.abs(paceError) < bands.pace);
    const miss: RecordedMiss = {
      leave: inchesToMetres(inches),
      ...(says.side && { side }),
      ...(says.reach && { reach: along + 0.05 * normal() < 0 ? 'short' : 'past' }),
    };
    return {
      id: `p${number}`,
      roundId: `r${Math.floor(number / 36)}`,
      hole: 1 + (number % 18),
      stroke: 1,
      kind: 'putt',
      distance: feetToMetres(nearest(length / 0.3048, FEET)),
      holed,
      recordedAt: number,
      ...(!holed && { miss }),
      ...(says.climb && { climb: rise > 0.005 ? 'up' : rise < -0.005 ? 'down' : 'level' }),
      ...(says.breaks && { breaks }),
      ...(says.slopeFelt && { slopeFelt: felt < GENTLE ? 'gentle' : felt > 0.02 ? 'steep' : 'medium' }),
      ...(says.paceMeant && { paceMeant }),
      ...(says.asMeant && { startedAsMeant: started, paceAsMeant: paced }),
    };
  };
  return {
    next() {
      for (;;) {
        const putt = draw();
        if (putt === undefined) continue;
        number++;
        return putt;
      }
    },
  };
}
