/** The reports of the command line: what they say, and what they refuse. */
import { describe, expect, it, vi } from 'vitest';
import { ERRORS, fitErrors } from '../../../sim/index.ts';
import { PAGE_WIDTH } from '../../../src/cli/layout.ts';
import { parseHandicap, REPORT_FLAGS, REPORT_HELP, REPORTS } from '../../../src/cli/reports.ts';
import { run, wantsInput } from '../../../src/cli/run.ts';
import { passAll } from '../../../src/store/gate.ts';
import { RECORDS_VERSION } from '../../../src/store/migrations.ts';
import { puttSchema } from '../../../src/store/recordSchema.ts';
import { perTable } from '../../../src/store/tables.ts';
import { errorWords } from '../../../src/text/player.ts';
import { ORDINARY, recordRounds } from '../../support/recordingPlayer.ts';
import { sized } from '../../support/size.ts';

/** Later putts at one sensible pace for every day: it is the words of the reports that are asked about here. */
vi.mock('../../../sim/odds/next-putts.ts', async (original) => {
  const real = await original<typeof import('../../../sim/odds/next-putts.ts')>();
  const { sized: size } = await import('../../support/size.ts');
  const { tablesOnce } = await import('../../support/tablesOnce.ts');
  const policy = size('fixed' as const, 'best' as const);
  return {
    ...real,
    prepareNextPutts: tablesOnce((putt, player) => real.prepareNextPutts(putt, player, { policy })),
  };
});

const page = (line: string, stdinText = ''): string => {
  const { stdout, stderr, exitCode } = run(line.split(' '), stdinText);
  expect(stderr).toBe('');
  expect(exitCode).toBe(0);
  for (const text of stdout.split('\n')) expect(text.length, text).toBeLessThanOrEqual(PAGE_WIDTH);
  expect(stdout).not.toMatch(/NaN|undefined|Infinity/);
  return stdout;
};

describe('benchmarks', () => {
  it('sets a record, ours, the difference and the source side by side, row by row', () => {
    const text = page('benchmarks --player scratch');
    // 33% from 10 ft (Broadie, second-hand).
    const found = /10 ft +holed +33\.0% +([\d.]+)% +([+-]?[\d.]+) +Broadie, in an account; second-hand/.exec(
      text,
    );
    expect(found).not.toBeNull();
    // Both are rounded to a tenth of a point.
    expect(Math.abs(Number(found?.[1]) - 33 - Number(found?.[2]))).toBeLessThan(0.11);
    expect(text).toMatch(/^Scratch beside published records: holed within [\d.]+ points in all 5 rows/);
    expect(text).toContain('capture rule:');
  });

  it('refuses a player of whom there is no record', () => {
    const { stderr, exitCode } = run(['benchmarks', '--player', 'handicap-6'], '');
    expect(exitCode).toBe(2);
    expect(stderr).toBe(
      '--player: got "handicap-6", expected tour or scratch or averaging-90, for whom there are records. Type one of them.\n',
    );
  });
});

describe('best-paces', () => {
  it("lists ours beside Hoadley's for each length, slope and direction, and the other figures", () => {
    const text = page('best-paces --handicap 6');
    expect(text.match(/^Green speed \d+ ft$/gm)).toEqual([
      'Green speed 8 ft',
      'Green speed 10 ft',
      'Green speed 12 ft',
    ]);
    expect(text.match(/^ *\d+ ft( +\d+\/\d+){10}$/gm)).toHaveLength(24);
    expect(text).toContain('17 in (Pelz, second-hand)');
    expect(text).toContain('Interpolated, not a record.');
  });
});

describe('directions', () => {
  it('shows both signs: easier downhill for who sees the slope as it is, uphill for who misreads it', () => {
    const text = page('directions --handicap 40');
    expect(text).toMatch(/^ *0\.00% .* -\d+\.\d /m);
    expect(text).toMatch(/^ *0\.\d\d% .* \+\d+\.\d .*<- own$/m);
    expect(text.replace(/\s+/g, ' ')).toContain('16 was taken for 40');
    expect(text).toContain('Broadie 2019');
  });
});

