/**
 * `npm run bench`: how much faster the engine is than doing it the plain way, as ratios within one run, and times for
 * information. Asserts nothing.
 *
 * Answers for: 41 paces compared, against a Monte Carlo that gets every holed share to a standard error of 0.1 points (the
 * engine promises 0.2 of the truth). Single rolls are in rolls.ts,
 * maps of a whole green in maps.ts, fits of a player in fits.ts.
 * The Monte Carlo is not run in full, which would take an hour: a sample of its rolls at all 41 paces is timed, and the
 * number of rolls each pace needs follows from its holed share p, p (1 - p) / 0.001^2. It is spared the search for its
 * lines (a ground seen anew for every ball), second putts and (on a green) the surface itself, of which it uses a table: the true ratios are larger. A second
 * row says what is gained over counting the engine's own rolls, so by integrating alone.
 * Leaves out: accuracy of the odds (tests/sim/odds).
 */
import { comparePaces, prepareNextPutts, readPutt } from '../../sim/index.ts';
import { bearingOf, rollerFor } from '../../sim/roll/roll.ts';
import { newPass } from '../../sim/roll/roller.ts';
import { fitRows } from './fits.ts';
import { mapRows } from './maps.ts';
import { normals, plainCapture, struckOf } from './oracle.ts';
import { CASES, playerOf, puttOf } from './oracle-cases.ts';
import { type PlainLine, plainLine } from './oracle-line.ts';
import { newPlainRoll, PLAIN_STEP, rollPlain, settingOf } from './oracle-roll.ts';
import { type RollRow, rollRows } from './rolls.ts';
import { milliseconds, type RatioRow, type Subject, timeOf, times } from './timing.ts';

/** Paces compared: 0.05 to 1.5 m, m. */
const PACES = Array.from({ length: 41 }, (_, i) => 0.05 + (1.45 * i) / 40);
/** Standard error of a holed share at which the two are equals. */
const EQUAL_ERROR = 0.001;
function subjectOf(caseName: string, name: string, target: string): Subject {
  const found = CASES.find((one) => one.name === caseName);
  if (found === undefined) throw new Error(`no case named ${caseName}`);
  return { name, putt: puttOf(found), player: playerOf(found.player), target };
}
const SUBJECTS = [
  subjectOf('pin-high 3 m on 2%, die', 'plane', 'at least 500'),
  subjectOf('4 m on a green', 'green', 'at least 100'),
];
/** Times asked for of one roll, fixed steps over the engine. */
const ROLL_TARGETS = ['at least 200', 'at least 30'];

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
    for (const line of lines) {
      const { heading, speed } = struckOf(line, player, normal);
      rollPlain(setting, putt.ball, heading, speed, out, capture);
    }
  }, 2000);
  return time / lines.length;
}

const rows: RatioRow[] = [];
const single: RollRow[] = [];
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
  single.push(...(await rollRows(subject, ROLL_TARGETS[SUBJECTS.indexOf(subject)])));
}

console.table(rows);
console.table(single);
console.table(await mapRows(SUBJECTS[1]));
console.table([...information, ...fitRows()]);
