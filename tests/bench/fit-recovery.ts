/**
 * Does the fit of a player find the player? Players of known errors record putts (tests/support/recordingPlayer.ts) and are fitted:
 * how often 90% ranges hold the truth, how often a read bias is claimed, by bias, skill and number of putts. Its tables stand
 * in MODEL.md, section 5; run it again after any change to what is rolled, recorded or fitted.
 *
 *     npx tsx tests/bench/fit-recovery.ts RESULTS [RECORDS] [KIND] [FROM] [SKILL]
 *
 * RESULTS: a file that every record fitted is added to as one line, and that is read first: stop it and run it again to go on.
 * RECORDS: of each player without a bias, default 60, and half as many of each with one; 0 prints what there is. KIND: 'ordinary'
 * (default) or one of the other kinds of recording below. FROM: number of the first record, default 0; a rule chosen on some
 * records is checked on others. SKILL: one of those below, default all. Records go round the players, so that a part of the run is a fair part.
 */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { SURE } from '../../sim/evidence/fit/fit-errors.ts';
import {
  defaultPrior,
  ERRORS,
  type ErrorName,
  fitErrors,
  Grounds,
  type Player,
  presetOf,
  proportionInterval,
  seededRandom,
} from '../../sim/index.ts';
import { normalsOf, ORDINARY, type RecordingHabits, recordingPlayer } from '../support/recordingPlayer.ts';

/** Presets; and 'anyone': players drawn from the prior itself, among whom 90% ranges are to hold the truth in 90%. */
const SKILLS = ['tour', 'scratch', 'handicap-6', 'averaging-90', 'anyone'];
const BIASES = [0, -0.1, -0.25, -0.4];
const NUMBERS = [30, 60, 120, 240];

/** How putts are written down; all of putts said to break, 5 to 30 ft. */
const KINDS: Readonly<Record<string, RecordingHabits>> = {
  ordinary: { says: ORDINARY, breakingOnly: true },
  sloping: { says: { ...ORDINARY, slopeFelt: true }, breakingOnly: true, slopingOnly: true },
  slopingFull: {
    says: { ...ORDINARY, slopeFelt: true, asMeant: true },
    breakingOnly: true,
    slopingOnly: true,
  },
  full: { says: { ...ORDINARY, slopeFelt: true, asMeant: true }, breakingOnly: true },
  sparse: { says: {} },
  byFinish: { says: ORDINARY, breakingOnly: true, sideByFinish: true },
};

interface Line {
  readonly kind: string;
  readonly skill: string;
  readonly bias: number;
  readonly record: number;
  readonly number: number;
  /** Chance, after the record, that the player plays too little break. */
  readonly tooLittle: number;
  readonly truth: Player;
  /** Median and ends of the 90% range of each error. */
  readonly found: Readonly<Record<ErrorName, readonly [number, number, number]>>;
}

/** @param bias of presets; anyone has his own */
function playerOf(skill: string, bias: number, record: number): Player {
  if (skill === 'anyone') {
    const prior = defaultPrior();
    const normal = normalsOf(seededRandom(`anyone ${bias} ${record}`));
    const spread = (middle: number): number => middle * Math.exp(prior.logSpread * normal());
    return {
      lineSd: spread(prior.about.lineSd),
      paceSd: spread(prior.about.paceSd),
      readSd: spread(prior.about.readSd),
      paceBias: prior.paceBiasSd * normal(),
      readBias: prior.readBiasSd * normal(),
    };
  }
  const preset = presetOf(skill);
  if (preset === undefined) throw new Error(`Got no preset ${skill}; expected one of player/presets.ts.`);
  return { ...preset.player, readBias: bias };
}

function fitRecord(kind: string, skill: string, bias: number, record: number, grounds: Grounds): Line[] {
  const truth = playerOf(skill, bias, record);
  const recording = recordingPlayer(truth, KINDS[kind], `${skill} ${bias} ${record}`);
  const putts = Array.from({ length: Math.max(...NUMBERS) }, () => recording.next());
  return NUMBERS.map((number) => {
    const fit = fitErrors({ putts: putts.slice(0, number) }, { grounds, seed: record, taps: [] });
    if (fit.status !== 'ok') throw new Error(`Got ${fit.status}; expected a fit.`);
    const found = Object.fromEntries(
      ERRORS.map((name) => {
        const { median, range90 } = fit.errors[name];
        return [name, [median, range90.low, range90.high]];
      }),
    ) as unknown as Line['found'];
    const { tooLittle } = fit.readBias;
    return { kind, skill, bias, record, number, tooLittle, truth, found };
  });
}

/** A row of a table as MODEL.md has them. */
const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
const heading = (cells: readonly string[]): string => `${row(cells)}\n${row(cells.map(() => '---'))}`;

