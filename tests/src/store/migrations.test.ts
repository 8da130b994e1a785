/**
 * Records of earlier versions, word for word as those versions wrote them, and what becomes of them: in the pure steps, and in
 * a database that an earlier version left behind. Literal records: a helper that makes them would change with the program.
 */
import { Dexie } from 'dexie';
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { drillResultsOf } from '../../../src/store/drillResults.ts';
import { pass } from '../../../src/store/gate.ts';
import { MIGRATIONS, migrateTables, RECORDS_VERSION } from '../../../src/store/migrations.ts';
import { readStoreOf } from '../../../src/store/readSets.ts';
import type { KeptResult } from '../../../src/store/recordSchema.ts';
import { recordsOf } from '../../../src/store/records.ts';
import { readSetSchema } from '../../../src/store/schema.ts';
import { TABLE_NAMES, TABLES, type TableName } from '../../../src/store/tables.ts';
import { LITERAL_BACKUP } from '../../support/literalBackup.ts';
import { everythingIn, memoryDatabase } from '../../support/memoryRecords.ts';

const READ_SET_1 = {
  id: '0b9f6c1e-5d0a-4c39-9a53-8a3a6f0f2a11',
  drillId: 'pin-high-sidehill',
  drillName: 'Pin-high sidehill',
  seed: '7c1d22ab',
  startedAt: 1763930000000,
  questions: [
    {
      number: 1,
      group: 0,
      ground: { kind: 'plane', slope: 0.021, downhill: 1.2 },
      ball: { x: 0.4, y: -2.9 },
      hole: { x: 0, y: 0 },
      greenSpeed: 3.2,
      pace: 0.3,
      length: 2.93,
      slope: 0.021,
      trueAim: -0.27,
      direction: 'leftToRight',
      climb: 'level',
      steepness: 'steep',
    },
  ],
  answers: [{ number: 1, aim: -0.2, answeredAt: 1763930020000, holedAtAim: 0.31, holedAtTrue: 0.44 }],
};
const READ_SET_2 = { ...READ_SET_1, day: '2025-11-23' };
/** As version 3 writes the same set. */
const READ_SET_3 = {
  id: '0b9f6c1e-5d0a-4c39-9a53-8a3a6f0f2a11',
  kind: 'aim',
  feedback: 'each',
  size: 1,
  drillId: 'pin-high-sidehill',
  drillName: 'Pin-high sidehill',
  seed: '7c1d22ab',
  startedAt: 1763930000000,
  day: '2025-11-23',
  questions: [
    {
      number: 1,
      group: 0,
      ground: { kind: 'plane', slope: 0.021, downhill: 1.2 },
      ball: { x: 0.4, y: -2.9 },
      hole: { x: 0, y: 0 },
      greenSpeed: 3.2,
      pace: 0.3,
      length: 2.93,
      slope: 0.021,
      trueAim: -0.27,
      direction: 'leftToRight',
      climb: 'level',
      steepness: 'steep',
    },
  ],
  answers: [
    { kind: 'aim', number: 1, aim: -0.2, answeredAt: 1763930020000, holedAtAim: 0.31, holedAtTrue: 0.44 },
  ],
};
const DRILL_RESULT_3: KeptResult = {
  id: 'drill-result-of-version-3',
  day: '2025-11-24',
  recordedAt: 1763990000000,
  drillId: 'start-gate',
  version: 1,
  ground: 'carpet',
  greenSpeed: 3.2,
  score: 14,
  note: 'new gate',
};
/** What no version wrote: damaged, and left as it is. */
const DAMAGED = { id: 'a-damaged-record', drillId: 7 };

const inUtc = { dayOf: (moment: number) => new Date(moment).toISOString().slice(0, 10) };

