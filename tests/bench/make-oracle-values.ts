/**
 * Writes tests/sim/odds/oracle-values.json: the oracle's odds (oracle.ts) for the putts of oracle-cases.ts, with enough rolls
 * for standard errors below 0.1 points. About a quarter of an hour on one core; run it again when a definition or a case
 * changes: `npx tsx tests/bench/make-oracle-values.ts [name part]`. With a part of a name only those cases are made anew.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { oracleOdds } from './oracle.ts';
import { CASES, heightSumOf, playerOf, puttOf, type StoredValues } from './oracle-cases.ts';
import { LONG_STEP } from './oracle-roll.ts';

const FILE = new URL('../sim/odds/oracle-values.json', import.meta.url);
const ROLLS = 500_000;
const PLAYED_OUT = 200_000;

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
  const odds = oracleOdds(putt, one.paceM, playerOf(one.player), {
    rolls: ROLLS,
    playedOut: PLAYED_OUT,
    seed,
    step: LONG_STEP,
  });
  kept.set(one.name, {
    case: one,
    seed,
    stepS: LONG_STEP,
    rolls: ROLLS,
    playedOut: PLAYED_OUT,
    heightSum: heightSumOf(putt),
    odds,
  });
  const { holed, threePutt, lost } = odds;
  console.log(
    `${one.name}: holed ${(100 * holed.value).toFixed(2)}%, three-putt ${(100 * threePutt.value).toFixed(2)}%, lost ${lost}, ${((performance.now() - began) / 1000).toFixed(0)} s`,
  );
  const values: StoredValues = {
    what: 'Odds by the plain Monte Carlo of tests/bench/oracle.ts, made by tests/bench/make-oracle-values.ts; angles in radians, metres, shares; se = standard error.',
    cases: CASES.flatMap(({ name }) => kept.get(name) ?? []),
  };
  // Written after every case, so that a stopped run loses nothing.
  writeFileSync(FILE, `${JSON.stringify(values, undefined, 2)}\n`);
}
