/**
 * A wild error gets the most time of the week. The law is the reader's: whoever doubles an error practises that most, and more than
 * before. Played on the ground of the costs screen by players of two levels.
 */
import { describe, expect, it } from 'vitest';
import { EXPECTED, LENGTHS, playGround, prepareGround, usualAt } from '../../../sim/costs/ground.ts';
import { addWeights } from '../../../sim/costs/round-costs.ts';
import {
  AREAS,
  type Area,
  afterStep,
  type Player,
  presetOf,
  STATED_FIRST_PUTTS,
  type StepCost,
  timeShares,
} from '../../../sim/index.ts';
import { errorCosts } from '../../../sim/training/week-costs.ts';
import { sized } from '../../support/size.ts';

const SLOW = 600_000;

const WEIGHTS = new Float64Array(LENGTHS.length + 1);
for (const { length, share } of STATED_FIRST_PUTTS.first) addWeights(LENGTHS, length, 18 * share, WEIGHTS);

/** Habits with which a doubled one is wild, and without which it cannot be doubled: 6% too far, 15% too little slope seen. */
const HABITS = { paceBias: 0.06, readBias: -0.15 } as const;

describe.each(['tour', 'averaging-90'])('the week of %s', (id) => {
  const preset = presetOf(id)?.player;
  if (preset === undefined) throw new Error(`no preset ${id}`);
  const prepared = prepareGround({ player: preset, usual: 0.4318, greenSpeed: 2.9 });
  // For every day on its slope of 2% alone, which lies between the others.
  const ground = { ...prepared, greens: sized(prepared.greens.slice(1, 2), prepared.greens) };
  const putts = (player: Player): number => {
    const row = playGround(ground, player, true);
    return LENGTHS.reduce(
      (sum, _, i) => sum + WEIGHTS[i] * row[usualAt(i) + EXPECTED],
      WEIGHTS[LENGTHS.length],
    );
  };
  const sharesOf = (player: Player): Record<Area, number> => {
    const now = putts(player);
    const steps = (['lineReach', 'paceReach', 'readReach'] as const).map((step): StepCost => {
      const value = now - putts(afterStep(player, step));
      return { step, saved: { value, low: value, high: value }, byBand: [] };
    });
    const shares = timeShares(errorCosts(steps));
    return Object.fromEntries(shares.map(({ error, share }) => [error, share])) as Record<Area, number>;
  };
  const plain = sharesOf(preset);

  it.each(
    (Object.keys(AREAS) as Area[]).flatMap((area) => AREAS[area].map((error) => [error, area] as const)),
  )(
    'gives a doubled %s the most time, to %s, and more than before',
    (error, area) => {
      const habit = error === 'paceBias' || error === 'readBias' ? HABITS[error] : undefined;
      const before = habit === undefined ? plain : sharesOf({ ...preset, [error]: habit });
      const then = sharesOf({ ...preset, [error]: 2 * (habit ?? preset[error]) });
      for (const other of Object.keys(AREAS) as Area[])
        if (other !== area) expect(then[area], other).toBeGreaterThan(then[other]);
      expect(then[area]).toBeGreaterThan(before[area]);
    },
    SLOW,
  );
});