describe('migrations', () => {
  it('go upwards, none to the first version and none beyond the one in use', () => {
    const steps = MIGRATIONS.map(({ to }) => to);
    expect(steps).toEqual([...new Set(steps)].sort((a, b) => a - b));
    expect(steps[0]).toBeGreaterThan(1);
    expect(steps.at(-1)).toBeLessThanOrEqual(RECORDS_VERSION);
  });

  it('reach every table: none begins after the version in use, and none changes before it begins', () => {
    for (const table of TABLE_NAMES) expect(TABLES[table].since).toBeLessThanOrEqual(RECORDS_VERSION);
    for (const { to, records } of MIGRATIONS)
      for (const table of Object.keys(records)) expect(TABLES[table as TableName].since).toBeLessThan(to);
  });

  it('turn version 1 into version 2: a read set gets the calendar day it was begun on', () => {
    const [first] = MIGRATIONS;
    expect([READ_SET_1, DAMAGED].map((found) => first.records.readSets(found, inUtc))).toEqual([
      READ_SET_2,
      DAMAGED,
    ]);
  });

  it('turn version 2 into version 3: a read set is of aims, each shown at once, as many as there are', () => {
    const tables = {
      readSets: [READ_SET_2, DAMAGED],
      rounds: [{ anything: 1 }],
      putts: [{ anything: 2 }],
      practice: [],
    };
    expect(migrateTables(tables, 2, inUtc)).toEqual({ ...tables, readSets: [READ_SET_3, DAMAGED] });
    expect(pass(readSetSchema, READ_SET_3).ok).toBe(true);
    expect(pass(readSetSchema, READ_SET_2).ok).toBe(false);
  });

  it('turn version 1 into the version in use by all steps', () => {
    expect(migrateTables({ readSets: [READ_SET_1, DAMAGED] }, 1, inUtc)).toEqual({
      readSets: [READ_SET_3, DAMAGED],
    });
  });

  it('leave what is damaged within a read set to the gate', () => {
    const spoilt = { ...READ_SET_2, answers: [null, 7] };
    const { readSets } = migrateTables({ readSets: [spoilt] }, 2, inUtc);
    expect(readSets).toEqual([{ ...READ_SET_3, answers: [null, 7] }]);
    expect(pass(readSetSchema, readSets[0]).ok).toBe(false);
  });

  it('leave records of the version in use as they are', () => {
    const tables = { readSets: [READ_SET_3], rounds: [{ anything: 1 }] };
    expect(migrateTables(tables, RECORDS_VERSION, inUtc)).toEqual(tables);
  });

  it('bring a database of version 1 up to date when it is opened, losing nothing, and write it back for good', async () => {
    const factory = new IDBFactory();
    const first = new Dexie('left-behind', { indexedDB: factory, IDBKeyRange });
    first.version(1).stores({ readSets: 'id, startedAt' });
    await first.table('readSets').bulkAdd([READ_SET_1, DAMAGED]);
    first.close();

    for (let opened = 0; opened < 2; opened += 1) {
      const database = memoryDatabase(factory, 'left-behind');
      const { records: sets, unreadable } = await readStoreOf(database).list();
      // The day depends on the time zone of the machine the test runs on: one of the two it can be.
      expect(sets).toHaveLength(1);
      expect(['2025-11-23', '2025-11-24']).toContain(sets[0].day);
      expect({ ...sets[0], day: READ_SET_3.day }).toEqual(READ_SET_3);
      expect(unreadable).toBe(1);
      expect(await everythingIn(recordsOf(database))).toEqual({
        rounds: [],
        putts: [],
        practice: [],
        measured: [],
        unreadable: 0,
      });
      database.close();
    }
  });

  it('bring a database of version 2 up to date when it is opened, its rounds and putts untouched', async () => {
    const factory = new IDBFactory();
    const second = new Dexie('left-behind', { indexedDB: factory, IDBKeyRange });
    second.version(1).stores({ readSets: 'id, startedAt' });
    second.version(2).stores({ rounds: 'id, day', putts: 'id, roundId', practice: 'id, day', notes: 'name' });
    const rounds = [{ id: 'round-of-version-2', day: '2025-11-22', anything: 1 }];
    await second.table('readSets').bulkAdd([READ_SET_2, DAMAGED]);
    await second.table('rounds').bulkAdd(rounds);
    await second.table('notes').add({ name: 'lastBackup', at: 5 });
    second.close();

    for (let opened = 0; opened < 2; opened += 1) {
      const database = memoryDatabase(factory, 'left-behind');
      expect(await readStoreOf(database).list()).toEqual({ records: [READ_SET_3], unreadable: 1 });
      expect(await database.table('rounds').toArray()).toEqual(rounds);
      expect(await database.notes.get('lastBackup')).toEqual({ name: 'lastBackup', at: 5 });
      // Scores of drills begin with version 3: none at first, and what is written stays.
      expect(await database.table('drillResults').toArray()).toEqual(opened === 0 ? [] : [DRILL_RESULT_3]);
      await drillResultsOf(database).keep(DRILL_RESULT_3);
      database.close();
    }
  });

  it('turn version 3 into version 4: no record changes', () => {
    const tables = { readSets: [READ_SET_3, DAMAGED], drillResults: [DRILL_RESULT_3, DAMAGED] };
    expect(migrateTables(tables, 3, inUtc)).toEqual(tables);
  });

  it('turn version 4 into version 5: what 5 points of reading saved in a plan is told of a tenth of all misreading', () => {
    const plan = {
      id: 'plan-of-version-4',
      costs: [
        { error: 'read', step: 'readPoints', saved: { value: 0.3, low: 0.2, high: 0.4 } },
        { error: 'line', step: 'lineTenth', saved: { value: 0.1, low: 0.05, high: 0.15 } },
        null,
      ],
    };
    const tables = { plans: [plan, DAMAGED], measurements: [{ anything: 1 }] };
    expect(migrateTables(tables, 4, inUtc)).toEqual({
      ...tables,
      plans: [
        {
          id: 'plan-of-version-4',
          costs: [
            { error: 'read', step: 'readShare', saved: { value: 0.3, low: 0.2, high: 0.4 } },
            { error: 'line', step: 'lineTenth', saved: { value: 0.1, low: 0.05, high: 0.15 } },
            null,
          ],
        },
        DAMAGED,
      ],
    });
  });

  it('bring a database of version 4 up to date when it is opened, its plans with the step of today', async () => {
    const factory = new IDBFactory();
    const fourth = new Dexie('left-behind', { indexedDB: factory, IDBKeyRange });
    fourth.version(1).stores({ readSets: 'id, startedAt' });
    fourth.version(2).stores({ rounds: 'id, day', putts: 'id, roundId', practice: 'id, day', notes: 'name' });
    fourth.version(3).stores({ drillResults: 'id, day' });
    fourth.version(4).stores({ measurements: 'id, day', plans: 'id, madeAt' });
    const { measurements, plans } = LITERAL_BACKUP.tables;
    const [plan] = plans;
    const before = {
      ...plan,
      costs: [...plan.costs.slice(0, 2), { error: 'read', step: 'readPoints', saved: plan.costs[2].saved }],
    };
    await fourth.table('plans').add(before);
    await fourth.table('measurements').bulkAdd(measurements);
    fourth.close();

    for (let opened = 0; opened < 2; opened += 1) {
      const database = memoryDatabase(factory, 'left-behind');
      expect(await database.table('plans').toArray()).toEqual([plan]);
      expect(await database.table('measurements').toArray()).toEqual(measurements);
      database.close();
    }
  });

  it('bring a database of version 3 up to date when it is opened, all of it untouched, with room for measurements and plans', async () => {
    const factory = new IDBFactory();
    const third = new Dexie('left-behind', { indexedDB: factory, IDBKeyRange });
    third.version(1).stores({ readSets: 'id, startedAt' });
    third.version(2).stores({ rounds: 'id, day', putts: 'id, roundId', practice: 'id, day', notes: 'name' });
    third.version(3).stores({ drillResults: 'id, day' });
    const rounds = [{ id: 'round-of-version-3', day: '2025-11-22', anything: 1 }];
    await third.table('readSets').bulkAdd([READ_SET_3, DAMAGED]);
    await third.table('rounds').bulkAdd(rounds);
    await third.table('drillResults').add(DRILL_RESULT_3);
    await third.table('notes').add({ name: 'lastBackup', at: 5 });
    third.close();

    const { measurements, plans } = LITERAL_BACKUP.tables;
    for (let opened = 0; opened < 2; opened += 1) {
      const database = memoryDatabase(factory, 'left-behind');
      expect(await readStoreOf(database).list()).toEqual({ records: [READ_SET_3], unreadable: 1 });
      expect(await database.table('rounds').toArray()).toEqual(rounds);
      expect(await drillResultsOf(database).list()).toEqual({ records: [DRILL_RESULT_3], unreadable: 0 });
      expect(await database.notes.get('lastBackup')).toEqual({ name: 'lastBackup', at: 5 });
      // Measurements and plans begin with version 4: none at first, and what is written stays.
      expect(await database.table('measurements').toArray()).toEqual(opened === 0 ? [] : measurements);
      expect(await database.table('plans').toArray()).toEqual(opened === 0 ? [] : plans);
      await database.table('measurements').bulkPut(measurements);
      await database.table('plans').bulkPut(plans);
      database.close();
    }
  });
});
