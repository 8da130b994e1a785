/** Families narrowed by what was measured: likelihoods by jstat, and players drawn and simulated, whose chances must come true. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { type Measurement, narrowed, type Player, seededRandom } from '../../../sim/index.ts';
import type { Member } from '../../../sim/player/known.ts';
import { familyOf } from '../../support/members.ts';
import { normals } from '../../support/normals.ts';

const ratio = (members: readonly Member[], results: readonly Measurement[]): number => {
  const [one, other] = narrowed(members, results);
  return one.weight / other.weight;
};
/** Equipment Rules: 1.680 in across. */
const BALL = 0.04267;
/** One in a hundred errs three times as much (MODEL.md, section 5). */
const strayed = (of: (times: number) => number): number => 0.99 * of(1) + 0.01 * of(3);

describe('a family narrowed', () => {
  it('by balls through a gate goes with the binomial chance of the count', () => {
    const members = familyOf([{ lineSd: 0.01 }, { lineSd: 0.02 }]);
    const [width, distance, tries, passed] = [0.1, 2, 20, 15];
    const angle = Math.atan((width - BALL) / 2 / distance);
    const pass = (sd: number): number =>
      strayed((times) => 2 * jstat.normal.cdf(angle / (times * sd), 0, 1) - 1);
    const expected =
      jstat.binomial.pdf(passed, tries, pass(0.01)) / jstat.binomial.pdf(passed, tries, pass(0.02));
    // The ball's radius in the engine and here differ in the sixth digit, to the power of twenty balls.
    expect(ratio(members, [{ kind: 'gate', width, distance, passed, tries }]) / expected).toBeCloseTo(1, 3);
  });

  it('by balls to targets and by slopes named goes with the normal density of the errors', () => {
    const errors = [0.05, -0.11, 0.02, 0.14];
    const density = (error: number, mean: number, sd: number): number =>
      strayed((times) => jstat.normal.pdf(error, mean, times * sd));
    const product = (of: (error: number) => number): number =>
      errors.reduce((all, error) => all * of(error), 1);
    const ladder = familyOf([{ paceSd: 0.06 }, { paceSd: 0.12, paceBias: 0.03 }]);
    expect(ratio(ladder, [{ kind: 'ladder', errors }])).toBeCloseTo(
      product((error) => density(error, 0, 0.06)) / product((error) => density(error, 0.03, 0.12)),
      6,
    );
    const readers = familyOf([{ slopeSd: 0.004 }, { slopeSd: 0.004, readBias: -0.3 }]);
    const slopes = errors.map((error) => ({ named: 0.02 + error / 20, true: 0.02 }));
    expect(ratio(readers, [{ kind: 'readingSet', slopes }])).toBeCloseTo(
      product((error) => density(error / 20, 0, 0.004)) /
        product((error) => density(error / 20, -0.006, 0.004)),
      6,
    );
  });

  it('stays as it is by what the members have in common, and by nothing', () => {
    const members = familyOf([{ lineSd: 0.01 }, { lineSd: 0.02 }]);
    expect(ratio(members, [{ kind: 'ladder', errors: [0.1, 0.3] }])).toBeCloseTo(1, 12);
    expect(narrowed(members, [])).toEqual(members);
  });

  it('survives a result that none of its members would give', () => {
    const members = familyOf([{ lineSd: 0.005 }, { lineSd: 0.006 }]);
    const none: Measurement = { kind: 'gate', width: 0.3, distance: 1, passed: 0, tries: 500 };
    const found = narrowed(members, [none]);
    expect(found[0].weight + found[1].weight).toBeCloseTo(1, 12);
    expect(found[1].weight).toBeGreaterThan(found[0].weight);
    expect(() => narrowed(members, [{ ...none, passed: 501 }])).toThrow(/expected 0 to 500/);
  });

  it('tells chances that come true: players drawn, twenty balls each through a gate and ten to targets', () => {
    const members = familyOf(
      [0.008, 0.011, 0.014, 0.018, 0.023].flatMap((lineSd) =>
        [0.05, 0.08, 0.12].map((paceSd) => ({ lineSd, paceSd })),
      ),
    );
    const random = seededRandom('drawn');
    const normal = normals('rolled');
    const [width, distance] = [0.12, 2];
    const room = (width - BALL) / 2;
    const bins = Array.from({ length: 4 }, () => ({ count: 0, told: 0, true: 0 }));
    for (let time = 0; time < 4000; time++) {
      const truth = members[Math.floor(random() * members.length)].player;
      // One in a hundred errs three times as much, as people do; the ball goes straight.
      const error = (sd: number): number => sd * normal() * (random() < 0.01 ? 3 : 1);
      let passed = 0;
      for (let ball = 0; ball < 20; ball++)
        if (Math.abs(distance * Math.tan(error(truth.lineSd))) < room) passed++;
      const errors = Array.from({ length: 10 }, () => error(truth.paceSd));
      const found = narrowed(members, [
        { kind: 'gate', width, distance, passed, tries: 20 },
        { kind: 'ladder', errors },
      ]);
      // A question of both numbers: start line over 0.8 degrees or pace over 10%.
      const isWild = ({ lineSd, paceSd }: Player): boolean => lineSd > 0.0145 || paceSd > 0.1;
      const told = found.reduce((sum, { player, weight }) => sum + (isWild(player) ? weight : 0), 0);
      const bin = bins[Math.min(3, Math.floor(4 * told))];
      bin.count++;
      bin.told += told;
      bin.true += isWild(truth) ? 1 : 0;
    }
    for (const { count, told, true: came } of bins) {
      expect(count).toBeGreaterThan(100);
      // Four standard errors of a share at most 1/2.
      expect(Math.abs(told - came) / count).toBeLessThan(4 * Math.sqrt(0.25 / count));
    }
  });
});
