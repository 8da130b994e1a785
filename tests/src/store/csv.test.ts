/**
 * CSV files out and in: nothing lost between the two, and each line of a file by hand judged with its reason. What a CSV file is:
 * RFC 4180; which beginnings a spreadsheet takes for formulas: common practice, no source.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PracticeSet } from '../../../sim/index.ts';
import { practiceCsv, puttsCsv } from '../../../src/store/csv.ts';
import { guarded, unguarded } from '../../../src/store/csvCells.ts';
import { PRACTICE_COLUMNS } from '../../../src/store/csvPractice.ts';
import { FEET_COLUMNS, PUTT_COLUMNS } from '../../../src/store/csvPutts.ts';
import type { RecordsNow } from '../../../src/store/recordsNow.ts';
import { perTable } from '../../../src/store/tables.ts';
import { atOnce } from '../../../src/store/work.ts';
import { anyPractice, anyRecords } from '../../support/anyRecords.ts';
import { afterPlan, contentsNow, fileOf, nowWith, planOf, readText } from '../../support/imports.ts';
import { LITERAL_BACKUP } from '../../support/literalBackup.ts';

const puttsOf = (now: RecordsNow): string =>
  atOnce(puttsCsv(now.rounds.values(), now.putts.values())).join('');
const practiceOf = (sets: Iterable<PracticeSet>): string => atOnce(practiceCsv(sets)).join('');
const reasonsOf = (text: string): (string | undefined)[] =>
  planOf(text)
    .lines.filter(({ verdict }) => verdict === 'refuse')
    .map(({ place, reason }) => `${place}: ${reason}`);

const { rounds: ROUNDS, putts: PUTTS, practice: PRACTICE } = LITERAL_BACKUP.tables;
const LITERAL_NOW = nowWith({ rounds: ROUNDS, putts: PUTTS, practice: PRACTICE });

/** A file somebody could write by hand: needed columns and a few more. */
const BY_HAND = `day,course,hole,stroke,distance_ft,holed,breaks,leave_ft
2026-05-02,Home,1,1,12,no,left to right,2
2026-05-02,Home,1,2,2,yes,,
2026-05-02,Home,2,1,8.5,yes,straight,
`;

