/** The putts of a hole and a round as they are written down. Expected values written out by hand. */
import { describe, expect, it } from 'vitest';
import type { RecordedPutt } from '../../../sim/index.ts';
import {
  holeToGoOn,
  isFinished,
  nextHole,
  takenAway,
  undoTarget,
  withoutPuttOf,
  withPutt,
} from '../../../src/screens/record/hole.ts';
import type { RoundInHand } from '../../../src/store/records.ts';

const putt = (changes: Partial<RecordedPutt>): RecordedPutt => ({
  id: 'putt-0001',
  roundId: 'round-0001',
  hole: 1,
  stroke: 1,
  kind: 'putt',
  distance: 4,
  holed: true,
  recordedAt: 5,
  ...changes,
});
const missed = (id: string, distance: number, leave: number, stroke = 1): RecordedPutt =>
  putt({ id, distance, stroke, holed: false, miss: { leave } });
const holed = (id: string, distance: number, stroke = 1, hole = 1): RecordedPutt =>
  putt({ id, distance, stroke, hole });
const round = (
  putts: readonly RecordedPutt[],
  withoutPutt: number[] = [],
  holes: 9 | 18 = 9,
): RoundInHand => ({
  round: { id: 'round-0001', day: '2026-05-02', startedAt: 1, holes, withoutPutt },
  putts,
});

const THREE = [missed('a', 9, 1.2), missed('b', 1.2, 0.3, 2), holed('c', 0.3, 3)];

describe('a hole', () => {
  it('takes a new putt at its end, and a corrected one in its place', () => {
    expect(withPutt([missed('a', 9, 1.2)], holed('b', 1.2)).map(({ id, stroke }) => [id, stroke])).toEqual([
      ['a', 1],
      ['b', 2],
    ]);
    expect(withPutt(THREE, missed('a', 8, 1.2)).map(({ distance }) => distance)).toEqual([8, 1.2, 0.3]);
  });

  it('hands a corrected leave on to the next putt, unless that had a distance of its own', () => {
    expect(withPutt(THREE, missed('a', 9, 2))[1].distance).toBe(2);
    const own = [missed('a', 9, 1.2), holed('b', 3, 2)];
    expect(withPutt(own, missed('a', 9, 2))[1].distance).toBe(3);
  });

  it('ends with a putt corrected to holed, and says how many go', () => {
    expect(takenAway(THREE, holed('a', 9))).toBe(2);
    expect(withPutt(THREE, holed('a', 9)).map(({ id }) => id)).toEqual(['a']);
    expect(takenAway(THREE, missed('a', 9, 2))).toBe(0);
    expect(takenAway(THREE, holed('new', 2))).toBe(0);
  });

  it('numbers its strokes anew when one is taken out', () => {
    expect(withoutPuttOf(THREE, 'b').map(({ id, stroke }) => [id, stroke])).toEqual([
      ['a', 1],
      ['c', 2],
    ]);
  });

  it('is finished by a holed or conceded last putt, or by the word that it had none', () => {
    expect(isFinished(round(THREE), 1)).toBe(true);
    expect(isFinished(round(THREE.slice(0, 2)), 1)).toBe(false);
    expect(isFinished(round([putt({ kind: 'conceded', holed: false })]), 1)).toBe(true);
    expect(isFinished(round([]), 1)).toBe(false);
    expect(isFinished(round([], [1]), 1)).toBe(true);
  });
});

describe('a round', () => {
  const finished = (...holes: number[]) => round(holes.map((hole) => holed(`putt-${hole}`, 1, 1, hole)));

  it('goes on to the next hole that is not finished, round by the first', () => {
    expect(nextHole(finished(1, 2, 3), 2)).toBe(4);
    expect(nextHole(finished(5, 6, 7, 8, 9), 9)).toBe(1);
    expect(nextHole(finished(1, 2, 3, 4, 5, 6, 7, 8, 9), 9)).toBeUndefined();
  });

  it('is taken up at a hole begun, else after the last finished one, wherever it started', () => {
    expect(holeToGoOn(round([]))).toBe(1);
    expect(holeToGoOn(finished(1, 2))).toBe(3);
    expect(holeToGoOn(finished(5, 6, 7, 8, 9))).toBe(1);
    expect(holeToGoOn(finished(1, 2, 5, 6, 7, 8, 9))).toBe(3);
    const begun = finished(1, 2);
    expect(
      holeToGoOn({
        ...begun,
        putts: [...begun.putts, putt({ id: 'x', hole: 7, holed: false, miss: { leave: 1 } })],
      }),
    ).toBe(7);
    expect(holeToGoOn(finished(1, 2, 3, 4, 5, 6, 7, 8, 9))).toBe(9);
  });

  it('takes back the last putt of this hole, or of the one before while this is empty', () => {
    expect(undoTarget(round(THREE), 1)).toMatchObject({ kind: 'putt', putt: { id: 'c' } });
    expect(undoTarget(round(THREE), 2)).toMatchObject({ kind: 'putt', hole: 1, putt: { id: 'c' } });
    expect(undoTarget(round(THREE), 3)).toBeUndefined();
    expect(undoTarget(round([], [1]), 2)).toEqual({ kind: 'withoutPutt', hole: 1 });
    expect(undoTarget(finished(9), 1)).toMatchObject({ hole: 9 });
  });
});
