/**
 * The bench's rows about single rolls: the engine's against fixed steps of 1 ms, and against odex at the tolerance whose
 * error is nearest above the engine's own. Speed and accuracy stand side by side: rests, each against odex at 1e-12.
 *
 * Both sides roll the same balls, a fan about the line of the subject: some pass beside the hole, some drop, some stop short.
 * The fixed steps have a table of a green's gradient, which is faster than the surface itself and part of their error.
 */
import {
  type FieldSurface,
  type HeightSample,
  type Putt,
  readPutt,
  type Surface,
  sampleSurface,
} from '../../sim/index.ts';
import { roughRoller } from '../../sim/roll/field.ts';
import { FINISH_REACH } from '../../sim/roll/field-finish.ts';
import { bearingOf, rollerFor } from '../../sim/roll/roll.ts';
import { newPass, type Roller } from '../../sim/roll/roller.ts';
import { fieldBounds, splineOf } from '../../sim/surface/field.ts';
import { splineGradient } from '../../sim/surface/spline.ts';
import { odexRoll } from './odex-plane.ts';
import { type Gradient, newPlainRoll, PLAIN_STEP, rollPlain, settingOf } from './oracle-roll.ts';
import { milliseconds, type RatioRow, type Subject, timeOf, times } from './timing.ts';

/** Off the line, radians, and times its speed. */
const TURNS = [-0.05, -0.02, 0, 0.02, 0.05];
const PUSHES = [0.93, 0.98, 1, 1.03, 1.08];
/** No place on a generated green is steeper, rise over run. */
const STEEPEST_GREEN = 0.07;
/** Tolerances odex is tried at, loosest first. */
const TOLERANCES = Array.from({ length: 10 }, (_, i) => 10 ** -(3 + i));

export interface RollRow extends RatioRow {
  /** Largest distance of a rest from that of odex at 1e-12. */
  readonly engineError: string;
  readonly plainError: string;
}

/** The gradient as the engine has it, not the fixed steps' table: odex rolls the same ground as the engine. */
const trueGradient = (surface: Surface): Gradient => {
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  return (x, y, out) => {
    const on = sampleSurface(surface, x, y, sample);
    out[0] = sample.gradientX;
    out[1] = sample.gradientY;
    return on;
  };
};

/**
 * The engine's roll with steps of at most half its usual length. On a grid the error is that of the bends of the gradient from
 * cell to cell inside a step, and falls with the steps, not with the error allowed: on some greens fixed steps of 1 ms (2 mm
 * of way) beat the usual 75 cm at that, on others their table loses. This row's steps are ahead on the three greens of oracle-cases.ts.
 */
function finerRoller(putt: Putt, surface: FieldSurface): Roller {
  const { greenSpeed, ball, hole } = putt;
  const spline = splineOf(surface);
  return roughRoller({
    gradientAt: (place, out) => splineGradient(spline, place, out),
    bounds: fieldBounds(surface),
    cell: surface.spacing / 2,
    finishReach: FINISH_REACH,
    greenSpeed,
    ball,
    hole,
  });
}

const metres = (error: number): string => `${error.toExponential(0)} m`;

export async function rollRows({ name, putt }: Subject, target: string): Promise<RollRow[]> {
  const read = readPutt(putt, 0.3);
  if (read.status !== 'ok') throw new Error(read.reason);
  const heading = bearingOf(putt) + read.start;
  const fan = TURNS.flatMap((turn) =>
    PUSHES.map((push) => ({ heading: heading + turn, speed: push * read.speed })),
  );
  const { surface, greenSpeed, ball, hole } = putt;
  const ground =
    surface.kind === 'plane'
      ? { slope: surface.slope, downhill: surface.downhill }
      : { slope: STEEPEST_GREEN, downhill: 0, gradient: trueGradient(surface) };
  const byOdex = { ...ground, greenSpeed, ball, hole };
  const truths = fan.map((one) => odexRoll(byOdex, one.heading, one.speed).rest);
  const worst = (rest: (index: number) => { readonly x: number; readonly y: number }): number =>
    Math.max(
      ...truths.map((truth, index) => {
        const { x, y } = rest(index);
        return Math.hypot(x - truth.x, y - truth.y);
      }),
    );

  const roller = rollerFor(putt);
  const skidder = rollerFor({ ...putt, skid: true });
  const pass = newPass();
  const setting = settingOf(putt, PLAIN_STEP);
  const out = newPlainRoll();
  const mine = worst((index) => {
    const { restX, restY } = roller.pass(fan[index].heading, fan[index].speed, pass);
    return { x: restX, y: restY };
  });
  const stepped = worst((index) => rollPlain(setting, ball, fan[index].heading, fan[index].speed, out));
  const solvedTo = (tolerance: number): number =>
    worst((index) => odexRoll(byOdex, fan[index].heading, fan[index].speed, tolerance).rest);
  // The loosest that is no worse than the engine; on a plane none is, and the strictest stands for it.
  const tolerance = TOLERANCES.find((one) => solvedTo(one) <= mine) ?? TOLERANCES[TOLERANCES.length - 1];

  /**
   * Median time of one roll, ms. One ball per timed call: on a busy machine longer tasks are more often interrupted, which
   * flatters whoever is faster.
   */
  const each = async (roll: (one: (typeof fan)[number]) => unknown): Promise<number> => {
    let next = 0;
    return timeOf(() => roll(fan[next++ % fan.length]), 1000);
  };
  const engine = await each((one) => roller.pass(one.heading, one.speed, pass));
  const row = (against: string, time: number, error: number, asked: string): RollRow => ({
    what: `one roll, ${name}`,
    engine: milliseconds(engine),
    against,
    plain: milliseconds(time),
    ratio: times(time / engine),
    target: asked,
    engineError: metres(mine),
    plainError: metres(error),
  });
  const steps = await each((one) => rollPlain(setting, ball, one.heading, one.speed, out));
  const solved = await each((one) => odexRoll(byOdex, one.heading, one.speed, tolerance));
  const skid = await each((one) => skidder.pass(one.heading, 1.31 * one.speed, pass));
  const finer: RollRow[] = [];
  if (surface.kind === 'field') {
    const roller = finerRoller(putt, surface);
    const error = worst((index) => {
      const { restX, restY } = roller.pass(fan[index].heading, fan[index].speed, pass);
      return { x: restX, y: restY };
    });
    const time = await each((one) => roller.pass(one.heading, one.speed, pass));
    finer.push({
      ...row('fixed steps of 1 ms', steps, stepped, target),
      what: `one roll, ${name}, steps half as long`,
      engine: milliseconds(time),
      ratio: times(steps / time),
      engineError: metres(error),
    });
  }
  return [
    row('fixed steps of 1 ms', steps, stepped, target),
    ...finer,
    row(`odex at ${tolerance}`, solved, solvedTo(tolerance), ''),
    { ...row('itself with the skid', skid, 0, ''), plainError: '' },
  ];
}
