/** Which map serves which question. Maps here are hardly begun: only whose they are matters. */
import { describe, expect, it } from 'vitest';
import { fieldSurface } from '../../../sim/index.ts';
import { keepMap, type MapQuestion, mapFor, mirrorOf, newMap } from '../../../src/screens/green/maps.ts';
import { flatTable, otherPlayer, planeQuestion, player } from './shells.ts';

const field = () =>
  fieldSurface({ origin: { x: 0, y: 0 }, spacing: 1, columns: 9, rows: 9, heights: new Float64Array(81) });
const onField = (surface = field(), hole = { x: 4, y: 4 }): MapQuestion => ({
  putt: { ...planeQuestion(hole).putt, surface },
  player,
});
const keep = (question: MapQuestion, step = 0): void =>
  keepMap(question, { ...newMap(question), step, table: flatTable(question.putt.hole) });

describe('kept maps', () => {
  it('serve another place of the hole on a plane, moved there with their table', () => {
    keep(planeQuestion({ x: 0, y: 0 }));
    const found = mapFor(planeQuestion({ x: 3, y: -2 }));
    const fresh = newMap(planeQuestion({ x: 3, y: -2 })).map;
    expect(found?.map.origin).toEqual(fresh.origin);
    expect(found?.map.status).toEqual(fresh.status);
    expect(found?.table.hole).toEqual({ x: 3, y: -2 });
  });

  it('serve the same hole of the same field only', () => {
    const surface = field();
    keep(onField(surface));
    expect(mapFor(onField(surface))).toBeDefined();
    expect(mapFor(onField(surface, { x: 5, y: 4 }))).toBeUndefined();
    expect(mapFor(onField())).toBeUndefined();
  });

  it.each<[string, (question: MapQuestion) => MapQuestion]>([
    ['slope', () => planeQuestion(undefined, 0.031)],
    ['green speed', ({ putt, ...rest }) => ({ putt: { ...putt, greenSpeed: 3.3 }, ...rest })],
    ['capture rule', ({ putt, ...rest }) => ({ putt: { ...putt, capture: 'freeFall' }, ...rest })],
    ['skid', ({ putt, ...rest }) => ({ putt: { ...putt, skid: true }, ...rest })],
    ['player', ({ putt }) => ({ putt, player: otherPlayer })],
  ])('do not serve another %s', (_, change) => {
    const question = planeQuestion(undefined, 0.03);
    keep(question);
    expect(mapFor(question)).toBeDefined();
    expect(mapFor(change(question))).toBeUndefined();
  });

  it('give way to what is known later of the same question, and the oldest to new ones', () => {
    const first = planeQuestion(undefined, 0.01);
    keep(first);
    keep(first, 2);
    expect(mapFor(first)?.step).toBe(2);
    for (let more = 1; more <= 8; more++) keep(planeQuestion(undefined, 0.04 + more / 1000));
    expect(mapFor(first)).toBeUndefined();
  });
});

describe('mirror images', () => {
  it('lie across the fall line of a plane, and a field has none', () => {
    const question = planeQuestion({ x: 2, y: 1 });
    const { map } = newMap(question);
    const across = mirrorOf(question.putt, map);
    expect(across?.(0)).toBe(map.columns - 1);
    expect(across?.(3 * map.columns + 5)).toBe(4 * map.columns - 6);
    // The middle column passes through the hole.
    const middle = (map.columns - 1) / 2;
    expect(map.origin.x + middle * map.spacingX).toBeCloseTo(2, 12);
    expect(across?.(middle)).toBe(middle);
    expect(mirrorOf(onField().putt, map)).toBeUndefined();
  });
});
