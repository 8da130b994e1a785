/**
 * Writes tests/sim/odds/oracle-values.json: the oracle's odds (oracle.ts) for the putts of oracle-cases.ts, with enough rolls
 * for standard errors below 0.1 points of holed and 0.12 of three-putts. Half an hour on one core; run it again when a
 * definition or a case changes: `npx tsx tests/bench/make-oracle-values.ts [name part]`. With a part of a name only those
 * cases are made anew.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { type Measured, type OracleOdds, oracleOdds } from './oracle.ts';
import { CASES, heightSumOf, playerOf, puttOf, type StoredValues } from './oracle-cases.ts';
import { LONG_STEP } from './oracle-roll.ts';

const FILE = new URL('../sim/odds/oracle-values.json', import.meta.url);
/** Standard errors wanted of the holed share and of three-putts. */
const HOLED_ERROR = 1e-3;
const THREE_PUTT_ERROR = 1.2e-3;
/** First rolls of each putt, played out, from which the numbers needed are reckoned; a tenth is added for what they are off. */
const PILOT = 2000;
const SPARE = 1.1;
/** Never fewer than these, for what else is counted. */
const LEAST_ROLLS = 140_000;
const LEAST_PLAYED_OUT = 60_000;

const needed = ({ value }: Measured, error: number, least: number): number =>
  Math.max(least, Math.ceil((SPARE * value * (1 - value)) / error ** 2 / 1000) * 1000);

const wanted = process.argv[2] ?? '';
const stored: StoredValues = existsSync(FILE)
  ? JSON.parse(readFileSync(FILE, 'utf8'))
  : { what: '', cases: [] };
const kept = new Map(stored.cases.map((one) => [one.case.name, one]));

for (const one of CASES) {
  if (!one.name.includes(wanted)) continue;
  const putt = puttOf(one);
  const seed = `stored ${one.name}`;
  const began = performance.now();
  const count = (from: string, rolls: number, playedOut: number): OracleOdds =>
    oracleOdds(putt, one.paceM, playerOf(one.player), { rolls, playedOut, seed: from, step: LONG_STEP });
  const pilot = count(`pilot ${one.name}`, PILOT, PILOT);
  const playedOut = needed(pilot.threePutt, THREE_PUTT_ERROR, LEAST_PLAYED_OUT);
  const rolls = Math.max(playedOut, needed(pilot.holed, HOLED_ERROR, LEAST_ROLLS));
  const odds = count(seed, rolls, playedOut);
  kept.set(one.name, {
    case: one,
    seed,
    stepS: LONG_STEP,
    rolls,
    playedOut,
    heightSum: heightSumOf(putt),
    odds,
  });
  const { holed, threePutt, lost } = odds;
  console.log(
    `${one.name}: holed ${(100 * holed.value).toFixed(2)}%, three-putt ${(100 * threePutt.value).toFixed(2)}%, lost ${lost}, ${((performance.now() - began) / 1000).toFixed(0)} s`,
  );
  const values: StoredValues = {
    what: 'Odds by the plain Monte Carlo of tests/bench/oracle.ts, made by tests/bench/make-oracle-values.ts; angles in radians, metres, shares; se = standard error. joint: start (from the ball-to-hole line) and launch energy (over that of the true line, less 1) as struck on the first putt, all of them, wherever the ball went: counted, and by derivatives.',
    cases: CASES.flatMap(({ name }) => kept.get(name) ?? []),
  };
  // Written after every case, so that a stopped run loses nothing.
  writeFileSync(FILE, `${JSON.stringify(values, undefined, 2)}\n`);
}