/** "7/34 (21%)", or a dash. */
const counted = (hits: number, tries: number): string =>
  tries === 0 ? '-' : `${hits}/${tries} (${((100 * hits) / tries).toFixed(0)}%)`;
const withInterval = (hits: number, tries: number): string => {
  const { low, high } = proportionInterval(hits, tries);
  return `${counted(hits, tries)}, 95%: ${(100 * low).toFixed(0)} to ${(100 * high).toFixed(0)}%`;
};

/** By the fit's rule: what was fitted stays good when the rule changes. */
const saysLittle = ({ tooLittle }: Line): boolean => tooLittle > SURE;
const saysMuch = ({ tooLittle }: Line): boolean => tooLittle < 1 - SURE;
const count = (lines: readonly Line[], is: (line: Line) => boolean): number => lines.filter(is).length;

function printClaims(lines: readonly Line[]): void {
  console.log('\nSaid "too little"; without a bias said either:\n');
  console.log(heading(['player', 'too little by', ...NUMBERS.map((number) => `${number} putts`)]));
  for (const skill of SKILLS.slice(0, -1))
    for (const bias of BIASES) {
      const cells = NUMBERS.map((number) => {
        const these = lines.filter((l) => l.skill === skill && l.bias === bias && l.number === number);
        const either = bias === 0 ? count(these, saysMuch) : 0;
        return counted(count(these, saysLittle) + either, these.length);
      });
      console.log(row([skill, `${(-100 * bias).toFixed(0)}%`, ...cells]));
    }
  const presets = lines.filter(({ skill }) => skill !== 'anyone');
  const without = presets.filter(({ bias }) => bias === 0);
  console.log('\nClaimed without a bias:');
  for (const number of NUMBERS) {
    const these = without.filter((line) => line.number === number);
    const claimed = count(these, saysLittle) + count(these, saysMuch);
    console.log(`${number} putts: ${withInterval(claimed, these.length)}`);
  }
  const wrong = count(
    presets.filter(({ bias }) => bias < 0),
    saysMuch,
  );
  console.log(`The wrong side claimed: ${wrong}`);
}

/** Mean distance of the median from the truth: per cent of it, by logarithms, for spreads; points for habits. */
const offOf = (lines: readonly Line[], name: ErrorName): number =>
  lines.reduce((sum, { truth, found: { [name]: found } }) => {
    const [median] = found;
    return sum + 100 * (name.endsWith('Sd') ? Math.log(median / truth[name]) : median - truth[name]);
  }, 0) / lines.length;

function printCoverage(lines: readonly Line[]): void {
  console.log('\n90% ranges that held the truth, and mean distance of the median from it:\n');
  console.log(heading(['players', 'putts', ...ERRORS]));
  for (const [who, these] of [
    ['anyone', lines.filter(({ skill }) => skill === 'anyone')],
    ['presets', lines.filter(({ skill }) => skill !== 'anyone')],
  ] as const)
    for (const number of NUMBERS) {
      const some = these.filter((line) => line.number === number);
      const cells = ERRORS.map((name) => {
        const held = some.filter(({ truth, found: { [name]: range } }) => {
          const [, low, high] = range;
          return truth[name] >= low && truth[name] <= high;
        });
        const off = offOf(some, name);
        return `${((100 * held.length) / some.length).toFixed(0)}% (${off < 0 ? '' : '+'}${off.toFixed(0)})`;
      });
      console.log(row([`${who} (${some.length})`, number, ...cells]));
    }
}

const [results, records = '60', kind = 'ordinary', from = '0', only] = process.argv.slice(2);
if (results === undefined || !(kind in KINDS))
  throw new Error(
    `Got ${process.argv.slice(2).join(' ')}; expected a file, a number and one of ${Object.keys(KINDS).join(', ')}.`,
  );
const lines: Line[] = existsSync(results)
  ? readFileSync(results, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line) as Line)
  : [];
const done = new Set(lines.map((line) => `${line.kind} ${line.skill} ${line.bias} ${line.record}`));
const grounds = new Grounds();
for (let k = 0; k < Number(records); k++)
  for (const bias of k % 2 === 0 ? BIASES : [0])
    for (const skill of only === undefined ? SKILLS : [only]) {
      const record = Number(from) + k;
      if (done.has(`${kind} ${skill} ${bias} ${record}`)) continue;
      const made = fitRecord(kind, skill, bias, record, grounds);
      appendFileSync(results, made.map((line) => `${JSON.stringify(line)}\n`).join(''));
      lines.push(...made);
    }
const these = lines.filter((line) => line.kind === kind);
console.log(`${kind}: ${these.length / NUMBERS.length} records`);
printClaims(these);
printCoverage(these);
