/** Backup files: out and in again, old ones, newer ones, damaged ones. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backupSchema, makeBackup } from '../../../src/store/backup.ts';
import type { RecordsNow } from '../../../src/store/recordsNow.ts';
import { perTable } from '../../../src/store/tables.ts';
import { atOnce } from '../../../src/store/work.ts';
import { anyRecords } from '../../support/anyRecords.ts';
import { afterPlan, contentsNow, fileOf, planOf, readText } from '../../support/imports.ts';
import { LITERAL_5, LITERAL_BACKUP } from '../../support/literalBackup.ts';

const MADE_AT = 1764000000000;
const backupOf = (now: RecordsNow): string => atOnce(makeBackup(now, MADE_AT)).join('');
const problemOf = (text: string): string => {
  const read = readText(text);
  return read.ok ? 'none' : read.problem;
};

/** Word for word as version 1 kept them. */
const VERSION_1 = {
  format: 'borrow-backup',
  version: 1,
  madeAt: 1763940000000,
  tables: {
    readSets: [
      {
        id: '0b9f6c1e-5d0a-4c39-9a53-8a3a6f0f2a11',
        drillId: 'pin-high-sidehill',
        drillName: 'Pin-high sidehill',
        seed: '7c1d22ab',
        startedAt: 1763930000000,
        questions: LITERAL_BACKUP.tables.readSets[0].questions,
        answers: [{ number: 1, aim: -0.2, answeredAt: 1763930020000 }],
      },
    ],
  },
};

