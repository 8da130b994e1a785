/**
 * The invented player: records the gate lets pass, holing as the published model says, and the two rounds the review must be able
 * to explain. Mean putts of the tour: Broadie 2014, as listed with their marks in sim/player/published.ts.
 */
import { describe, expect, it } from 'vitest';
import {
  feetToMetres,
  holedByAngleAndDistance,
  metresToFeet,
  PUBLISHED_FIGURES,
  seededRandom,
} from '../../../sim/index.ts';
import { makeDemo } from '../../../src/store/demo.ts';
import { DEMO_PLAYER, strike } from '../../../src/store/demoPlayer.ts';
import { RECORDS_VERSION } from '../../../src/store/migrations.ts';
import { perTable, TABLE_NAMES, tableOf } from '../../../src/store/tables.ts';
import { planOf } from '../../support/imports.ts';

const demo = makeDemo('2025-11-20');
const puttsOf = (roundId: string) => demo.putts.filter((putt) => putt.roundId === roundId);

/** Straight between the published distances. */
const tourMeanPutts = (feet: number): number => {
  const rows = PUBLISHED_FIGURES.filter(({ player, what }) => player === 'tour' && what === 'meanPutts').sort(
    (a, b) => a.feet - b.feet,
  );
  const next = Math.max(
    1,
    rows.findIndex((row) => row.feet >= feet),
  );
  const [low, high] = [rows[next - 1], rows[next]];
  return low.value + ((high.value - low.value) * (feet - low.feet)) / (high.feet - low.feet);
};

describe('the demo', () => {
  it('is the same each time, and moves with its last day', () => {
    expect(makeDemo('2025-11-20')).toEqual(demo);
    const later = makeDemo('2026-01-31');
    expect(later.rounds.at(-1)?.day).toBe('2026-01-31');
    expect(later.putts.map(({ distance }) => distance)).toEqual(demo.putts.map(({ distance }) => distance));
  });

  it('holds only records the gate lets pass, and none that an import would refuse', () => {
    const tables = { ...perTable<readonly unknown[]>(() => []), ...demo };
    for (const table of TABLE_NAMES)
      for (const record of tables[table])
        expect(tableOf(table).schema.safeParse(record).error).toBeUndefined();
    const plan = planOf(
      JSON.stringify({ format: 'borrow-backup', version: RECORDS_VERSION, madeAt: 1, tables }),
    );
    expect(plan.counts).toMatchObject({ refuse: 0, same: 0 });
  });

  it('is two dozen rounds over five months, on courses that say they are invented', () => {
    expect(demo.rounds).toHaveLength(24);
    expect(demo.rounds[0].day).toBe('2025-06-23');
    expect(demo.rounds.at(-1)?.day).toBe('2025-11-20');
    expect(demo.rounds.every(({ course }) => course?.endsWith('(invented)'))).toBe(true);
    expect(demo.rounds.every(({ endedAt }) => endedAt !== undefined)).toBe(true);
    expect(demo.practice.length).toBeGreaterThan(10);
    expect(demo.readSets).toHaveLength(6);
  });

  it('has a nine in which nothing longer than a tap-in dropped, and strokes were gained on the tour', () => {
    const nines = demo.rounds.filter(({ holes, id }) => {
      const longest = Math.max(
        ...puttsOf(id)
          .filter(({ holed }) => holed)
          .map(({ distance }) => distance),
      );
      return holes === 9 && longest < feetToMetres(3);
    });
    expect(nines).toHaveLength(1);
    const putts = puttsOf(nines[0].id);
    const gained = putts
      .filter(({ stroke }) => stroke === 1)
      .reduce(
        (sum, { distance, hole }) =>
          sum + tourMeanPutts(metresToFeet(distance)) - putts.filter((putt) => putt.hole === hole).length,
        0,
      );
    // Nine two-putts from 34 to 58 ft, which take the tour 2.01 to 2.2: a stroke or so.
    expect(gained).toBeGreaterThan(0.5);
  });

  it('has a round with none of six from 12 to 20 ft', () => {
    const none = demo.rounds.filter(({ id }) => {
      const middle = puttsOf(id).filter(({ distance }) => {
        const feet = metresToFeet(distance);
        return feet > 11.99 && feet < 20.01;
      });
      return middle.length === 6 && middle.every(({ holed, kind }) => !holed && kind === 'putt');
    });
    expect(none.map(({ day }) => day)).toContain('2025-10-31');
  });

  it.each([2, 5, 10, 20, 40])(
    'holes straight putts of %i ft as the published model says (Gelman 2019)',
    (feet) => {
      const random = seededRandom(`test ${feet}`);
      const tries = 20_000;
      let holed = 0;
      for (let putt = 0; putt < tries; putt += 1) if (strike(feet, 'straight', random).holed) holed += 1;
      const share = holedByAngleAndDistance(feet, DEMO_PLAYER.angleSd, DEMO_PLAYER.distanceSd);
      // Four standard errors of the count: one false alarm in 16,000.
      expect(Math.abs(holed / tries - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / tries));
    },
  );

  it('misses low more often than high on putts that break: the player sees too little of it', () => {
    const sides = demo.putts.map(({ miss }) => miss?.side);
    const count = (side: string): number => sides.filter((one) => one === side).length;
    expect(count('low')).toBeGreaterThan(1.2 * count('high'));
  });
});