describe('errors', () => {
  it('says of a backup what the fit of its record says, with ranges before and after', () => {
    const player = {
      lineSd: 0.015,
      paceSd: 0.07,
      slopeSd: 0.004,
      speedSd: 0.03,
      readBias: -0.5,
      paceBias: 0,
    };
    const count = sized(50, 90);
    const putts = recordRounds({ player }, { says: ORDINARY, saidAsSeen: 0 }, 'a backup', count).putts.map(
      (putt) => ({
        ...putt,
        id: `putt-of-backup-${putt.id}`,
        roundId: `round-of-backup-${putt.roundId}`,
      }),
    );
    const tables = { ...perTable(() => []), putts };
    const text = page(
      'errors',
      JSON.stringify({ format: 'borrow-backup', version: RECORDS_VERSION, madeAt: 1, tables }),
    );
    // What the gate lets through: a simulated ball may lie where no record may say one lies.
    const { kept } = passAll(puttSchema, putts);
    expect(kept.length).toBeGreaterThan(count - 10);
    const fit = fitErrors({ putts: kept });
    if (fit.status !== 'ok') throw new Error(`got ${fit.status}`);
    expect(fit.readBias.verdict).toBe('tooLittle');
    expect(text).toMatch(/^You read too little break: chance /);
    expect(text.replace(/\s+/g, ' ')).toContain(`${fit.putts} putts of rounds, 0 practice putts`);
    for (const name of ERRORS)
      if (name !== 'paceBias' || fit.pace.intentKnown)
        expect(text).toContain(errorWords(name, fit.errors[name].median));
  });

  it.each([
    ['nothing', '', /^got nothing on standard input, expected a backup/],
    ['half a file', '{"format":"borrow-backup","ver', /^Got a file that is not whole JSON/],
    [
      'a backup without putts',
      JSON.stringify({
        format: 'borrow-backup',
        version: RECORDS_VERSION,
        madeAt: 1,
        tables: perTable(() => []),
      }),
      /^got a backup without a putt that counts/,
    ],
  ])('refuses in one line: %s', (_, text, problem) => {
    const { stdout, stderr, exitCode } = run(['errors'], text);
    expect(exitCode).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(problem);
    expect(stderr).toMatch(/^[^\n]*\n$/);
  });
});

describe('every report', () => {
  it.each(REPORTS)('has help with its flags and an example, within the page: %s', (report) => {
    const text = page(`${report} --help`);
    for (const flag of REPORT_FLAGS[report]) expect(text).toContain(`--${flag}`);
    for (const example of REPORT_HELP[report].examples)
      expect(text).toContain(`npm run -s cli -- ${example}`);
  });

  it('is listed in the overview and among the names expected', () => {
    const overview = run(['--help'], '').stdout;
    for (const report of REPORTS) {
      expect(overview).toContain(report);
      expect(run(['nonsense'], '').stderr).toContain(report);
    }
  });

  it.each([
    ['an unknown flag', ['best-paces', '--length', '10']],
    ['a word that is no flag', ['best-paces', 'tour']],
    ['a flag without a value', ['directions', '--player']],
    ['a flag followed by a flag', ['directions', '--player', '--handicap']],
    ['a flag given twice', ['benchmarks', '--player', 'tour', '--player', 'tour']],
    ['an unknown player', ['best-paces', '--player', 'champion']],
    ['a handicap in words', ['best-paces', '--handicap', 'good']],
    ['a player and a handicap', ['best-paces', '--player', 'tour', '--handicap', '5']],
    ['JSON', ['benchmarks', '--json']],
    ['a file by name', ['errors', 'backup.json']],
  ])('refuses in one line: %s', (_, words) => {
    const { stdout, stderr, exitCode } = run(words, '');
    expect(exitCode).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/^[^\n]*(got|expected)[^\n]*\n$/);
  });

  it('waits for standard input only where it reads a record', () => {
    expect(wantsInput(['errors'])).toBe(true);
    expect(wantsInput(['errors', '--help'])).toBe(false);
    expect(wantsInput(['benchmarks', '--json'])).toBe(false);
    expect(wantsInput(['read', '--json'])).toBe(true);
  });

  it('takes +5 and -5 for the same handicap, better than scratch', () => {
    expect(parseHandicap('+5')).toBe(-5);
    expect(parseHandicap('-5')).toBe(-5);
    expect(parseHandicap('9.5')).toBe(9.5);
    expect(parseHandicap('+0')).toBe(0);
    for (const text of ['five', '1e3', '', '--5', 'NaN']) expect(parseHandicap(text)).toBeUndefined();
  });
});

describe('the players of single putts', () => {
  it('are the fitted presets, and the earlier ones still', () => {
    const putt = 'odds --length 8ft --slope 2% --ball 4:30 --green-speed 10 --player';
    for (const id of ['tour', 'scratch', 'handicap-6', 'averaging-90', 'tour-like', 'low-handicap'])
      expect(page(`${putt} ${id}`)).toMatch(/drops \d+% of the time/);
  });
});
