/**
 * Does the fit of a player find the player? Golfers of known errors play whole rounds and record them
 * (tests/support/recordingPlayer.ts); each record is fitted: how often 90% ranges hold the truth, how often a reading habit is
 * claimed, among plain golfers and odd ones. Its tables stand in MODEL.md, section 5; run it again after any change to what is rolled,
 * recorded or fitted.
 *
 *     npx tsx tests/bench/fit-recovery.ts RESULTS [RECORDS] [PUTTS] [KIND]
 *
 * RESULTS: a file that every record fitted is added to as one line, and that is read first: stop it and run it again to go on.
 * RECORDS: rounds through all kinds, default 30 (a kind that stands in CYCLE three times is fitted three times a round); 0 prints what
 * there is. PUTTS of a record, default 120. KIND: one kind alone.
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
import {
  type Golfer,
  normalsOf,
  ORDINARY,
  type RecordingHabits,
  recordRounds,
} from '../support/recordingPlayer.ts';

/** 'anyone' is drawn from the prior, so that 90% ranges are to hold the truth in 90%; the others are the preset between. */
const CYCLE = ['anyone', 'plain', 'anyone', 'under25', 'firm', 'anyone', 'dies', 'heavy', 'days'];
const KINDS = [...new Set(CYCLE)];

interface Line {
  readonly kind: string;
  readonly record: number;
  readonly number: number;
  /** Chance, after the record, that the player reads too little. */
  readonly tooLittle: number;
  readonly intentKnown: boolean;
  readonly worth: number;
  /** Processor time, s. */
  readonly time: number;
  readonly truth: Player;
  /** Median and ends of the 90% range of each error. */
  readonly found: Readonly<Record<ErrorName, readonly [number, number, number]>>;
}

function golferOf(kind: string, seed: string): { golfer: Golfer; habits: RecordingHabits } {
  const random = seededRandom(seed);
  const normal = normalsOf(random);
  const prior = defaultPrior();
  const preset = presetOf('handicap-6');
  if (preset === undefined) throw new Error('Got no preset handicap-6; expected it in player/presets.ts.');
  // Said before the putt, after it, or in between.
  const habits = { says: ORDINARY, saidAsSeen: random() };
  const { player } = preset;
  const unsaid = { ...habits, says: { ...ORDINARY, paceMeant: false } };
  if (kind === 'anyone') {
    const spread = (middle: number): number => middle * Math.exp(prior.logSpread * normal());
    return {
      golfer: {
        player: {
          lineSd: spread(player.lineSd),
          paceSd: spread(player.paceSd),
          slopeSd: spread(player.slopeSd),
          speedSd: spread(player.speedSd),
          paceBias: prior.paceBiasSd * normal(),
          readBias: Math.max(-0.9, prior.readBiasSd * normal()),
        },
      },
      habits,
    };
  }
  if (kind === 'under25') return { golfer: { player: { ...player, readBias: -0.25 } }, habits };
  if (kind === 'firm') return { golfer: { player, means: 'firm' }, habits: unsaid };
  if (kind === 'dies') return { golfer: { player, means: 'die' }, habits: unsaid };
  if (kind === 'heavy') return { golfer: { player, tails: 3.5 }, habits };
  if (kind === 'days') return { golfer: { player, days: { pace: 0.015, read: 0.08 } }, habits };
  return { golfer: { player }, habits };
}

function fitRecord(kind: string, record: number, number: number, grounds: Grounds): Line {
  const { golfer, habits } = golferOf(kind, `${kind} ${record}`);
  const { putts, rounds } = recordRounds(golfer, habits, `putts ${kind} ${record}`, number);
  const before = process.cpuUsage();
  const fit = fitErrors({ putts, rounds }, { grounds, seed: record, taps: [] });
  const time = process.cpuUsage(before).user / 1e6;
  if (fit.status !== 'ok') throw new Error(`Got ${fit.status}; expected a fit.`);
  const found = Object.fromEntries(
    ERRORS.map((name) => {
      const { median, range90 } = fit.errors[name];
      return [name, [median, range90.low, range90.high]];
    }),
  ) as unknown as Line['found'];
  return {
    kind,
    record,
    number,
    tooLittle: fit.readBias.tooLittle,
    intentKnown: fit.pace.intentKnown,
    worth: fit.worth,
    time,
    truth: golfer.player,
    found,
  };
}

