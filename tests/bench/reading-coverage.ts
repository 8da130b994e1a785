/**
 * Does the 95% interval of the reading bias hold it, when days differ? Sloppy people (tests/support/sloppyReader.ts); printed is how often in a
 * hundred, with its mean width in points. The table of MODEL.md, section 5.
 *
 *     npx tsx tests/bench/reading-coverage.ts [PEOPLE]
 *
 * PEOPLE of each kind, default 1000: about a minute.
 */
import { readingBias } from '../../sim/index.ts';
import { readsBy } from '../support/sloppyReader.ts';

const PEOPLE = Number(process.argv[2] ?? 1000);
const DAYS = [1, 2, 3, 6, 12, 30];

console.log(
  `| days differ by | ${DAYS.map((days) => (days === 1 ? '1 day' : `${days} days`)).join(' | ')} |`,
);
console.log(`|${' --- |'.repeat(1 + DAYS.length)}`);
const held = DAYS.map(() => 0);
const SDS = [0, 0.05, 0.1, 0.15, 0.2];
for (const daySd of SDS) {
  const cells = DAYS.map((days, k) => {
    let [inside, width] = [0, 0];
    for (let person = 0; person < PEOPLE; person++) {
      const spread = [0.2, 0.35, 0.55][person % 3];
      const bias = [-0.3, 0, 0.15][Math.floor(person / 3) % 3];
      const found = readingBias(readsBy({ bias, spread, daySd }, days, `${daySd} ${days} ${person}`));
      if (found === undefined) continue;
      if (found.low <= bias && bias <= found.high) inside++;
      width += found.high - found.low;
    }
    held[k] += inside;
    return `${((100 * inside) / PEOPLE).toFixed(1)} (${((100 * width) / PEOPLE).toFixed(0)})`;
  });
  console.log(`| ${100 * daySd}% | ${cells.join(' | ')} |`);
}
console.log(`| all | ${held.map((sum) => ((100 * sum) / PEOPLE / SDS.length).toFixed(1)).join(' | ')} |`);
