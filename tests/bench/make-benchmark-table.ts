/**
 * Writes sim/benchmarks/modelled-data.ts: what the fitted presets make of the mix of putts (sim/benchmarks/mix.ts), distance by
 * distance. Some minutes on one core; run it again when presets or odds change: `npx tsx tests/bench/make-benchmark-table.ts`.
 */
import { writeFileSync } from 'node:fs';
import { CLUB_MIX, feetToMetres, playMix, presetOf, TOUR_MIX } from '../../sim/index.ts';

const FILE = new URL('../../sim/benchmarks/modelled-data.ts', import.meta.url);

/** Dense where shares change fast. */
const FEET = [
  1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 23, 26, 30, 35, 40, 45, 50, 60, 70,
  80, 100,
];

/** Preset, and the greens it plays (MODEL.md, section 3). */
const PLAYERS = [
  ['tour', TOUR_MIX],
  ['scratch', CLUB_MIX],
  ['handicap-6', CLUB_MIX],
  ['averaging-90', CLUB_MIX],
] as const;

/** Twice as fine as the mix is usually summed, and more: what is left is below what a row is rounded to elsewhere. */
const FINENESS = { slopes: 4, greenSpeeds: 2, directions: 9 };
/** A share missed below this is rounding of the normal distribution (sim/maths/normal.ts: 7.5e-8): the row is left out. */
const LEAST_MISSED = 1e-6;

const tables: string[] = [];
for (const [id, mix] of PLAYERS) {
  const begun = performance.now();
  const preset = presetOf(id);
  if (preset === undefined) throw new Error(`Got no preset '${id}'; expected one. Mend PLAYERS.`);
  const rows = playMix({ mix, lengths: FEET.map(feetToMetres), player: preset.player, fineness: FINENESS });
  const lines = rows.flatMap(({ played, holed, threePutt, expectedPutts }, i) => {
    if (played < 1)
      throw new Error(`Got a line for ${played} of the mix at ${FEET[i]} ft; expected all of it.`);
    const missed = 1 - holed;
    if (missed < LEAST_MISSED) return [];
    const later = Math.max(0, expectedPutts - 1 - missed - threePutt);
    const values = [
      Number(missed.toPrecision(5)),
      Number(threePutt.toPrecision(4)),
      Number(later.toFixed(6)),
    ];
    return [`    [${FEET[i]}, ${values.join(', ')}],`];
  });
  tables.push(`  '${id}': [\n${lines.join('\n')}\n  ],\n`);
  console.log(`${id}: ${lines.length} rows, ${((performance.now() - begun) / 1000).toFixed(0)} s`);
}

writeFileSync(
  FILE,
  `/**
 * Numbers made by \`npx tsx tests/bench/make-benchmark-table.ts\` from the presets of sim/player/fitted.ts: do not edit. Fineness
 * and mix: mix.ts.
 */

/** Distance (feet); share missed; share of at least three putts; mean number of fourth putts and later ones. */
export type ModelledRow = readonly [feet: number, missed: number, threePutt: number, laterPutts: number];

export const MODELLED_ROWS: Readonly<Record<string, readonly ModelledRow[]>> = {
${tables.join('')}};
`,
);