describe('a backup', () => {
  it('gives back any records, whole, into an empty database', () => {
    fc.assert(
      fc.property(anyRecords, (now) => {
        const text = backupOf(now);
        expect(backupSchema.safeParse(JSON.parse(text)).success).toBe(true);
        const plan = planOf(text);
        expect(plan.counts).toMatchObject({ refuse: 0, change: 0, same: 0 });
        expect(afterPlan(plan)).toEqual(contentsNow(now));
      }),
      { seed: 51, numRuns: 200 },
    );
  });

  it('changes nothing where its records are already', () => {
    fc.assert(
      fc.property(anyRecords, (now) => {
        const { counts, lines } = planOf(backupOf(now), now);
        expect(counts.same).toBe(lines.length);
      }),
      { seed: 52, numRuns: 100 },
    );
  });

  it('written by hand is read as it stands, with its moment', () => {
    const file = fileOf(JSON.stringify(LITERAL_5, null, 1));
    expect(file).toMatchObject({ kind: 'backup', madeAt: 1764000000000, remarks: [] });
    const plan = planOf(JSON.stringify(LITERAL_5));
    expect(plan.counts).toEqual({ add: 11, same: 0, change: 0, keep: 0, refuse: 0 });
    expect(afterPlan(plan)).toEqual(LITERAL_BACKUP.tables);
    expect(plan.lines.map(({ place }) => place)).toContain('putts, record 3');
  });

  it('of version 1 becomes records of this version: the reading set gets its day', () => {
    const plan = planOf(JSON.stringify(VERSION_1));
    expect(plan.counts).toEqual({ add: 1, same: 0, change: 0, keep: 0, refuse: 0 });
    expect(afterPlan(plan)).toEqual({
      ...perTable(() => []),
      readSets: [
        {
          ...VERSION_1.tables.readSets[0],
          kind: 'aim',
          feedback: 'each',
          size: 1,
          day: '2025-11-23',
          answers: [{ kind: 'aim', number: 1, aim: -0.2, answeredAt: 1763930020000 }],
        },
      ],
    });
  });

  it('of version 2 becomes records of this version: the reading set gets kind, size and feedback, scores of drills begin, all else stays', () => {
    const { rounds, putts, practice, readSets } = LITERAL_BACKUP.tables;
    const [{ kind: _kind, feedback: _feedback, size: _size, ...set }] = readSets;
    const old = {
      ...set,
      answers: [{ number: 1, aim: -0.2, answeredAt: 1763930020000, holedAtAim: 0.31, holedAtTrue: 0.44 }],
    };
    const text = JSON.stringify({
      format: 'borrow-backup',
      version: 2,
      madeAt: 1763940000000,
      tables: { rounds, putts, practice, readSets: [old] },
    });
    const plan = planOf(text);
    expect(plan.counts).toEqual({ add: 6, same: 0, change: 0, keep: 0, refuse: 0 });
    expect(afterPlan(plan)).toEqual({
      ...perTable(() => []),
      rounds,
      putts,
      practice,
      readSets,
    });
  });

  it('of version 3 becomes records of this version: measurements and plans begin, all else stays', () => {
    const { measurements: _measurements, plans: _plans, ...tables } = LITERAL_5.tables;
    const text = JSON.stringify({ format: 'borrow-backup', version: 3, madeAt: 1763990000000, tables });
    const plan = planOf(text);
    expect(plan.counts).toEqual({ add: 8, same: 0, change: 0, keep: 0, refuse: 0 });
    expect(afterPlan(plan)).toEqual({ ...perTable(() => []), ...tables });
    const both = JSON.stringify({ ...LITERAL_5, version: 3 });
    expect(problemOf(both)).toMatch(
      /^Got the tables .*, expected rounds, putts, practice, readSets, drillResults\. /,
    );
  });

  it('of version 2 with a record of version 3 in it has that record refused', () => {
    const { rounds, putts, practice } = LITERAL_BACKUP.tables;
    const plan = planOf(
      JSON.stringify({
        ...LITERAL_BACKUP,
        version: 2,
        tables: { rounds, putts, practice, readSets: [{ id: 'not-a-set-of-2', size: 3 }] },
      }),
    );
    expect(plan.counts).toMatchObject({ add: 5, refuse: 1 });
  });

  it('of a newer version is refused with what to do', () => {
    expect(problemOf(JSON.stringify({ ...LITERAL_BACKUP, version: 99, flags: {} }))).toMatch(
      /^Got a backup of version “99”, expected version \d+ at most\. .*load the page again/,
    );
  });

  it.each([
    ['cut short', JSON.stringify(LITERAL_BACKUP).slice(0, -20), /not whole JSON/],
    ['of nothing', '   ', /empty file/],
    ['that is a list', '[]', /JSON of another kind/],
    ['of another format', JSON.stringify({ ...LITERAL_BACKUP, format: 'notes' }), /format/],
    ['of version 0', JSON.stringify({ ...LITERAL_BACKUP, version: 0 }), /version/],
    ['of version 1.5', JSON.stringify({ ...LITERAL_BACKUP, version: 1.5 }), /version/],
    ['with a field too many', JSON.stringify({ ...LITERAL_BACKUP, wind: 1 }), /wind/],
    [
      'with a table too few',
      JSON.stringify({ ...LITERAL_BACKUP, tables: { putts: [] } }),
      /expected rounds, putts/,
    ],
    [
      'of version 1 with tables of version 2',
      JSON.stringify({ ...LITERAL_BACKUP, version: 1 }),
      /expected readSets/,
    ],
    ['whose tables are none', JSON.stringify({ ...LITERAL_BACKUP, tables: [] }), /tables/],
    [
      'with a prototype among its tables',
      JSON.stringify(LITERAL_BACKUP).replace('"tables":{', '"tables":{"__proto__":[],'),
      /Got the tables|__proto__/,
    ],
    [
      'with a prototype beside its tables',
      JSON.stringify(LITERAL_BACKUP).replace('{"format"', '{"__proto__":{"version":2},"format"'),
      /__proto__/,
    ],
  ])('%s is refused with a reason', (_what, text, reason) => {
    expect(problemOf(text)).toMatch(reason);
  });

  it('tells one digit that changed on the way, wherever it is', () => {
    const text = backupOf({
      ...planOf(JSON.stringify(LITERAL_BACKUP)).now,
      rounds: new Map(LITERAL_BACKUP.tables.rounds.map((round) => [round.id, round])) as RecordsNow['rounds'],
    });
    const start = text.indexOf('"tables"') + '"tables":'.length;
    const digits = [...text].flatMap((letter, index) => (index > start && /\d/.test(letter) ? [index] : []));
    expect(digits.length).toBeGreaterThan(20);
    for (const at of digits) {
      const other = String((Number(text[at]) + 1) % 10);
      const reason = problemOf(text.slice(0, at) + other + text.slice(at + 1));
      // A number with a zero in front is not JSON any more.
      expect(reason).toMatch(/damaged on its way|not whole JSON/);
    }
  });

  it('is still whole when somebody lays it out anew, and says how to take it after a change by hand', () => {
    const text = backupOf(planOf(JSON.stringify(LITERAL_BACKUP)).now);
    expect(readText(JSON.stringify(JSON.parse(text), null, 4)).ok).toBe(true);
    const changed = JSON.stringify({ ...LITERAL_BACKUP, check: '00000000' });
    expect(problemOf(changed)).toMatch(/take the field “check” out/);
  });
});
