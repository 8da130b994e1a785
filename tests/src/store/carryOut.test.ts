/** Imports carried out: all of a plan or nothing, and never over what has changed meanwhile. Node's stand-in for IndexedDB. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeBackup } from '../../../src/store/backup.ts';
import { carryOut } from '../../../src/store/carryOut.ts';
import type { Database } from '../../../src/store/database.ts';
import type { ImportPlan } from '../../../src/store/importPlan.ts';
import { recordsOf } from '../../../src/store/records.ts';
import { rawRecords } from '../../../src/store/recordsNow.ts';
import { perTable } from '../../../src/store/tables.ts';
import { atOnce } from '../../../src/store/work.ts';
import { anyRecords } from '../../support/anyRecords.ts';
import { contents, contentsNow, nowOf, planOf } from '../../support/imports.ts';
import { LITERAL_BACKUP, literalBackup } from '../../support/literalBackup.ts';
import { memoryDatabase } from '../../support/memoryRecords.ts';

const TEXT = JSON.stringify(LITERAL_BACKUP);
const [ROUND] = LITERAL_BACKUP.tables.rounds;
const planFor = async (database: Database, text: string): Promise<ImportPlan> =>
  planOf(text, await nowOf(database));
const holding = async (text = TEXT): Promise<Database> => {
  const database = memoryDatabase();
  expect(await carryOut(database, await planFor(database, text))).toBe('written');
  return database;
};
const found = async (database: Database) => contents(await rawRecords(database));

const NOTHING = perTable(() => []);

describe('an import', () => {
  it('writes everything of the plan', async () => {
    const database = await holding();
    expect(await found(database)).toEqual(LITERAL_BACKUP.tables);
  });

  it('of any backup leaves the same records, and a second one changes nothing', async () => {
    await fc.assert(
      fc.asyncProperty(anyRecords, async (now) => {
        const text = atOnce(makeBackup(now, 1)).join('');
        const database = await holding(text);
        expect(await found(database)).toEqual(contentsNow(now));
        const again = await planFor(database, text);
        expect(again.counts.same).toBe(again.lines.length);
        database.close();
      }),
      { seed: 71, numRuns: 40 },
    );
  });

  it('writes nothing while refusals are not said to be left out, and the rest when they are', async () => {
    const file = literalBackup();
    file.tables.practice[0].attempts = 0;
    const database = memoryDatabase();
    const plan = await planFor(database, JSON.stringify(file));
    expect(await carryOut(database, plan)).toBe('refused');
    expect((await found(database)).rounds).toEqual([]);
    expect(await carryOut(database, plan, { leaveOutRefused: true })).toBe('written');
    expect(await found(database)).toEqual({ ...LITERAL_BACKUP.tables, practice: [] });
  });

  it.each([
    [
      'a putt was added to a hole of it',
      async (database: Database) => {
        await database.putts.put({
          id: 'from-a-tab',
          roundId: ROUND.id,
          hole: 2,
          stroke: 1,
          kind: 'putt',
          distance: 2,
          holed: true,
          recordedAt: 1,
        });
      },
    ],
    ['the round was removed', (database: Database) => recordsOf(database).removeRound(ROUND.id)],
    [
      'the round was changed',
      async (database: Database) => {
        await database.rounds.update(ROUND.id, { course: 'Elsewhere' });
      },
    ],
    [
      'the putt itself was written meanwhile',
      async (database: Database) => {
        await database.putts.put({ ...LITERAL_BACKUP.tables.putts[2], distance: 5 } as never);
      },
    ],
  ])('writes nothing when %s after the plan was made', async (_what, meanwhile) => {
    const before = literalBackup();
    before.tables.putts.pop();
    const database = await holding(JSON.stringify(before));
    const plan = await planFor(database, TEXT);
    expect(plan.counts.add).toBe(1);
    await meanwhile(database);
    const then = await found(database);
    expect(await carryOut(database, plan)).toBe('changedElsewhere');
    expect(await found(database)).toEqual(then);
  });

  it('is not disturbed by a change of records it has nothing to do with', async () => {
    const database = memoryDatabase();
    const plan = await planFor(database, TEXT);
    await database.rounds.put({ ...ROUND, id: 'another-round', holes: 9, withoutPutt: [] });
    expect(await carryOut(database, plan)).toBe('written');
    expect(await database.rounds.count()).toBe(2);
  });

  it('takes everything back when the device refuses one record, and says so by rejecting', async () => {
    const database = memoryDatabase();
    const plan = await planFor(database, TEXT);
    database.readSets.hook('creating', () => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await expect(carryOut(database, plan)).rejects.toThrow();
    expect(await found(database)).toEqual(NOTHING);
  });

  it('takes everything back when it is cancelled in the middle', async () => {
    const database = memoryDatabase();
    const plan = await planFor(database, TEXT);
    const cancel = new AbortController();
    const shares: number[] = [];
    await expect(
      carryOut(database, plan, {
        signal: cancel.signal,
        onProgress: (share) => {
          shares.push(share);
          if (share > 0.4) cancel.abort();
        },
      }),
    ).rejects.toThrow();
    expect(shares.length).toBeGreaterThan(0);
    expect(await found(database)).toEqual(NOTHING);
  });
});
