/**
 * `npm run bench`: how much faster the engine is than doing it the plain way, as ratios within one run, and times for
 * information. Asserts nothing.
 *
 * Answers for: 41 paces compared, against a Monte Carlo that gets every holed share to a standard error of 0.1 points (the
 * engine promises 0.2 of the truth); one roll, against fixed steps of 1 ms and against odex at the same tolerance.
 * The Monte Carlo is not run in full, which would take an hour: a sample of its rolls at all 41 paces is timed, and the
 * number of rolls each pace needs follows from its holed share p, p (1 - p) / 0.001^2. It is spared the search for its
 * lines, second putts and (on a green) the surface itself, of which it uses a table: the true ratios are larger. A second
 * row says what is gained over counting the engine's own rolls, so by integrating alone.
 * Leaves out: accuracy (tests/sim/odds, tests/sim/roll, tests/sim/read).
 */
import { Bench } from 'tinybench';
import {
  comparePaces,
  emptyGreenMap,
  filledIn,
  generateGreen,
  type HeightSample,
  PLACE_STATUS,
  type Player,
  type Putt,
  pinSpots,
  placesToPlay,
  playPlaces,
  prepareNextPutts,
  readPutt,
  type Surface,
  sampleSurface,
  wholeGreen,
  withPlayed,
} from '../../sim/index.ts';
import { bearingOf, rollerFor } from '../../sim/roll/roll.ts';
import { newPass } from '../../sim/roll/roller.ts';
import { odexRoll } from './odex-plane.ts';
import { normals, plainCapture, strike } from './oracle.ts';
import { CASES, playerOf, puttOf } from './oracle-cases.ts';
import { type PlainLine, plainLine } from './oracle-line.ts';
import { type Gradient, newPlainRoll, PLAIN_STEP, rollPlain, settingOf } from './oracle-roll.ts';

/** Paces compared: 0.05 to 1.5 m, m. */
const PACES = Array.from({ length: 41 }, (_, i) => 0.05 + (1.45 * i) / 40);
/** Standard error of a holed share at which the two are equals. */
const EQUAL_ERROR = 0.001;
/** Accuracy of the engine's roll asked of odex for its row, m: a closed form has rounding only, a field's roll aims at 0.1 mm. */
const CLOSED_FORM_TOLERANCE = 1e-12;
const FIELD_TOLERANCE = 1e-4;
/** No place on a generated green is steeper, rise over run. */
const STEEPEST_GREEN = 0.07;

interface Subject {
  readonly name: string;
  readonly putt: Putt;
  readonly player: Player;
  /** Times asked for by the issues, the Monte Carlo over the comparison. */
  readonly target: string;
}

function subjectOf(caseName: string, name: string, target: string): Subject {
  const found = CASES.find((one) => one.name === caseName);
  if (found === undefined) throw new Error(`no case named ${caseName}`);
  return { name, putt: puttOf(found), player: playerOf(found.player), target };
}
const SUBJECTS = [
  subjectOf('pin-high 3 m on 2%, die', 'plane', 'at least 200'),
  subjectOf('4 m on a green', 'green', '100, asked by a later issue'),
];

/** Median time of one call, ms. */
async function timeOf(task: () => unknown, budget: number): Promise<number> {
  const bench = new Bench({ time: budget, iterations: 3, warmupTime: budget / 5, warmupIterations: 1 });
  bench.add('task', task);
  await bench.run();
  const { result } = bench.tasks[0];
  if (!('latency' in result)) throw new Error(`the benchmark did not complete: ${result.state}`);
  return result.latency.p50;
}

/** Mean time of one roll of the Monte Carlo over all paces, ms; each call of the timed task rolls one ball per pace. */
async function plainRollTime({ putt, player }: Subject): Promise<number> {
  const setting = settingOf(putt, PLAIN_STEP);
  const lines = PACES.map((pace) => plainLine(setting, putt.ball, pace, 1e-4)).filter(
    (line): line is PlainLine => line !== undefined,
  );
  const capture = plainCapture(putt.capture);
  const normal = normals('bench');
  const out = newPlainRoll();
  const time = await timeOf(() => {
    for (const line of lines) strike(setting, putt.ball, line, player, capture, normal, out);
  }, 2000);
  return time / lines.length;
}

/** The gradient as the engine has it, not the Monte Carlo's table: odex rolls the same ground as the engine. */
const trueGradient = (surface: Surface): Gradient => {
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  return (x, y, out) => {
    const on = sampleSurface(surface, x, y, sample);
    out[0] = sample.gradientX;
    out[1] = sample.gradientY;
    return on;
  };
};

const milliseconds = (time: number): string =>
  time < 1 ? `${(1000 * time).toFixed(1)} us` : `${time.toFixed(time < 100 ? 1 : 0)} ms`;
const times = (ratio: number): string =>
  ratio < 10 ? ratio.toFixed(1) : Math.round(ratio).toLocaleString('en');

