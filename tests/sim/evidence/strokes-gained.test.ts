/** Strokes gained: examples by hand from the tour's printed figures, the sum over a hole, rounds. */
import { describe, expect, it } from 'vitest';
import {
  BENCHMARKS,
  feetToMetres,
  gainedByPutt,
  gainedOnHole,
  meanInterval,
  playedHoles,
  puttingBenchmarkOf,
  strokesGained,
  TOUR_RECORD,
} from '../../../sim/index.ts';
import { holedOut, madeRecord, recordedPutt } from '../../support/recordedPutts.ts';

describe('a hole measured against the tour', () => {
  // By hand from Broadie's printed mean putts (MODEL.md, section 4, and published.ts): 33 ft 2.00 and 8 ft 1.50 (read),
  // 20 ft 1.87, 60 ft 2.21 and 3 ft 1.04 (memory). Tolerance: half a hundredth of rounding and 1.5 points for other years.
  it.each([
    ['33 ft in two', [33, 2], 2.0 - 2],
    ['8 ft holed', [8], 1.5 - 1],
    ['20 ft in three', [20, 3, 1], 1.87 - 3],
    ['60 ft in two', [60, 3], 2.21 - 2],
    ['3 ft in two', [3, 1], 1.04 - 2],
  ])('%s', (_, feet, expected) => {
    const [hole] = playedHoles(holedOut(feet.map(feetToMetres)));
    expect(Math.abs((gainedOnHole(TOUR_RECORD, hole) ?? Number.NaN) - expected)).toBeLessThan(0.02);
  });

  it('gives each putt its part: 20 ft to 3 ft loses 1.04 + 1 - 1.87, the 3-footer gains 0.04', () => {
    const [{ putts }] = playedHoles(holedOut([20, 3].map(feetToMetres)));
    const [lag, short] = putts.map((putt) => gainedByPutt(TOUR_RECORD, putt) ?? Number.NaN);
    expect(Math.abs(lag - (1.87 - 1 - 1.04))).toBeLessThan(0.02);
    expect(Math.abs(short - 0.04)).toBeLessThan(0.02);
  });

  it('conceded after a lag counts the lag alone: the given ball still needs its putts', () => {
    const [hole] = playedHoles([
      recordedPutt({ distance: feetToMetres(33), miss: { leave: feetToMetres(3) } }),
      recordedPutt({ stroke: 2, kind: 'conceded', distance: feetToMetres(3) }),
    ]);
    expect(Math.abs((gainedOnHole(TOUR_RECORD, hole) ?? Number.NaN) - (2.0 - 1 - 1.04))).toBeLessThan(0.02);
  });

  it('leaves out a putt that rolled off the green', () => {
    const holes = playedHoles([
      recordedPutt({ distance: 10, miss: { leave: 6 } }),
      recordedPutt({ stroke: 2, kind: 'offGreen', distance: 6 }),
      recordedPutt({ stroke: 3, distance: feetToMetres(8), holed: true }),
    ]);
    expect(gainedOnHole(TOUR_RECORD, holes[0])).toBeUndefined();
    const [round] = strokesGained(TOUR_RECORD, holes).rounds;
    expect(round).toMatchObject({ holes: 1, putts: 1, leftOut: 1 });
    expect(Math.abs(round.gained - 0.5)).toBeLessThan(0.02);
  });
});

describe('sums', () => {
  const { putts } = madeRecord(12, 'gained');
  const holes = playedHoles(putts);

  it.each(BENCHMARKS)(
    'over a hole are E(first putt) less the putts taken, leaves cancelling: $id',
    (benchmark) => {
      // Rounding of a sum of six numbers below 4.
      for (const hole of holes)
        expect(gainedOnHole(benchmark, hole)).toBeCloseTo(
          benchmark.expectedPuttsAt(hole.first.distance) - hole.putts.length,
          12,
        );
    },
  );

  it('over rounds run on, and their mean is Student’s of the rounds', () => {
    const gained = strokesGained(TOUR_RECORD, holes);
    expect(gained.rounds).toHaveLength(12);
    expect(gained.holes).toBe(12 * 18);
    const plain = holes.map((hole) => TOUR_RECORD.expectedPuttsAt(hole.first.distance) - hole.putts.length);
    expect(gained.gained).toBeCloseTo(
      plain.reduce((sum, one) => sum + one, 0),
      9,
    );
    expect(gained.rounds[11].running).toBe(gained.gained);
    const student = meanInterval(gained.rounds.map((round) => round.gained));
    for (const end of ['value', 'low', 'high'] as const)
      expect(gained.per18?.[end]).toBeCloseTo(student?.[end] ?? Number.NaN, 12);
  });

  it('count nine holes as half of eighteen', () => {
    const nine = holes.filter(({ roundId, hole }) => roundId !== 'round-0' || hole <= 9);
    const { rounds, per18, gained, holes: count } = strokesGained(TOUR_RECORD, nine);
    expect(rounds[0].holes).toBe(9);
    expect(rounds[0].per18).toBeCloseTo(2 * rounds[0].gained, 12);
    expect(per18?.value).toBeCloseTo((18 * gained) / count, 12);
  });

  it('are kinder against a weaker benchmark, by what that benchmark loses to the other from the same places', () => {
    const ninety = puttingBenchmarkOf('averaging-90-modelled');
    const tour = puttingBenchmarkOf('tour-modelled');
    if (!ninety || !tour) throw new Error('both are there');
    const between = holes.reduce(
      (sum, { first }) => sum + ninety.expectedPuttsAt(first.distance) - tour.expectedPuttsAt(first.distance),
      0,
    );
    expect(between).toBeGreaterThan(0);
    expect(strokesGained(ninety, holes).gained - strokesGained(tour, holes).gained).toBeCloseTo(between, 9);
  });

  it('of nothing are nothing', () => {
    expect(strokesGained(TOUR_RECORD, [])).toMatchObject({
      rounds: [],
      gained: 0,
      holes: 0,
      per18: undefined,
    });
  });
});