describe('putts as CSV', () => {
  it('come back the same, whatever the records', () => {
    fc.assert(
      fc.property(anyRecords, (now) => {
        const plan = planOf(puttsOf(now));
        expect(plan.counts.refuse).toBe(0);
        const { rounds, putts } = contentsNow(now);
        expect(afterPlan(plan)).toEqual({ ...perTable(() => []), rounds, putts });
        const again = planOf(puttsOf(now), now);
        expect(again.counts.same).toBe(again.lines.length);
      }),
      { seed: 61, numRuns: 200 },
    );
  });

  it('are written as documented: a mark, a header, CRLF, one line per putt', () => {
    const text = puttsOf(LITERAL_NOW);
    expect(text.startsWith('\ufeffday,course,hole,stroke,distance_m,')).toBe(true);
    expect(text.split('\r\n')[1]).toBe(
      '2025-11-22,Nonesuch Heath,1,1,4.8768,down,right to left,medium,die,yes,no,no,low,past,0.6096,9,3.048,4,2025-11-22T08:26:40.000Z,2025-11-22T12:03:20.000Z,2025-11-22T08:36:40.000Z,b4a1c7de-round,b4a1c7de-putt-1,putt',
    );
    expect(text.split('\r\n')).toHaveLength(5);
  });

  it('of a round without putts are one line of the kind “no putt”', () => {
    const text = puttsOf({ ...LITERAL_NOW, putts: new Map() });
    expect(text.split('\r\n')[1]).toMatch(/^2025-11-22,Nonesuch Heath,,,,.*,no putt$/);
    expect(afterPlan(planOf(text))).toEqual({ ...contentsNow(LITERAL_NOW), putts: [], practice: [] });
  });

  it('by hand, without ids and in feet, are read; the same file twice changes nothing', () => {
    const plan = planOf(BY_HAND);
    expect(plan.counts).toEqual({ add: 4, same: 0, change: 0, keep: 0, refuse: 0 });
    const after = afterPlan(plan) as unknown as { rounds: object[]; putts: object[] };
    expect(after.rounds).toMatchObject([{ day: '2026-05-02', course: 'Home', holes: 18, withoutPutt: [] }]);
    // 12 ft = 3.6576 m, 2 ft = 0.6096 m, 8.5 ft = 2.5908 m by the international foot.
    expect(after.putts).toMatchObject([
      {
        hole: 1,
        stroke: 1,
        distance: expect.closeTo(3.6576, 12),
        holed: false,
        breaks: 'leftToRight',
        miss: { leave: 0.6096 },
      },
      { hole: 1, stroke: 2, distance: 0.6096, holed: true },
      { hole: 2, stroke: 1, distance: 2.5908, holed: true, breaks: 'straight' },
    ]);
    const records = after as unknown as { rounds: { id: string }[]; putts: { id: string }[] };
    const now = {
      ...plan.now,
      rounds: new Map(records.rounds.map((one) => [one.id, one])),
      putts: new Map(records.putts.map((one) => [one.id, one])),
    } as unknown as RecordsNow;
    expect(planOf(BY_HAND, now).counts).toEqual({ add: 0, same: 4, change: 0, keep: 0, refuse: 0 });
  });

  it.each([
    ['semicolons and decimal commas', BY_HAND.replaceAll(',', ';').replace('8.5', '8,5')],
    ['tabs', BY_HAND.replaceAll(',', '\t')],
    ['a byte order mark', `\ufeff${BY_HAND}`],
    ['CRLF', BY_HAND.replaceAll('\n', '\r\n')],
    ['CR alone', BY_HAND.replaceAll('\n', '\r')],
    ['a decimal comma in quotes', BY_HAND.replace('8.5', '"8,5"')],
    [
      'blank lines and no end of line at the end',
      `${BY_HAND.replace('\n2026', '\n\n,,,,,,,\n2026').trimEnd()}`,
    ],
    [
      'names of columns in capitals',
      BY_HAND.replace('day,course', 'Day, COURSE ').replace('distance_ft', 'Distance ft'),
    ],
    [
      'columns nobody knows',
      BY_HAND.replace(/$/gm, ',x').replace(/,x$/, '').replace('leave_ft,x', 'leave_ft,mood'),
    ],
    [
      'columns in another order',
      BY_HAND.split('\n')
        .map((line) => line.split(',').reverse().join(','))
        .join('\n'),
    ],
  ])('are read with %s', (_what, text) => {
    const plan = planOf(text);
    expect(plan.lines.filter(({ verdict }) => verdict !== 'add')).toEqual([]);
    expect(afterPlan(plan)).toEqual(afterPlan(planOf(BY_HAND)));
  });

  it('say which columns they do not know', () => {
    expect(fileOf(BY_HAND.replace('leave_ft', 'leave_ft,mood').replace(/(\d|,)$/gm, '$1,')).remarks).toEqual([
      'Columns not known and not read: “mood”.',
    ]);
  });

  it.each([
    [
      'a distance that is no number',
      'Home,2,1,8.5',
      'Home,2,1,far',
      /row 4: Got “far” for distance_ft, expected a number such as 3\.2 or 3,2\./,
    ],
    ['a distance without end', 'Home,2,1,8.5', 'Home,2,1,1e999', /row 4: Got “1e999” for distance_ft/],
    ['not a number', 'Home,2,1,8.5', 'Home,2,1,NaN', /row 4: Got “NaN” for distance_ft/],
    ['a negative distance', 'Home,2,1,8.5', 'Home,2,1,-8.5', /row 4: Got “-2\.59/],
    [
      'a distance beyond the green',
      'Home,2,1,8.5',
      'Home,2,1,850',
      /row 4: Got “259\.08.*” for distance, expected at most 61 m\./,
    ],
    ['no distance', 'Home,2,1,8.5', 'Home,2,1,', /row 4: Got nothing for distance/],
    ['a hole that is none', 'Home,2,1', 'Home,2.5,1', /row 4: Got “2\.5” for hole, expected a whole number/],
    ['hole 19', 'Home,2,1', 'Home,19,1', /row 4: Got “19” for hole/],
    [
      'a day in another order',
      '2026-05-02,Home,2',
      '02.05.2026,Home,2',
      /row 4: .*expected a day such as 2026-05-02/,
    ],
    ['a day that does not exist', '2026-05-02,Home,2', '2026-02-30,Home,2', /expected a day such as/],
    [
      'a word nobody knows',
      'yes,straight',
      'yes,wiggly',
      /row 4: Got “wiggly” for breaks, expected one of left to right, right to left, straight\./,
    ],
    [
      'neither yes nor no',
      'yes,straight',
      'perhaps,straight',
      /row 4: Got “perhaps” for holed, expected yes or no\./,
    ],
    [
      'a holed putt with a leave',
      'yes,straight,',
      'yes,straight,3',
      /row 4: .*expected a miss exactly when the putt was not holed/,
    ],
    [
      'a line with a cell too few',
      '2,1,8.5,yes,straight,',
      '2,1,8.5,yes,straight',
      /row 4: Got 7 cells, expected 8/,
    ],
    [
      'a line with a cell too many',
      '2,1,8.5,yes,straight,',
      '2,1,8.5,yes,straight,,,x',
      /row 4: Got 10 cells, expected 8/,
    ],
    ['quotes in the middle', 'Home,2,1', '"Ho"me",2,1', /row 4: Got quotes that do not match/],
    [
      'a doubled stroke',
      'Home,2,1,8.5',
      'Home,1,2,8.5',
      /row 4: (Got the id of this record on 2 different records|Got a second stroke)/,
    ],
  ])('with %s are refused in that line, with the reason', (_what, from, to, reason) => {
    const text = BY_HAND.replace(from, to);
    expect(text).not.toBe(BY_HAND);
    expect(reasonsOf(text).join('\n')).toMatch(reason);
  });

  it.each([
    [
      'without a header',
      BY_HAND.split('\n').slice(1).join('\n'),
      /Put the names of the columns in the first line/,
    ],
    [
      'without a needed column',
      BY_HAND.replace('distance_ft', 'distance'),
      /Got no column distance_m or distance_ft/,
    ],
    ['with a column twice', BY_HAND.replace('breaks', 'hole'), /Got the column “hole” twice/],
    [
      'with a quote nothing closes',
      BY_HAND.replace('Home,2', '"Home,2'),
      /Got a quote in row 4 that is never closed/,
    ],
    ['with a quoted cell that goes on', BY_HAND.replace('Home,2', '"Home" x,2'), /Got a quote in row 4/],
    ['that are a page', '<!doctype html><p>Not found', /expected a backup of this page or the columns/],
    ['of UTF-16 without a mark', BY_HAND.replaceAll(/(.)/gs, '$1\0'), /not text in UTF-8/],
  ])('%s are refused as a file', (_what, text, reason) => {
    const read = readText(text);
    expect(read.ok ? 'read' : read.problem).toMatch(reason);
  });

  it('with lines of one round that contradict each other are refused there', () => {
    const text = puttsOf(LITERAL_NOW).replace(/Nonesuch Heath(?=,2,)/, 'Elsewhere');
    expect(reasonsOf(text).join()).toMatch(/row 4: Got other fields of its round than in row 2/);
  });

  it('with lengths in both units are refused', () => {
    const text = BY_HAND.replace('distance_ft', 'distance_ft,distance_m').replaceAll(
      /(12|,2|8\.5),(no|yes)/g,
      '$1,3,$2',
    );
    expect(reasonsOf(text).join('\n')).toMatch(/row 2: Got distance in metres and in feet/);
  });

  it('cut short within a line lose that line with a reason, at every place', () => {
    const text = puttsOf(LITERAL_NOW);
    const [beforeLast] = [text.lastIndexOf('\r\n', text.length - 3) + 2];
    for (let end = beforeLast + 1; end < text.length - 2; end += 1) {
      const reasons = reasonsOf(text.slice(0, end));
      expect(reasons.join(), `cut at ${end}`).toMatch(/row 4: Got/);
    }
  });
});