interface RatioRow {
  readonly what: string;
  readonly engine: string;
  readonly against: string;
  readonly plain: string;
  readonly ratio: string;
  readonly target: string;
}
const rows: RatioRow[] = [];
const information: { what: string; time: string }[] = [];

for (const subject of SUBJECTS) {
  const { name, putt, player, target } = subject;
  const table = prepareNextPutts(putt, player);
  for (const policy of ['fixed', 'best'] as const)
    information.push({
      what: `next-putts table, ${policy} policy, ${name}`,
      time: milliseconds(await timeOf(() => prepareNextPutts(putt, player, { policy }), 1500)),
    });
  const comparison = comparePaces(putt, PACES, player, table);
  const rolls = comparison.rows.reduce((sum, { odds }) => {
    const p = odds?.holed ?? 0;
    return sum + (p * (1 - p)) / EQUAL_ERROR ** 2;
  }, 0);
  const engine = await timeOf(() => comparePaces(putt, PACES, player, table), 2000);
  const roller = rollerFor(putt);
  const pass = newPass();
  const compared = {
    what: `41 paces compared, ${name}, table warm`,
    engine: milliseconds(engine),
    target: '',
  };
  const read = readPutt(putt, 0.3);
  if (read.status !== 'ok') throw new Error(read.reason);
  const heading = bearingOf(putt) + read.start;
  const one = await timeOf(() => roller.pass(heading, read.speed, pass), 500);
  const plainRoll = await plainRollTime(subject);
  for (const [against, perRoll] of [
    ['plain rolls', plainRoll],
    ["of the engine's own rolls", one],
  ] as const)
    rows.push({
      ...compared,
      against: `${(rolls / 1e6).toFixed(1)} million ${against}`,
      plain: `${((perRoll * rolls) / 1000).toFixed(0)} s`,
      ratio: times((perRoll * rolls) / engine),
      target: perRoll === plainRoll ? target : '',
    });
  information.push({
    what: `read for one pace, ${name}`,
    time: milliseconds(await timeOf(() => readPutt(putt, 0.3), 500)),
  });

  const setting = settingOf(putt, PLAIN_STEP);
  const out = newPlainRoll();
  const stepped = await timeOf(() => rollPlain(setting, putt.ball, heading, read.speed, out), 500);
  const row = { what: `one roll, ${name}`, engine: milliseconds(one), target: '' };
  rows.push({
    ...row,
    against: 'fixed steps of 1 ms',
    plain: milliseconds(stepped),
    ratio: times(stepped / one),
  });
  const { surface } = putt;
  const ground =
    surface.kind === 'plane'
      ? { slope: surface.slope, downhill: surface.downhill }
      : { slope: STEEPEST_GREEN, downhill: 0, gradient: trueGradient(surface) };
  const byOdex = { ...ground, greenSpeed: putt.greenSpeed, ball: putt.ball, hole: putt.hole };
  const tolerance = surface.kind === 'plane' ? CLOSED_FORM_TOLERANCE : FIELD_TOLERANCE;
  const solved = await timeOf(() => odexRoll(byOdex, heading, read.speed, tolerance), 500);
  rows.push({
    ...row,
    against: `odex at ${tolerance}`,
    plain: milliseconds(solved),
    ratio: times(solved / one),
  });
}

/** Greens mapped, m, and finest spacings, m. */
const MAPPED = [
  [10, 0.5],
  [10, 0.25],
  [20, 0.5],
  [20, 0.25],
] as const;
for (const [sizeM, spacing] of MAPPED) {
  const surface = generateGreen({ seed: 3, sizeM });
  const hole = pinSpots(surface, 1, 1)[0];
  const { greenSpeed, capture } = SUBJECTS[1].putt;
  const putt: Putt = { surface, hole, ball: hole, greenSpeed, capture };
  const { player } = SUBJECTS[1];
  const question = { putt, player, table: prepareNextPutts(putt, player) };
  const empty = emptyGreenMap(putt, { spacing });
  // Once each: a map takes seconds, and its places are many alike.
  let began = performance.now();
  const first = placesToPlay(empty, 0);
  filledIn(withPlayed(empty, playPlaces(question, empty, first), question.table), question.table);
  const firstTime = performance.now() - began;
  began = performance.now();
  const map = wholeGreen(question, { spacing });
  const wholeTime = performance.now() - began;
  const played = map.status.reduce((count, status) => count + (status === PLACE_STATUS.played ? 1 : 0), 0);
  information.push(
    {
      what: `map of ${sizeM} x ${sizeM} m, first picture, ${first.length} places, one thread`,
      time: milliseconds(firstTime),
    },
    {
      what: `the same refined to ${100 * spacing} cm, ${played} of ${map.status.length} places`,
      time: milliseconds(wholeTime),
    },
  );
}

console.table(rows);
console.table(information);
