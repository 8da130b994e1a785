/**
 * Fits the presets to the published records and prints the numbers for sim/player/fitted.ts, beside those that stand there.
 * Run after any change of the engine that moves odds: `npx tsx tests/bench/fit-presets.ts`, some minutes.
 * `npx tsx tests/bench/fit-presets.ts 0.3` takes another share of reading, to see what the records can tell of it.
 */
import {
  BENCHMARK_CAPTURE,
  compareWithRecord,
  fitPlayer,
  misfitOf,
  type Player,
  type PlayerFit,
  type PublishedPlayer,
  presetOf,
  RECORD_PRESETS,
  radiansToDegrees,
  scratchPaceSd,
} from '../../sim/index.ts';

const words = ({ lineSd, paceSd, readSd }: Player): string =>
  `line ${radiansToDegrees(lineSd).toFixed(3)} deg, pace ${(100 * paceSd).toFixed(2)}%, read ${(100 * readSd).toFixed(1)}%`;

const [share] = process.argv.slice(2);
const readingShare = share === undefined ? undefined : Number(share);

const fitAndPrint = (record: PublishedPlayer, paceSd?: number): PlayerFit => {
  const begun = performance.now();
  const fitted = fitPlayer(record, { readingShare, paceSd });
  console.log(`\n${record}: ${fitted.status}, misfit ${fitted.misfit.toFixed(3)}, ${words(fitted.player)}`);
  const stored = presetOf(RECORD_PRESETS[record]);
  if (stored) {
    const misfit = misfitOf(compareWithRecord(record, stored.player));
    console.log(`  stored: misfit ${misfit.toFixed(3)}, ${words(stored.player)}`);
  }
  for (const { figure, ours, scaled, fitted: takesPart } of compareWithRecord(record, fitted.player))
    console.log(
      `  ${figure.feet.toFixed(2).padStart(6)} ft ${figure.what.padEnd(9)} published ${figure.value.toFixed(4)}, ours ${ours.toFixed(4)}, difference ${scaled.toFixed(1)}${takesPart ? '' : ' (not fitted)'}`,
    );
  console.log(`  ${((performance.now() - begun) / 1000).toFixed(0)} s`);
  return fitted;
};

console.log(`capture rule: ${BENCHMARK_CAPTURE}`);
const tour = fitAndPrint('tour');
const averaging90 = fitAndPrint('averaging90');
fitAndPrint('scratch', scratchPaceSd(tour.player, averaging90.player));
