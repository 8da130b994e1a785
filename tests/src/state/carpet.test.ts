/** How fast the carpet is: measured, set by hand since, or the usual; the last act wins, whatever clocks say. */
import { describe, expect, it } from 'vitest';
import { feetToMetres } from '../../../sim/index.ts';
import { type Carpet, carpetOf, newestCarpet, parseCarpet, USUAL_CARPET } from '../../../src/state/carpet.ts';
import type { KeptMeasurement } from '../../../src/store/measurementSchema.ts';
import { LITERAL_BACKUP } from '../../support/literalBackup.ts';

const [CARPET, GATES] = LITERAL_BACKUP.tables.measurements as unknown as KeptMeasurement[];
const measured = { id: CARPET.id, day: CARPET.day, speed: 3.14 };

describe('the speed of the carpet', () => {
  it('is the usual one before anything is known', () => {
    expect(carpetOf({})).toEqual({ speed: USUAL_CARPET, basis: { kind: 'usual' } });
  });

  it('is the measured one, with its day, until it is set by hand, and again when another is kept', () => {
    expect(carpetOf({ measured })).toEqual({ speed: 3.14, basis: { kind: 'measured', day: '2025-11-24' } });
    const typed = { speed: 3.3, over: measured.id };
    expect(carpetOf({ typed, measured })).toEqual({ speed: 3.3, basis: { kind: 'typed', measured } });
    const next = { id: 'measured-anew', day: '2025-11-20', speed: 2.9 };
    expect(carpetOf({ typed, measured: next }).speed).toBe(2.9);
    // Set before anything was measured.
    expect(carpetOf({ typed: { speed: 3.3 }, measured }).speed).toBe(3.14);
    expect(carpetOf({ typed: { speed: 3.3 } }).basis.kind).toBe('typed');
  });

  it('stays within what the screens take: 4 to 16 ft', () => {
    expect(carpetOf({ measured: { ...measured, speed: 0.4 } }).speed).toBe(feetToMetres(4));
    expect(carpetOf({ measured: { ...measured, speed: 9 } }).speed).toBe(feetToMetres(16));
  });

  it('comes from the newest roll on a carpet: neither grass nor a gate says anything of it', () => {
    const grass = { ...CARPET, id: 'rolled-on-grass', ground: 'grass' } as KeptMeasurement;
    const older = { ...CARPET, id: 'rolled-before', day: '2025-10-01' } as KeptMeasurement;
    expect(newestCarpet([GATES, grass, CARPET, older])).toEqual(measured);
    expect(newestCarpet([GATES, grass])).toBeUndefined();
  });
});

describe('what is kept of it', () => {
  it('comes back as it was kept, and what is not ours is dropped', () => {
    const carpet: Carpet = { typed: { speed: 3.3, over: measured.id }, measured };
    expect(parseCarpet(JSON.stringify(carpet), null)).toEqual(carpet);
    for (const wrong of [null, '{', '[1]', '{"typed":{"speed":99}}', '{"measured":{"id":"x"}}', '{"wind":1}'])
      expect(parseCarpet(wrong, null)).toEqual({});
  });

  it('is at first what the practice screen kept, if somebody had set it there', () => {
    expect(parseCarpet(null, JSON.stringify({ drillId: 'carpet-gate', carpetSpeed: 3.2 }))).toEqual({
      typed: { speed: 3.2 },
    });
    expect(parseCarpet(null, JSON.stringify({ carpetSpeed: USUAL_CARPET }))).toEqual({});
    expect(parseCarpet(null, JSON.stringify({ carpetSpeed: 99 }))).toEqual({});
    expect(parseCarpet('{}', JSON.stringify({ carpetSpeed: 3.2 }))).toEqual({});
  });
});
