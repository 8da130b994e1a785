/**
 * What moved since a week was planned. Oracle: simulated periods whose truth is known; with no change in any of the four topics a
 * verdict is claimed in at most 5% of weeks.
 */
import { describe, expect, it } from 'vitest';
import { puttingDrill } from '../../../drills/putting-drills.ts';
import { type PuttingDrill, seededRandom, type WeekPeriod, whatMoved } from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';

const DRILL = puttingDrill('lag-to-circles') as PuttingDrill;
const SD = 3;
const TEST = { drill: DRILL, expectedSd: SD };
const EMPTY: WeekPeriod = { rounds: { values: [] }, putts: [], reads: [], tests: [] };

const score = (value: number): WeekPeriod['tests'][number] => ({
  drillId: DRILL.id,
  version: DRILL.version,
  ground: 'grass',
  score: value,
});

describe('what moved', () => {
  it('says of an empty record that nothing can be told, topic by topic', () => {
    const moved = whatMoved(TEST, EMPTY, EMPTY);
    expect(moved.map(({ topic }) => topic)).toEqual(['rounds', 'putts', 'reading', 'test']);
    for (const { verdict, change } of moved) expect([verdict, change]).toEqual(['cannotTell', undefined]);
  });

  it('never takes one score against one for a change that the drill’s own spread makes', () => {
    // Two scores four points apart, each with a spread of three: 1.96 sqrt(2) 3 = 8.3 to either side.
    const [, , , test] = whatMoved(TEST, { ...EMPTY, tests: [score(10)] }, { ...EMPTY, tests: [score(14)] });
    expect(test.verdict).toBe('cannotTell');
    expect(test.change?.value).toBe(4);
    expect(test.change?.high).toBeCloseTo(4 + 1.959964 * Math.SQRT2 * SD, 4);
  });

  it('finds a change far outside every margin', () => {
    const rounds = (at: number) => ({ values: [at - 0.2, at, at + 0.2, at, at - 0.1, at + 0.1] });
    const moved = whatMoved(
      TEST,
      { ...EMPTY, rounds: rounds(-2), tests: [score(2)] },
      { ...EMPTY, rounds: rounds(1), tests: [score(30)] },
    );
    expect(moved.map(({ verdict }) => verdict)).toEqual(['better', 'cannotTell', 'cannotTell', 'better']);
    expect(moved.map(({ before, after }) => [before, after])).toEqual([
      [6, 6],
      [0, 0],
      [0, 0],
      [1, 1],
    ]);
  });

  it('compares no scores of two versions of a drill', () => {
    const old = { ...score(2), version: DRILL.version + 1 };
    const [, , , test] = whatMoved(TEST, { ...EMPTY, tests: [old] }, { ...EMPTY, tests: [score(30)] });
    expect([test.verdict, test.change]).toEqual(['cannotTell', undefined]);
  });

  it('claims a change in at most 5% of weeks in which nothing changed', () => {
    const random = seededRandom('nothing changed');
    const normal = normals('nothing changed');
    const putts = (count: number) =>
      Array.from({ length: count }, () => {
        const share = 0.1 + 0.8 * random();
        return { holed: random() < share, benchmarkShare: share };
      });
    const period = (rounds: number): WeekPeriod => ({
      rounds: { values: Array.from({ length: rounds }, () => 1.5 * normal()) },
      putts: putts(30 * rounds),
      reads: [],
      tests: [score(Math.round(12 + SD * normal()))],
    });
    const WEEKS = 2000;
    let claimed = 0;
    for (let week = 0; week < WEEKS; week++)
      if (whatMoved(TEST, period(8), period(3)).some(({ verdict }) => verdict !== 'cannotTell')) claimed++;
    // 5% of 2000 and three standard errors of that count, sqrt(2000 * 0.05 * 0.95) = 9.7.
    expect(claimed).toBeLessThanOrEqual(100 + 30);
    // And the simulation itself claims some: a check of nothing would claim none.
    expect(claimed).toBeGreaterThan(0);
  });
});
