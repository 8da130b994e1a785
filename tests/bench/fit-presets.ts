/**
 * Fits the presets and their families to the published records and prints the numbers for sim/player/fitted.ts, beside those that stand
 * there. Run after any change of the engine that moves odds: `npx tsx tests/bench/fit-presets.ts [record]`, ten minutes a record. Members
 * of a family differ in the slope error that is held; start line and pace are fitted to the record by distance.
 */
import {
  BENCHMARK_CAPTURE,
  compareWithRecord,
  FITTED_FAMILIES,
  FITTED_PLAYERS,
  fitPlayer,
  misfitOf,
  type Player,
  PUBLISHED_PLAYERS,
  type PublishedPlayer,
  radiansToDegrees,
} from '../../sim/index.ts';

const words = ({ lineSd, paceSd, slopeSd, speedSd }: Player): string =>
  `playerOf(${radiansToDegrees(lineSd).toFixed(2)}, ${paceSd.toFixed(3)}, ${slopeSd.toFixed(4)}, ${speedSd.toFixed(3)})`;

const fitAndPrint = (record: PublishedPlayer): void => {
  const begun = performance.now();
  const stored = FITTED_PLAYERS[record];
  const best = fitPlayer(
    record,
    record === 'tour'
      ? {}
      : { slopeSd: stored.slopeSd, paceSd: record === 'scratch' ? stored.paceSd : undefined },
  );
  console.log(`\n${record}: ${best.status}, misfit ${best.misfit.toFixed(3)}, ${words(best.player)}`);
  const compared = compareWithRecord(record, stored);
  console.log(`  stored: misfit ${misfitOf(compared).toFixed(3)}, ${words(stored)}`);
  for (const { figure, ours, scaled, fitted } of compared)
    console.log(
      `  ${figure.feet.toFixed(2).padStart(6)} ft ${figure.what.padEnd(10)} published ${figure.value.toFixed(4)}, ours ${ours.toFixed(4)}, difference ${scaled.toFixed(1)}${fitted ? '' : ' (not fitted)'}`,
    );
  for (const member of [stored, ...FITTED_FAMILIES[record]]) {
    const { slopeSd, speedSd } = member;
    const { status, player, misfit } = fitPlayer(record, {
      slopeSd,
      speedSd,
      paceSd: record === 'scratch' ? member.paceSd : undefined,
    });
    console.log(`  family: ${status}, misfit by distance ${misfit.toFixed(3)}, ${words(player)}`);
  }
  console.log(`  ${((performance.now() - begun) / 1000).toFixed(0)} s`);
};

console.log(`capture rule: ${BENCHMARK_CAPTURE}`);
const [asked] = process.argv.slice(2);
for (const record of PUBLISHED_PLAYERS) if (asked === undefined || asked === record) fitAndPrint(record);
