/**
 * Does the 95% interval of the player's curve hold what golfers hole in the long run? Golfers of published tables, tour and averaging 90,
 * write rounds down (tests/support/streakyPutter.ts); printed is how often in a hundred the interval holds the truth, with its mean
 * width and how far its middle is off, in points. The table of MODEL.md, section 5; run it again when presets or the family change.
 *
 *     npx tsx tests/bench/curve-coverage.ts [GOLFERS]
 *
 * GOLFERS of each kind, default 300: about two minutes.
 */
import {
  curveFamilyOf,
  curveShareAt,
  feetToMetres,
  holingCurve,
  puttingBenchmarkOf,
} from '../../sim/index.ts';
import { PUTTERS, putterRecord, talliesOfNoted } from '../support/streakyPutter.ts';

const GOLFERS = Number(process.argv[2] ?? 300);
const FEET = [3, 5, 10, 20];
const BESIDE = ['tour-record', 'scratch-modelled', 'averaging-90-modelled'];
const ROUNDS = [3, 12, 50];

console.log(
  `| golfers | SD of a day | rounds | benchmark | ${FEET.map((feet) => `${feet} ft`).join(' | ')} |`,
);
console.log(`|${' --- |'.repeat(4 + FEET.length)}`);
for (const [name, putter] of Object.entries(PUTTERS))
  for (const daySd of [0, 0.3])
    for (const rounds of ROUNDS) {
      const records = Array.from({ length: GOLFERS }, (_, golfer) =>
        putterRecord({ ...putter, daySd }, rounds, `${name} ${daySd} ${rounds} ${golfer}`),
      );
      for (const id of BESIDE) {
        const benchmark = puttingBenchmarkOf(id);
        if (benchmark === undefined) throw new Error(`Got no benchmark '${id}'; expected one of BENCHMARKS.`);
        const family = curveFamilyOf(benchmark);
        const sums = FEET.map(() => ({ held: 0, width: 0, off: 0 }));
        for (const record of records) {
          const curve = holingCurve(talliesOfNoted(record), family);
          for (const [k, feet] of FEET.entries()) {
            const { low, high, mean } = curveShareAt(curve, feetToMetres(feet));
            const truth = record.truth(feet);
            sums[k].held += truth >= low && truth <= high ? 1 : 0;
            sums[k].width += high - low;
            sums[k].off += mean - truth;
          }
        }
        const points = (sum: number, digits: number): string => ((100 * sum) / GOLFERS).toFixed(digits);
        const cells = sums.map(
          ({ held, width, off }) => `${points(held, 0)} (${points(width, 0)}, ${points(off, 1)})`,
        );
        console.log(`| ${name} | ${daySd} | ${rounds} | ${id} | ${cells.join(' | ')} |`);
      }
    }
