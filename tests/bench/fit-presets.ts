/**
 * Fits the presets to the published records and prints the numbers for sim/player/presets.ts, beside those that stand there.
 * Run after any change of the engine that moves odds: `npx tsx tests/bench/fit-presets.ts [tour|scratch|averaging90] [share]`.
 * The second word sets another share of reading, to see what the records can tell of it.
 */
import {
  BENCHMARK_CAPTURE,
  compareWithRecord,
  fitPlayer,
  misfitOf,
  type Player,
  PRESETS,
  PUBLISHED_PLAYERS,
  RECORD_PRESETS,
  radiansToDegrees,
} from '../../sim/index.ts';

const words = ({ lineSd, paceSd, readSd }: Player): string =>
  `line ${radiansToDegrees(lineSd).toFixed(3)} deg, pace ${(100 * paceSd).toFixed(2)}%, read ${(100 * readSd).toFixed(1)}%`;

const [only, share] = process.argv.slice(2);
console.log(`capture rule: ${BENCHMARK_CAPTURE}`);
for (const record of PUBLISHED_PLAYERS) {
  if (only !== undefined && only !== 'all' && only !== record) continue;
  const begun = performance.now();
  const { status, player, misfit } = fitPlayer(record, share === undefined ? undefined : Number(share));
  console.log(`\n${record}: ${status}, misfit ${misfit.toFixed(3)}, ${words(player)}`);
  const stored = PRESETS.find(({ id }) => id === RECORD_PRESETS[record]);
  if (stored) {
    const storedMisfit = misfitOf(compareWithRecord(record, stored.player));
    console.log(`  stored: misfit ${storedMisfit.toFixed(3)}, ${words(stored.player)}`);
  }
  for (const { figure, ours, scaled, fitted } of compareWithRecord(record, player))
    console.log(
      `  ${figure.feet.toFixed(2).padStart(6)} ft ${figure.what.padEnd(9)} published ${figure.value.toFixed(4)}, ours ${ours.toFixed(4)}, difference ${scaled.toFixed(1)}${fitted ? '' : ' (not fitted)'}`,
    );
  console.log(`  ${((performance.now() - begun) / 1000).toFixed(0)} s`);
}
