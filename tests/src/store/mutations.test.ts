/**
 * Twelve hundred spoilt files through the app's import, into a database: each refused with a reason, or imported as planned; never
 * half, and what is in the database afterwards holds together. Node's stand-in for IndexedDB; a real browser: browser/data.e2e.ts.
 */
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { carryOut } from '../../../src/store/carryOut.ts';
import { readImportFile } from '../../../src/store/fileText.ts';
import { planImport } from '../../../src/store/importPlan.ts';
import { rawRecords } from '../../../src/store/recordsNow.ts';
import { atOnce } from '../../../src/store/work.ts';
import { afterPlan, contents, inUtc, nowOf } from '../../support/imports.ts';
import { memoryDatabase } from '../../support/memoryRecords.ts';
import { mutatedFile } from '../../support/mutationFiles.ts';
import { brokenLaws } from '../../support/recordLaws.ts';

const FILES = 1200;

type Loose = Record<string, unknown>;
/** A record without what an import may change: blanks round names, the end of a round, answers that are merged, the day of old sets. */
const bare = (record: Loose): Loose => {
  const { endedAt: _endedAt, answers: _answers, day, ...rest } = record;
  const trimmed = Object.entries(rest).map(([name, value]) => [
    name,
    typeof value === 'string' ? value.trim() : value,
  ]);
  return { ...Object.fromEntries(trimmed), ...('drillId' in record ? {} : { day }) };
};

/** Records of a database that its file does not hold, told by JSON.parse alone; undefined when the file is not JSON. */
const inventedRecords = (bytes: Uint8Array, after: Record<string, unknown[]>): string[] | undefined => {
  let file: { tables: Record<string, Loose[]> };
  try {
    file = JSON.parse(
      new TextDecoder(bytes[0] === 0xff ? 'utf-16le' : bytes[0] === 0xfe ? 'utf-16be' : 'utf-8').decode(
        bytes,
      ),
    );
  } catch {
    return undefined;
  }
  return Object.entries(after).flatMap(([table, records]) =>
    (records as Loose[])
      .filter(
        (record) =>
          !(file.tables[table] ?? []).some((one) => isDeepStrictEqual(bare(one ?? {}), bare(record))),
      )
      .map((record) => `${table} ${record.id}`),
  );
};

describe('spoilt files', () => {
  it('are refused with a reason or imported right, never half', async () => {
    const outcomes = { file: 0, lines: 0, whole: 0, nothing: 0, compared: 0 };
    let database = memoryDatabase();
    for (let number = 0; number < FILES; number += 1) {
      const { bytes, name } = mutatedFile(number);
      // Every tenth meets a database that holds what came before it.
      if (number % 10 !== 0) {
        database.close();
        database = memoryDatabase();
      }
      const before = contents(await rawRecords(database));
      const read = atOnce(readImportFile(bytes, inUtc));
      if (!read.ok) {
        expect(read.problem, name).toMatch(/^Got [\s\S]+ expected /);
        expect(contents(await rawRecords(database)), name).toEqual(before);
        outcomes.file += 1;
        continue;
      }
      const plan = atOnce(planImport(read.file, await nowOf(database)));
      const refused = plan.lines.filter(({ verdict }) => verdict === 'refuse');
      for (const { reason } of refused) expect(reason, name).toMatch(/[.]$/);
      if (refused.length > 0) {
        expect(await carryOut(database, plan), name).toBe('refused');
        expect(contents(await rawRecords(database)), name).toEqual(before);
        outcomes.lines += 1;
      } else outcomes[plan.counts.add + plan.counts.change > 0 ? 'whole' : 'nothing'] += 1;
      expect(await carryOut(database, plan, { leaveOutRefused: true }), name).toBe('written');
      const after = await rawRecords(database);
      expect(contents(after), name).toEqual(afterPlan(plan));
      expect(brokenLaws(after), name).toEqual([]);
      if (read.file.kind === 'backup' && number % 10 !== 0) {
        expect(inventedRecords(bytes, contents(after)), name).toEqual([]);
        outcomes.compared += 1;
      }
    }
    // Each way out is taken often enough to have been tried.
    expect(Math.min(outcomes.file, outcomes.lines, outcomes.whole)).toBeGreaterThan(100);
    expect(outcomes.file + outcomes.lines + outcomes.whole + outcomes.nothing).toBe(FILES);
    expect(outcomes.compared).toBeGreaterThan(100);
    // Nothing of a file has become part of every object.
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as Record<string, unknown>).wind).toBeUndefined();
  });
});
