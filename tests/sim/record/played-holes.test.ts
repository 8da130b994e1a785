/** Putts grouped to holes: what counts, odd data, order of input. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PuttKind, playedHoles, type RecordedPutt } from '../../../sim/index.ts';
import { holedOut, madeRecord, recordedPutt } from '../../support/recordedPutts.ts';

describe('a hole', () => {
  it('holed in two has its first putt, its leave and no three-putt', () => {
    const [hole, ...others] = playedHoles(holedOut([9, 0.8]));
    expect(others).toEqual([]);
    expect(hole).toMatchObject({ end: 'holed', leave: 0.8, threePutted: false, fromOffGreen: false });
    expect(hole.first.distance).toBe(9);
    expect(hole.putts.map(({ rest }) => rest)).toEqual([0.8, 0]);
  });

  it.each([
    [1, false],
    [2, false],
    [3, true],
    [4, true],
  ])('holed in %i is a three-putt: %s', (count, expected) => {
    const distances = [12, 3, 1, 0.4].slice(0, count);
    expect(playedHoles(holedOut(distances))[0].threePutted).toBe(expected);
  });

  it('that ends with a concession keeps its struck putts; whether three were needed is known after two misses only', () => {
    const struck = recordedPutt({ distance: 8, miss: { leave: 0.5 } });
    const again = recordedPutt({ stroke: 2, distance: 0.6, miss: { leave: 0.2 } });
    const given = (stroke: number, distance: number): RecordedPutt =>
      recordedPutt({ stroke, kind: 'conceded', distance });
    const [one] = playedHoles([struck, given(2, 0.6)]);
    expect(one).toMatchObject({ end: 'conceded', leave: 0.6, threePutted: undefined });
    expect(one.putts).toHaveLength(1);
    const [two] = playedHoles([struck, again, given(3, 0.2)]);
    expect(two).toMatchObject({ end: 'conceded', threePutted: true });
    expect(two.putts.map(({ rest }) => rest)).toEqual([0.6, 0.2]);
    expect(playedHoles([given(1, 0.4)])).toEqual([]);
  });

  it('begun from off the green counts from the first putt on the green, and says so', () => {
    const fringe = recordedPutt({ kind: 'offGreen', distance: 14 });
    const onGreen = holedOut([2, 0.3]).map((putt, i) => ({ ...putt, stroke: i + 2 }));
    const [hole] = playedHoles([fringe, ...onGreen]);
    expect(hole).toMatchObject({ fromOffGreen: true, end: 'holed', threePutted: false });
    expect(hole.first.distance).toBe(2);
    expect(hole.putts).toHaveLength(2);
    expect(playedHoles([{ ...fringe, holed: true }])).toEqual([]);
  });

  it('left again by a putt off the green falls into two turns, the first with an end nobody knows', () => {
    const turns = playedHoles([
      recordedPutt({ distance: 10, miss: { leave: 6 } }),
      recordedPutt({ stroke: 2, kind: 'offGreen', distance: 6 }),
      recordedPutt({ stroke: 3, distance: 1, holed: true }),
    ]);
    expect(turns.map(({ end, fromOffGreen, leave }) => [end, fromOffGreen, leave])).toEqual([
      ['leftGreen', false, undefined],
      ['holed', true, 0],
    ]);
  });

  it('of which nothing more was written is unfinished and keeps the leave of its last miss', () => {
    const [hole] = playedHoles([recordedPutt({ distance: 5, miss: { leave: 0.7 } })]);
    expect(hole).toMatchObject({ end: 'unfinished', leave: 0.7, threePutted: undefined });
  });
});

describe('odd data', () => {
  it('with a gap in the strokes is read as if there were none', () => {
    const [first, second] = holedOut([6, 0.5]);
    const [hole] = playedHoles([first, { ...second, stroke: 5 }]);
    expect(hole).toMatchObject({ end: 'holed', leave: 0.5, threePutted: false });
  });

  it('after the ball was holed or conceded is left out', () => {
    const after = recordedPutt({ stroke: 3, distance: 2 });
    expect(playedHoles([...holedOut([6, 0.5]), after])[0].putts).toHaveLength(2);
    const given = recordedPutt({ stroke: 2, kind: 'conceded', distance: 0.3 });
    expect(playedHoles([recordedPutt(), given, after])[0].putts).toHaveLength(1);
  });

  it('with the same stroke twice keeps both, the earlier first', () => {
    const one = recordedPutt({ distance: 4, recordedAt: 20 });
    const other = recordedPutt({ distance: 7, recordedAt: 10 });
    const [{ first, putts }] = playedHoles([one, other]);
    expect(first.distance).toBe(7);
    expect(putts).toHaveLength(2);
  });

  it('with a leave that is not the next distance follows the next distance', () => {
    const [first, second] = holedOut([6, 0.5]);
    expect(playedHoles([{ ...first, miss: { leave: 0.9 } }, second])[0].leave).toBe(0.5);
  });

  it('of any sort does not stop it, and no putt turns up twice or out of nowhere', () => {
    const stroke = fc.record({
      roundId: fc.constantFrom('a', 'b'),
      hole: fc.integer({ min: 1, max: 3 }),
      stroke: fc.integer({ min: 1, max: 5 }),
      kind: fc.constantFrom<PuttKind>('putt', 'conceded', 'offGreen'),
      holed: fc.boolean(),
      distance: fc.double({ min: 0.1, max: 20, noNaN: true }),
      recordedAt: fc.integer({ min: 0, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(stroke, { maxLength: 25 }), fc.infiniteStream(fc.nat()), (strokes, order) => {
        const putts = strokes.map((fields) => recordedPutt(fields));
        const holes = playedHoles(putts);
        const ids = holes.flatMap((hole) => hole.putts.map(({ putt }) => putt.id));
        expect(new Set(ids).size).toBe(ids.length);
        const struck = putts.filter(({ kind }) => kind === 'putt').map(({ id }) => id);
        for (const id of ids) expect(struck).toContain(id);
        // Order of input does not matter.
        const shuffled = putts
          .map((putt) => ({ putt, key: order.next().value ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ putt }) => putt);
        expect(playedHoles(shuffled)).toEqual(holes);
      }),
      { seed: 31, numRuns: 300 },
    );
  });
});

it('whole rounds give back every hole, in order, with all their putts', () => {
  const { putts } = madeRecord(20, 'whole rounds');
  const holes = playedHoles(putts);
  expect(holes.map(({ roundId, hole }) => `${roundId} ${hole}`)).toEqual(
    Array.from({ length: 20 }, (_, r) => Array.from({ length: 18 }, (_, h) => `round-${r} ${h + 1}`)).flat(),
  );
  expect(holes.flatMap((hole) => hole.putts.map(({ putt }) => putt.id))).toEqual(putts.map(({ id }) => id));
  expect(holes.every(({ end }) => end === 'holed')).toBe(true);
});
