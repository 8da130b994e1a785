/** First putts of a record and the stated ones; numbers counted by hand. */
import { describe, expect, it } from 'vitest';
import {
  feetToMetres,
  firstPuttMix,
  HOLES_TO_STAND_ALONE,
  playedHoles,
  STATED_FIRST_PUTTS,
} from '../../../sim/index.ts';
import { holedOut } from '../../support/recordedPutts.ts';

const shareOf = (first: typeof STATED_FIRST_PUTTS.first, length: number): number =>
  first.filter((one) => one.length === length).reduce((sum, { share }) => sum + share, 0);

/** So many holes, two in three first putted from 4 m and one from 9 m. */
const record = (holes: number) =>
  playedHoles(
    Array.from({ length: holes }, (_, i) =>
      holedOut(i % 3 === 2 ? [9, 0.7] : [4, 0.3], {
        roundId: `r${Math.floor(i / 18)}`,
        hole: (i % 18) + 1,
      }),
    ).flat(),
  );

describe('the mix of first putts', () => {
  it('is the stated one without a record, and its shares make one', () => {
    expect(firstPuttMix([])).toBe(STATED_FIRST_PUTTS);
    expect(STATED_FIRST_PUTTS.first.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('states some eight putts a round from 8 to 25 ft: six or more, as the job has it', () => {
    const middle = STATED_FIRST_PUTTS.first.filter(
      ({ length }) => length >= feetToMetres(8) - 1e-9 && length <= feetToMetres(25) + 1e-9,
    );
    const putts = 18 * middle.reduce((sum, { share }) => sum + share, 0);
    expect(putts).toBeGreaterThan(6);
    expect(putts).toBeLessThan(11);
  });

  it('is the record alone from five rounds on: first putts only, counted as they are', () => {
    const mix = firstPuttMix(record(HOLES_TO_STAND_ALONE));
    expect(mix.holes).toBe(90);
    expect(mix.own).toBe(1);
    expect(mix.first.map(({ length }) => length)).toEqual([4, 9]);
    expect(shareOf(mix.first, 4)).toBeCloseTo(2 / 3, 12);
    expect(shareOf(mix.first, 9)).toBeCloseTo(1 / 3, 12);
  });

  it('of a short record is filled up with the stated one: a third of ninety holes make a third', () => {
    const mix = firstPuttMix(record(30));
    expect(mix.own).toBeCloseTo(1 / 3, 12);
    expect(shareOf(mix.first, 4)).toBeCloseTo(2 / 9, 12);
    expect(shareOf(mix.first, feetToMetres(20))).toBeCloseTo((2 / 3) * 0.11, 12);
    expect(mix.first.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});
