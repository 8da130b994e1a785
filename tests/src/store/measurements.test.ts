/**
 * Measurements on the device: kept once, listed, taken back, and back again as the engine gave them. Node's stand-in for IndexedDB.
 * Oracle: the engine's own results, and JSON, which has no word for an infinite number.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type MeasuredGreen,
  type MeasuredPlayer,
  measureGreenSpeed,
  paceControl,
  startLine,
  timedSlowings,
} from '../../../sim/index.ts';
import { measuredOf, measurementSchema, toKeep } from '../../../src/store/measurementSchema.ts';
import { measurementsOf } from '../../../src/store/measurements.ts';
import { anyMeasured } from '../../support/anyRecords.ts';
import { memoryDatabase } from '../../support/memoryRecords.ts';

const DAY = '2026-05-02';
const some = <Value>(value: Value | undefined): Value => {
  if (value === undefined) throw new Error('no result');
  return value;
};
const rolls = [
  { way: 'there' as const, distance: 2.4, seconds: 2.8 },
  { way: 'back' as const, distance: 2.9, seconds: 3.6 },
];
const CARPET: MeasuredGreen = {
  day: DAY,
  ground: 'carpet',
  by: 'timedRolls',
  rolls,
  result: some(measureGreenSpeed(timedSlowings(rolls))),
};
/** None passed: no value, and no upper end. */
const gates = [{ width: 0.1, distance: 1, passes: 0, tries: 4 }];
const GATES: MeasuredPlayer = { day: DAY, by: 'gates', gates, result: some(startLine(gates)) };
/** No side was written down. */
const balls = [
  { target: 3, past: 0.2 },
  { target: 5, past: -0.4 },
];
const PACE: MeasuredPlayer = { day: DAY, by: 'paceRolls', rolls: balls, result: some(paceControl(balls)) };

describe('a measurement', () => {
  it('of the engine comes back from the device and from a file as it was', async () => {
    expect(GATES.by === 'gates' && GATES.result.high).toBe(Number.POSITIVE_INFINITY);
    const measurements = measurementsOf(memoryDatabase());
    for (const [index, measured] of [CARPET, GATES, PACE].entries()) {
      const kept = toKeep(measured, { id: `measured-${index}`, recordedAt: index });
      expect(await measurements.keep(kept)).toBe('written');
      expect(measuredOf(kept)).toEqual(measured);
      expect(JSON.parse(JSON.stringify(kept))).toEqual(kept);
    }
    const listed = (await measurements.list()).records;
    expect(listed.map(measuredOf)).toEqual([PACE, GATES, CARPET]);
  });

  it('of any kind passes the gate and survives JSON, infinite ends and all', () => {
    fc.assert(
      fc.property(anyMeasured, (measured) => {
        const kept = toKeep(measured, { id: 'any-measurement', recordedAt: 1 });
        const file = JSON.parse(JSON.stringify(kept)) as unknown;
        expect(measurementSchema.safeParse(file).error).toBeUndefined();
        expect(measuredOf(measurementSchema.parse(file))).toEqual(measured);
      }),
      { seed: 91, numRuns: 300 },
    );
  });
});

describe('measurements on the device', () => {
  it('are kept once however often the same entries are kept that day, and again after they were taken back', async () => {
    const measurements = measurementsOf(memoryDatabase());
    const as = (id: string, recordedAt: number, day = DAY) => toKeep({ ...CARPET, day }, { id, recordedAt });
    expect(await measurements.keep(as('first-time', 1))).toBe('written');
    expect(await measurements.keep(as('second-time', 2))).toBe('there');
    expect(await measurements.keep(as('the-day-after', 3, '2026-05-03'))).toBe('written');
    expect((await measurements.list()).records.map(({ id }) => id)).toEqual(['the-day-after', 'first-time']);
    await measurements.remove('first-time');
    expect(await measurements.keep(as('third-time', 4))).toBe('written');
  });

  it('are not written when they are none, and reject when the device refuses', async () => {
    const database = memoryDatabase();
    const measurements = measurementsOf(database);
    const kept = toKeep(CARPET, { id: 'measured-once', recordedAt: 1 });
    await expect(measurements.keep({ ...kept, day: '2026-02-30' })).rejects.toThrow(/cannot be kept/);
    database.measurements.hook('creating', () => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await expect(measurements.keep(kept)).rejects.toThrow();
    expect(await database.measurements.count()).toBe(0);
  });

  it('that this version cannot read stay there and are counted', async () => {
    const database = memoryDatabase();
    await database.table('measurements').put({ id: 'of-a-later-version', day: DAY, by: 'sonar' });
    const measurements = measurementsOf(database);
    await measurements.keep(toKeep(PACE, { id: 'measured-once', recordedAt: 1 }));
    expect(await measurements.list()).toMatchObject({
      records: [{ id: 'measured-once' }],
      unreadable: 1,
    });
    expect(await database.measurements.count()).toBe(2);
  });
});
