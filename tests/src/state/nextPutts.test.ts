/** Which table of next putts serves which putt. Tables here are empty shells: only whose they are matters. */
import { describe, expect, it } from 'vitest';
import { fieldSurface, type NextPutts, PRESETS, type Putt, planeSurface } from '../../../sim/index.ts';
import { hasTable, keepTable, roughTable, tableFor, useTable } from '../../../src/state/nextPutts.ts';

const [{ player }, { player: other }] = PRESETS;
const shell = (hole: { x: number; y: number }): NextPutts =>
  ({ hole, missed: new Float64Array(4), expected: new Float64Array(4) }) as unknown as NextPutts;
const plane = (slope: number, greenSpeed = 3.048): Putt => ({
  surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
  greenSpeed,
  ball: { x: 3, y: 0 },
  hole: { x: 0, y: 0 },
  capture: 'simple',
});
const onField = (
  surface = fieldSurface({
    origin: { x: 0, y: 0 },
    spacing: 1,
    columns: 9,
    rows: 9,
    heights: new Float64Array(81),
  }),
): Putt => ({
  ...plane(0),
  surface,
  ball: { x: 6, y: 4 },
  hole: { x: 3, y: 4 },
});

describe('tables of next putts', () => {
  it('serve any place of ball and hole on the same plane, moved to the hole', () => {
    keepTable(plane(0.02), player, undefined, shell({ x: 0, y: 0 }));
    const moved = { ...plane(0.02), hole: { x: 5, y: 1 }, ball: { x: 1, y: 1 } };
    expect(tableFor(moved, player)?.hole).toEqual({ x: 5, y: 1 });
  });

  it('do not serve another slope, green speed, player or strike', () => {
    keepTable(plane(0.02), player, undefined, shell({ x: 0, y: 0 }));
    expect(hasTable(plane(0.025), player)).toBe(false);
    expect(hasTable(plane(0.02, 3.3528), player)).toBe(false);
    expect(hasTable(plane(0.02), other)).toBe(false);
    expect(hasTable({ ...plane(0.02), skid: true }, player)).toBe(false);
    expect(hasTable({ ...plane(0.02), skid: false }, player)).toBe(true);
  });

  it('of a foot faster at 10 ft serve 11 ft too, on a plane', () => {
    keepTable(plane(0.03), player, 'faster', shell({ x: 0, y: 0 }));
    expect(hasTable(plane(0.03, 11 * 0.3048), player)).toBe(true);
  });

  it('serve one hole only on a field', () => {
    const putt = onField();
    keepTable(putt, player, undefined, shell(putt.hole));
    expect(hasTable({ ...putt, ball: { x: 1, y: 1 } }, player)).toBe(true);
    expect(hasTable({ ...putt, hole: { x: 3, y: 5 } }, player)).toBe(false);
    expect(hasTable(putt, player, 'steeper')).toBe(false);
    expect(hasTable({ ...putt, skid: true }, player)).toBe(false);
    expect(hasTable(onField(), player)).toBe(false);
  });

  it('remember a condition in which there is no putt', () => {
    keepTable(plane(0.07), player, 'steeper', undefined);
    expect(hasTable(plane(0.07), player, 'steeper')).toBe(true);
    expect(tableFor(plane(0.07), player, 'steeper')).toBeUndefined();
  });

  it('that are old are near on the same kind of ground and far on another', () => {
    useTable(shell({ x: 0, y: 0 }), plane(0.02));
    expect(roughTable(plane(0.04))?.near).toBe(true);
    expect(roughTable(onField())?.near).toBe(false);
    expect(roughTable(onField())?.table.hole).toEqual({ x: 3, y: 4 });
  });
});
