/**
 * Golfers of known errors who play whole rounds and write down their putts as people do. Answers for: records whose truth is known.
 *
 * Every ball is the model of MODEL.md section 3 as it stands: the ground as seen is drawn, the line on it is solved anew, the ball is
 * struck and rolled on the true ground. Shares with the fit what ground and ball are (planes, lines, rolling), and nothing of how it
 * sums; what is written is judged with errors of its own: lengths and leaves from lists, words on the ground partly from what was
 * seen before the putt, slips, words left out on short ones.
 */
import { newLeavingBall } from '../../sim/hole/leave.ts';
import type { Player, Putt, RecordedMiss, RecordedPutt, RecordedRound } from '../../sim/index.ts';
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

const HOLE_RADIUS = inchesToMetres(4.25) / 2;
const GRAVITY = 9.81;
const STIMP_SPEED = 1.83;
/** What a form offers to tap: usual distances and leaves. */
const FEET = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 35, 40, 50, 60];
const LEFT_INCHES = [3, 6, 9, 12, 18, 24, 30, 36, 42, 48, 60, 72, 96, 120, 144];
const PACE_INCHES = { die: 6, normal: 17, firm: 30 } as const;
const PACE_WORDS = ['die', 'normal', 'firm'] as const;

/** Standard normal numbers (Box & Muller 1958). */
export const normalsOf = (random: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export interface Golfer {
  readonly player: Player;
  /** Pace meant: one of the words always, or now this, now that (a fifth die, a fifth firm); default that. */
  readonly means?: (typeof PACE_WORDS)[number] | 'varied';
  /** Degrees of freedom of every error (a t, its 68% as wide as a bell curve's); default: bell curves. */
  readonly tails?: number;
  /** From round to round, SD: habit of pace, share; habit of reading, share. */
  readonly days?: { readonly pace: number; readonly read: number };
  /** The hole takes in balls so many times as fast as the rule says. */
  readonly rim?: number;
  /** Habits count on first putts only. */
  readonly habitsOnFirstOnly?: boolean;
}

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
  /** Share of putts beyond 3 ft on which the words are left out; half of those nearer; default a tenth. */
  readonly leavesOut?: number;
  /** How much of the misreading is in the words: 1 said before the putt, 0 after it has shown; default a half. */
  readonly saidAsSeen?: number;
  /** The round has its green speed; default false. */
  readonly greenSpeed?: boolean;
  /** First putts only. */
  readonly firstOnly?: boolean;
  /** Lengths of first putts, feet: median, and SD of the logarithm. Default 16 and 0.65. */
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

/** 68% of a t lie within so many of its own units: found by simulation to three figures; Student 1908 has the same. */
const T_68: Readonly<Record<string, number>> = { 3.5: 1.165, 5: 1.11, 8: 1.067 };

/** One plain roll and all that can be seen of it. */
export interface SeenRoll {
  readonly holed: boolean;
  /** m; high positive: where it passed the hole or, short of it, where it lies beside the line from the ball to the hole. */
  readonly passed: number;
  /** m; beside that line at rest, high positive; past the hole along it; to the hole. */
  readonly beside: number;
  readonly along: number;
  readonly leave: number;
  /** Where it rests. */
  readonly x: number;
  readonly y: number;
  /** Of the stroke: radians and share. */
  readonly lineError: number;
  readonly paceError: number;
  /** Slope seen minus slope that is, rise over run along the putt (uphill positive) and across (to the left). */
  readonly seenAlong: number;
  readonly seenAcross: number;
}

/** A ball that touched the hole was not short, wherever it went from there: as `along`, m. */
const LIPPED = 1;

/** Rolls one ball. @returns undefined where the ground as seen has no line */
export function plainRoll(
  putt: Putt,
  pace: number,
  player: Player,
  error: () => number,
  rim = 1,
): SeenRoll | undefined {
  const { surface } = putt;
  if (surface.kind !== 'plane') throw new Error('Got a field; expected a plane.');
  // What is seen: uphill vectors.
  const up = surface.downhill + Math.PI;
  const e1 = player.slopeSd * error();
  const e2 = player.slopeSd * error();
  const x = (1 + player.readBias) * surface.slope * Math.cos(up) + e1;
  const y = (1 + player.readBias) * surface.slope * Math.sin(up) + e2;
  const greenSpeed = putt.greenSpeed * Math.max(0.2, 1 + player.speedSd * error());
  const holds = STIMP_SPEED ** 2 / (2 * greenSpeed) / ((5 / 7) * GRAVITY);
  const seen: Putt = {
    ...putt,
    greenSpeed,
    surface: planeSurface({ slope: Math.min(Math.hypot(x, y), 0.9 * holds), downhill: Math.atan2(-y, -x) }),
  };
  const walk = new LineWalk(seen);
  const line = walk.reason === undefined ? walk.lineAt(pace) : undefined;
  if (line === undefined) return undefined;
  const zero = bearingOf(putt);
  const [towardX, towardY] = [Math.cos(zero), Math.sin(zero)];
  const lineError = player.lineSd * error();
  const paceError = player.paceBias + player.paceSd * error();
  const roller = rollerFor(putt);
  const pass = roller.pass(
    line.heading + lineError,
    line.speed * Math.sqrt(Math.max(1e-6, 1 + paceError)),
    newPass(),
  );
  // The side that is high on the true ground.
  const truth = new LineWalk(putt);
  const trueLine = truth.reason === undefined ? truth.lineAt(pace) : undefined;
  const high = trueLine && startOf(putt, trueLine.heading) < 0 ? -1 : 1;
  const holed = drops(putt, { ...pass, rimSpeed: pass.rimSpeed / rim });
  const offset = -high * (pass.met ? pass.rimOffset : pass.miss);
  const leaving = newLeavingBall();
  let lipped = false;
  if (!holed && lipsOut(putt, pass, leaving)) {
    lipped = true;
    rollerFor(fromLip(putt, leaving)).pass(leaving.heading, leaving.speed, pass);
  }
  const [restX, restY] = [pass.restX - putt.hole.x, pass.restY - putt.hole.y];
  const along = restX * towardX + restY * towardY;
  const beside = high * (restY * towardX - restX * towardY);
  const short = along < 0 && !lipped;
  const slopeX = x - surface.slope * Math.cos(up);
  const slopeY = y - surface.slope * Math.sin(up);
  return {
    holed,
    passed: short ? beside : offset,
    beside,
    along: lipped ? LIPPED : along,
    leave: Math.hypot(restX, restY),
    x: pass.restX,
    y: pass.restY,
    lineError,
    paceError,
    seenAlong: slopeX * towardX + slopeY * towardY,
    seenAcross: slopeY * towardX - slopeX * towardY,
  };
}

export interface Recording {
  readonly putts: readonly RecordedPutt[];
  readonly rounds: readonly RecordedRound[];
}

/** So many putts of whole rounds, the last cut short. */
export function recordRounds(
  golfer: Golfer,
  habits: RecordingHabits,
  seed: string,
  count: number,
): Recording {
  const random = seededRandom(seed);
  const normal = normalsOf(random);
  const { player, tails, means = 'varied', days = { pace: 0, read: 0 }, rim = 1 } = golfer;
  const { says, leavesOut = 0.1, saidAsSeen = 0.5, feet = [16, 0.65] } = habits;
  const { bands = { start: degreesToRadians(1), pace: 0.1 } } = habits;
  const error = (): number => {
    if (tails === undefined) return normal();
    // Student: normal over the root of a chi-square's mean; half degrees by a gamma of Marsaglia & Tsang (2000).
    return normal() / Math.sqrt((2 * gamma(tails / 2, random, normal)) / tails) / T_68[tails];
  };
  const judged = (value: number, share: number, least: number): number =>
    value * Math.exp(share * normal()) + least * normal();
  const putts: RecordedPutt[] = [];
  const rounds: RecordedRound[] = [];
  while (putts.length < count) {
    const roundId = `r${rounds.length}`;
    const greenSpeed = feetToMetres(8.5 + 2 * random());
    const today = {
      ...player,
      paceBias: player.paceBias + days.pace * normal(),
      readBias: player.readBias + days.read * normal(),
    };
    rounds.push({
      id: roundId,
      day: `2026-05-${String(1 + (rounds.length % 28)).padStart(2, '0')}`,
      startedAt: rounds.length,
      holes: 18,
      withoutPutt: [],
      ...(habits.greenSpeed && { greenSpeed: Math.round(greenSpeed / 0.1524) * 0.1524 }),
    });
    for (let hole = 1; hole <= 18 && putts.length < count; hole++) {
      const length = feetToMetres(Math.max(2, Math.min(60, feet[0] * Math.exp(feet[1] * normal()))));
      const slope = random() < 0.05 ? 0.002 * random() : 0.005 + 0.025 * random();
      const bearing = 2 * Math.PI * random();
      let ball = { x: length * Math.cos(bearing), y: length * Math.sin(bearing) };
      for (let stroke = 1; stroke <= 5 && putts.length < count; stroke++) {
        const putt: Putt = {
          surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
          greenSpeed,
          ball,
          hole: { x: 0, y: 0 },
          capture: 'rim',
        };
        const chosen = random();
        const word = means === 'varied' ? (chosen < 0.2 ? 'die' : chosen < 0.8 ? 'normal' : 'firm') : means;
        const pace = inchesToMetres(PACE_INCHES[word]) * Math.exp(0.1 * normal());
        const plain = golfer.habitsOnFirstOnly && stroke > 1 ? { ...today, paceBias: 0, readBias: 0 } : today;
        const roll = plainRoll(putt, pace, plain, error, rim);
        if (roll === undefined) break;
        const one = written(putt, roll, pace, stroke);
        const { miss, ...fields } = one;
        putts.push({
          id: `p${putts.length}`,
          roundId,
          hole,
          stroke,
          kind: 'putt',
          recordedAt: putts.length,
          ...fields,
          ...(says.paceMeant && one.climb !== undefined && { paceMeant: word }),
          ...(miss && { miss }),
        });
        if (roll.holed || habits.firstOnly) break;
        ball = { x: roll.x, y: roll.y };
      }
    }
  }
  return { putts, rounds };

  function written(
    putt: Putt,
    roll: SeenRoll,
    pace: number,
    stroke: number,
  ): Omit<RecordedPutt, 'id' | 'roundId' | 'hole' | 'stroke' | 'kind' | 'recordedAt'> {
    const length = Math.hypot(putt.ball.x, putt.ball.y);
    const { surface } = putt;
    if (surface.kind !== 'plane') throw new Error('Got a field; expected a plane.');
    const zero = bearingOf(putt);
    // Words: the ground as it is, partly as it was seen, and a fifth and a quarter of a per cent off on top.
    const along = surface.slope * Math.sin(zero) + saidAsSeen * roll.seenAlong;
    const across = surface.slope * Math.cos(zero) + saidAsSeen * roll.seenAcross;
    const rise = judged(along, 0.2, 0.002);
    const felt = judged(Math.hypot(along, across), 0.2, 0.002);
    const said = planeSurface({
      slope: Math.min(0.045, Math.hypot(along, across)),
      downhill: zero + Math.atan2(-across, -along),
    });
    const walk = new LineWalk({ ...putt, surface: said });
    const line = walk.reason === undefined ? walk.lineAt(pace) : undefined;
    const aim = line ? Math.max(-1.4, Math.min(1.4, startOf(putt, line.heading))) : 1.4;
    const seenAim = judged(length * Math.tan(aim), 0.15, 0.02);
    const breaks = Math.abs(seenAim) < HOLE_RADIUS ? 'straight' : seenAim > 0 ? 'leftToRight' : 'rightToLeft';
    const trueWalk = new LineWalk(putt);
    const trueLine = trueWalk.reason === undefined ? trueWalk.lineAt(pace) : undefined;
    const highIsLeft = trueLine === undefined || startOf(putt, trueLine.heading) >= 0;
    const across0 = (habits.sideByFinish ? roll.beside : roll.passed) + 0.03 * normal();
    const onLeft = across0 > 0 === highIsLeft;
    const says1 = random() > (length < 0.9 ? 0.5 : leavesOut);
    const side =
      Math.abs(across0) < HOLE_RADIUS
        ? 'online'
        : breaks === 'straight' || !says1
          ? onLeft
            ? 'left'
            : 'right'
          : onLeft === (breaks === 'leftToRight')
            ? 'high'
            : 'low';
    const seenLeave = Math.max(0.05, judged(roll.leave, 0.07, 0.02));
    const inches = nearest(seenLeave / inchesToMetres(1), LEFT_INCHES);
    // One answer in ten is wrong.
    const answer = (inside: boolean): boolean => inside !== random() < 0.1;
    const started = answer(Math.abs(roll.lineError) < bands.start);
    const paced = answer(Math.abs(roll.paceError) < bands.pace);
    const miss: RecordedMiss = {
      leave: inchesToMetres(inches),
      ...(says.side && { side }),
      ...(says.reach && { reach: roll.along + 0.05 * normal() < 0 ? 'short' : 'past' }),
    };
    const slip = <T>(word: T, others: readonly T[]): T =>
      random() < 0.01 ? others[Math.floor(random() * others.length)] : word;
    return {
      distance: feetToMetres(nearest(judged(length, stroke > 1 ? 0.07 : 0.04, 0) / 0.3048, FEET)),
      holed: roll.holed,
      ...(!roll.holed && { miss }),
      ...(says.climb &&
        says1 && {
          climb: slip(rise > 0.005 ? 'up' : rise < -0.005 ? 'down' : 'level', ['up', 'level', 'down']),
        }),
      ...(says.breaks && says1 && { breaks }),
      ...(says.slopeFelt &&
        says1 && { slopeFelt: felt < 0.01 ? 'gentle' : felt > 0.02 ? 'steep' : 'medium' }),
      ...(says.asMeant && says1 && { startedAsMeant: started, paceAsMeant: paced }),
    };
  }
}

/** Marsaglia & Tsang 2000, shape 1 and above. */
function gamma(shape: number, random: () => number, normal: () => number): number {
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal();
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}