describe('practice as CSV', () => {
  it('comes back the same, whatever the sets', () => {
    fc.assert(
      fc.property(anyPractice(1), anyPractice(2), (one, two) => {
        const plan = planOf(practiceOf([one, two]));
        expect(plan.counts.refuse).toBe(0);
        // No counts at all say the same as counts of nothing.
        const bare = [one, two].map(({ misses, ...set }) =>
          misses === undefined || Object.keys(misses).length === 0 ? set : { ...set, misses },
        );
        expect(afterPlan(plan).practice).toEqual(bare);
      }),
      { seed: 62, numRuns: 200 },
    );
  });

  it('is written as documented', () => {
    expect(practiceOf(LITERAL_NOW.practice.values())).toBe(
      '\ufeffday,distance_m,attempts,holed,missed_high,missed_low,missed_short,missed_past,climb,breaks,note,recorded,practice_id,ground\r\n' +
        '2025-11-23,1.8288,20,13,1,5,,,,left to right,windy; putter B,2025-11-23T12:13:20.000Z,b4a1c7de-practice,grass\r\n',
    );
  });

  it('by hand may leave out all but four columns', () => {
    const text = 'day;distance_m;attempts;holed\n2026-05-03;1,5;20;14\n2026-05-03;3;20;21\n';
    const plan = planOf(text);
    expect(plan.counts).toMatchObject({ add: 1, refuse: 1 });
    expect(afterPlan(plan).practice).toMatchObject([
      { distance: 1.5, attempts: 20, holed: 14, ground: 'grass' },
    ]);
    expect(reasonsOf(text).join()).toMatch(/row 3: .*expected no more holed than tried/);
  });
});

describe('names that a spreadsheet would take for formulas', () => {
  it.each([
    ['=SUM(A1)', "'=SUM(A1)"],
    ['+49', "'+49"],
    ['-1', "'-1"],
    ['@home', "'@home"],
    ["'=1", "''=1"],
    ["'t Zand", "'t Zand"],
    ['A=1', 'A=1'],
    ['', ''],
  ])('are guarded: %s is written %s', (name, written) => {
    expect(guarded(name)).toBe(written);
    expect(unguarded(written)).toBe(name);
  });

  it('come back whatever they are', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...`'=+-@\t\ra "`) }), (name) => {
        expect(unguarded(guarded(name))).toBe(name);
        expect(/^[=+\-@\t\r]/.test(guarded(name))).toBe(false);
      }),
      { seed: 63, numRuns: 500 },
    );
  });
});

it('CSV.md tells every column, and none that is not there', () => {
  const columns = [...readFileSync('src/store/CSV.md', 'utf8').matchAll(/^\| `(\w+)`/gm)].map(
    ([, name]) => name,
  );
  expect([...new Set(columns)].sort()).toEqual(
    [
      ...new Set([
        ...Object.keys(PUTT_COLUMNS),
        ...Object.keys(FEET_COLUMNS),
        ...Object.keys(PRACTICE_COLUMNS),
      ]),
    ].sort(),
  );
});