/** A row of a table as MODEL.md has them. */
const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
const heading = (cells: readonly string[]): string => `${row(cells)}\n${row(cells.map(() => '---'))}`;

const percent = (hits: number, tries: number): string => `${((100 * hits) / tries).toFixed(0)}%`;
const withInterval = (hits: number, tries: number): string => {
  if (tries === 0) return '-';
  const { low, high } = proportionInterval(hits, tries);
  return `${hits}/${tries} (${(100 * low).toFixed(0)} to ${(100 * high).toFixed(0)}%)`;
};

/** By the fit's rule: what was fitted stays good when the rule changes. */
const saysLittle = ({ tooLittle }: Line): boolean => tooLittle > SURE;
const saysMuch = ({ tooLittle }: Line): boolean => tooLittle < 1 - SURE;
const holds = ({ truth, found }: Line, name: ErrorName): boolean =>
  truth[name] >= found[name][1] && truth[name] <= found[name][2];

function print(lines: readonly Line[]): void {
  console.log('\nHow often 90% ranges hold the truth:\n');
  console.log(heading(['golfers', 'records', ...ERRORS]));
  const groups = [...KINDS, 'all'];
  const of = (kind: string): readonly Line[] =>
    kind === 'all' ? lines : lines.filter((line) => line.kind === kind);
  for (const kind of groups) {
    const these = of(kind);
    if (these.length === 0) continue;
    const cells = ERRORS.map((name) =>
      percent(these.filter((line) => holds(line, name)).length, these.length),
    );
    console.log(row([kind, these.length, ...cells]));
  }
  console.log('\nMedian found beside the truth (spreads: mean ratio; habits: mean difference):\n');
  console.log(heading(['golfers', ...ERRORS]));
  for (const kind of groups) {
    const these = of(kind);
    if (these.length === 0) continue;
    const cells = ERRORS.map((name) => {
      const mean = (value: (line: Line) => number): number =>
        these.reduce((sum, line) => sum + value(line) / these.length, 0);
      return name.endsWith('Bias')
        ? `${(100 * mean(({ truth, found }) => found[name][0] - truth[name])).toFixed(1)} points`
        : mean(({ truth, found }) => found[name][0] / truth[name]).toFixed(2);
    });
    console.log(row([kind, ...cells]));
  }
  console.log('\nReading habits said:\n');
  console.log(heading(['golfers', 'too little', 'too much']));
  for (const kind of KINDS.filter((one) => one !== 'anyone')) {
    const these = of(kind);
    console.log(
      row([
        kind,
        withInterval(these.filter(saysLittle).length, these.length),
        withInterval(these.filter(saysMuch).length, these.length),
      ]),
    );
  }
  const mean = (value: (line: Line) => number): string =>
    (lines.reduce((sum, line) => sum + value(line), 0) / lines.length).toFixed(1);
  console.log(`\nworth ${mean(({ worth }) => worth)}, processor time ${mean(({ time }) => time)} s a fit`);
}

const [results, records = '30', putts = '120', only] = process.argv.slice(2);
if (results === undefined)
  throw new Error('Got no file for the results; expected its path as the first word.');
const lines: Line[] = existsSync(results)
  ? readFileSync(results, 'utf8')
      .split('\n')
      .filter((text) => text !== '')
      .map((text) => JSON.parse(text) as Line)
  : [];
const number = Number(putts);
const done = new Set(lines.map((line) => `${line.kind} ${line.record} ${line.number}`));
const grounds = new Grounds();
const next: Record<string, number> = {};
for (let k = 0; k < Number(records); k++)
  for (const kind of only === undefined ? CYCLE : [only]) {
    const record = next[kind] ?? 0;
    next[kind] = record + 1;
    if (done.has(`${kind} ${record} ${number}`)) continue;
    const made = fitRecord(kind, record, number, grounds);
    appendFileSync(results, `${JSON.stringify(made)}\n`);
    lines.push(made);
  }
const these = lines.filter((line) => line.number === number);
console.log(`${these.length} records of ${number} putts`);
print(these);
